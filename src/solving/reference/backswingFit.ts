import { rad } from '../../math/angle';
import type { LeastSquaresResult } from '../../math/leastSquares';
import { AT, createPose } from '../../model/chain';
import type { Body } from '../../model/body';
import { createJointVector, J, JOINTS } from '../../model/joints';
import { K } from '../../model/keys';
import { shaftPlane } from '../../reading/readings';
import { swingJoints, swingPose, type Swing } from '../../reading/swing';
import type { Draft } from './downswingFit';
import { fitUnknowns, standingTall, unknownsFrom, type Residuals } from './fitting';
import { BACKSWING_LANDMARKS, FINISH_LANDMARKS } from './landmarks';

const Y = 1;
const Z = 2;
const pose = createPose();
const joints = createJointVector();

/** At address the head rests this far behind where it meets the ball, m: a ball's radius and a little air. */
const BEHIND_BALL = 0.012;
/** On the way back the head's reference point keeps this height, m: its sole lies a little less below it. */
const CLEAR_OF_GROUND = 0.02;

/**
 * Fits address to top: the club soled square behind the ball within reach of both hands, back along the target line, up on plane.
 * The top is not touched.
 */
export function fitBackswing(draft: Draft, body: Body, maxSteps: number): LeastSquaresResult {
  return fitKeys(draft, BACKSWING_LANDMARKS, body, maxSteps, (swing, to) => {
    const { times } = swing.reference;
    addressGoals(swing, to);
    for (let i = 0; i <= 14; i++) {
      const t = (i / 14) * times[K.address];
      swingJoints(swing, t, joints);
      rangeGoals(to);
      reachGoal(swing, t, to);
      to.avoid(CLEAR_OF_GROUND - pose[AT.head + Y], 0.001);
    }
    swingPose(swing, times[K.takeaway], pose);
    to.want(Math.asin(pose[AT.shaftDirection + Y]), rad(5));
    to.want(pose[AT.head + Z] - pose[AT.leadGrip + Z] + 0.02, 0.04);
    swingPose(swing, times[K.midBackswing], pose);
    to.want(Math.asin(pose[AT.armDirection + Y]), rad(5));
    to.want(shaftPlane(pose) - rad(60), rad(6));
  });
}

function addressGoals(swing: Swing, to: Residuals): void {
  const { ballPoint, times } = swing.reference;
  swingPose(swing, times[K.address], pose);
  to.want(pose[AT.head] - ballPoint[0] + BEHIND_BALL, 0.001);
  to.want(pose[AT.head + Y] - ballPoint[1], 0.001);
  to.want(pose[AT.head + Z] - ballPoint[2], 0.001);
  to.want(Math.atan2(pose[AT.faceNormal + Z], pose[AT.faceNormal]), rad(0.5));
  to.want(Math.asin(pose[AT.toeDirection + Y]), rad(2));
  to.want(pose[AT.leadGrip] - pose[AT.head] - 0.05, 0.02);
  to.avoid(0.9 - pose[AT.reachRatio], 0.02);
}

/**
 * Fits the follow-through and the finish: hands together on the grip, joints inside their ranges on the way. Made for the eye.
 */
export function fitFinish(draft: Draft, body: Body, maxSteps: number): LeastSquaresResult {
  return fitKeys(draft, FINISH_LANDMARKS, body, maxSteps, (swing, to) => {
    const { times } = swing.reference;
    const from = times[K.exit];
    const span = times[K.finish] - from;
    for (let i = 1; i <= 14; i++) {
      const t = from + (i / 14) * span;
      reachGoal(swing, t, to);
      swingJoints(swing, t, joints);
      rangeGoals(to);
      to.avoid(joints[J.pelvisHeight] - standingTall(body), 0.002);
    }
  });
}

/** The curves keep this far inside the ranges, so that what a goal leaves over stays inside too. */
const INSIDE = rad(0.25);

/** Joint ranges the curves may not leave between the keys. */
function rangeGoals(to: Residuals): void {
  for (const joint of JOINTS.keys()) {
    const { min, max, kind } = JOINTS[joint];
    if (kind === 'length') continue;
    to.avoid(joints[joint] - max + INSIDE, rad(1));
    to.avoid(min + INSIDE - joints[joint], rad(1));
  }
}

function reachGoal(swing: Swing, t: number, to: Residuals): void {
  swingPose(swing, t, pose);
  to.avoid(pose[AT.reachRatio] - 0.985, 0.004);
  to.avoid(0.42 - pose[AT.reachRatio], 0.05);
}

function fitKeys(
  draft: Draft,
  landmarks: typeof BACKSWING_LANDMARKS,
  body: Body,
  maxSteps: number,
  goals: (swing: Swing, to: Residuals) => void,
): LeastSquaresResult {
  const unknowns = unknownsFrom(landmarks, body);
  const start = Float64Array.from(unknowns, (u) => draft.values[u.at]);
  let swing = draft.refresh();
  const apply = (values: Float64Array): void => {
    unknowns.forEach((u, i) => (draft.values[u.at] = values[i]));
    swing = draft.refresh();
  };
  const result = fitUnknowns(unknowns, start, apply, (to) => goals(swing, to), maxSteps);
  apply(start);
  return result;
}
