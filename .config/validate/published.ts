// Published numbers about swings beside those of a reference swing, and what each of ours may claim.
// "set": typed in (seed.ts) and never fitted. "calibrated": the fit asks for it, or it follows from what the fit asks for.
// "steered": not asked for itself, but goals or typed landmarks around it largely decide it.
// "predicted": nothing in the fit asks for it. Only these rows are validation.
import { toDeg } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { createJointVector, J } from '../../src/model/joints';
import { K } from '../../src/model/keys';
import { AT, createPose } from '../../src/model/pose';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { createSwing, headVelocityAt, swingJoints, swingPose, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { peakSpeeds } from '../../src/solving/reference/speeds';

type Use = 'set' | 'calibrated' | 'steered' | 'predicted';
/** What, published mean and spread (NaN: none given), unit, ours, what ours may claim, source. */
export type Row = readonly [string, number, number, string, number, Use, string];

const joints = createJointVector();
const pose = createPose();
const velocity = new Float64Array(3);

/** The reference swing of a player of this stature with this club. */
export const swingOf = (statureM: number, id: ClubId): Swing => {
  const body = bodyOf({ statureM, handed: 'right' });
  const club = clubOf(CLUBS[id]);
  return createSwing(body, club, solveReference(body, club).reference);
};

const jointDeg = (swing: Swing, joint: number, t: number): number => {
  swingJoints(swing, t, joints);
  return toDeg(joints[joint]);
};

const rateDeg = (swing: Swing, joint: number, t: number): number =>
  (jointDeg(swing, joint, t + 1e-4) - jointDeg(swing, joint, t - 1e-4)) / 2e-4;

function handSpeed(swing: Swing, t: number): number {
  swingPose(swing, t - 1e-4, pose);
  const before = pose.slice(AT.leadGrip, AT.leadGrip + 3);
  swingPose(swing, t + 1e-4, pose);
  return Math.hypot(...before.map((v, i) => v - pose[AT.leadGrip + i])) / 2e-4;
}

function headSpeed(swing: Swing, t: number): number {
  headVelocityAt(swing, t, velocity);
  return Math.hypot(...velocity);
}

/** How far the line through both shoulders has turned, seen from above, deg. Zero: along the target line. */
function shoulderLineDeg(swing: Swing, t: number): number {
  swingPose(swing, t, pose);
  const [lead, trail] = [AT.leadShoulder, AT.trailShoulder];
  return toDeg(Math.atan2(pose[trail + 2] - pose[lead + 2], pose[lead] - pose[trail]));
}

/** Inclination of the plane in which the lead arm moves at time `t`, deg to the ground. */
function armPlaneDeg(swing: Swing, t: number): number {
  swingPose(swing, t - 1e-3, pose);
  const a = pose.slice(AT.armDirection, AT.armDirection + 3);
  swingPose(swing, t + 1e-3, pose);
  const b = pose.slice(AT.armDirection, AT.armDirection + 3);
  const n = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  return toDeg(Math.acos(Math.abs(n[1]) / Math.hypot(...n)));
}

/** Side bend of the thorax measured after its turn, deg: how a published side bend is taken. */
function sideBendDeg(swing: Swing, t: number): number {
  swingPose(swing, t, pose);
  return toDeg(Math.asin(pose[AT.thoraxAxes + 1]));
}

const CHEETHAM_08 = 'Cheetham et al. 2008';
const CHEETHAM_14 = 'Cheetham 2014';
const MCTEIGUE = 'McTeigue 1994; spread assumed';
const WHEARE = 'Wheare et al. 2021';
const COLEMAN = 'Coleman & Rankin 2005';
const BOURGAIN = 'Bourgain et al. 2022';
/** Middle of 56 and 60, deg. */
const TOP_ADDUCTION = 58;
const RECORDING = 'CMU motion capture 64_01, mocap.cs.cmu.edu, one player';

/** Every published number beside ours for one reference swing. */
export function publishedRows(swing: Swing, id: ClubId): Row[] {
  const { times } = swing.reference;
  const impact = times[K.impact];
  const address = times[K.address];
  const peaks = peakSpeeds(swing);
  const at = (joint: number, t: number): number => jointDeg(swing, joint, t);
  const cocked = at(J.leadWristRadial, 0);
  const ms = (s: number): number => s * 1000;
  const early = armPlaneDeg(swing, 0.3 * impact);
  const late = armPlaneDeg(swing, 0.95 * impact);
  const shoulders = Math.abs(shoulderLineDeg(swing, 0) - at(J.pelvisTurn, 0));
  const supination = -rateDeg(swing, J.leadArmRoll, impact);
  const [speed, spread] = id === 'driver' ? [45.4, 3.6] : [35.75, 0.975];
  const speedSource = id === 'driver' ? `${BOURGAIN}, skilled men` : `${BOURGAIN}, irons 33.8 to 37.7 read as 2 SD`;
  return [
    ['downswing, top to impact', 250, 20, 'ms', ms(impact), 'set', `${BOURGAIN}, recreational men; skilled 310 +- 40`],
    ['trunk bend, address', 30.5, 2.25, 'deg', at(J.trunkBend, address), 'calibrated', '26 to 35 read as 2 SD'],
    ['pelvis turn, top', -41.5, 3, 'deg', at(J.pelvisTurn, 0), 'set', MCTEIGUE],
    ['pelvis turn, impact', 41, 9, 'deg', at(J.pelvisTurn, impact), 'set', CHEETHAM_14],
    ['thorax turn, top', -84.5, 5, 'deg', at(J.thoraxTurn, 0), 'calibrated', MCTEIGUE],
    ['shoulder line against pelvis, top', 50, NaN, 'deg', shoulders, 'calibrated', 'Myers et al. 2008, 44 to 59'],
    ['lead-arm adduction, top', TOP_ADDUCTION, NaN, 'deg', at(J.leadArmAdduction, 0), 'calibrated', RECORDING],
    ['thorax turn, impact', 27, 9, 'deg', at(J.thoraxTurn, impact), 'calibrated', CHEETHAM_14],
    ['thorax side bend, impact', 31, 5, 'deg', sideBendDeg(swing, impact), 'calibrated', CHEETHAM_14],
    ['wrist flexion, address', -21, 12, 'deg', at(J.leadWristFlexion, address), 'calibrated', WHEARE],
    ['wrist flexion, top', -11, 20, 'deg', at(J.leadWristFlexion, 0), 'calibrated', WHEARE],
    ['wrist flexion, impact', 1, 14, 'deg', at(J.leadWristFlexion, impact), 'calibrated', WHEARE],
    ['cocking, address to top', 37, NaN, 'deg', cocked - at(J.leadWristRadial, address), 'calibrated', WHEARE],
    ['uncocking, top to impact', 48, NaN, 'deg', cocked - at(J.leadWristRadial, impact), 'calibrated', WHEARE],
    ['peak speed, pelvis', 477, 53, 'deg/s', toDeg(peaks.pelvis.speed), 'set', CHEETHAM_08],
    ['peak speed, thorax', 727, 61, 'deg/s', toDeg(peaks.thorax.speed), 'calibrated', CHEETHAM_08],
    ['peak speed, lead arm', 980, 68, 'deg/s', toDeg(peaks.leadArm.speed), 'calibrated', CHEETHAM_08],
    ['peak speed, shaft', 2254, 68, 'deg/s', toDeg(peaks.shaft.speed), 'calibrated', CHEETHAM_08],
    ['peak speed, shaft', 2413, 442, 'deg/s', toDeg(peaks.shaft.speed), 'calibrated', 'Zheng et al. 2008'],
    ['pelvis peak before impact', 87, NaN, 'ms', ms(peaks.pelvis.beforeImpact), 'set', CHEETHAM_08],
    ['thorax peak before impact', 68, NaN, 'ms', ms(peaks.thorax.beforeImpact), 'steered', CHEETHAM_08],
    ['lead arm peak before impact', 65, NaN, 'ms', ms(peaks.leadArm.beforeImpact), 'steered', CHEETHAM_08],
    ['shaft peak before impact', 0, NaN, 'ms', ms(peaks.shaft.beforeImpact), 'steered', CHEETHAM_08],
    ['head speed, impact', speed, spread, 'm/s', headSpeed(swing, impact), 'calibrated', speedSource],
    [
      'hand speed, impact',
      7.5,
      0.25,
      'm/s',
      handSpeed(swing, impact),
      'calibrated',
      'Nesbit 2005, 4 golfers, range as 2 SD',
    ],
    ['lead forearm supination, impact', 1569, 338, 'deg/s', supination, 'predicted', CHEETHAM_14],
    ['lead-arm plane, early downswing', 47, 1, 'deg', early, 'steered', `${COLEMAN}; its spread of 7 players`],
    ['lead-arm plane, late downswing', 78, 4, 'deg', late, 'predicted', `${COLEMAN}; its spread of 7 players`],
    ...armParallelRows(swing),
  ];
}

/** One open recording of one player of unknown skill, at lead arm level: a plausibility check, not a target. */
function armParallelRows(swing: Swing): Row[] {
  const { leadArmParallel } = readCheckpoints(swing, 0);
  if (!isReached(leadArmParallel)) return [];
  const { t } = leadArmParallel;
  swingPose(swing, t, pose);
  const aim = toDeg(Math.atan2(pose[AT.armDirection + 2], -pose[AT.armDirection]));
  // Where the recording gives two readings of its one player, their middle: no spread of players stands behind them.
  const row = (what: string, seen: number, ours: number, use: Use = 'calibrated'): Row => {
    return [`P5: ${what}`, seen, NaN, 'deg', ours, use, RECORDING];
  };
  return [
    row('thorax turn', -46.5, jointDeg(swing, J.thoraxTurn, t)),
    row('pelvis turn', -16, jointDeg(swing, J.pelvisTurn, t), 'set'),
    row('trunk tilt', 9, jointDeg(swing, J.trunkTilt, t)),
    row('trunk bend', 28, jointDeg(swing, J.trunkBend, t)),
    row('lead-arm adduction', 51, jointDeg(swing, J.leadArmAdduction, t)),
    row('lead-arm elevation', -1.5, jointDeg(swing, J.leadArmElevation, t)),
    row('lead arm, seen from above, off the target line', 0, aim),
  ];
}

/** One angle of the recording and by how much ours lies above it, deg. */
interface RecordedAngle {
  readonly what: string;
  readonly difference: number;
}

/** Angle by angle, ours less the recording's: all at lead arm level, and the adduction at the top. */
export function recordingDifference(swing: Swing): {
  readonly angles: readonly RecordedAngle[];
  readonly rootMeanSquare: number;
  readonly worst: number;
} {
  const angles = [
    ...armParallelRows(swing).map(([what, seen, , , ours]) => ({ what: what.slice(4), difference: ours - seen })),
    { what: 'lead-arm adduction at the top', difference: jointDeg(swing, J.leadArmAdduction, 0) - TOP_ADDUCTION },
  ];
  const differences = angles.map(({ difference }) => difference);
  const squares = differences.reduce((sum, d) => sum + d * d, 0);
  const worst = differences.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return { angles, rootMeanSquare: Math.sqrt(squares / angles.length), worst };
}
