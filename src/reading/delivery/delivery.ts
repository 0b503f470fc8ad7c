import { findFall } from '../../math/root';
import { AT, createPose } from '../../model/chain';
import type { Club } from '../../model/club';
import { J } from '../../model/joints';
import { K } from '../../model/keys';
import { addedTo, solveAdaptations, type AdaptationResult } from './adapt';
import { SHORTEST } from './adaptArm';
import { shaftBendLoft } from './shaftBend';
import { isReached, type Checkpoints } from '../checkpoints';
import { planeDirection, planeTilt } from '../readings';
import { headAt, headVelocityAt, swingPose, type Swing } from '../swing';

/**
 * What happens between shaft parallel and the ball. Held plane: the arms adapt so that the head meets the ball and the change of
 * plane direction at shaft parallel carries over to the path, with a face between the one that comes of it and a square one. Nothing adapts: the joint curves run on and the head may miss.
 * Ground for carrying the direction over: Morrison et al. (2017), shaft angle at mid-downswing predicts the swing plane's direction.
 */
export const DELIVERY_RULES = ['held plane', 'nothing adapts'] as const;
export type DeliveryRule = (typeof DELIVERY_RULES)[number];

/** What a player's reference swing brings to the ball and to shaft parallel: the zero of every implied path. Radians. */
export interface ReferenceStrike {
  readonly path: number;
  readonly planeDirection: number;
}

/** Where the head passes when it does not meet the ball. Metres and seconds. */
interface Miss {
  /** + toward the toe: the ball lies nearer the toe than meant. */
  readonly toe: number;
  /** + the head passes high. */
  readonly high: number;
  /** + the head comes late. */
  readonly late: number;
}

/**
 * How far the player returns the face, from 0 (left as it comes) to 1 (square to the target). An assumption: nothing measured says where
 * players stand, so the middle is drawn and both ends are shown with it.
 */
export const DEFAULT_FACE_RETURNED = 0.5;

/** The club at the ball with the face at one end of its band. Radians, m/s, s; world frame. */
interface FaceEnd {
  /** When the head is at the ball, s, zero at the top. */
  readonly t: number;
  readonly face: number;
  readonly headVelocity: readonly [number, number, number];
  readonly faceNormal: readonly [number, number, number];
}

/** What the arms add, by impact, to the swing's own joints when the face comes back. Radians. */
export interface ReturnTakes {
  /** + the thumb turns toward the trail side, which opens the face. */
  readonly roll: number;
  /** + bowed. */
  readonly flexion: number;
  /** Whether it comes back square within the ranges of motion. False: the returned end is as near as it gets. */
  readonly isInRange: boolean;
}

/** What the club does to the ball. Radians, metres, m/s; world frame, right-handed player. */
export interface Delivery {
  readonly rule: DeliveryRule;
  readonly status: 'held' | 'closest' | 'free';
  /** When the head is at the ball, s in the reference's time, zero at the top. */
  readonly t: number;
  /** The same in the player's own time, s. */
  readonly impactTime: number;
  /** Horizontal direction of the head. + right of the target line: in-to-out. */
  readonly path: number;
  /** Vertical direction of the head. + rising. */
  readonly attack: number;
  /** Horizontal direction of the face normal as drawn. + right of the target line: open. Lies between the two that follow. */
  readonly face: number;
  /** Left as it comes, and returned: square, or as near as the joints allow. Where nothing adapts, the face as drawn. */
  readonly faceLeft: number;
  readonly faceReturned: number;
  /** Absent where nothing adapts. */
  readonly returnTakes: ReturnTakes | null;
  /** The club at the ball with the face left and returned. */
  readonly ends: readonly [left: FaceEnd, returned: FaceEnd];
  readonly faceToPath: number;
  /** Elevation of the face normal, with what the bending shaft adds. */
  readonly dynamicLoft: number;
  /** The part of `dynamicLoft` that the bending shaft adds: the drawn club is rigid and does not show it. */
  readonly shaftBend: number;
  /** Angle between head velocity and face normal. */
  readonly spinLoft: number;
  /** Lean of the shaft seen face on. + handle ahead of the head. */
  readonly shaftLean: number;
  readonly headSpeed: number;
  /** Lowest point of the head ahead of the ball, m; NaN when the trace has none nearby. */
  readonly lowPoint: number;
  readonly planeTilt: number;
  readonly planeDirection: number;
  readonly headVelocity: readonly [number, number, number];
  /** With the bending shaft: the drawn face, laid back by `shaftBend`. */
  readonly faceNormal: readonly [number, number, number];
  readonly miss: Miss;
  /** Trail arm short of the grip at impact, m. */
  readonly reachShortfall: number;
  /** Joints that ran into their range while adapting (indices of `JOINT_IDS`). */
  readonly limited: readonly number[];
}
/** Why there is nothing to deliver. */
export interface NotDelivered {
  readonly missing: 'no-shaft-parallel' | 'too-late' | 'never-at-the-ball';
}

