import { rad } from '../../math/angle';
import { ADAPTING } from '../../model/adaptation';
import { AT, createPose, placeClub, placeLeadShoulder, type Pose } from '../../model/chain';
import { createJointVector, JOINTS } from '../../model/joints';
import { K } from '../../model/keys';
import { swingJoints, type Swing } from '../swing';

/**
 * The arm at the moment of impact: where the head is, where it goes, where the face looks, and how they answer to a change.
 *
 * The unknowns, in units of effort: what each adapting joint stands at (from where it stands on the swing at the reference's moment of
 * impact), the rate it adds there, and the moment itself. A joint is counted as it stands, not as it is added to, so that the ranges of
 * motion are plain ends of an unknown whatever the moment.
 */

export const COUNT = ADAPTING.length;
/** Where each joint stands, the rate it adds, and the moment of impact. */
export const SIZE = 2 * COUNT + 1;
/** Place of the moment among the unknowns. */
export const MOMENT = 2 * COUNT;
/** Conditions: the head on the ball, three numbers; its path; the face. */
export const CONDITIONS = 5;
export const PATH = 3;
export const FACE = 4;

/** One unit of effort of each joint, rad: the forearm rolls more readily than the shoulder moves. A modelling choice. */
export const EFFORT: readonly number[] = [rad(8), rad(8), rad(20), rad(10), rad(6)];
/**
 * One unit of effort of the moment of impact, s: longer than any swing asks for. The moment is free but for this little, which only
 * settles it where nothing else does. A modelling choice.
 */
export const MOMENT_EFFORT = 0.05;
/** Half the span of every central difference in time, s. */
export const HALF = 1e-5;
/** Body moments stand this many steps of `HALF` from impact; the middle one is impact itself. */
const STEPS = [-2, -1, 0, 1, 2] as const;
export const MIDDLE = 2;

/** What is asked of the arms, rad: + right of the target line. */
export interface Goal {
  readonly path: number;
  readonly face: number;
}

/** The lead side at each of the moments, as it was last measured. */
export const bodies: readonly Pose[] = STEPS.map(createPose);
/** The adapting joints of the swing at each of the moments, nothing adapted, rad. */
const bases: readonly Float64Array[] = STEPS.map(() => new Float64Array(COUNT));
/** The same at the reference's moment of impact: the zero of the first unknowns. */
const zero = new Float64Array(COUNT);
/** One unit of effort of each rate, rad/s. */
export const rateScale = new Float64Array(COUNT);
const q = createJointVector();
/** Velocity of the head (m/s) and normal of the face in what was measured last, world frame. */
export const velocity = new Float64Array(3);
export const normal = new Float64Array(3);
/** The face's normal in the axes of the hand before the turn of the grip. */
const face = new Float64Array(3);
/** The reference's moment of impact, and the one at which the bodies stand, s. */
const moments = Float64Array.of(NaN, NaN);
const REFERENCE = 0;
const STOOD_AT = 1;

/** Ends of every unknown, units of effort: for the joints their ranges of motion. */
export const lower = new Float64Array(SIZE);
export const upper = new Float64Array(SIZE);
/** Largest rate that is looked for, units of effort. */
const LONGEST_RATE = 6;
/**
 * The least time the arms are given to adapt, s: half of what reference swings take from shaft parallel to the ball. Arms that cannot reach
 * ask for up to 60 deg; in much less time than this they would turn faster than any forearm does (published at impact: 1569 +- 338 deg/s,
 * Cheetham 2014). A modelling choice.
 */
export const SHORTEST = 0.02;

/** Turns to a swing with nothing adapted whose arms adapt from `from` on (s). Once for everything that is asked of it. */
export function takeUp(swing: Swing, from: number): void {
  const { times } = swing.reference;
  const { rig } = swing;
  const reference = times[K.impact];
  moments[REFERENCE] = reference;
  moments[STOOD_AT] = NaN;
  swingJoints(swing, reference, q);
  const span = times[K.impact] - times[K.shaftParallel];
  for (let i = 0; i < COUNT; i++) {
    zero[i] = q[ADAPTING[i]];
    rateScale[i] = (2 * EFFORT[i]) / span;
    lower[i] = (RANGES[i][0] - zero[i]) / EFFORT[i];
    upper[i] = (RANGES[i][1] - zero[i]) / EFFORT[i];
    lower[COUNT + i] = -LONGEST_RATE;
    upper[COUNT + i] = LONGEST_RATE;
  }
  lower[MOMENT] = (from + SHORTEST - reference) / MOMENT_EFFORT;
  upper[MOMENT] = (times[K.exit] - reference) / MOMENT_EFFORT;
  const [along, up, out] = rig.face;
  face[0] = rig.cosGripTurn * along + rig.sinGripTurn * up;
  face[1] = rig.cosGripTurn * up - rig.sinGripTurn * along;
  face[2] = out;
}

