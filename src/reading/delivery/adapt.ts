import { rad } from '../../math/angle';
import { ADAPTATION_FADE, ADAPTING, type Adaptation } from '../../model/adaptation';
import { CONDITIONS, COUNT, findMisfit, lower, momentOf, offsetOf, rateOf, SIZE, takeUp, upper } from './adaptArm';
import { FACE_WEIGHT, search } from './adaptSearch';
import type { Swing } from '../swing';

/**
 * How the arms must adapt for the head to meet the ball on a given path.
 * `held`: head on the ball, path as asked. `closest`: a joint ran into its range; what is left is told as a miss.
 */
export interface AdaptationResult {
  readonly status: 'held' | 'closest';
  readonly adaptation: Adaptation;
  /** Horizontal direction of the face normal at impact, rad. + right of the target line: open. */
  readonly face: number;
  /** Head to ball at impact, m, world frame. */
  readonly miss: readonly [number, number, number];
  /** Joints held back at the end of their range. */
  readonly limited: readonly number[];
}

/** The same delivery with its face left as it comes, returned square to the target, and in between as it is drawn. */
export interface FaceAdaptations {
  readonly left: AdaptationResult;
  readonly returned: AdaptationResult;
  readonly drawn: AdaptationResult;
  /** Whether the face comes back square within the ranges of motion. */
  readonly isReturned: boolean;
}

/** The face is square when it looks this near to the target, rad. */
const SQUARE = rad(0.05);
/** Path asked for, and where the ball lies, are in the world frame: so is a face that is square to the target. */
const TO_THE_TARGET = 0;
/** A joint this near to its end stands at it, in units of effort. */
const AT_END = 0.01;

const leftEfforts = new Float64Array(SIZE);
const returnedEfforts = new Float64Array(SIZE);
const drawnEfforts = new Float64Array(SIZE);
const misfit = new Float64Array(CONDITIONS);

/**
 * The smallest weighted change of the lead arm's joints (offset and rate at impact) and of the moment of impact that puts the head on the
 * ball and sends it along `path` (rad, + right of the target line), starting at `from` (s, shaft parallel): twice, with nothing asked of
 * the face and with the face square, and once for the face that lies `faceReturned` (0..1) of the way between the two. Where the face
 * cannot come back, it comes as near as leaves head and path alone. A modelling assumption, not a measurement.
 */
export function solveAdaptations(swing: Swing, from: number, path: number, faceReturned: number): FaceAdaptations {
  takeUp(swing, from);
  leftEfforts.fill(0);
  const left = solve(swing, from, { path, face: TO_THE_TARGET }, FACE_WEIGHT.none, leftEfforts);
  const canMeet = left.status === 'held';
  const square = { path, face: TO_THE_TARGET };
  const solveFor = (goal: typeof square, efforts: Float64Array, start: (k: number) => number): AdaptationResult => {
    for (let k = 0; k < SIZE; k++) efforts[k] = start(k);
    const full = canMeet ? solve(swing, from, goal, FACE_WEIGHT.full, efforts) : undefined;
    if (full?.status === 'held') return full;
    for (let k = 0; k < SIZE; k++) efforts[k] = start(k);
    return solve(swing, from, goal, FACE_WEIGHT.weak, efforts);
  };
  const returned = solveFor(square, returnedEfforts, (k) => leftEfforts[k]);
  return {
    left,
    returned,
    drawn: drawnOf(),
    isReturned: returned.status === 'held' && Math.abs(returned.face) < SQUARE,
  };

  function drawnOf(): AdaptationResult {
    if (faceReturned <= 0) return left;
    if (faceReturned >= 1) return returned;
    const between = (a: number, b: number): number => a + (b - a) * faceReturned;
    const goal = { path, face: between(left.face, returned.face) };
    const drawn = solveFor(goal, drawnEfforts, (k) => between(leftEfforts[k], returnedEfforts[k]));
    // Arms at the end of their ranges may find another way to be as near: then the end of the band that was meant more is drawn.
    const isBetween = (drawn.face - left.face) * (drawn.face - returned.face) < SQUARE ** 2;
    if (isBetween && (drawn.status === 'held' || !canMeet)) return drawn;
    return faceReturned < 0.5 ? left : returned;
  }
}

function solve(
  swing: Swing,
  from: number,
  goal: { readonly path: number; readonly face: number },
  faceWeight: number,
  efforts: Float64Array,
): AdaptationResult {
  const { isMet, face } = search(swing, goal, faceWeight, efforts);
  findMisfit(swing, goal, efforts, misfit);
  const offsets = new Float64Array(COUNT);
  const rates = new Float64Array(COUNT);
  for (let i = 0; i < COUNT; i++) {
    offsets[i] = offsetOf(efforts, i);
    rates[i] = rateOf(efforts, i);
  }
  return {
    status: isMet ? 'held' : 'closest',
    adaptation: { from, impact: momentOf(efforts), fade: ADAPTATION_FADE, offsets, rates },
    face,
    miss: [misfit[0], misfit[1], misfit[2]],
    limited: isMet ? [] : ADAPTING.filter((_, i) => isAtEnd(efforts, i)),
  };
}

const isAtEnd = (efforts: Float64Array, k: number): boolean =>
  Math.min(efforts[k] - lower[k], upper[k] - efforts[k]) < AT_END;

/** What an adaptation adds to a joint at impact, rad; 0 for a joint that does not adapt. */
export const addedTo = ({ offsets }: Adaptation, joint: number): number => offsets[ADAPTING.indexOf(joint)] ?? 0;
