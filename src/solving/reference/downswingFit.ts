import { rad, toDeg } from '../../math/angle';
import type { LeastSquaresResult } from '../../math/leastSquares';
import { AT, createPose, placeHead } from '../../model/chain';
import { sineToPole } from '../../model/trailArm';
import type { Body } from '../../model/body';
import { createJointVector, J, JOINTS } from '../../model/joints';
import { referenceJoint } from '../../model/motion';
import { K, keyAt } from '../../model/keys';
import { findLeadArmParallel, findShaftParallel } from '../../reading/checkpoints';
import { armToShaft, bicepGap, faceToVertical, gripEndLine, headDepth, shaftPlane } from '../../reading/readings';
import { headVelocityAt, swingJoints, swingPose, type Swing } from '../../reading/swing';
import { fitUnknowns, unknownsFrom, type Residuals, type Unknown } from './fitting';
import { DOWNSWING_LANDMARKS, goalsFor, type ClubGoals } from './landmarks';

const X = 0;
const Y = 1;
const Z = 2;
const pose = createPose();
const joints = createJointVector();
const velocity = new Float64Array(3);

/** How the club lies in the hands and is built. None of it is a joint. */
const OF_CLUB = { at: -1, joint: -1 } as const;
/** Grip: how far the face is turned in the hands. Drawn to a slightly strong grip (common practice). */
const GRIP_TURN: Unknown = { ...OF_CLUB, wanted: rad(6), spread: rad(6), lower: rad(-60), upper: rad(60) };
/** Where a lag is asked for: how the club lies across the hand, from along the fingers to across the palm. Barely held: it has to give. */
const GRIP_ANGLE: Unknown = { ...OF_CLUB, wanted: 0, spread: rad(25), lower: rad(-35), upper: rad(35) };
/** A fitted club: heads are bent by a few degrees either way (common practice); the bounds let a short player's driver go further. */
const LIE: Unknown = { ...OF_CLUB, wanted: 0, spread: rad(4), lower: rad(-10), upper: rad(10) };

/** The wrist's deviation at impact is kept above this, rad. */
const ROOM_TO_UNCOCK = rad(-11);

/** A swing that can be changed while it is fitted: key values, grip and ball, joined anew on `refresh`. */
export interface Draft {
  readonly values: Float64Array;
  gripTurn: number;
  gripAngle: number;
  lie: number;
  ballPoint: [number, number, number];
  /** The swing as drafted. `firstKey`..`lastKey` have changed. */
  refresh(): Swing;
}

/**
 * Fits top to exit: ball struck square on the target line, both checkpoints on plane, hands within reach of the trail arm,
 * published turning speeds, head speed. A club that may be fitted gives in its lie, one with a lag to keep in how it lies in the hand.
 */
export function fitDownswing(draft: Draft, body: Body, maxSteps: number): LeastSquaresResult {
  const bodily = unknownsFrom(DOWNSWING_LANDMARKS, body);
  let swing = draft.refresh();
  const { club } = swing.rig;
  const ofClub: [Unknown, 'gripTurn' | 'gripAngle' | 'lie'][] = [[GRIP_TURN, 'gripTurn']];
  if (club.lag !== undefined) ofClub.push([GRIP_ANGLE, 'gripAngle']);
  if (!club.isOffTheRack) ofClub.push([LIE, 'lie']);
  const unknowns = [...bodily, ...ofClub.map(([unknown]) => unknown)];
  const start = Float64Array.from([
    ...bodily.map(({ at }) => draft.values[at]),
    ...ofClub.map(([, field]) => draft[field]),
  ]);
  const goals = goalsFor(club);
  const speed = speedGoal(goals, body.stature);
  const apply = (values: Float64Array): void => {
    bodily.forEach((u, i) => (draft.values[u.at] = values[i]));
    ofClub.forEach(([, field], i) => (draft[field] = values[bodily.length + i]));
    swing = draft.refresh();
  };
  const result = fitUnknowns(
    unknowns,
    start,
    apply,
    (to) => {
      const ballZ = strikeGoals(swing, goals, speed, to);
      checkpointGoals(swing, ballZ, to);
      reachGoals(swing, to);
      elbowGoals(swing, to);
      betweenGoals(swing, to);
      speedGoals(swing, to);
    },
    maxSteps,
  );
  apply(start);
  swingPose(swing, swing.reference.times[K.impact], pose);
  draft.ballPoint = [pose[AT.head], pose[AT.head + Y], pose[AT.head + Z]];
  return result;
}

