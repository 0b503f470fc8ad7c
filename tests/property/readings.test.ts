import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, createRig, placePose, type Pose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { DIALS, STILL, type MovementDial } from '../../src/model/movements';
import {
  isReached,
  readCheckpoints,
  type CheckpointId,
  type ReadingId,
  type Readings,
} from '../../src/reading/checkpoints';
import { deliver, strikeOf } from '../../src/reading/delivery/delivery';
import { findGoingBack, findPositions } from '../../src/reading/positions';
import * as read from '../../src/reading/readings';
import { createSwing, headVelocityAt, withMovements } from '../../src/reading/swing';
import { seedReference } from '../../src/solving/reference/seed';
import { angle, direction, jointVector } from './arbitraries';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const rig = createRig(body, club);
const place = (q: Float64Array): Pose => {
  const p = createPose();
  placePose(rig, q, p);
  return p;
};
const POINTS = [AT.leadGrip, AT.head, AT.bicep, AT.trailShoulder, AT.trailElbow];
const DIRECTIONS = [AT.armDirection, AT.shaftDirection, AT.faceNormal];

/** The angle between two directions on a circle. */
const between = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
/** The same number to 1e-9 of its size, or no number in both. */
const expectSame = (a: number, b: number): void => {
  if (Number.isNaN(b)) expect(a).toBeNaN();
  else expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(b)));
};
const speed = () => fc.integer({ min: 1, max: 6000 }).map((cm) => cm / 100);

test('at shaft parallel the plane of the club points along the shaft, whatever the velocity of the head', () => {
  fc.assert(
    fc.property(angle(-80, 80), direction(), speed(), (aim, way, v) => {
      const level = [-Math.cos(aim), 0, -Math.sin(aim)];
      const velocity = way.map((x) => x * v);
      // A head that stays in the level plane leaves no trace on the ground: no direction.
      fc.pre(Math.abs(velocity[1]) > 1e-3);
      const p = createPose();
      p.set(level, AT.shaftDirection);
      expect(read.shaftAim(p)).toBeCloseTo(aim, 12);
      expect(read.planeDirection(p, velocity)).toBeCloseTo(aim, 9);
    }),
  );
});

test('a head in front of the hands turns the plane toward out-to-in by the angle it is in front', () => {
  fc.assert(
    fc.property(angle(-45, 45), direction(), (front, way) => {
      fc.pre(Math.abs(way[1]) > 1e-3);
      const p = createPose();
      p.set([-Math.cos(front), 0, Math.sin(front)], AT.shaftDirection);
      expect(read.planeDirection(p, way)).toBeCloseTo(-front, 9);
    }),
  );
});

test('in the mirror image every reading is the same or its mirror image', () => {
  fc.assert(
    fc.property(jointVector(), direction(), (q, velocity) => {
      const p = place(q);
      const m = p.slice();
      for (const at of [...POINTS, ...DIRECTIONS]) m[at + 2] *= -1;
      const mirrored = [velocity[0], velocity[1], -velocity[2]];
      for (const same of [read.shaftPitch, read.faceToVertical, read.armToShaft, read.handHeight] as const) {
        expect(same(m)).toBeCloseTo(same(p), 12);
      }
      for (const turned of [read.headDepth, read.handDepth, read.bicepGap] as const) {
        expect(turned(m)).toBeCloseTo(-turned(p), 12);
      }
      expect(between(read.shaftPlane(m), Math.PI - read.shaftPlane(p))).toBeLessThan(1e-12);
      expect(between(read.shaftAim(m), -read.shaftAim(p))).toBeLessThan(1e-12);
      expect(read.planeTilt(m, mirrored)).toBeCloseTo(read.planeTilt(p, velocity), 12);
      expect(Math.abs(Math.sin(read.planeDirection(m, mirrored) + read.planeDirection(p, velocity)))).toBeLessThan(
        1e-9,
      );
      expectSame(read.gripEndLine(m, -0.6), -read.gripEndLine(p, 0.6));
      expectSame(read.bicepCrossing(m), read.bicepCrossing(p));
    }),
  );
});

test('moving the golfer along the target line changes no reading; moving him toward the ball moves hands, grip-end line and nothing else', () => {
  fc.assert(
    fc.property(jointVector(), fc.integer({ min: -50, max: 50 }), (q, cm) => {
      const by = cm / 100;
      const p = place(q);
      const along = p.slice();
      const out = p.slice();
      for (const at of POINTS) {
        along[at] += by;
        out[at + 2] += by;
      }
      for (const reading of [
        read.shaftPitch,
        read.shaftPlane,
        read.bicepGap,
        read.headDepth,
        read.shaftAim,
        read.armToShaft,
      ] as const) {
        expect(reading(along)).toBeCloseTo(reading(p), 12);
        expect(reading(out)).toBeCloseTo(reading(p), 12);
      }
      expect(read.handDepth(out)).toBeCloseTo(read.handDepth(p) + by, 12);
      expectSame(read.gripEndLine(out, 0.6), read.gripEndLine(p, 0.6) + by);
    }),
  );
});

