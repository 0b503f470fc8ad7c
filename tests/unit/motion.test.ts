import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { pieceCurvature, pieceSlope, pieceValue } from '../../src/math/spline';
import { bodyOf } from '../../src/model/body';
import { createJointVector, J, JOINT_COUNT, JOINT_IDS } from '../../src/model/joints';
import { K, KEY_COUNT, KEY_IDS } from '../../src/model/keys';
import {
  createCurves,
  joinKeys,
  movedJoints,
  movementShare,
  referenceJoint,
  referenceJoints,
} from '../../src/model/motion';
import { DIALS, STILL, type Movements } from '../../src/model/movements';
import { bendToTrailSide, sideBendOfLean } from '../../src/model/sideBend';
import { seedReference } from '../../src/solving/reference/seed';
import { shippedSwings } from '../../src/solving/reference/shipped';
import { readShipped } from '../../src/solving/reference/usual';

const reference = seedReference(bodyOf({ statureM: 1.78, handed: 'right' }));
const curves = joinKeys(reference, createCurves());
const { times } = reference;
const STRIDE = JOINT_COUNT * 6;

/** Value, slope and second derivative of a joint at the end of one piece and at the start of the next. */
const sides = (key: number, joint: number) => {
  const length = times[key] - times[key - 1];
  const before = (key - 1) * STRIDE + joint * 6;
  const after = key * STRIDE + joint * 6;
  return [pieceValue, pieceSlope, pieceCurvature].map((of) => [
    of(curves.pieces, before, length),
    of(curves.pieces, after, 0),
  ]);
};

describe('the curves of a swing', () => {
  test.each(KEY_IDS)('go through the %s key', (key) => {
    const q = createJointVector();
    referenceJoints(curves, times[K[key]], q);
    q.forEach((value, j) => expect(value).toBeCloseTo(reference.values[K[key] * JOINT_COUNT + j], 12));
  });

  test.each(KEY_IDS.slice(1, -1))('have no jump in position, velocity or acceleration at %s', (key) => {
    JOINT_IDS.forEach((_, j) => {
      const [value, slope, curvature] = sides(K[key], j);
      expect(value[1]).toBeCloseTo(value[0], 10);
      // Slopes reach some 20 rad/s and curvatures some 1000 rad/s2: the same relative agreement.
      expect(slope[1]).toBeCloseTo(slope[0], 9);
      expect(curvature[1]).toBeCloseTo(curvature[0], 7);
    });
  });

  test('start at rest, turn round at rest at the top and end at rest', () => {
    JOINT_IDS.forEach((_, j) => {
      expect(pieceSlope(curves.pieces, j * 6, 0)).toBeCloseTo(0, 10);
      expect(sides(K.top, j)[1][0]).toBeCloseTo(0, 9);
      const last = KEY_COUNT - 1;
      const end = (last - 1) * STRIDE + j * 6;
      expect(pieceSlope(curves.pieces, end, times[last] - times[last - 1])).toBeCloseTo(0, 9);
    });
  });

  test('hold still before address and after the finish', () => {
    const q = createJointVector();
    referenceJoints(curves, times[0] - 1, q);
    q.forEach((value, j) => expect(value).toBe(referenceJoint(curves, j, times[0])));
    referenceJoints(curves, times[K.finish] + 1, q);
    q.forEach((value, j) => expect(value).toBe(referenceJoint(curves, j, times[K.finish])));
  });
});

describe('the share of a movement', () => {
  const share = (t: number): number => movementShare(times, t);

  test('is nothing all the way back to the top', () => {
    for (const key of ['address', 'takeaway', 'midBackswing', 'top'] as const) expect(share(times[K[key]])).toBe(0);
  });

  test('is all of it from lead arm parallel to the exit', () => {
    for (const key of ['leadArmParallel', 'shaftParallel', 'impact', 'exit'] as const)
      expect(share(times[K[key]])).toBe(1);
  });

  test('is gone at the finish', () => expect(share(times[K.finish])).toBe(0));

  test('is half in half-way between the top and lead arm parallel', () => {
    expect(share(times[K.leadArmParallel] / 2)).toBeCloseTo(0.5, 12);
  });

  test.each(['top', 'leadArmParallel', 'exit', 'finish'] as const)(
    'comes and goes without a jolt at %s: no speed, no acceleration',
    (key) => {
      const t = times[K[key]];
      const h = 1e-4;
      const [a, b, c] = [share(t - h), share(t), share(t + h)];
      // A share that starts like u^3 has changed by some (h / 0.15)^3 = 3e-10 after h.
      expect(Math.abs(c - b) + Math.abs(b - a)).toBeLessThan(1e-8);
    },
  );
});