const velocity = new Float64Array(3);
const point = new Float64Array(3);
const pose = createPose();

/** Path and plane direction of a reference swing; absent when it never reaches shaft parallel. */
export function strikeOf(reference: Swing, { shaftParallel }: Checkpoints): ReferenceStrike | undefined {
  if (!isReached(shaftParallel)) return undefined;
  headVelocityAt(reference, reference.reference.times[K.impact], velocity);
  return {
    path: Math.atan2(velocity[2], velocity[0]),
    planeDirection: shaftParallel.readings.planeDirection,
  };
}

/**
 * Path at the ball if the change of plane direction against the player's reference carried through, rad.
 * + in-to-out. Absent when shaft parallel is not reached.
 */
export const impliedPath = ({ shaftParallel }: Checkpoints, strike: ReferenceStrike): number | undefined =>
  isReached(shaftParallel) ? strike.path + (shaftParallel.readings.planeDirection - strike.planeDirection) : undefined;

/**
 * The swing with its last third adapted by the rule, and what reaches the ball. The checkpoints stay as they are. `faceReturned` (0..1)
 * says where between the two ends of its band the face is drawn.
 */
export function deliver(
  swing: Swing,
  checkpoints: Checkpoints,
  strike: ReferenceStrike,
  rule: DeliveryRule = 'held plane',
  faceReturned = DEFAULT_FACE_RETURNED,
): { readonly swing: Swing; readonly delivery: Delivery | NotDelivered } {
  const { shaftParallel } = checkpoints;
  if (!isReached(shaftParallel)) return { swing, delivery: { missing: 'no-shaft-parallel' } };
  if (rule === 'nothing adapts') {
    const t = timeAtBall(swing, shaftParallel.t);
    if (t === undefined) return { swing, delivery: { missing: 'never-at-the-ball' } };
    return { swing, delivery: readDelivery(swing, t, { rule, status: 'free', limited: [], returnTakes: null }) };
  }
  if (!(shaftParallel.t < swing.reference.times[K.exit] - SHORTEST))
    return { swing, delivery: { missing: 'too-late' } };
  const { left, returned, drawn, isReturned } = solveAdaptations(
    swing,
    shaftParallel.t,
    impliedPath(checkpoints, strike)!,
    faceReturned,
  );
  const adapted: Swing = { ...swing, adaptation: drawn.adaptation };
  const returnTakes: ReturnTakes = {
    roll: addedTo(returned.adaptation, J.leadArmRoll),
    flexion: addedTo(returned.adaptation, J.leadWristFlexion),
    isInRange: isReturned,
  };
  const { status, limited } = drawn;
  const ends = [readEnd(swing, left), readEnd(swing, returned)] as const;
  const { impact } = drawn.adaptation;
  return { swing: adapted, delivery: readDelivery(adapted, impact, { rule, status, limited, returnTakes, ends }) };
}

function readEnd(swing: Swing, { adaptation }: AdaptationResult): FaceEnd {
  const adapted: Swing = { ...swing, adaptation };
  swingPose(adapted, adaptation.impact, pose);
  headVelocityAt(adapted, adaptation.impact, velocity);
  return endOf(adaptation.impact, swing.rig.club);
}

