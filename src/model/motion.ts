import {
  addEndCurvature,
  addStartCurvature,
  pieceCurvature,
  pieceSlope,
  pieceValue,
  smoothRise,
  solveSplineCurvature,
  writeCubicPiece,
} from '../math/spline';
import { J, JOINT_COUNT, type JointVector } from './joints';
import { K, KEY_COUNT, type ReferenceSwing } from './keys';
import type { Movements } from './movements';
import { bendToTrailSide } from './sideBend';

const PIECES = KEY_COUNT - 1;
const STRIDE = JOINT_COUNT * 6;

/** The curves of a reference swing: one polynomial per joint and piece, C2 from address to finish. */
export interface Curves {
  readonly times: Float64Array;
  readonly pieces: Float64Array;
}

/** Room for the curves of one swing. */
export const createCurves = (): Curves => ({
  times: new Float64Array(KEY_COUNT),
  pieces: new Float64Array(PIECES * STRIDE),
});

const knotTimes = new Float64Array(KEY_COUNT);
const knotValues = new Float64Array(KEY_COUNT);
const curvature = new Float64Array(KEY_COUNT);

/**
 * Joins the keys of a swing. Backswing: clamped cubic spline, at rest at both ends. Downswing: cubic spline from rest at the
 * top, free at the exit. Finish: cubic spline from the exit's speed to rest. The last piece of the backswing and the first
 * of the finish take on the curvature of the downswing at its ends, so that everything is C2 and neither bends the downswing.
 */
export function joinKeys(ref: Pick<ReferenceSwing, 'times' | 'values'>, out: Curves): Curves {
  out.times.set(ref.times);
  for (let j = 0; j < JOINT_COUNT; j++) joinJoint(ref, j, out);
  return out;
}

/** Joins the keys of one joint; the others stay as they are. */
export function joinJoint(ref: Pick<ReferenceSwing, 'times' | 'values'>, joint: number, out: Curves): void {
  writeSpline(ref, joint, K.top, K.exit, 0, 'free', out);
  const startCurvature = curvature[0];
  writeSpline(ref, joint, K.address, K.top, 0, 0, out);
  const h = ref.times[K.top] - ref.times[K.top - 1];
  addEndCurvature(out.pieces, pieceAt(K.top - 1, joint), h, startCurvature - curvature[K.top - K.address]);
  writeFinish(ref, joint, out);
}

const pieceAt = (piece: number, joint: number): number => piece * STRIDE + joint * 6;

function writeSpline(
  ref: Pick<ReferenceSwing, 'times' | 'values'>,
  joint: number,
  from: number,
  to: number,
  start: number,
  end: number | 'free',
  out: Curves,
): void {
  const { times, values } = ref;
  const count = to - from + 1;
  for (let i = 0; i < count; i++) {
    knotTimes[i] = times[from + i];
    knotValues[i] = values[(from + i) * JOINT_COUNT + joint];
  }
  solveSplineCurvature(knotTimes, knotValues, count, start, end, curvature);
  for (let i = 0; i < count - 1; i++) {
    const h = knotTimes[i + 1] - knotTimes[i];
    const at = pieceAt(from + i, joint);
    writeCubicPiece(out.pieces, at, h, knotValues[i], knotValues[i + 1], curvature[i], curvature[i + 1]);
  }
}

function writeFinish(ref: Pick<ReferenceSwing, 'times' | 'values'>, joint: number, out: Curves): void {
  const before = pieceAt(K.exit - 1, joint);
  const s = ref.times[K.exit] - ref.times[K.exit - 1];
  const slope = pieceSlope(out.pieces, before, s);
  const bend = pieceCurvature(out.pieces, before, s);
  writeSpline(ref, joint, K.exit, K.finish, slope, 0, out);
  const h = ref.times[K.exit + 1] - ref.times[K.exit];
  addStartCurvature(out.pieces, pieceAt(K.exit, joint), h, bend - curvature[0]);
}

/** Index of the piece that holds time `t` (s); outside the swing, the first or the last. */
function pieceOf(times: Float64Array, t: number): number {
  let i = 0;
  while (i < PIECES - 1 && t >= times[i + 1]) i++;
  return i;
}

/** Every joint of the reference at time `t` (s, zero at the top), held still before address and after the finish. */
export function referenceJoints(curves: Curves, t: number, out: JointVector): void {
  const { times, pieces } = curves;
  const clamped = t < times[0] ? times[0] : t > times[PIECES] ? times[PIECES] : t;
  const piece = pieceOf(times, clamped);
  const s = clamped - times[piece];
  let at = piece * STRIDE;
  for (let j = 0; j < JOINT_COUNT; j++, at += 6) out[j] = pieceValue(pieces, at, s);
}

/** One joint of the reference at time `t` (s). */
export function referenceJoint(curves: Curves, joint: number, t: number): number {
  const { times, pieces } = curves;
  const clamped = t < times[0] ? times[0] : t > times[PIECES] ? times[PIECES] : t;
  const piece = pieceOf(times, clamped);
  return pieceValue(pieces, piece * STRIDE + joint * 6, clamped - times[piece]);
}

/**
 * How much of a movement is in force at time `t`: 0 up to the top, 1 from lead arm parallel to the exit, back to 0 at the finish.
 * C2 throughout. Dimensionless.
 */
export function movementShare(times: Float64Array, t: number): number {
  if (t <= times[K.exit]) return smoothRise(t / times[K.leadArmParallel]);
  return 1 - smoothRise((t - times[K.exit]) / (times[K.finish] - times[K.exit]));
}

/**
 * Every joint at time `t` (reference s, zero at the top) with the movements on top of the reference. `tempo`: the player's seconds in one
 * of the reference's; a turn that starts later does so by the player's own. Allocates nothing.
 */
export function movedJoints(curves: Curves, m: Movements, t: number, tempo: number, out: JointVector): void {
  referenceJoints(curves, t, out);
  const share = movementShare(curves.times, t);
  if (share === 0) return;
  out[J.leadWristFlexion] += share * m.leadWristFlexion;
  out[J.pelvisSway] += share * m.pelvisShift;
  const { rotationRate: rate, rotationDelay: delay } = m;
  turnFrom(curves, J.thoraxTurn, rate, delay / tempo, share, t, out);
  turnFrom(curves, J.pelvisTurn, m.pelvisRate ?? rate, (m.pelvisDelay ?? delay) / tempo, share, t, out);
  // About the axes of the chest as it is turned by now.
  bendToTrailSide(share * m.trailSideBend, out);
}

/** A turn counted from the top of the backswing, started later by `delay` (reference s) and multiplied by `rate`. */
function turnFrom(
  curves: Curves,
  joint: number,
  rate: number,
  delay: number,
  share: number,
  t: number,
  out: JointVector,
): void {
  const top = curves.pieces[pieceAt(K.top, joint)];
  const turned = delay === 0 ? out[joint] : referenceJoint(curves, joint, t - delay * share);
  out[joint] = top + (1 + share * (rate - 1)) * (turned - top);
}
