import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, createPose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { J, JOINT_COUNT } from '../../src/model/joints';
import { K, KEY_COUNT, type ReferenceSwing } from '../../src/model/keys';
import { STILL } from '../../src/model/movements';
import { isReached, readCheckpoints, type Checkpoint, type Reached } from '../../src/reading/checkpoints';
import { createSwing, headAt, headVelocityAt, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { judge, verdictAt } from '../../src/reading/verdicts';
import { seedReference } from '../../src/solving/reference/seed';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const seed = seedReference(body);
const swing = createSwing(body, club, seed);
const pose = createPose();

const reached = (checkpoint: Checkpoint): Reached => {
  if (!isReached(checkpoint)) throw new Error(`Not reached: ${checkpoint.missing}`);
  return checkpoint;
};
/** Sines of the angles of lead arm and shaft to the ground, off the pose that is drawn. */
const heights = (of: Swing, t: number): { arm: number; shaft: number } => {
  swingPose(of, t, pose);
  return { arm: pose[AT.armDirection + 1], shaft: pose[AT.shaftDirection + 1] };
};
/** The swing with some joints changed at all keys from `from` on. */
const changed = (from: number, set: (values: Float64Array, at: number) => void): ReferenceSwing => {
  const values = seed.values.slice();
  for (let key = from; key < KEY_COUNT; key++) set(values, key * JOINT_COUNT);
  return { ...seed, values };
};

const SWINGS = {
  reference: swing,
  bowed: withMovements(swing, { ...STILL, leadWristFlexion: rad(30) }),
  cupped: withMovements(swing, { ...STILL, leadWristFlexion: rad(-30) }),
  fast: withMovements(swing, { ...STILL, rotationRate: 1.3, rotationDelay: -0.03 }),
  leaning: withMovements(swing, { ...STILL, trailSideBend: rad(10), pelvisShift: 0.05 }),
};

describe.each(Object.entries(SWINGS))('%s swing', (_, of) => {
  test.each([0, -5, -10, -20])(
    'passes lead arm parallel within 1e-9 s of the moment the arm lies %d deg to the ground',
    (degrees) => {
      const { t } = reached(readCheckpoints(of, rad(degrees)).leadArmParallel);
      const level = Math.sin(rad(degrees));
      expect(heights(of, t - 1e-9).arm).toBeGreaterThan(level);
      expect(heights(of, t + 1e-9).arm).toBeLessThan(level);
    },
  );

  test('passes shaft parallel within 1e-9 s of the moment the shaft lies level, after lead arm parallel', () => {
    const read = readCheckpoints(of);
    const { t } = reached(read.shaftParallel);
    expect(heights(of, t - 1e-9).shaft).toBeGreaterThan(0);
    expect(heights(of, t + 1e-9).shaft).toBeLessThan(0);
    expect(t).toBeGreaterThan(reached(read.leadArmParallel).t);
  });

  test('passes each for the first time: in steps of 1 ms from the top, nothing comes before', () => {
    const read = readCheckpoints(of);
    const arm = reached(read.leadArmParallel).t;
    const shaft = reached(read.shaftParallel).t;
    for (let t = 0; t < arm - 1e-6; t += 0.001) expect(heights(of, t).arm).toBeGreaterThan(Math.sin(rad(-10)));
    for (let t = arm; t < shaft - 1e-6; t += 0.001) expect(heights(of, t).shaft).toBeGreaterThan(0);
  });

  test('is read off the pose that is drawn at that moment', () => {
    for (const checkpoint of Object.values(readCheckpoints(of)) as Checkpoint[]) {
      const read = reached(checkpoint);
      swingPose(of, read.t, pose);
      expect(read.pose).toEqual(pose);
      expect(read.readings.headDepth).toBe(pose[AT.head + 2] - pose[AT.leadGrip + 2]);
    }
  });
});

test('a lower reading angle is passed later', () => {
  const times = [0, -5, -10, -15, -20].map(
    (degrees) => reached(readCheckpoints(swing, rad(degrees)).leadArmParallel).t,
  );
  expect(times).toEqual(times.toSorted((a, b) => a - b));
});

describe('a checkpoint that is not there says why', () => {
  test('an arm that stays up never comes parallel, and so there is no shaft parallel either', () => {
    const up = createSwing(
      body,
      club,
      changed(K.top, (values, at) => {
        values[at + J.leadArmElevation] = rad(30);
        values[at + J.trunkBend] = 0;
      }),
    );
    expect(readCheckpoints(up)).toEqual({
      leadArmParallel: { missing: 'never-parallel' },
      shaftParallel: { missing: 'never-parallel' },
    });
  });

  test('a shaft held up by the wrist never comes parallel, though the arm does', () => {
    const held = createSwing(
      body,
      club,
      changed(K.leadArmParallel, (values, at) => {
        const from = K.leadArmParallel * JOINT_COUNT;
        for (let j = 0; j < JOINT_COUNT; j++) values[at + j] = seed.values[from + j];
        values[at + J.leadArmElevation] -= rad(8);
      }),
    );
    const read = readCheckpoints(held);
    expect(isReached(read.leadArmParallel)).toBe(true);
    expect(read.shaftParallel).toEqual({ missing: 'never-parallel' });
    expect(verdictAt('shaftParallel', read.shaftParallel)).toBe('missing');
  });

  test('a swing with a number that is not one is not read', () => {
    const broken = withMovements(swing, { ...STILL, trailSideBend: NaN });
    expect(readCheckpoints(broken).leadArmParallel).toEqual({ missing: 'not-finite' });
  });
});

describe('head velocity', () => {
  const velocity = new Float64Array(3);
  const trace = (t: number): Float64Array => {
    const head = new Float64Array(3);
    headAt(swing, t, head);
    return head;
  };

  test('is the slope of the trace that is drawn', () => {
    for (const t of [0.1, 0.2, 0.25]) {
      headVelocityAt(swing, t, velocity);
      // A wider, fourth-order difference of the trace itself.
      const h = 1e-4;
      const [a, b, c, d] = [trace(t - 2 * h), trace(t - h), trace(t + h), trace(t + 2 * h)];
      velocity.forEach((v, i) => expect(v).toBeCloseTo((a[i] - 8 * b[i] + 8 * c[i] - d[i]) / (12 * h), 3));
    }
  });

  test('is slower by as much as the downswing takes longer', () => {
    headVelocityAt(swing, 0.25, velocity);
    const slow = new Float64Array(3);
    headVelocityAt(createSwing(body, club, seed, STILL, 0.3), 0.25, slow);
    slow.forEach((v, i) => expect(v * 0.3).toBeCloseTo(velocity[i] * 0.25, 9));
  });
});

test('the edges of a band belong to it; beyond them it is steep above and over-shallow below', () => {
  const band = { low: -0.015, high: 0.015 };
  expect([-0.0151, -0.015, 0, 0.015, 0.0151].map((value) => judge(value, band))).toEqual([
    'shallow',
    'onPlane',
    'onPlane',
    'onPlane',
    'steep',
  ]);
});