/** Head speed wanted of a player of this stature, m/s: grows with the root of the radius, inside the published range. */
const speedGoal = (goals: ClubGoals, stature: number): number =>
  Math.min(goals.headSpeedBounds[1], Math.max(goals.headSpeedBounds[0], goals.headSpeed * Math.sqrt(stature / 1.78)));

/** Head on the ball, square, on line, with the speed and attack of the club. Returns the distance of the ball line, m. */
function strikeGoals(swing: Swing, goals: ClubGoals, speed: number, to: Residuals): number {
  const t = swing.reference.times[K.impact];
  swingPose(swing, t, pose);
  headVelocityAt(swing, t, velocity);
  const along = Math.hypot(velocity[X], velocity[Z]);
  to.want(pose[AT.head] - goals.ballX, 0.0003);
  to.want(pose[AT.head + Y] - goals.ballY, 0.0003);
  to.want(Math.atan2(velocity[Z], velocity[X]), rad(0.1));
  to.want(Math.atan2(velocity[Y], along) - goals.attack, rad(0.3));
  to.want(Math.hypot(along, velocity[Y]) - speed, 0.3);
  to.want(Math.atan2(pose[AT.faceNormal + Z], pose[AT.faceNormal]), rad(0.1));
  to.want(Math.asin(pose[AT.toeDirection + Y]), rad(2.2));
  to.want(pose[AT.leadGrip] - pose[AT.head] - goals.handsLead, 0.012);
  // Room for the wrist to adapt on the way to the ball: not uncocked to the end at impact.
  to.avoid(ROOM_TO_UNCOCK - swing.reference.values[keyAt('impact', J.leadWristRadial)], rad(1));
  to.avoid(JOINTS[J.leadWristRadial].min - runOn(swing, J.leadWristRadial, RUN_ON), rad(1));
  return pose[AT.head + Z];
}

/** Where a joint would be `after` the exit (s) if it kept its speed there. */
function runOn(swing: Swing, joint: number, after: number): number {
  const exit = swing.reference.times[K.exit];
  const now = referenceJoint(swing.curves, joint, exit);
  return now + ((now - referenceJoint(swing.curves, joint, exit - BACK)) / BACK) * after;
}

/** Both checkpoints on plane, and the common practice around them. */
function checkpointGoals(swing: Swing, ballZ: number, to: Residuals): void {
  const { times } = swing.reference;
  swingPose(swing, 0, pose);
  to.want(Math.asin(pose[AT.shaftDirection + Y]) - rad(26), rad(6));
  to.want(Math.atan2(pose[AT.shaftDirection + Z], pose[AT.shaftDirection]) + rad(10), rad(6));
  const arm = findLeadArmParallel(swing);
  const t5 = 't' in arm ? arm.t : times[K.impact];
  swingPose(swing, t5, pose);
  to.want(bicepGap(pose), 0.0003);
  to.want(t5 - times[K.leadArmParallel], 0.004);
  to.want(shaftPlane(pose) - rad(57), rad(2));
  const { lag } = swing.rig.club;
  if (lag !== undefined) to.want(armToShaft(pose) - lag, rad(0.02));
  to.want(pose[AT.reachRatio] - 0.76, 0.04);
  to.want(Math.atan2(pose[AT.armDirection + Z], -pose[AT.armDirection]) + rad(8), rad(2));
  const line = gripEndLine(pose, ballZ);
  to.want(Number.isFinite(line) ? line : 1, 0.15);
  const shaft = findShaftParallel(swing, t5);
  const t6 = 't' in shaft ? shaft.t : times[K.impact];
  swingPose(swing, t6, pose);
  to.want(headDepth(pose) + 0.02, 0.001);
  to.want(t6 - times[K.shaftParallel], 0.003);
  to.want(faceToVertical(pose) - rad(8), rad(5));
}

/** Times, as shares of the downswing, at which the trail hand must reach the grip. */
const REACH_SHARES = [0, 0.16, 0.32, 0.48, 0.6, 0.72, 0.8, 0.86, 0.92, 0.96, 1, 1.04, 1.08, 1.12];

function reachGoals(swing: Swing, to: Residuals): void {
  for (const share of REACH_SHARES) {
    swingPose(swing, share * swing.reference.times[K.impact], pose);
    to.avoid(pose[AT.reachRatio] - 0.985, 0.004);
    to.avoid(0.45 - pose[AT.reachRatio], 0.05);
  }
}

/** Times, as shares of the downswing, at which the trail elbow could swing round the arm: from shaft parallel to the ball. */
const ELBOW_SHARES = [0.86, 0.88, 0.9, 0.92, 0.94, 0.96, 0.98, 1];
/** Least angle between the trail arm and the side its elbow points to: the nearer, the faster the elbow swings round. */
const ELBOW_ROOM = Math.sin(rad(16));

