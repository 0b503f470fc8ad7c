import { smoothRise } from '../math/spline';
import { rad } from '../math/angle';
import { AT, type Pose } from '../model/chain';
import type { Club } from '../model/club';
import { K } from '../model/keys';
import { FACE_FORWARD, STRIKE_TOWARD_TOE } from './woodShapes';

/** Illustrative feet: they enter no reading. */
export const FLARE = { lead: rad(22), trail: rad(-8) } as const;
/** How far the trail foot tips about its toes, and turns toward the target, with the heel fully up. */
export const HEEL_TIP = rad(76);
export const HEEL_TURN = rad(58);

/** Share of the heel's lift that is there at impact. */
const LIFT_AT_IMPACT = 0.3;

/**
 * How far the trail heel has left the ground at time `t` (s, zero at the top): 0 flat up to shaft parallel, 1 at the finish. C2 pieces.
 */
export function heelLiftAt(swing: { readonly reference: { readonly times: ArrayLike<number> } }, t: number): number {
  const { times } = swing.reference;
  const from = times[K.shaftParallel];
  const impact = times[K.impact];
  const through = times[K.exit];
  const early = smoothRise((t - from) / (through - from));
  const late = smoothRise((t - impact) / (times[K.finish] - impact) / 0.8);
  return LIFT_AT_IMPACT * early + (1 - LIFT_AT_IMPACT) * late;
}

/** Radius of a golf ball, m: least diameter 42.67 mm by the equipment rules. */
export const BALL_RADIUS = 0.021335;

/**
 * Centre of the ball that the face of `pose` touches 32 mm toward the toe, m, world frame: teed at the height of the face for a
 * driver, on the ground for every other club. Written into `out`.
 */
export function placeBall(club: Club, pose: Pose, out: Float64Array): Float64Array {
  const n = AT.faceNormal;
  const isTeed = club.kind === 'driver';
  const reach = FACE_FORWARD + BALL_RADIUS;
  for (let i = 0; i < 3; i++) {
    out[i] = pose[AT.head + i] + STRIKE_TOWARD_TOE * pose[AT.toeDirection + i] + reach * pose[n + i];
  }
  const height = isTeed ? Math.max(BALL_RADIUS, out[1]) : BALL_RADIUS;
  // Lifting or lowering the ball along the face keeps it touching.
  if (Math.abs(pose[n]) > 0.2) out[0] -= ((height - out[1]) * pose[n + 1]) / pose[n];
  out[1] = height;
  return out;
}

/**
 * What the player looks at, m, world: the ball, and once the heel is well up (`heelLift` above 0.45) far down the target line.
 * `from` is where the head is. Written into `out`.
 */
export function placeGaze(
  ballPoint: ArrayLike<number>,
  heelLift: number,
  from: ArrayLike<number>,
  out: Float64Array,
): Float64Array {
  const follow = smoothRise((heelLift - 0.45) / 0.5);
  out[0] = ballPoint[0] + follow * 9;
  out[1] = ballPoint[1] + follow * 1.2;
  out[2] = ballPoint[2] * (1 - follow) + from[2] * follow;
  return out;
}
