import { describe, expect, test } from 'vitest';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, createRig, placePose, type Pose } from '../../src/model/chain';
import { clubOf } from '../../src/model/club';
import { createJointVector, JOINTS } from '../../src/model/joints';
import type { Measures } from './mjcf';
import { createMujocoGolfer } from './mujoco';
import { createRandom } from './random';

// Outside reference: MuJoCo (mj_kinematics), model typed by hand in mjcf.ts. The limit of 1e-9 is the one the model promises.
const POSES = 200;
const LIMIT = 1e-9;

const GOLFERS: readonly (Measures & { readonly name: string; readonly seed: number })[] = [
  { name: 'a 1.78 m player with a 7-iron, hands neutral', seed: 1, statureM: 1.78, lengthM: 0.94, lieDeg: 62, loftDeg: 34, gripInsetM: 0.1, handGapM: 0.085, gripAngleDeg: 52, gripTurnDeg: 0 },
  { name: 'a 1.62 m player with a driver, strong grip', seed: 2, statureM: 1.62, lengthM: 1.143, lieDeg: 57, loftDeg: 10.5, gripInsetM: 0.08, handGapM: 0.09, gripAngleDeg: 48, gripTurnDeg: 26.5 },
  { name: 'a 1.93 m player with a wedge, weak grip', seed: 3, statureM: 1.93, lengthM: 0.9, lieDeg: 64, loftDeg: 55, gripInsetM: 0.12, handGapM: 0.08, gripAngleDeg: 60, gripTurnDeg: -12 },
]; // prettier-ignore

const at = (p: Pose, offset: number): number[] => [...p.subarray(offset, offset + 3)];
const distance = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe.each(GOLFERS)('$name agrees with MuJoCo', ({ name: _, seed, ...measures }) => {
  const rig = createRig(
    bodyOf({ statureM: measures.statureM, handed: 'right' }),
    clubOf({ ...measures, name: 'any', kind: 'iron' }),
  );
  const golfer = createMujocoGolfer(measures);
  const random = createRandom(seed);
  const q = createJointVector();
  const p = createPose();

  /** The largest difference of each point and direction over all poses. */
  const worst = new Map<string, number>();
  const compare = (what: string, ours: number[], theirs: number[]): void => {
    worst.set(what, Math.max(worst.get(what) ?? 0, distance(ours, theirs)));
  };
  let moved = 0;
  for (let pose = 0; pose < POSES; pose++) {
    JOINTS.forEach(({ id, min, max }, j) => {
      q[j] = min + (max - min) * random();
      golfer.setJoint(id, q[j]);
      if (id === 'leadProtraction') golfer.setJoint('leadProtractionBack', q[j]);
    });
    const before = at(p, AT.head);
    placePose(rig, q, p);
    golfer.solve();
    moved += distance(before, at(p, AT.head)) > 0.01 ? 1 : 0;
    compare('pelvis', at(p, AT.pelvis), golfer.bodyAt('pelvis'));
    compare('mid shoulder', at(p, AT.midShoulder), golfer.bodyAt('thorax'));
    compare('lead shoulder', at(p, AT.leadShoulder), golfer.bodyAt('leadArm'));
    compare('trail shoulder', at(p, AT.trailShoulder), golfer.siteAt('trailShoulder'));
    compare('lead grip', at(p, AT.leadGrip), golfer.bodyAt('club'));
    compare('trail grip', at(p, AT.trailGrip), golfer.siteAt('trailGrip'));
    compare('head', at(p, AT.head), golfer.siteAt('head'));
    compare('direction of the lead arm', at(p, AT.armDirection), golfer.bodyAxis('leadArm', 2));
    compare('direction of the shaft', at(p, AT.shaftDirection), golfer.bodyAxis('club', 2));
    compare('face normal', at(p, AT.faceNormal), golfer.siteAxis('head', 0));
    compare('heel to toe', at(p, AT.toeDirection), golfer.siteAxis('head', 2));
    for (const [part, offset] of [
      ['pelvis', AT.pelvisAxes],
      ['trunk', AT.trunkAxes],
      ['thorax', AT.thoraxAxes],
      ['leadArm', AT.armAxes],
      ['club', AT.handAxes],
    ] as const) {
      // prettier-ignore
      for (const axis of [0, 1, 2] as const) compare(`axes of ${part}`, at(p, offset + 3 * axis), golfer.bodyAxis(part, axis));
    }
  }
  golfer.free();

  test('the poses differ from each other', () => expect(moved).toBe(POSES));

  test.each([...worst.keys()])('%s to 1e-9 on 200 random poses', (what) => {
    expect(worst.get(what)).toBeLessThan(LIMIT);
  });
});
