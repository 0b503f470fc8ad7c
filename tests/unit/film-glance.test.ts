import { describe, expect, test } from 'vitest';
import { findStep, toGlance, type Planes } from '../../src/video/frames/glance';

type Frame = Partial<Omit<Planes, 'data'>> & { readonly w: number; readonly h: number };

/** A frame with brightness by place and one colour. */
function paint({ w, h, ...rest }: Frame, light: (x: number, y: number) => number, [u, v] = [128, 128]): Planes {
  const format = rest.format ?? 'I420';
  const half = ((w + 1) >> 1) * ((h + 1) >> 1);
  const data = new Uint8Array(w * h + 2 * half);
  for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) data[y * w + x] = light(x, y);
  for (let i = 0; i < half; i++) {
    data[w * h + (format === 'I420' ? i : 2 * i)] = u;
    data[w * h + (format === 'I420' ? half + i : 2 * i + 1)] = v;
  }
  return { format, rotation: 0, matrix: 'bt709', isFullRange: false, ...rest, w, h, data };
}

describe('a glance at a frame', () => {
  // Full bars as the formulas of ITU-R BT.709-6, 3.2 to 3.5, and BT.601-7, 2.5, give them in 8 bits.
  test.each([
    ['bt709', [255, 0, 0], 63, [102, 240]],
    ['bt709', [0, 255, 0], 173, [42, 26]],
    ['bt709', [0, 0, 255], 32, [240, 118]],
    ['bt709', [255, 255, 255], 235, [128, 128]],
    ['bt709', [0, 0, 0], 16, [128, 128]],
    ['smpte170m', [255, 0, 0], 81, [90, 240]],
    ['smpte170m', [0, 255, 0], 145, [54, 34]],
    ['smpte170m', [0, 0, 255], 41, [240, 110]],
  ] as const)('%s: has the colour %j', (matrix, colour, light, colours) => {
    for (const format of ['I420', 'NV12'] as const) {
      const { pixels } = toGlance(paint({ w: 4, h: 2, matrix, format }, () => light, [...colours]));
      expect(pixels.length).toBe(4 * 4 * 2);
      for (let k = 0; k < 3; k++) expect(Math.abs(pixels[4 * 3 + k] - colour[k])).toBeLessThanOrEqual(2);
      expect(pixels[3]).toBe(255);
    }
  });

  test('is turned as the film says, clockwise', () => {
    // A frame of 3 by 2 whose brightness counts its pixels.
    const turned = (rotation: Planes['rotation']) => {
      const { w, h, pixels } = toGlance(
        paint({ w: 3, h: 2, rotation, isFullRange: true }, (x, y) => 10 * (1 + x + 3 * y)),
      );
      return [w, h, ...Array.from({ length: 6 }, (_, i) => pixels[4 * i] / 10)];
    };
    expect(turned(0)).toEqual([3, 2, 1, 2, 3, 4, 5, 6]);
    expect(turned(90)).toEqual([2, 3, 4, 1, 5, 2, 6, 3]);
    expect(turned(180)).toEqual([3, 2, 6, 5, 4, 3, 2, 1]);
    expect(turned(270)).toEqual([2, 3, 3, 6, 2, 5, 1, 4]);
  });

  test('is as large as a tablet shows it, and each of its pixels the mean of those it stands for', () => {
    expect([findStep(1080, 1920), findStep(720, 1280), findStep(2160, 3840), findStep(30, 50)]).toEqual([2, 1, 4, 1]);
    for (const [w, h, step] of [
      [6, 1800, 2],
      [2703, 3, 3],
    ]) {
      const light = (x: number, y: number): number => (7 * x + 13 * y) % 200;
      const glance = toGlance(paint({ w, h, isFullRange: true }, light));
      expect([glance.w, glance.h]).toEqual([w / step, h / step]);
      for (const [x, y] of [
        [0, 0],
        [glance.w - 1, glance.h - 1],
      ]) {
        let sum = 0;
        for (let j = 0; j < step; j++) for (let i = 0; i < step; i++) sum += light(x * step + i, y * step + j);
        expect(Math.abs(glance.pixels[4 * (y * glance.w + x)] - sum / step ** 2)).toBeLessThanOrEqual(1);
      }
    }
  });
});