/** Rotation about an axis as nine numbers, row by row. */
function rotation(axis: 'x' | 'y' | 'z', angle: number): number[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { x: [1, 0, 0, 0, c, -s, 0, s, c], y: [c, 0, s, 0, 1, 0, -s, 0, c], z: [c, -s, 0, s, c, 0, 0, 0, 1] }[axis];
}
const product = (a: readonly number[], b: readonly number[]): number[] =>
  Array.from({ length: 9 }, (_, i) =>
    [0, 1, 2].reduce((sum, k) => sum + a[3 * Math.floor(i / 3) + k] * b[3 * k + (i % 3)], 0),
  );
/** Orientation of the rib cage by the order of the chain. */
const ribCage = (q: Float64Array): number[] =>
  product(product(rotation('z', q[J.trunkTilt]), rotation('x', q[J.trunkBend])), rotation('y', q[J.thoraxTurn]));

describe('the movements', () => {
  const at = (t: number, movements: Partial<Movements>, tempo = 1) => {
    const q = createJointVector();
    movedJoints(curves, { ...STILL, ...movements }, t, tempo, q);
    return q;
  };
  const late = times[K.shaftParallel];
  const all = {
    leadWristFlexion: rad(20),
    rotationRate: 1.3,
    rotationDelay: 0.02,
    trailSideBend: rad(8),
    pelvisShift: 0.04,
  };

  test('change nothing before the top', () => {
    for (const t of [times[0], times[K.midBackswing], 0]) expect(at(t, all)).toEqual(at(t, {}));
  });

  test.each([
    ['bowing the lead wrist adds flexion', { leadWristFlexion: rad(20) }, 'leadWristFlexion', rad(20)],
    ['shifting the pelvis adds sway toward the target', { pelvisShift: 0.04 }, 'pelvisSway', 0.04],
  ] as const)('%s and touches nothing else', (_, movements, joint, added) => {
    const moved = at(late, movements);
    const still = at(late, {});
    moved.forEach((value, j) => expect(value - still[j]).toBeCloseTo(j === J[joint] ? added : 0, 12));
  });

  test('side bend is the rotation of the rib cage about its own front-back axis, to 1e-12', () => {
    // Rz(tilt) Rx(bend) Ry(turn) Rz(side bend), multiplied out with plain matrices, against the joints that the movement writes.
    for (const dialled of [-12, -5, 3, 12]) {
      for (const rotationRate of [0.6, 1, 1.4]) {
        for (const t of [times[K.leadArmParallel], late, times[K.impact], times[K.exit]]) {
          const without = at(t, { rotationRate });
          const moved = at(t, { rotationRate, trailSideBend: rad(dialled) });
          const wanted = product(ribCage(without), rotation('z', rad(dialled)));
          ribCage(moved).forEach((value, i) => expect(Math.abs(value - wanted[i])).toBeLessThan(1e-12));
          const touched = [J.trunkTilt, J.trunkBend, J.thoraxTurn];
          moved.forEach((value, j) => touched.includes(j) || expect(value).toBe(without[j]));
          expect(Math.abs(moved[J.thoraxTurn] - without[J.thoraxTurn])).toBeLessThan(rad(15));
        }
      }
    }
  });

  test('the side bend of a lean gives that lean, seen face-on', () => {
    for (const lean of [-10, -2, 0, 4, 12]) {
      const q = at(late, {});
      const before = q[J.trunkTilt];
      bendToTrailSide(sideBendOfLean(rad(lean), q[J.trunkBend], q[J.thoraxTurn]), q);
      expect(q[J.trunkTilt] - before).toBeCloseTo(rad(lean), 12);
    }
  });

  test('a rate of 1.2 has turned chest and pelvis a fifth further from the top', () => {
    for (const joint of [J.thoraxTurn, J.pelvisTurn]) {
      const top = at(0, {})[joint];
      expect(at(late, { rotationRate: 1.2 })[joint] - top).toBeCloseTo(1.2 * (at(late, {})[joint] - top), 12);
    }
  });

  test('a delay of 20 ms has chest and pelvis where they were 20 ms before', () => {
    for (const joint of [J.thoraxTurn, J.pelvisTurn]) {
      expect(at(late, { rotationDelay: 0.02 })[joint]).toBeCloseTo(at(late - 0.02, {})[joint], 12);
    }
  });

  test('a delay is in the own time of a player whose downswing is faster or slower', () => {
    for (const tempo of [0.72, 1.6]) {
      for (const joint of [J.thoraxTurn, J.pelvisTurn]) {
        expect(at(late, { rotationDelay: 0.02 }, tempo)[joint]).toBeCloseTo(at(late - 0.02 / tempo, {})[joint], 12);
      }
    }
  });

  test('the pelvis can be dialled on its own', () => {
    const apart = at(late, { rotationRate: 1.2, pelvisRate: 1 });
    expect(apart[J.pelvisTurn]).toBe(at(late, {})[J.pelvisTurn]);
    expect(apart[J.thoraxTurn]).toBe(at(late, { rotationRate: 1.2 })[J.thoraxTurn]);
  });

  test('the pelvis on its own can start later than the chest', () => {
    const apart = at(late, { pelvisDelay: 0.02 });
    expect(apart[J.pelvisTurn]).toBeCloseTo(at(late - 0.02, {})[J.pelvisTurn], 12);
    expect(apart[J.thoraxTurn]).toBe(at(late, {})[J.thoraxTurn]);
  });
});

