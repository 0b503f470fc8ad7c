import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { finishShare } from '../../src/model/drawnFinish';
import { K } from '../../src/model/keys';
import { DIALS, STILL, type Movements } from '../../src/model/movements';
import { AT, createPose, type Pose } from '../../src/model/pose';
import { createSwing, drawnPose, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';

// The finish is made for the eye: no source. What is checked is that it can be: arms that reach, nothing that jumps, a club off the ground.
const PLAYERS = ([1.45, 1.62, 1.78, 2.05] as const).flatMap((statureM) =>
  (['driver', '7-iron', 'sand wedge'] as const).map((club) => [statureM, club] as const),
);
/** Every dial alone at both its ends, then all at once. */
const DIALLED: readonly Partial<Movements>[] = [
  {},
  ...DIALS.flatMap(({ id, min, max }) => [{ [id]: min }, { [id]: max }]),
  Object.fromEntries(DIALS.map(({ id, max }) => [id, max])),
  Object.fromEntries(DIALS.map(({ id, min }) => [id, min])),
];

const swingOf = (statureM: number, id: ClubId): Swing => {
  const body = bodyOf({ statureM, handed: 'right' });
  const club = clubOf(CLUBS[id]);
  return createSwing(body, club, solveReference(body, club).reference);
};
const distance = (p: Pose, a: number, q: Pose, b: number): number =>
  Math.hypot(p[a] - q[b], p[a + 1] - q[b + 1], p[a + 2] - q[b + 2]);
/** A vector in the chest's axes: lead side, up, front. */
const inChest = (p: Pose, v: readonly number[]): number[] =>
  [0, 3, 6].map((c) => v.reduce((sum, value, i) => sum + p[AT.thoraxAxes + c + i] * value, 0));

describe.each(PLAYERS)('the drawn finish of a %f m player with a %s', (statureM, id) => {
  const still = swingOf(statureM, id);
  const { times } = still.reference;
  const swings = DIALLED.map((m) => withMovements(still, { ...STILL, ...m }));
  const pose = createPose();
  const after = Array.from(
    { length: 81 },
    (_, i) => times[K.followThrough] + (i / 80) * (times[K.finish] - times[K.followThrough]),
  );

  test('keeps the lead arm between 0.6 of its length and straight, the trail arm within reach, the head 0.27 m up', () => {
    for (const swing of swings) {
      for (const t of after) {
        drawnPose(swing, t, pose);
        const reach = distance(pose, AT.leadShoulder, pose, AT.leadGrip) / swing.rig.leadArm;
        expect(reach).toBeGreaterThan(0.6);
        expect(reach).toBeLessThan(1 + 1e-9);
        expect(pose[AT.reachRatio]).toBeLessThan(1);
        expect(pose[AT.head + 1]).toBeGreaterThan(0.27);
      }
    }
  });

  test('keeps upper arm and forearm at their lengths', () => {
    for (const t of after) {
      drawnPose(still, t, pose);
      expect(distance(pose, AT.leadShoulder, pose, AT.leadElbow)).toBeCloseTo(still.rig.body.upperArm, 9);
      expect(distance(pose, AT.leadElbow, pose, AT.leadGrip)).toBeCloseTo(
        still.rig.leadArm - still.rig.body.upperArm,
        9,
      );
    }
  });

  test('ends with the club behind the neck, the chest to the target and the weight on the lead foot', () => {
    drawnPose(still, times[K.finish], pose);
    // The shaft line passes the middle of the shoulders behind it.
    const [side, , front] = inChest(
      pose,
      [0, 1, 2].map((i) => pose[AT.shaftDirection + i]),
    );
    const [handSide, , handFront] = inChest(
      pose,
      [0, 1, 2].map((i) => pose[AT.leadGrip + i] - pose[AT.midShoulder + i]),
    );
    expect(handSide).toBeGreaterThan(0);
    expect(handFront - (front / side) * handSide).toBeLessThan(-0.02 * statureM);
    // Front of the chest against the target line, seen from above.
    expect(Math.abs(Math.atan2(pose[AT.thoraxAxes + 8], pose[AT.thoraxAxes + 6]))).toBeLessThan(rad(30));
    expect(pose[AT.pelvis]).toBeGreaterThan(0.1 * statureM);
  });

  test('changes nothing up to the exit, and neither jumps nor kinks where it sets in and ends', () => {
    const step = 1e-4;
    for (const swing of swings) {
      drawnPose(swing, times[K.exit], pose);
      const chain = createPose();
      swingPose(swing, times[K.exit], chain);
      expect(pose).toEqual(chain);
      const from = after.find((t) => finishShare(times, t) > 0)!;
      for (const t of [from - 0.03, from, times[K.followThrough], 0.5, 0.6, times[K.finish] - 0.02]) {
        const [a, b, c] = [-step, 0, step].map((dt) => {
          const p = createPose();
          drawnPose(swing, t + dt, p);
          return p;
        });
        for (const at of [AT.head, AT.leadElbow, AT.trailElbow, AT.leadGrip]) {
          // 60 m/s is faster than any head here: less than 6 mm in a step. A bend of 20000 m/s2 changes the speed by 2 m/s in one.
          expect(distance(c, at, b, at)).toBeLessThan(60 * step);
          const bend = Math.hypot(...[0, 1, 2].map((i) => c[at + i] - 2 * b[at + i] + a[at + i])) / step;
          expect(bend).toBeLessThan(2);
        }
      }
    }
  });
});