/** The club as it stands in `pose` and bends, moving with `velocity`. */
function endOf(t: number, club: Club): FaceEnd {
  const n = AT.faceNormal;
  const face = Math.atan2(pose[n + 2], pose[n]);
  const loft = Math.asin(pose[n + 1]) + shaftBendLoft(club);
  const level = Math.cos(loft);
  return {
    t,
    face,
    headVelocity: [velocity[0], velocity[1], velocity[2]],
    faceNormal: [level * Math.cos(face), Math.sin(loft), level * Math.sin(face)],
  };
}

/** When the head passes the ball, seen face on, s. */
function timeAtBall(swing: Swing, from: number): number | undefined {
  const behind = (t: number): number => {
    headAt(swing, t, point);
    return swing.reference.ballPoint[0] - point[0];
  };
  const found = findFall(behind, from, swing.reference.times[K.exit] + 0.03, 0.01);
  return 't' in found ? found.t : undefined;
}

/** Reads what the club does at time `t` (s): the slope of the drawn trace and the drawn face. */
function readDelivery(
  swing: Swing,
  t: number,
  { ends, ...by }: Pick<Delivery, 'rule' | 'status' | 'limited' | 'returnTakes'> & Partial<Pick<Delivery, 'ends'>>,
): Delivery {
  swingPose(swing, t, pose);
  headVelocityAt(swing, t, velocity);
  const own = endOf(t, swing.rig.club);
  const [vx, vy, vz] = velocity;
  const headSpeed = Math.hypot(vx, vy, vz);
  const path = Math.atan2(vz, vx);
  const { face, headVelocity, faceNormal } = own;
  const [left, returned] = ends ?? [own, own];
  const shaftBend = shaftBendLoft(swing.rig.club);
  const along = (vx * faceNormal[0] + vy * faceNormal[1] + vz * faceNormal[2]) / headSpeed;
  return {
    ...by,
    t,
    impactTime: t * swing.tempo,
    path,
    attack: Math.atan2(vy, Math.hypot(vx, vz)),
    face,
    faceLeft: left.face,
    faceReturned: returned.face,
    ends: [left, returned],
    faceToPath: face - path,
    dynamicLoft: Math.asin(faceNormal[1]),
    shaftBend,
    spinLoft: Math.acos(Math.min(1, along)),
    shaftLean: Math.atan2(pose[AT.leadGrip] - pose[AT.head], pose[AT.leadGrip + 1] - pose[AT.head + 1]),
    headSpeed,
    lowPoint: lowPointAhead(swing, t),
    planeTilt: planeTilt(pose, velocity),
    planeDirection: planeDirection(pose, velocity),
    headVelocity,
    faceNormal,
    miss: readMiss(swing, t),
    reachShortfall: pose[AT.reachShortfall],
  };
}

function readMiss(swing: Swing, t: number): Miss {
  const { ballPoint, times } = swing.reference;
  let toe = 0;
  for (let i = 0; i < 3; i++) toe += (ballPoint[i] - pose[AT.head + i]) * (i === 1 ? 0 : pose[AT.toeDirection + i]);
  return { toe, high: pose[AT.head + 1] - ballPoint[1], late: (t - times[K.impact]) * swing.tempo };
}

/** How far from the ball a low point is looked for, s. */
const LOW_POINT_SPAN = 0.03;
const trace = new Float64Array(3);

/** Where the head's trace is lowest, ahead of the ball, m. NaN when it is not within reach of the ball. */
function lowPointAhead(swing: Swing, t: number): number {
  const falling = (s: number): number => {
    headVelocityAt(swing, s, trace);
    return -trace[1];
  };
  const found = findFall(falling, t - LOW_POINT_SPAN, t + LOW_POINT_SPAN, LOW_POINT_SPAN / 2);
  if ('missing' in found) return NaN;
  headAt(swing, found.t, trace);
  return trace[0] - swing.reference.ballPoint[0];
}