/** Every dial alone at both its ends, the pelvis on its own, everything at once. */
const DIALLED: readonly (readonly [string, Partial<Movements>])[] = [
  ['nothing', {}],
  ...DIALS.flatMap(({ id, min, max }) => [min, max].map((end) => [`${id} ${end}`, { [id]: end }] as const)),
  ['pelvis slow and late', { pelvisRate: 0.6, pelvisDelay: 0.04 }],
  ['pelvis fast and early', { pelvisRate: 1.4, pelvisDelay: -0.04 }],
  ['everything', Object.fromEntries(DIALS.map(({ id, max }) => [id, max]))],
];

/** Step of the differences on both sides of a key, s. */
const H = 1e-5;

describe.each(DIALLED)('with %s dialled, the shipped swings and the seed', (_, dialled) => {
  const swings = [reference, ...shippedSwings().map(readShipped)];
  const movements = { ...STILL, ...dialled };

  test('have no jump in position, velocity or acceleration at any key', () => {
    const worst = { kink: 0, jolt: 0 };
    for (const swing of swings) {
      const joined = joinKeys(swing, createCurves());
      for (let key = 1; key < KEY_COUNT; key++) {
        const [a, b, c, d, e] = [-2, -1, 0, 1, 2].map((steps) => {
          const q = createJointVector();
          movedJoints(joined, movements, swing.times[key] + steps * H, 1, q);
          return q;
        });
        for (let j = 0; j < JOINT_COUNT; j++) {
          worst.kink = Math.max(worst.kink, Math.abs(d[j] - 2 * c[j] + b[j]) / H);
          // A swing may come to rest at its end in the middle of slowing down.
          if (key === K.finish) continue;
          worst.jolt = Math.max(worst.jolt, Math.abs(e[j] - 2 * d[j] + 2 * b[j] - a[j]) / (H * H));
        }
      }
    }
    // A bend of 1000 rad/s2 changes the speed by 0.01 rad/s in a step, a jerk of 1e5 rad/s3 the bend by 2 rad/s2 in two.
    expect(worst.kink).toBeLessThan(0.02);
    expect(worst.jolt).toBeLessThan(5);
  });
});
