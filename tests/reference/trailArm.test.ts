import { describe, expect, test } from 'vitest';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, createRig, placePose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, JOINTS } from '../../src/model/joints';
import { createRandom } from './random';

// Outside reference: the law of cosines, c^2 = a^2 + b^2 - 2ab cos(gamma). Lengths by the model's definition: upper arm 0.186 H, forearm
// to grip (0.146 + 0.054) H; the elbow lies on the side of the pole (-0.2, -1, 0.35) in the thorax's axes.
const statureM = 1.78;
const upper = 0.186 * statureM;
const fore = (0.146 + 0.054) * statureM;
const rig = createRig(bodyOf({ statureM, handed: 'right' }), clubOf(CLUBS['7-iron']));
const random = createRandom(11);
const p = createPose();
const q = createJointVector();

const point = (at: number): number[] => [...p.subarray(at, at + 3)];
const minus = (a: readonly number[], b: readonly number[]): number[] => a.map((x, i) => x - b[i]);
const dot = (a: readonly number[], b: readonly number[]): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: readonly number[]): number => Math.sqrt(dot(a, a));
const across = (a: readonly number[], b: readonly number[]): number[] => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

function look() {
  const toElbow = minus(point(AT.trailElbow), point(AT.trailShoulder));
  const toGrip = minus(point(AT.trailGrip), point(AT.trailShoulder));
  const onward = minus(point(AT.trailGrip), point(AT.trailElbow));
  const axis = (i: number): number[] => point(AT.thoraxAxes + 3 * i);
  const pole = [0, 1, 2].map((i) => -0.2 * axis(0)[i] - axis(1)[i] + 0.35 * axis(2)[i]);
  return { toElbow, toGrip, onward, pole };
}

const near: ReturnType<typeof look>[] = [];
const far: (ReturnType<typeof look> & { shortfall: number; ratio: number })[] = [];
for (let i = 0; i < 400; i++) {
  JOINTS.forEach(({ min, max }, j) => (q[j] = min + (max - min) * random()));
  placePose(rig, q, p);
  const seen = look();
  if (size(seen.toGrip) < upper + fore) near.push(seen);
  else far.push({ ...seen, shortfall: p[AT.reachShortfall], ratio: p[AT.reachRatio] });
}

describe('a trail arm that reaches the grip', () => {
  test('is seen often enough to say so', () => expect(near.length).toBeGreaterThan(100));

  test('keeps the lengths of upper arm and forearm to 1e-9 m', () => {
    for (const { toElbow, onward } of near) {
      expect(Math.abs(size(toElbow) - upper)).toBeLessThan(1e-9);
      expect(Math.abs(size(onward) - fore)).toBeLessThan(1e-9);
    }
  });

  test('has the angles of the law of cosines at the shoulder and at the elbow', () => {
    for (const { toElbow, toGrip, onward } of near) {
      const reach = size(toGrip);
      const atElbow = Math.acos(-dot(toElbow, onward) / upper / fore);
      const atShoulder = Math.acos(dot(toElbow, toGrip) / upper / reach);
      expect(Math.cos(atElbow)).toBeCloseTo((upper ** 2 + fore ** 2 - reach ** 2) / (2 * upper * fore), 9);
      expect(Math.cos(atShoulder)).toBeCloseTo((upper ** 2 + reach ** 2 - fore ** 2) / (2 * upper * reach), 9);
    }
  });

  test('bends in the plane of the pole, on its side: down, outward and a little forward', () => {
    for (const { toElbow, toGrip, pole } of near) {
      const normal = across(toGrip, pole);
      expect(Math.abs(dot(toElbow, normal)) / size(normal)).toBeLessThan(1e-9);
      expect(dot(across(toGrip, toElbow), normal)).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('a trail arm that does not reach', () => {
  test('is seen often enough to say so', () => expect(far.length).toBeGreaterThan(20));

  test('is drawn straight and says by how much it is too short', () => {
    for (const { toElbow, toGrip, shortfall, ratio } of far) {
      expect(dot(toElbow, toGrip)).toBeCloseTo(upper * size(toGrip), 9);
      expect(shortfall).toBeCloseTo(size(toGrip) - upper - fore, 12);
      expect(ratio).toBeCloseTo(size(toGrip) / (upper + fore), 12);
      expect(ratio).toBeGreaterThan(1);
    }
  });
});
