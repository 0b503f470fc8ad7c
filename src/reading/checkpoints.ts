import { findFall } from '../math/root';
import { rad, type Rad } from '../math/angle';
import { AT, createPose, type Pose } from '../model/chain';
import { K } from '../model/keys';
import {
  armToShaft,
  bicepCrossing,
  bicepGap,
  faceToVertical,
  gripEndLine,
  handDepth,
  handHeight,
  headDepth,
  planeDirection,
  planeTilt,
  shaftAim,
  shaftPitch,
  shaftPlane,
} from './readings';
import { armHeightAt, headVelocityAt, shaftHeightAt, swingJoints, swingPose, type Swing } from './swing';
import { createJointVector, J } from '../model/joints';

/** Lead arm parallel is read just past it: angle of the arm to the ground, rad. Common practice ("at parallel or just beyond"). */
export const DEFAULT_ARM_ANGLE: Rad = rad(-10);
export const ARM_ANGLE_LIMITS = { min: rad(-20), max: 0 } as const;

/** Everything read at a checkpoint. Radians, metres; senses as in the single readings. */
export interface Readings {
  readonly shaftPitch: number;
  readonly shaftPlane: number;
  /** NaN at shaft parallel, as is the next: there the shaft is seen end on. */
  readonly bicepGap: number;
  readonly bicepCrossing: number;
  readonly headDepth: number;
  readonly shaftAim: number;
  readonly planeDirection: number;
  readonly planeTilt: number;
  readonly gripEndLine: number;
  readonly faceToVertical: number;
  readonly armToShaft: number;
  readonly thoraxTurn: number;
  readonly pelvisTurn: number;
  readonly handHeight: number;
  readonly handDepth: number;
  readonly reachRatio: number;
  readonly reachShortfall: number;
}
export type ReadingId = keyof Readings;

/** A checkpoint: when it was passed (s, reference time, zero at the top), the pose and what is read there. */
export interface Reached {
  readonly t: number;
  readonly pose: Pose;
  readonly readings: Readings;
}
/** Why a checkpoint is not there. */
export interface NotReached {
  readonly missing: 'never-parallel' | 'not-finite';
}
export type Checkpoint = Reached | NotReached;
export type { CheckpointId } from './checkpointTable';

export interface Checkpoints {
  readonly leadArmParallel: Checkpoint;
  readonly shaftParallel: Checkpoint;
}

/** Whether a checkpoint was reached: then it has a time, a pose and readings. */
export const isReached = (checkpoint: Checkpoint): checkpoint is Reached => 't' in checkpoint;

/** Bracketing step of the event search, s: a tenth of the time between the two checkpoints at the fastest. */
const SEARCH_STEP = 0.0125;

/**
 * First instant after the top at which the lead arm falls through `armAngle` (rad to the ground), s. To 1e-9 s.
 */
export function findLeadArmParallel(swing: Swing, armAngle: Rad = DEFAULT_ARM_ANGLE) {
  const level = Math.sin(armAngle);
  return findFall((t) => armHeightAt(swing, t) - level, 0, swing.curves.times[K.exit], SEARCH_STEP);
}

/** First instant after `from` (s) at which the shaft falls through parallel to the ground, s. To 1e-9 s. */
export function findShaftParallel(swing: Swing, from: number) {
  return findFall((t) => shaftHeightAt(swing, t), from, swing.curves.times[K.exit], SEARCH_STEP);
}

const velocity = new Float64Array(3);
const joints = createJointVector();

/**
 * Pose and readings of a swing at time `t` (s). With `isEndOn`: the shaft is parallel to the ground and seen end on down the line, where a
 * line through it tells nothing; what hangs on that line is NaN.
 */
export function readAt(swing: Swing, t: number, isEndOn = false): Reached {
  const pose = createPose();
  swingPose(swing, t, pose);
  headVelocityAt(swing, t, velocity);
  swingJoints(swing, t, joints);
  return {
    t,
    pose,
    readings: {
      shaftPitch: shaftPitch(pose),
      shaftPlane: shaftPlane(pose),
      bicepGap: isEndOn ? NaN : bicepGap(pose),
      bicepCrossing: isEndOn ? NaN : bicepCrossing(pose),
      headDepth: headDepth(pose),
      shaftAim: shaftAim(pose),
      planeDirection: planeDirection(pose, velocity),
      planeTilt: planeTilt(pose, velocity),
      gripEndLine: gripEndLine(pose, swing.reference.ballPoint[2]),
      faceToVertical: faceToVertical(pose),
      armToShaft: armToShaft(pose),
      thoraxTurn: joints[J.thoraxTurn],
      pelvisTurn: joints[J.pelvisTurn],
      handHeight: handHeight(pose),
      handDepth: handDepth(pose),
      reachRatio: pose[AT.reachRatio],
      reachShortfall: pose[AT.reachShortfall],
    },
  };
}

/** Both checkpoints of a swing. A checkpoint that is never reached comes back with its reason. */
export function readCheckpoints(swing: Swing, armAngle: Rad = DEFAULT_ARM_ANGLE): Checkpoints {
  const arm = findLeadArmParallel(swing, armAngle);
  if ('missing' in arm) return { leadArmParallel: reasonOf(arm.missing), shaftParallel: reasonOf(arm.missing) };
  const shaft = findShaftParallel(swing, arm.t);
  return {
    leadArmParallel: readAt(swing, arm.t),
    shaftParallel: 'missing' in shaft ? reasonOf(shaft.missing) : readAt(swing, shaft.t, true),
  };
}

const reasonOf = (missing: 'never-crosses' | 'not-finite'): NotReached => ({
  missing: missing === 'not-finite' ? 'not-finite' : 'never-parallel',
});
