import { describe, expect, test } from 'vitest';
import { refineLine, type Grey } from '../../src/film/refineLine';
import type { Pixel } from '../../src/film/marks';
import { createNormal, createRandom } from '../../src/math/normal';

const SIDE = 500;
const LENGTH = 320;

interface Scene extends Grey {
  readonly hands: Pixel;
  readonly head: Pixel;
}

/** A shaft that moved while the shutter was open: wider and fainter toward the head, on uneven ground with a round thing beside it. */
function drawShaft(
  seed: number,
  { blur, brightness, noise }: { blur: number; brightness: number; noise: number },
): Scene {
  const random = createRandom(seed);
  const normal = createNormal(random);
  const between = (a: number, b: number): number => a + (b - a) * random();
  const angle = between(-0.5, 0.5);
  const hands = [between(180, 320), 420] as const;
  const toward = [Math.sin(angle), -Math.cos(angle)] as const;
  const head = [hands[0] + LENGTH * toward[0], hands[1] + LENGTH * toward[1]] as const;
  const [base, tiltX, tiltY] = [between(60, 180), between(-0.2, 0.2), between(-0.2, 0.2)];
  const [roundX, roundY, radius, step] = [between(100, 400), between(100, 400), between(20, 60), between(-60, 60)];
  const data = new Float32Array(SIDE * SIDE);
  for (let y = 0; y < SIDE; y++) {
    for (let x = 0; x < SIDE; x++) {
      const along = ((x - hands[0]) * toward[0] + (y - hands[1]) * toward[1]) / LENGTH;
      const across = (x - hands[0]) * toward[1] - (y - hands[1]) * toward[0];
      let value = base + tiltX * x + tiltY * y + (Math.hypot(x - roundX, y - roundY) < radius ? step : 0);
      if (along > -0.05 && along < 1.05) {
        const half = 1.5 + blur * Math.max(0, along);
        value += (brightness * 1.5) / half / (1 + Math.exp((Math.abs(across) - half) / 0.5));
      }
      data[y * SIDE + x] = Math.max(0, Math.min(255, value + noise * normal()));
    }
  }
  return { width: SIDE, height: SIDE, data, hands, head };
}

/** Two taps on the shaft, 4 px off either way. */
function tap({ hands, head }: Scene, seed: number): readonly [Pixel, Pixel] {
  const normal = createNormal(createRandom(seed + 1000));
  const at = (share: number): Pixel => [
    hands[0] + share * (head[0] - hands[0]) + 4 * normal(),
    hands[1] + share * (head[1] - hands[1]) + 4 * normal(),
  ];
  return [at(0.15), at(0.85)];
}

const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))];

const off = ({ hands, head }: Scene, [u, v]: Pixel): number =>
  Math.abs((u - hands[0]) * (head[1] - hands[1]) - (v - hands[1]) * (head[0] - hands[0])) / LENGTH;

describe('two taps beside a shaft', () => {
  test.each([
    { name: 'sharp', blur: 0, brightness: 60, noise: 4, median: 0.1, most: 0.5 },
    { name: 'blurred', blur: 4, brightness: 60, noise: 4, median: 0.3, most: 1 },
    { name: 'dark and blurred', blur: 4, brightness: -60, noise: 4, median: 0.3, most: 1 },
    { name: 'blurred to 19 px', blur: 8, brightness: 60, noise: 4, median: 0.5, most: 2.4 },
  ])('are moved onto its line: $name', ({ median, most, ...how }) => {
    const errors: number[] = [];
    let refused = 0;
    for (let seed = 1; seed <= 10; seed++) {
      const scene = drawShaft(seed, how);
      const found = refineLine(scene, ...tap(scene, seed));
      if (found) errors.push(...found.line.map((point) => off(scene, point)));
      else refused++;
    }
    expect(refused).toBeLessThanOrEqual(2);
    expect(quantile(errors, 0.5)).toBeLessThan(median);
    // Nine in ten within an eighth of the width at the head end.
    expect(quantile(errors, 0.9)).toBeLessThan(most);
  });

  test('are refused where there is no shaft', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const scene = drawShaft(seed, { blur: 0, brightness: 0, noise: 5 });
      expect(refineLine(scene, ...tap(scene, seed))).toBeUndefined();
    }
  });

  test('are refused when they are one tap', () => {
    const scene = drawShaft(1, { blur: 0, brightness: 60, noise: 4 });
    expect(refineLine(scene, scene.hands, scene.hands)).toBeUndefined();
  });
});
