import { smoothRise } from '../math/spline';
import type { Rig } from './chain';
import { K } from './keys';
import { AT, type Pose } from './pose';
import { placeTrailArm } from './trailArm';

// The chain's lead arm does not fold, so its finish stops half way. What follows is for the eye alone: it changes a pose after the chain
// has placed it, from about the follow-through on. No reading and no fit goes through here.

/** At the finish, in the chest's axes (lead side, up, front): the lead grip as seen from the lead shoulder. Unit. */
const ARM = [0, 0.922, 0.387] as const;
/** Distance of shoulder and grip at the finish over the length of the lead arm: the elbow is folded a good right angle. */
const REACH = 0.63;
/**
 * Direction the shaft is drawn to, in the chest's axes: first up over the head, at the finish over the lead shoulder and behind the neck.
 * Units. The way round leads it past the other side of the chain's shaft, from where no turn is the shortest.
 */
const SHAFT_UP = [-0.2, 0.96, 0.196] as const;
const SHAFT_DOWN = [-0.63, -0.414, -0.657] as const;
const SHAFT_WAY = Math.acos(SHAFT_UP[0] * SHAFT_DOWN[0] + SHAFT_UP[1] * SHAFT_DOWN[1] + SHAFT_UP[2] * SHAFT_DOWN[2]);
/** The fold sets in this share of the way from the exit to the follow-through, and is complete this share of the way on to the finish. */
const SETS_IN = 0.7;
const COMPLETE = 0.94;

/** How much of the drawn finish is there at time `t` (s, the reference's own): 0 until shortly before the follow-through, 1 at the finish. C2. */
export function finishShare(times: ArrayLike<number>, t: number): number {
  const from = times[K.exit] + SETS_IN * (times[K.followThrough] - times[K.exit]);
  return smoothRise((t - from) / (COMPLETE * (times[K.finish] - from)));
}

const axis = new Float64Array(3);
const goal = new Float64Array(3);
const shaftGoal = new Float64Array(3);

/** The shortest turn that takes the direction at `from` in the pose to a direction of the chest's axes: sets `axis`, answers the angle, rad. */
function findTurn(p: Pose, from: number, to: ArrayLike<number>): number {
  const r = AT.thoraxAxes;
  for (let i = 0; i < 3; i++) goal[i] = to[0] * p[r + i] + to[1] * p[r + 3 + i] + to[2] * p[r + 6 + i];
  axis[0] = p[from + 1] * goal[2] - p[from + 2] * goal[1];
  axis[1] = p[from + 2] * goal[0] - p[from] * goal[2];
  axis[2] = p[from] * goal[1] - p[from + 1] * goal[0];
  const sine = Math.hypot(axis[0], axis[1], axis[2]);
  if (sine < 1e-12) return 0;
  for (let i = 0; i < 3; i++) axis[i] /= sine;
  return Math.atan2(sine, p[from] * goal[0] + p[from + 1] * goal[1] + p[from + 2] * goal[2]);
}

/** Turns a direction of the pose about `axis` by `by` (rad). Source: Rodrigues' rotation formula. */
function turn(p: Pose, at: number, by: number): void {
  const cos = Math.cos(by);
  const sin = Math.sin(by);
  const [x, y, z] = [p[at], p[at + 1], p[at + 2]];
  const along = (axis[0] * x + axis[1] * y + axis[2] * z) * (1 - cos);
  p[at] = x * cos + (axis[1] * z - axis[2] * y) * sin + axis[0] * along;
  p[at + 1] = y * cos + (axis[2] * x - axis[0] * z) * sin + axis[1] * along;
  p[at + 2] = z * cos + (axis[0] * y - axis[1] * x) * sin + axis[2] * along;
}

const OF_ARM = [AT.armDirection, AT.armAxes, AT.armAxes + 3, AT.armAxes + 6] as const;
const OF_CLUB = [
  AT.shaftDirection,
  AT.faceNormal,
  AT.toeDirection,
  AT.handAxes,
  AT.handAxes + 3,
  AT.handAxes + 6,
] as const;

/**
 * Folds the lead arm and lays the club over the lead shoulder, `share` (0..1) of the way from the chain's pose. The elbow bends about the
 * lead arm's own x axis; `armDirection` is then that of shoulder to grip. Changes the pose in place.
 */
export function foldForEye(rig: Rig, share: number, p: Pose): void {
  if (share <= 0) return;
  const armTurn = share * findTurn(p, AT.armDirection, ARM);
  for (const at of OF_ARM) turn(p, at, armTurn);
  const up = Math.sin((1 - share) * SHAFT_WAY) / Math.sin(SHAFT_WAY);
  const down = Math.sin(share * SHAFT_WAY) / Math.sin(SHAFT_WAY);
  for (let i = 0; i < 3; i++) shaftGoal[i] = up * SHAFT_UP[i] + down * SHAFT_DOWN[i];
  const clubTurn = share * findTurn(p, AT.shaftDirection, shaftGoal);
  for (const at of OF_CLUB) turn(p, at, clubTurn);
  const { upperArm } = rig.body;
  const fore = rig.leadArm - upperArm;
  // Folding runs ahead, or the trail hand would not reach. The elbow moves out with the root of what the chord lacks: with a square there
  // it starts as smoothly as the share does.
  const folded = 1 - (1 - share) ** 3;
  const chord = rig.leadArm * (1 - (1 - REACH) * folded * folded);
  const along = (upperArm * upperArm - fore * fore + chord * chord) / (2 * chord);
  const off = Math.sqrt(Math.max(0, upperArm * upperArm - along * along));
  for (let i = 0; i < 3; i++) {
    const from = p[AT.leadShoulder + i];
    const arm = p[AT.armDirection + i];
    const shaft = p[AT.shaftDirection + i];
    p[AT.leadElbow + i] = from + along * arm - off * p[AT.armAxes + 3 + i];
    p[AT.leadGrip + i] = from + chord * arm;
    p[AT.trailGrip + i] = p[AT.leadGrip + i] + rig.handGap * shaft;
    p[AT.head + i] = p[AT.leadGrip + i] + rig.shaft * shaft;
  }
  placeTrailArm(rig.trailUpper, rig.trailFore, p);
}
