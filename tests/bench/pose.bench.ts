import { AT, createPose, placePose } from '../../src/model/chain';
import { bicepCrossing, bicepGap, headDepth, shaftPitch, shaftPlane } from '../../src/reading/readings';
import { crossBorder } from '../reference/mujoco';
import { jointsOf, mujocoKinematics, rig } from './golfers';
import type { Session } from './table';
import { timeTogether } from './timing';

export const name = 'pose';

const pose = createPose();

/** The five readings a `pose` line answers with. */
function read(count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    placePose(rig, jointsOf(i), pose);
    sum += shaftPitch(pose) + shaftPlane(pose) + bicepGap(pose) + bicepCrossing(pose) + headDepth(pose);
  }
  return sum;
}

function place(count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    placePose(rig, jointsOf(i), pose);
    sum += pose[AT.head];
  }
  return sum;
}

function border(count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += crossBorder();
  return sum;
}

export function run({ quick, put }: Session): void {
  const timing = timeTogether({ mujoco: mujocoKinematics, read, place, border }, 20_000, quick ? 9 : 25);
  put(
    { what: 'MuJoCo mj_kinematics, same chain', value: timing.mujoco.ns, unit: 'ns' },
    { what: 'of that, an empty call into MuJoCo', value: timing.border.ns, unit: 'ns' },
    { what: 'pose', value: timing.place.ns, unit: 'ns' },
    { what: 'pose with readings', value: timing.read.ns, unit: 'ns' },
    { what: 'pose with readings', value: timing.read.ofFirst, unit: 'mj_kinematics', goal: 'at most 0.5' },
  );
}
