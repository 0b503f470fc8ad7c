import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bodyOf } from '../../src/model/body';
import {
  armHeightSine,
  AT,
  createPose,
  createRig,
  placeHead,
  placePose,
  shaftHeightSine,
  type Pose,
} from '../../src/model/chain';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { J, type JointVector } from '../../src/model/joints';
import { placeTrailArm } from '../../src/model/trailArm';
import { angle, direction, jointVector, length } from './arbitraries';

const golfer = () =>
  fc
    .record({
      statureM: length(1.4, 2.1),
      id: fc.constantFrom(...CLUB_IDS),
      gripTurnDeg: fc.integer({ min: -30, max: 40 }),
    })
    .map(({ statureM, id, gripTurnDeg }) =>
      createRig(bodyOf({ statureM, handed: 'right' }), clubOf({ ...CLUBS[id], gripTurnDeg })),
    );
const place = (rig: Parameters<typeof placePose>[0], q: JointVector): Pose => {
  const p = createPose();
  placePose(rig, q, p);
  return p;
};
const apart = (p: Pose, a: number, b: number): number =>
  Math.hypot(p[a] - p[b], p[a + 1] - p[b + 1], p[a + 2] - p[b + 2]);
const dot = (p: Pose, a: number, b: number): number => p[a] * p[b] + p[a + 1] * p[b + 1] + p[a + 2] * p[b + 2];
const AXES = [AT.pelvisAxes, AT.trunkAxes, AT.thoraxAxes, AT.armAxes, AT.handAxes];
const POINTS = [
  AT.pelvis,
  AT.midShoulder,
  AT.leadShoulder,
  AT.trailShoulder,
  AT.leadGrip,
  AT.trailGrip,
  AT.trailElbow,
  AT.bicep,
  AT.head,
];
const DIRECTIONS = [AT.armDirection, AT.shaftDirection, AT.faceNormal, AT.toeDirection];

test('links are rigid: whatever the joints do, every segment keeps its length', () => {
  fc.assert(
    fc.property(golfer(), jointVector(), (rig, q) => {
      const p = place(rig, q);
      expect(apart(p, AT.pelvis, AT.midShoulder)).toBeCloseTo(rig.body.trunk, 12);
      expect(apart(p, AT.midShoulder, AT.leadShoulder)).toBeCloseTo(rig.body.shoulderHalf, 12);
      expect(apart(p, AT.midShoulder, AT.trailShoulder)).toBeCloseTo(rig.body.shoulderHalf, 12);
      expect(apart(p, AT.leadShoulder, AT.leadGrip)).toBeCloseTo(
        rig.body.upperArm + rig.body.forearm + rig.body.grip,
        12,
      );
      expect(apart(p, AT.leadGrip, AT.trailGrip)).toBeCloseTo(rig.club.handGap, 12);
      expect(apart(p, AT.leadGrip, AT.head)).toBeCloseTo(rig.club.length - rig.club.gripInset, 12);
      expect(apart(p, AT.trailShoulder, AT.trailElbow)).toBeCloseTo(rig.body.upperArm, 9);
    }),
  );
});

test('every part keeps three axes of length one at right angles, right-handed', () => {
  fc.assert(
    fc.property(golfer(), jointVector(), (rig, q) => {
      const p = place(rig, q);
      for (const at of AXES) {
        for (const a of [0, 3, 6])
          for (const b of [0, 3, 6]) expect(dot(p, at + a, at + b)).toBeCloseTo(a === b ? 1 : 0, 12);
        expect(p[at + 1] * p[at + 5] - p[at + 2] * p[at + 4]).toBeCloseTo(p[at + 6], 12);
      }
      expect(dot(p, AT.faceNormal, AT.toeDirection)).toBeCloseTo(0, 12);
    }),
  );
});

test('the short forms of the search agree with the pose: arm height, shaft height and head', () => {
  fc.assert(
    fc.property(golfer(), jointVector(), (rig, q) => {
      const p = place(rig, q);
      const head = createPose();
      placeHead(rig, q, head);
      expect(armHeightSine(q)).toBeCloseTo(p[AT.armDirection + 1], 14);
      expect(shaftHeightSine(rig, q)).toBeCloseTo(p[AT.shaftDirection + 1], 14);
      for (let i = 0; i < 3; i++) expect(head[AT.head + i]).toBe(p[AT.head + i]);
    }),
  );
});