function elbowGoals(swing: Swing, to: Residuals): void {
  for (const share of ELBOW_SHARES) {
    swingPose(swing, share * swing.reference.times[K.impact], pose);
    to.avoid(ELBOW_ROOM - sineToPole(pose), 0.03);
  }
}

/** Times, as shares of the downswing, between its keys. */
const BLADES = [J.leadProtraction, J.trailProtraction] as const;
const BETWEEN_SHARES = [0.2, 0.3, 0.4, 0.47, 0.55, 0.7, 0.75, 0.8, 0.92, 1.06];

/** The curves of shoulder blades and cocking stay inside their ranges of motion between the keys too, and the blades can come to rest there. */
function betweenGoals(swing: Swing, to: Residuals): void {
  const { curves, reference } = swing;
  for (const share of BETWEEN_SHARES) {
    const t = share * reference.times[K.impact];
    for (const joint of BLADES)
      to.avoid(Math.abs(referenceJoint(curves, joint, t)) - JOINTS[joint].max + rad(0.5), rad(0.3));
    to.avoid(referenceJoint(curves, J.leadWristRadial, t) - JOINTS[J.leadWristRadial].max + rad(0.1), rad(0.1));
  }
  for (const joint of BLADES) to.avoid(Math.abs(runOn(swing, joint, BLADE_RUN_ON)) - JOINTS[joint].max, rad(2));
}

/** How far the wrist's deviation may run on after the exit at its speed there, s: it has to come to rest inside its range. */
const RUN_ON = 0.02;
/** The same for the shoulder blades. */
const BLADE_RUN_ON = 0.04;
/** Span of the difference that takes a speed at the exit, s. */
const BACK = 0.002;

const SPEED_STEP = 0.0075;
const arm = new Float64Array(3);
const shaft = new Float64Array(3);

/** Turning speeds of thorax, lead arm and shaft: published peaks, and speed at impact as their published timing asks. */
function speedGoals(swing: Swing, to: Residuals): void {
  const peak = { thorax: 0, arm: 0, shaft: 0 };
  const now = { thorax: 0, arm: 0, shaft: 0 };
  const impact = swing.reference.times[K.impact];
  let thorax = 0;
  for (let t = impact - 20 * SPEED_STEP, i = 0; t < impact + SPEED_STEP / 2; t += SPEED_STEP, i++) {
    swingJoints(swing, t, joints);
    placeHead(swing.rig, joints, pose);
    if (i > 0) {
      now.thorax = (joints[J.thoraxTurn] - thorax) / SPEED_STEP;
      now.arm = angleTo(arm, AT.armDirection) / SPEED_STEP;
      now.shaft = angleTo(shaft, AT.shaftDirection) / SPEED_STEP;
      peak.thorax = Math.max(peak.thorax, now.thorax);
      peak.arm = Math.max(peak.arm, now.arm);
      peak.shaft = Math.max(peak.shaft, now.shaft);
    }
    thorax = joints[J.thoraxTurn];
    for (let k = 0; k < 3; k++) {
      arm[k] = pose[AT.armDirection + k];
      shaft[k] = pose[AT.shaftDirection + k];
    }
  }
  to.want(toDeg(peak.thorax) - 720, 30);
  to.want(toDeg(peak.arm) - 980, 40);
  to.want(toDeg(peak.shaft) - 2200, 60);
  to.want(toDeg(now.thorax) - 480, 60);
  to.want(toDeg(now.arm) - 650, 80);
  to.want(toDeg(now.shaft) - 2180, 60);
  to.want(handSpeedAt(swing, impact) - 7.4, 0.5);
}

/** Speed of the lead grip at time `t` (s), m/s. */
function handSpeedAt(swing: Swing, t: number): number {
  const half = 1e-4;
  swingPose(swing, t - half, pose);
  for (let k = 0; k < 3; k++) arm[k] = pose[AT.leadGrip + k];
  swingPose(swing, t + half, pose);
  return (
    Math.hypot(pose[AT.leadGrip] - arm[0], pose[AT.leadGrip + Y] - arm[1], pose[AT.leadGrip + Z] - arm[2]) / (2 * half)
  );
}

/** Angle from a kept direction to the one in the pose, rad. */
function angleTo(kept: Float64Array, at: number): number {
  const cosine = kept[0] * pose[at] + kept[1] * pose[at + 1] + kept[2] * pose[at + 2];
  return Math.acos(Math.min(1, cosine));
}
