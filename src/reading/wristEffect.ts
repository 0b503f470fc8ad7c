import { rad, type Rad } from '../math/angle';
import { createPose, createRig } from '../model/chain';
import { createJointVector, J } from '../model/joints';
import { DEFAULT_ARM_ANGLE, findLeadArmParallel } from './checkpoints';
import { armToShaft, bicepGap } from './readings';
import { swingJoints, swingPose, withMovements, type Swing } from './swing';

/** What the lead wrist does to the shaft line at lead arm parallel, and the lag it holds for. */
export interface WristEffect {
  /** Angle between lead arm and shaft, rad. At a right angle flexing the wrist turns only the face. */
  readonly lag: Rad;
  /** Change of the bicep gap for 10 deg of cupping, m; + toward steep. */
  readonly gapFor10Cupped: number;
}

/** Half of the 10 deg of cupping the effect is told for, taken to both sides of the wrist as it is. */
const HALF = rad(5);
const pose = createPose();
const joints = createJointVector();

function gapWith(swing: Swing, flexion: Rad, armAngle: Rad): number {
  const moved = withMovements(swing, {
    ...swing.movements,
    leadWristFlexion: swing.movements.leadWristFlexion + flexion,
  });
  const arm = findLeadArmParallel(moved, armAngle);
  if ('missing' in arm) return NaN;
  swingPose(moved, arm.t, pose);
  return bicepGap(pose);
}

/**
 * The wrist's effect in a swing, read at `armAngle`; undefined where lead arm parallel is not reached. With `lag` (rad): of the same
 * posture with the club lying otherwise in the hand, so that arm and shaft enclose that angle.
 */
export function wristEffect(swing: Swing, armAngle: Rad = DEFAULT_ARM_ANGLE, lag?: Rad): WristEffect | undefined {
  const arm = findLeadArmParallel(swing, armAngle);
  if ('missing' in arm) return undefined;
  const asked = lag === undefined ? swing : { ...swing, rig: regripped(swing, arm.t, lag) };
  swingPose(asked, arm.t, pose);
  const found = armToShaft(pose);
  return { lag: found, gapFor10Cupped: gapWith(asked, 0 - HALF, armAngle) - gapWith(asked, HALF, armAngle) };
}

/** The rig with the hand-to-shaft angle that gives `lag` at time `t`: cosine of arm to shaft is that of flexion times that of the cocked hand. */
function regripped(swing: Swing, t: number, lag: Rad): Swing['rig'] {
  const { body, club } = swing.rig;
  swingJoints(swing, t, joints);
  const cosine = Math.cos(Math.PI - lag) / Math.cos(joints[J.leadWristFlexion]);
  const cocked = Math.acos(Math.max(-1, Math.min(1, cosine)));
  return createRig(body, { ...club, gripAngle: cocked - joints[J.leadWristRadial] });
}