const swing = createSwing(body, club, seedReference(body));
const movementOf = (dial: MovementDial): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1000 }).map((i) => dial.usualMin + ((dial.usualMax - dial.usualMin) * i) / 1000);

test('in a swing with any movements dialled, the plane at shaft parallel points along the shaft', () => {
  const velocity = new Float64Array(3);
  fc.assert(
    fc.property(fc.tuple(...DIALS.map(movementOf)), (values) => {
      const movements = { ...STILL };
      DIALS.forEach(({ id }, i) => Object.assign(movements, { [id]: values[i] }));
      const moved = withMovements(swing, movements);
      const { shaftParallel } = readCheckpoints(moved);
      if (!isReached(shaftParallel)) throw new Error(`Not reached with ${JSON.stringify(movements)}`);
      headVelocityAt(moved, shaftParallel.t, velocity);
      const { readings } = shaftParallel;
      // The event is found to 1e-9 s and the shaft falls at some 30 rad/s: level to 3e-8, times the head's own direction.
      expect(between(readings.planeDirection, readings.shaftAim)).toBeLessThan(1e-6);
      expect(Math.abs(readings.shaftPitch)).toBeLessThan(1e-7);
    }),
  );
});

/** Seen down the line, a level shaft is a point or runs along the view's horizon: there these four jump by their very definition. */
const NOT_AT_SHAFT_PARALLEL: readonly ReadingId[] = ['shaftPlane', 'bicepGap', 'bicepCrossing', 'gripEndLine'];

describe('readings follow every slider without a jump', () => {
  const readAcross = (dial: MovementDial, steps: number): Record<CheckpointId, Readings[]> => {
    const across: Record<CheckpointId, Readings[]> = { leadArmParallel: [], shaftParallel: [] };
    for (let i = 0; i <= steps; i++) {
      const value = dial.min + ((dial.max - dial.min) * i) / steps;
      const checkpoints = readCheckpoints(withMovements(swing, { ...STILL, [dial.id]: value }));
      for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
        const checkpoint = checkpoints[id];
        if (!isReached(checkpoint)) throw new Error(`${id} is not reached at ${dial.field} ${value / dial.edgeUnit}`);
        across[id].push(checkpoint.readings);
      }
    }
    return across;
  };
  const largestStep = (rows: readonly Readings[], id: ReadingId): number =>
    Math.max(...rows.slice(1).map((row, i) => Math.abs(row[id] - rows[i][id])));

  test.each(DIALS)('$field', (dial) => {
    const coarse = readAcross(dial, 200);
    const fine = readAcross(dial, 800);
    for (const at of ['leadArmParallel', 'shaftParallel'] as const) {
      for (const id of Object.keys(fine[at][0]) as ReadingId[]) {
        if (at === 'shaftParallel' && NOT_AT_SHAFT_PARALLEL.includes(id)) continue;
        // Of a continuous reading the steps shrink with those of the slider, fourfold; a jump would stay as large as it is.
        const before = largestStep(coarse[at], id);
        expect(largestStep(fine[at], id), `${id} at ${at}`).toBeLessThanOrEqual(Math.max(before / 2, rad(1e-6)));
      }
    }
  });

  test('the check sees a jump where there is one: a number that goes over whole steps', () => {
    const wrist = DIALS[0];
    const stepped = (rows: readonly Readings[]): Readings[] =>
      rows.map((row) => ({ ...row, shaftPlane: rad(5) * Math.round(row.shaftPlane / rad(5)) }));
    const coarse = stepped(readAcross(wrist, 200).leadArmParallel);
    const fine = stepped(readAcross(wrist, 800).leadArmParallel);
    expect(largestStep(fine, 'shaftPlane')).toBeGreaterThan(largestStep(coarse, 'shaftPlane') / 2);
  });
});

test('the positions of the backswing stay where they are, whatever is dialled and however the arms adapt', () => {
  const reference = createSwing(body, club, seedReference(body));
  const strike = strikeOf(reference, readCheckpoints(reference))!;
  const goingBack = findGoingBack(reference);
  expect(goingBack.P2).toBeLessThan(goingBack.P3!);
  const dialled = fc.record({
    leadWristFlexion: angle(-40, 40),
    trailSideBend: angle(-10, 10),
    rotationRate: fc.integer({ min: 70, max: 130 }).map((percent) => percent / 100),
    rotationDelay: fc.integer({ min: -30, max: 30 }).map((ms) => ms / 1000),
    pelvisShift: fc.integer({ min: -10, max: 10 }).map((cm) => cm / 100),
  });
  fc.assert(
    fc.property(dialled, (movements) => {
      const moved = withMovements(reference, movements);
      const checkpoints = readCheckpoints(moved);
      const { swing } = deliver(moved, checkpoints, strike);
      const positions = findPositions(swing, checkpoints);
      expect(positions).toMatchObject(goingBack);
      expect(findPositions(swing, checkpoints, goingBack)).toEqual(positions);
    }),
  );
});
