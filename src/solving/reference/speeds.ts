import { createJointVector, J } from '../../model/joints';
import { K } from '../../model/keys';
import { AT, createPose } from '../../model/pose';
import { swingJoints, swingPose, type Swing } from '../../reading/swing';

/** A peak of turning speed: rad/s in the player's own time, and how long before impact it comes, s. */
interface Peak {
  readonly speed: number;
  readonly beforeImpact: number;
}
export interface PeakSpeeds {
  readonly pelvis: Peak;
  readonly thorax: Peak;
  readonly leadArm: Peak;
  readonly shaft: Peak;
}

const STEP = 0.001;
const HALF = 1e-4;
const joints = createJointVector();
const pose = createPose();
const before = new Float64Array(4);

/** Speed of one joint at time `t` (s), rad/s of the reference's time. */
function jointSpeed(swing: Swing, joint: number, t: number): number {
  swingJoints(swing, t - HALF, joints);
  const start = joints[joint];
  swingJoints(swing, t + HALF, joints);
  return (joints[joint] - start) / (2 * HALF);
}

/** Speed at which a direction of the pose turns at time `t` (s), rad/s of the reference's time. */
function turningSpeed(swing: Swing, at: number, t: number): number {
  swingPose(swing, t - HALF, pose);
  for (let i = 0; i < 3; i++) before[i] = pose[at + i];
  swingPose(swing, t + HALF, pose);
  let square = 0;
  for (let i = 0; i < 3; i++) square += (pose[at + i] - before[i]) ** 2;
  return Math.sqrt(square) / (2 * HALF);
}

/**
 * Peak turning speeds of the downswing: pelvis and thorax about their own axis, lead arm and shaft as directions in space.
 * @internal Compared with published peaks by the tests and the printed table.
 */
export function peakSpeeds(swing: Swing): PeakSpeeds {
  const impact = swing.reference.times[K.impact];
  const peakOf = (speedAt: (t: number) => number): Peak => {
    let best = 0;
    let at = 0;
    for (let t = STEP; t <= impact + STEP / 2; t += STEP) {
      const speed = speedAt(t);
      if (speed > best) {
        best = speed;
        at = t;
      }
    }
    return { speed: best / swing.tempo, beforeImpact: (impact - at) * swing.tempo };
  };
  return {
    pelvis: peakOf((t) => jointSpeed(swing, J.pelvisTurn, t)),
    thorax: peakOf((t) => jointSpeed(swing, J.thoraxTurn, t)),
    leadArm: peakOf((t) => turningSpeed(swing, AT.armDirection, t)),
    shaft: peakOf((t) => turningSpeed(swing, AT.shaftDirection, t)),
  };
}