/** Ranges inside which the arms may adapt, rad. Deviation: Boone & Azen (1979); the others: the joints' own. */
const RANGES: readonly (readonly [number, number])[] = ADAPTING.map((joint) =>
  JOINTS[joint].id === 'leadWristRadial' ? [rad(-36), rad(22)] : [JOINTS[joint].min, JOINTS[joint].max],
);

/** The arms as the swing has them, with nothing adapted, at the earliest moment there is. */
export function restAtEarliest(swing: Swing, efforts: Float64Array): void {
  efforts.fill(0);
  efforts[MOMENT] = lower[MOMENT];
  standAt(swing, momentOf(efforts));
  for (let i = 0; i < COUNT; i++) efforts[i] = (bases[MIDDLE][i] - zero[i]) / EFFORT[i];
}

/** Moment of impact, s. */
export const momentOf = (efforts: Float64Array): number => moments[REFERENCE] + efforts[MOMENT] * MOMENT_EFFORT;
/** What a joint adds at impact, rad. Wants `findMisfit` to have been asked at the same efforts. */
export const offsetOf = (efforts: Float64Array, i: number): number =>
  zero[i] + efforts[i] * EFFORT[i] - bases[MIDDLE][i];
/** The rate a joint adds at impact, rad/s. */
export const rateOf = (efforts: Float64Array, i: number): number => efforts[COUNT + i] * rateScale[i];

/** Stands everything that does not adapt at the moment `t` (s) and just before and after it. */
export function standAt(swing: Swing, t: number): void {
  if (t === moments[STOOD_AT]) return;
  for (let m = 0; m < STEPS.length; m++) {
    swingJoints(swing, t + STEPS[m] * HALF, q);
    for (let i = 0; i < COUNT; i++) bases[m][i] = q[ADAPTING[i]];
    placeLeadShoulder(swing.rig, q, bodies[m]);
  }
  moments[STOOD_AT] = t;
}

/** Head to ball (m, world frame), path and face to those asked for (rad) at impact, for the given efforts. */
export function findMisfit(swing: Swing, goal: Goal, efforts: Float64Array, out: Float64Array): void {
  standAt(swing, momentOf(efforts));
  measure(swing, goal, efforts, MIDDLE, out);
}

/** The misfit of an impact at one of the moments. Wants `standAt`. */
export function measure(swing: Swing, goal: Goal, efforts: Float64Array, at: number, out: Float64Array): void {
  for (let m = at - 1; m <= at + 1; m++) {
    for (let i = 0; i < COUNT; i++) {
      const added = zero[i] + efforts[i] * EFFORT[i] - bases[at][i];
      q[ADAPTING[i]] = bases[m][i] + added + rateOf(efforts, i) * (m - at) * HALF;
    }
    placeClub(swing.rig, q, bodies[m]);
  }
  const { ballPoint } = swing.reference;
  const p = bodies[at];
  for (let i = 0; i < 3; i++) {
    out[i] = p[AT.head + i] - ballPoint[i];
    velocity[i] = (bodies[at + 1][AT.head + i] - bodies[at - 1][AT.head + i]) / (2 * HALF);
    normal[i] = p[AT.handAxes + i] * face[0] + p[AT.handAxes + 3 + i] * face[1] + p[AT.handAxes + 6 + i] * face[2];
  }
  out[PATH] = Math.atan2(velocity[2], velocity[0]) - goal.path;
  out[FACE] = Math.atan2(normal[2], normal[0]) - goal.face;
}

/**
 * What every unknown costs, in units of effort, and how that of each joint answers to the moment, to first order and, where asked, to
 * second: the swing itself moves on under it. Wants `findMisfit` or `findSlopes` to have been asked at the same efforts.
 */
export function findCosts(
  efforts: Float64Array,
  costs: Float64Array,
  ofMoment: Float64Array,
  bends?: Float64Array,
): void {
  for (let k = 0; k < SIZE; k++) costs[k] = efforts[k];
  for (let i = 0; i < COUNT; i++) {
    costs[i] = offsetOf(efforts, i) / EFFORT[i];
    const before = bases[MIDDLE - 1][i];
    const at = bases[MIDDLE][i];
    const after = bases[MIDDLE + 1][i];
    ofMoment[i] = (((before - after) / (2 * HALF)) * MOMENT_EFFORT) / EFFORT[i];
    if (bends) bends[i] = (((2 * at - before - after) / HALF ** 2) * MOMENT_EFFORT ** 2) / EFFORT[i];
  }
}
