import { AT, createPose } from '../../src/model/chain';
import { STILL } from '../../src/model/movements';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, strikeOf } from '../../src/reading/delivery/delivery';
import { createSwing, swingPose, withMovements } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { seedReference } from '../../src/solving/reference/seed';
import { body, club, mujocoKinematics } from './golfers';
import type { Session } from './table';
import { timeTogether } from './timing';

export const name = 'swing';

const swing = createSwing(body, club, seedReference(body));
const pose = createPose();

function poses(count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    swingPose(swing, (i & 255) / 1000, pose);
    sum += pose[AT.head];
  }
  return sum;
}

/** Both checkpoints of a swing with a wrist angle of its own, found and read. */
function checkpoints(count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const { shaftParallel } = readCheckpoints(withMovements(swing, { ...STILL, leadWristFlexion: (i & 63) / 128 }));
    sum += isReached(shaftParallel) ? shaftParallel.readings.headDepth : NaN;
  }
  return sum;
}

/** A seed is no swing that meets the ball: what is delivered starts from the one that was fitted. */
const fitted = createSwing(body, club, solveReference(body, club).reference);
const strike = strikeOf(fitted, readCheckpoints(fitted))!;

/** The same with the delivery: both ends of the face's band and the one that is drawn. */
function deliveries(count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const moved = withMovements(fitted, { ...STILL, leadWristFlexion: ((i & 63) - 32) / 128 });
    const { delivery } = deliver(moved, readCheckpoints(moved), strike);
    sum += 'missing' in delivery ? NaN : delivery.face;
  }
  return sum;
}

export function run({ quick, put }: Session): void {
  const timing = timeTogether({ mujoco: mujocoKinematics, poses, checkpoints }, 2000, quick ? 9 : 25);
  const delivering = timeTogether({ mujoco: mujocoKinematics, deliveries }, 200, quick ? 9 : 25);
  put(
    { what: 'pose of a swing at a time', value: timing.poses.ns, unit: 'ns' },
    { what: 'both checkpoints, found and read', value: timing.checkpoints.ns / 1000, unit: 'us' },
    {
      what: 'both checkpoints, found and read',
      value: timing.checkpoints.ofFirst,
      unit: 'mj_kinematics',
      goal: 'at most 60',
    },
    { what: 'swing read and delivered', value: delivering.deliveries.ns / 1000, unit: 'us' },
    {
      what: 'swing read and delivered',
      value: delivering.deliveries.ofFirst,
      unit: 'mj_kinematics',
      goal: 'at most 500',
    },
    { what: 'swings read', value: 1e9 / timing.checkpoints.ns, unit: '1/s' },
  );
}
