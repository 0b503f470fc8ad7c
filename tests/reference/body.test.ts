import { expect, test } from 'vitest';
import { bodyOf, SEGMENT_FRACTIONS as PART } from '../../src/model/body';
import { J, JOINTS, type JointId } from '../../src/model/joints';
import { toDeg } from '../../src/math/angle';

// Drillis & Contini 1966 in Winter, Biomechanics and Motor Control of Human Movement (2009), fig. 4.1. Mark B: seen quoted by a second
// source. Heights are the table's own, typed here; lengths between them follow.
test('ankle, shank, thigh and trunk add up to the height of the shoulder', () => {
  expect(PART.ankle + PART.shank + PART.thigh + PART.trunk).toBeCloseTo(0.818, 12);
});

test('the hip stands at 0.530 and the knee at 0.285 of the stature', () => {
  expect(PART.ankle + PART.shank + PART.thigh).toBeCloseTo(0.53, 12);
  expect(PART.ankle + PART.shank).toBeCloseTo(0.285, 12);
});

test('upper arm, forearm and hand add up to 0.440 of the stature; the grip sits at half the hand', () => {
  const hand = 0.108;
  expect(PART.upperArm + PART.forearm + hand).toBeCloseTo(0.44, 12);
  expect(PART.grip).toBeCloseTo(hand / 2, 12);
});

test.each([
  ['shoulderHalf', 0.129],
  ['hipHalf', 0.0955],
  ['upperArm', 0.186],
  ['forearm', 0.146],
  ['foot', 0.152],
  ['ankle', 0.039],
] as const)('%s is %f of the stature', (id, fraction) => {
  expect(PART[id]).toBe(fraction);
  expect(bodyOf({ statureM: 1.8, handed: 'right' })[id]).toBeCloseTo(fraction * 1.8, 12);
});

// Ranges of motion. AAOS, mark A; Boone & Azen 1979, JBJS Am 61:756, mark A: both are given so that the table's side can be seen.
const spanOf = (id: JointId): number[] =>
  [JOINTS[J[id]].min, JOINTS[J[id]].max].map((angle) => Math.round(toDeg(angle) * 1e9) / 1e9);

test('the lead wrist folds 80 and bends back 70 deg (AAOS; 76 and 75 by Boone & Azen)', () => {
  expect(spanOf('leadWristFlexion')).toEqual([-70, 80]);
});

test('the lead wrist cocks 20 and uncocks 30 deg (AAOS; 22 and 36 by Boone & Azen)', () => {
  expect(spanOf('leadWristRadial')).toEqual([-30, 20]);
});

test('the roll of the lead arm stays inside forearm and humeral rotation together, 80 + 70 deg (AAOS)', () => {
  expect(spanOf('leadArmRoll')).toEqual([-150, 150]);
});

test('the lead arm crosses the chest no further than horizontal adduction goes, 90 to 135 deg (ACSM, mark B)', () => {
  expect(spanOf('leadArmAdduction')[1]).toBeGreaterThanOrEqual(90);
  expect(spanOf('leadArmAdduction')[1]).toBeLessThanOrEqual(135);
});
