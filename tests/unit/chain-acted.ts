import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { createPose, createRig, placePose, type Pose, type Rig } from '../../src/model/chain';
import { clubOf, type ClubSpec } from '../../src/model/club';
import { createJointVector, J, JOINTS, type JointId } from '../../src/model/joints';

const statureM = 2;
export const body = bodyOf({ statureM, handed: 'right' });
const CLUB: ClubSpec = {
  name: 'acted',
  kind: 'iron',
  lengthM: 1,
  lieDeg: 60,
  loftDeg: 30,
  gripInsetM: 0.1,
  handGapM: 0.1,
};

export const rigWith = (change: Partial<ClubSpec> = {}): Rig => createRig(body, clubOf({ ...CLUB, ...change }));

/**
 * Someone 2 m tall who stands upright facing the ball, pelvis at 1 m, the lead arm straight ahead at shoulder height with the
 * thumb up; joints in degrees and metres on top of that.
 */
export function act(joints: { readonly [id in JointId]?: number } = {}, rig = rigWith()): Pose {
  const q = createJointVector();
  q[J.pelvisHeight] = 1;
  for (const [id, value] of Object.entries(joints)) {
    const j = J[id as JointId];
    q[j] = JOINTS[j].kind === 'angle' ? rad(value) : value;
  }
  const p = createPose();
  placePose(rig, q, p);
  return p;
}

/** Three numbers of a pose, rounded to 1e-12 so that they can be compared whole. */
export const at = (p: Pose, offset: number): number[] =>
  [...p.subarray(offset, offset + 3)].map((x) => Math.round(x * 1e12) / 1e12 + 0);