describe('with the shaft at a right angle to the hand', () => {
  test('flexion leaves the shaft where it is and turns the face about it by exactly the flexion', () => {
    fc.assert(
      fc.property(golfer(), jointVector(), angle(-70, 80), (rig, q, flexion) => {
        q[J.leadWristRadial] = Math.PI / 2 - rig.gripAngle;
        q[J.leadWristFlexion] = 0;
        const straight = place(rig, q);
        q[J.leadWristFlexion] = flexion;
        const bowed = place(rig, q);
        for (let i = 0; i < 3; i++) {
          expect(bowed[AT.shaftDirection + i]).toBeCloseTo(straight[AT.shaftDirection + i], 12);
          expect(bowed[AT.head + i]).toBeCloseTo(straight[AT.head + i], 12);
        }
        // Turned back about the shaft by the flexion (Rodrigues), face and toe are the old ones: bowing closes.
        for (const at of [AT.faceNormal, AT.toeDirection]) {
          const back = turned(
            [...bowed.subarray(at, at + 3)],
            [...straight.subarray(AT.shaftDirection, AT.shaftDirection + 3)],
            flexion,
          );
          back.forEach((x, i) => expect(x).toBeCloseTo(straight[at + i], 12));
        }
      }),
    );
  });
});

describe('joint angles recovered from the picture', () => {
  test('are the ones that went in, wherever the golfer stands and whichever way the world is turned', () => {
    fc.assert(
      fc.property(golfer(), jointVector(), direction(), angle(), (rig, q, axis, by) => {
        const p = place(rig, q);
        const world = createPose();
        for (const at of [...AXES.flatMap((a) => [a, a + 3, a + 6]), ...DIRECTIONS]) {
          world.set(turned([...p.subarray(at, at + 3)], axis, by), at);
        }
        for (const seen of [p, world]) {
          const found = recover(seen, rig.gripAngle, rig.club.gripTurn);
          for (const [joint, value] of Object.entries(found)) {
            // At the ends of its range a pole swallows its neighbours: compare away from it.
            if (Math.abs(Math.cos(q[J.leadArmElevation])) < 0.02 || Math.abs(Math.cos(q[J.leadWristFlexion])) < 0.02)
              continue;
            const difference = value - q[J[joint as keyof typeof found]];
            expect(Math.atan2(Math.sin(difference), Math.cos(difference))).toBeCloseTo(0, 9);
          }
        }
      }),
    );
  });
});

test('the trail arm of the mirror image is the mirror image of the trail arm', () => {
  fc.assert(
    fc.property(golfer(), jointVector(), (rig, q) => {
      const p = place(rig, q);
      const mirrored = p.slice();
      for (const at of [...POINTS, ...AXES.flatMap((a) => [a, a + 3, a + 6]), ...DIRECTIONS]) mirrored[at + 2] *= -1;
      const expected = mirrored.slice();
      mirrored.fill(0, AT.trailElbow, AT.bicep + 3);
      placeTrailArm(rig.body.upperArm, rig.body.forearm + rig.body.grip, mirrored);
      mirrored.forEach((x, i) => expect(x).toBeCloseTo(expected[i], 12));
    }),
  );
});

/** A vector turned about a unit axis by an angle (Rodrigues). */
function turned(v: readonly number[], k: readonly number[], by: number): number[] {
  const c = Math.cos(by);
  const s = Math.sin(by);
  const along = (k[0] * v[0] + k[1] * v[1] + k[2] * v[2]) * (1 - c);
  const cross = [k[1] * v[2] - k[2] * v[1], k[2] * v[0] - k[0] * v[2], k[0] * v[1] - k[1] * v[0]];
  return v.map((x, i) => x * c + cross[i] * s + k[i] * along);
}

/** Joint angles of lead arm and wrist read back off the axes of the parts: entries of one frame in another. */
function recover(p: Pose, gripAngle: number, gripTurn: number) {
  const arm = (i: number, j: number): number => dot(p, AT.thoraxAxes + 3 * i, AT.armAxes + 3 * j);
  const hand = (i: number, j: number): number => dot(p, AT.armAxes + 3 * i, AT.handAxes + 3 * j);
  // The turn of the grip comes last: undo it, mixing the hand's x and y axes.
  const free = (i: number, j: 0 | 1 | 2): number =>
    j === 2
      ? hand(i, 2)
      : j === 0
        ? hand(i, 0) * Math.cos(gripTurn) + hand(i, 1) * Math.sin(gripTurn)
        : hand(i, 1) * Math.cos(gripTurn) - hand(i, 0) * Math.sin(gripTurn);
  return {
    leadArmAdduction: Math.atan2(-arm(0, 2), arm(2, 2)),
    leadArmElevation: Math.asin(Math.max(-1, Math.min(1, arm(1, 2)))),
    leadArmRoll: Math.atan2(free(1, 0), free(0, 0)),
    leadWristFlexion: Math.asin(Math.max(-1, Math.min(1, free(2, 0)))),
    leadWristRadial: Math.atan2(-free(2, 1), free(2, 2)) - gripAngle,
  };
}
