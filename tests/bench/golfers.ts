import { bodyOf } from '../../src/model/body';
import { createRig } from '../../src/model/chain';
import { CLUBS, clubOf, DEFAULT_GRIP } from '../../src/model/club';
import { createJointVector, JOINTS, type JointVector } from '../../src/model/joints';
import { createMujocoGolfer } from '../reference/mujoco';
import { createRandom } from '../reference/random';
import type { Work } from './timing';

const statureM = 1.78;
export const body = bodyOf({ statureM, handed: 'right' });
export const club = clubOf(CLUBS['7-iron']);
export const rig = createRig(body, club);

/** A power of two, so that a mask picks the next pose. */
const MASK = 255;
const random = createRandom(7);
const vectors: readonly JointVector[] = Array.from({ length: MASK + 1 }, () => {
  const q = createJointVector();
  JOINTS.forEach(({ min, max }, j) => (q[j] = min + (max - min) * random()));
  return q;
});

/** The same random joint values for everything that is timed. */
export const jointsOf = (i: number): JointVector => vectors[i & MASK];

const mujoco = createMujocoGolfer({ statureM, ...DEFAULT_GRIP, ...CLUBS['7-iron'] });
const addresses = JOINTS.map(({ id }) => mujoco.addressOf(id));
const back = mujoco.addressOf('leadProtractionBack');
const leadProtraction = JOINTS.findIndex(({ id }) => id === 'leadProtraction');

/** Forward kinematics of the same chain by MuJoCo, joint values included: the unit the other times are measured in. */
export const mujocoKinematics: Work = (count) => {
  const { qpos } = mujoco;
  for (let i = 0; i < count; i++) {
    const q = jointsOf(i);
    for (let j = 0; j < addresses.length; j++) qpos[addresses[j]] = q[j];
    qpos[back] = q[leadProtraction];
    mujoco.solve();
  }
  return qpos[0];
};
