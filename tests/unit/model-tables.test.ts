import { describe, expect, test } from 'vitest';
import { toDeg } from '../../src/math/angle';
import { bodyOf, SEGMENT_FRACTIONS, SetupError, type SegmentId } from '../../src/model/body';
import { AT, createPose, type Pose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, J, JOINTS, type JointVector } from '../../src/model/joints';
import { DIALS, STILL } from '../../src/model/movements';
import { createSwing, swingJoints, swingPose, withMovements } from '../../src/reading/swing';
import { seedReference } from '../../src/solving/reference/seed';
import { act, rigWith } from './chain-acted';

/** The second of three axes of a part is its up, the third its front, the first its lead side. */
const [UP, FRONT] = [3, 6];
const [X, Y, Z] = [0, 1, 2];
const square = rigWith({ gripAngleDeg: 90 });
const straight = rigWith({ gripAngleDeg: 0 });

/** What a sentence about a joint means: a number that grows when it comes true. X to the target, Y up, Z to the ball. */
const MEANS: Readonly<Record<string, (p: Pose) => number>> = {
  'the pelvis moves toward the target': (p) => p[AT.pelvis + X],
  'the pelvis rises from the ground': (p) => p[AT.pelvis + Y],
  'the pelvis moves toward the ball': (p) => p[AT.pelvis + Z],
  'the pelvis opens toward the target': (p) => p[AT.pelvisAxes + FRONT + X],
  'the pelvis tips forward': (p) => p[AT.pelvisAxes + UP + Z],
  'the lead hip rises': (p) => p[AT.pelvisAxes + Y],
  'the trunk bends forward to the ball': (p) => p[AT.midShoulder + Z],
  'the upper body leans away from the target': (p) => p[AT.pelvis + X] - p[AT.midShoulder + X],
  'the chest opens toward the target': (p) => p[AT.thoraxAxes + FRONT + X],
  'the lead shoulder moves forward': (p) => p[AT.leadShoulder + Z],
  'the trail shoulder moves forward': (p) => p[AT.trailShoulder + Z],
  'the lead arm crosses the chest': (p) => -p[AT.armDirection + X],
  'the lead arm lifts toward the head': (p) => p[AT.armDirection + Y],
  // The shaft square to the hand points where the thumb does; in line with it, folding the palm takes it to the trail side.
  'the thumb turns toward the trail side': (p) => -p[AT.shaftDirection + X],
  'the palm folds toward the forearm (bowed)': (p) => -p[AT.shaftDirection + X],
  'the thumb comes toward the forearm (cocked)': (p) =>
    -[X, Y, Z].reduce((sum, i) => sum + p[AT.shaftDirection + i] * p[AT.armDirection + i], 0),
};
const RIGS: Partial<Record<string, typeof square>> = { leadArmRoll: square, leadWristFlexion: straight };

describe('what the table says a positive joint does is what it does', () => {
  test.each(JOINTS.map(({ id, positive, kind }) => [id, positive, kind] as const))('%s: %s', (id, positive, kind) => {
    const rest = id === 'pelvisHeight' ? 1 : 0;
    const by = kind === 'angle' ? 10 : 0.05;
    const sentence = MEANS[positive];
    expect(sentence, `nobody has acted out "${positive}"`).toBeDefined();
    const value = (at: number): number => sentence(act({ [id]: at }, RIGS[id]));
    expect(value(rest + by) - value(rest)).toBeGreaterThan(0.01);
    expect(value(rest) - value(rest - by)).toBeGreaterThan(0.01);
  });

  test('no two joints say the same', () => {
    expect(new Set(JOINTS.map(({ positive }) => positive)).size).toBe(JOINTS.length);
  });
});

describe('ranges of joints', () => {
  // The model's own: wide enough for a swing, narrow enough for a body. Degrees, metres.
  test.each([
    ['pelvisSway', -0.3, 0.3],
    ['pelvisHeight', 0.4, 1.4],
    ['pelvisThrust', -0.3, 0.3],
    ['pelvisTurn', -70, 110],
    ['pelvisBend', -10, 45],
    ['pelvisSideTilt', -25, 25],
    ['leadArmElevation', -90, 60],
  ] as const)('%s runs from %d to %d', (id, low, high) => {
    const { kind, min, max } = JOINTS[J[id]];
    const ends = kind === 'angle' ? [toDeg(min), toDeg(max)] : [min, max];
    expect(ends).toEqual([expect.closeTo(low, 9), expect.closeTo(high, 9)]);
  });
});

describe('dials', () => {
  const body = bodyOf({ statureM: 1.78, handed: 'right' });
  const still = createSwing(body, clubOf(CLUBS['7-iron']), seedReference(body));
  /** A moment between the two checkpoints: everything that is dialled is in force. */
  const LATE = 0.19;
  const MEANS_OF_DIAL: Readonly<Record<string, (p: Pose, q: JointVector) => readonly number[]>> = {
    'the lead wrist bows': (_, q) => [q[J.leadWristFlexion]],
    'pelvis and chest turn faster': (_, q) => [q[J.pelvisTurn], q[J.thoraxTurn]],
    'the turn starts later': (_, q) => [-q[J.pelvisTurn], -q[J.thoraxTurn]],
    // The trail shoulder comes down against the lead one.
    'the rib cage bends to the trail side': (p) => [p[AT.leadShoulder + 1] - p[AT.trailShoulder + 1]],
    'the pelvis moves toward the target': (p) => [p[AT.pelvis]],
  };

  test.each(DIALS)('$id, dialled up: $positive', ({ id, positive, neutral, max }) => {
    const measure = (value: number): readonly number[] => {
      const swing = withMovements(still, { ...STILL, [id]: value });
      const [p, q] = [createPose(), createJointVector()];
      swingPose(swing, LATE, p);
      swingJoints(swing, LATE, q);
      return MEANS_OF_DIAL[positive](p, q);
    };
    const before = measure(neutral);
    measure(max).forEach((after, i) => expect(after - before[i]).toBeGreaterThan(0.02));
  });

  // Degrees, factor, ms, degrees, cm: the ends of the track, and from where on it is hatched (common practice).
  test.each([
    ['leadWristFlexion', [-40, -30, 30, 40]],
    ['rotationRate', [0.6, 0.8, 1.2, 1.4]],
    ['rotationDelay', [-40, -30, 30, 40]],
    ['trailSideBend', [-12, -6, 6, 12]],
    ['pelvisShift', [-10, -6, 6, 10]],
  ] as const)('%s runs from %j', (id, marks) => {
    const { min, usualMin, usualMax, max, edgeUnit } = DIALS.find((dial) => dial.id === id)!;
    expect([min, usualMin, usualMax, max].map((mark) => mark / edgeUnit)).toEqual(
      marks.map((mark) => expect.closeTo(mark, 9) as number),
    );
  });
});

test.each(Object.keys(SEGMENT_FRACTIONS) as SegmentId[])(
  'a measured %s may differ by three tenths from the table’s, and no more',
  (id) => {
    const measured = (factor: number) => () =>
      bodyOf({ statureM: 1.8, handed: 'right', segmentsM: { [id]: SEGMENT_FRACTIONS[id] * 1.8 * factor } });
    for (const factor of [0.71, 1.29]) expect(measured(factor)()[id]).toBeCloseTo(SEGMENT_FRACTIONS[id] * 1.8 * factor);
    for (const factor of [0.69, 1.31]) expect(measured(factor)).toThrow(SetupError);
  },
);
