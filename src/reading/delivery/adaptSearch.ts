import { rad } from '../../math/angle';
import { createBoxQuadratic } from '../../math/boxQuadratic';
import {
  CONDITIONS,
  COUNT,
  FACE,
  findCosts,
  findMisfit,
  lower,
  MOMENT,
  PATH,
  restAtEarliest,
  SIZE,
  upper,
  type Goal,
} from './adaptArm';
import { findSlopes } from './adaptSlopes';
import type { Swing } from '../swing';

/** Weights of the search: head within a millimetre, path within a tenth of a degree, a little for the effort. */
const TIGHT = { head: 0.001, path: rad(0.1), effort: 30 };
/** What one unit of effort costs. */
const LIGHT = 1 / TIGHT.effort ** 2;
/**
 * Weight of the face, 1/rad: not at all; enough to bring it to its goal within a hundredth of a degree where that can be done; or so
 * little that head and path do not suffer where it cannot.
 */
export const FACE_WEIGHT = { none: 0, full: 1 / rad(1), weak: 1 / rad(10) } as const;

/** The search ends with a step that changes no effort by more than this. */
const SETTLED = 1e-6;
/** Or by no more than this and by less than a thirtieth of the one before: the next would be some thirty times thirty smaller. */
const NEARLY = { settled: 1e-4, share: 1 / 30 };
/** Largest change of an effort in one free step: keeps the first ones where the chain is nearly linear. */
const LONGEST = 1;
/** Steps that are taken as they come, and then steps that must each do good, in turn; so often before it is left at that. */
const FREE_STEPS = 12;
const GUARDED_STEPS = 12;
const ROUNDS = 5;
/**
 * Where the way to the goal is too long, it is led there: head, path and face weigh this much of what they do in the end, and the arms
 * draw near as they weigh more. Against light weights the ways to the goal are broad and the first steps find theirs.
 */
const STAGES = [0.01, 0.03, 0.1, 0.3];
/** A stage ends with a step that changes no effort by more than this. */
const STAGE_SETTLED = 1e-3;
/** Damping of a step that does no good, in units of what effort costs, and where it is given up. */
const DAMPING = { first: 0.01, rise: 5, fall: 10, most: 1e9 };

const weights = new Float64Array(CONDITIONS);
const effort = new Float64Array(SIZE);
const trial = new Float64Array(SIZE);
const step = new Float64Array(SIZE);
const bowed = new Float64Array(SIZE);
const misfit = new Float64Array(CONDITIONS);
const pull = new Float64Array(CONDITIONS);
const slopes = new Float64Array(CONDITIONS * SIZE);
const costs = new Float64Array(SIZE);
const ofMoment = new Float64Array(COUNT);
const below = new Float64Array(SIZE);
const above = new Float64Array(SIZE);
const gradient = new Float64Array(SIZE);
const curvature = new Float64Array(SIZE * SIZE);
/** Second derivatives of every condition, and of the cost of every joint to the moment. */
const bends = new Float64Array(CONDITIONS * SIZE * SIZE);
const costBends = new Float64Array(COUNT);
const bent = new Float64Array(SIZE * SIZE);
const solveInBox = createBoxQuadratic(SIZE);

/**
 * Least effort that meets the goal, inside the ranges of motion; as near to it as they allow where it cannot be met. Least squares from
 * the efforts as they are, which receive the answer; with nothing asked of the face also from the earliest moment on, where they do not meet
 * it. Newton with the ranges kept in every step: how far the arms come does not hang on
 * where the search was cut off. Wants `takeUp`.  Answers the
 * face, rad, and whether the head is within half a millimetre of the ball and its path within a twentieth of a degree.
 */
export function search(
  swing: Swing,
  goal: Goal,
  faceWeight: number,
  efforts: Float64Array,
): { readonly isMet: boolean; readonly face: number } {
  weigh(faceWeight, 1);
  for (let k = 0; k < SIZE; k++) effort[k] = keepInside(efforts[k], k);
  if (!goFreely(swing, goal, SETTLED)) {
    // Steps that went astray are forgotten: led on from the start, the arms find the same way whatever the last digit.
    for (let k = 0; k < SIZE; k++) effort[k] = keepInside(efforts[k], k);
    goByStages(swing, goal, faceWeight);
  }
  efforts.set(effort);
  let isMet = isMetAt(swing, goal, efforts);
  if (!isMet && faceWeight === FACE_WEIGHT.none) {
    // Arms that cannot reach may come nearer at an early moment than at any about the swing's own: they are led to the earliest one, and
    // from there to the best nearby.
    const cost = costAt(swing, goal, efforts);
    restAtEarliest(swing, effort);
    const latest = upper[MOMENT];
    upper[MOMENT] = lower[MOMENT];
    goByStages(swing, goal, faceWeight);
    upper[MOMENT] = latest;
    settle(swing, goal);
    if (costAt(swing, goal, effort) < cost) efforts.set(effort);
    isMet = isMetAt(swing, goal, efforts);
  }
  return { isMet, face: misfit[FACE] + goal.face };
}

/** Weights of the search, a `share` of what they are in the end. */
function weigh(faceWeight: number, share: number): void {
  weights.fill(share / TIGHT.head, 0, 3);
  weights[PATH] = share / TIGHT.path;
  weights[FACE] = share * faceWeight;
}

/** From the efforts as they are, led on by weights that grow. */
function goByStages(swing: Swing, goal: Goal, faceWeight: number): void {
  for (const share of STAGES) {
    weigh(faceWeight, share);
    if (!goFreely(swing, goal, STAGE_SETTLED)) goGuarded(swing, goal);
  }
  weigh(faceWeight, 1);
  settle(swing, goal);
}

/** From the efforts as they are to the least nearby. */
function settle(swing: Swing, goal: Goal): void {
  for (let round = 0; round < ROUNDS; round++) {
    if (goFreely(swing, goal, SETTLED) || goGuarded(swing, goal)) return;
  }
}

/** Whether the head is on the ball and goes as asked. Leaves the misfit behind. */
function isMetAt(swing: Swing, goal: Goal, efforts: Float64Array): boolean {
  findMisfit(swing, goal, efforts, misfit);
  const away = Math.max(Math.abs(misfit[0]), Math.abs(misfit[1]), Math.abs(misfit[2]));
  return away < TIGHT.head / 2 && Math.abs(misfit[PATH]) < TIGHT.path / 2;
}

/** Steps as they come. True when they settled. */
function goFreely(swing: Swing, goal: Goal, settled: number): boolean {
  let last = 0;
  for (let steps = 0; steps < FREE_STEPS; steps++) {
    findQuadratic(swing, goal);
    const longest = findStep(0, true);
    const share = longest > LONGEST ? LONGEST / longest : 1;
    for (let k = 0; k < SIZE; k++) effort[k] = keepInside(effort[k] + share * step[k], k);
    if (longest <= settled || (longest <= NEARLY.settled && longest < NEARLY.share * last)) return true;
    last = longest;
  }
  return false;
}

/** Steps that each do good, damped until they do. True when they settled, or none does any more. */
function goGuarded(swing: Swing, goal: Goal): boolean {
  let cost = costAt(swing, goal, effort);
  let damping = 0;
  for (let steps = 0; steps < GUARDED_STEPS; steps++) {
    findQuadratic(swing, goal);
    let longest = findStep(damping, false);
    let next = tryStep(swing, goal);
    while (!(next < cost) && longest > SETTLED) {
      if (damping > DAMPING.most) return true;
      damping = Math.max(damping * DAMPING.rise, DAMPING.first);
      longest = findStep(damping, false);
      next = tryStep(swing, goal);
    }
    if (next < cost) {
      effort.set(trial);
      cost = next;
    }
    if (longest <= SETTLED) return true;
    damping = damping <= DAMPING.first ? 0 : damping / DAMPING.fall;
  }
  return false;
}

const keepInside = (value: number, k: number): number => Math.min(upper[k], Math.max(lower[k], value));

/** What the search makes least. */
function costAt(swing: Swing, goal: Goal, efforts: Float64Array): number {
  findMisfit(swing, goal, efforts, misfit);
  findCosts(efforts, costs, ofMoment);
  let sum = 0;
  for (let r = 0; r < CONDITIONS; r++) sum += (misfit[r] * weights[r]) ** 2;
  for (let k = 0; k < SIZE; k++) sum += costs[k] ** 2 * LIGHT;
  return sum;
}

function tryStep(swing: Swing, goal: Goal): number {
  for (let k = 0; k < SIZE; k++) trial[k] = keepInside(effort[k] + step[k], k);
  return costAt(swing, goal, trial);
}

/** Gradient and curvature of the cost where the efforts stand, as the slopes foretell them. */
function findQuadratic(swing: Swing, goal: Goal): void {
  findSlopes(swing, goal, effort, misfit, slopes, bends);
  findCosts(effort, costs, ofMoment, costBends);
  for (let a = 0; a < SIZE; a++) {
    below[a] = lower[a] - effort[a];
    above[a] = upper[a] - effort[a];
    gradient[a] = costs[a] * LIGHT;
    for (let r = 0; r < CONDITIONS; r++) gradient[a] += slopes[r * SIZE + a] * misfit[r] * weights[r] ** 2;
    for (let b = 0; b <= a; b++) {
      let sum = a === b ? LIGHT : 0;
      for (let r = 0; r < CONDITIONS; r++) sum += slopes[r * SIZE + a] * slopes[r * SIZE + b] * weights[r] ** 2;
      addBoth(curvature, a, b, sum, true);
    }
  }
  for (let i = 0; i < COUNT; i++) {
    gradient[MOMENT] += costs[i] * ofMoment[i] * LIGHT;
    addBoth(curvature, MOMENT, i, ofMoment[i] * LIGHT);
    addBoth(curvature, MOMENT, MOMENT, ofMoment[i] ** 2 * LIGHT);
  }
}

/**
 * The step to the least of the cost, into `step`. Answers its longest change of an effort. A free step counts each bend by the misfit
 * that a straight step would leave: what it mends must not pull. A guarded one counts what is there, and so goes down when damped.
 */
function findStep(damping: number, isFree: boolean): number {
  if (!solveInBox(curvature, gradient, below, above, step)) step.fill(0);
  for (let r = 0; r < CONDITIONS; r++) {
    let left = misfit[r];
    for (let k = 0; isFree && k < SIZE; k++) left += slopes[r * SIZE + k] * step[k];
    pull[r] = left * weights[r] ** 2;
  }
  for (let j = 0; j < SIZE; j++) {
    for (let k = 0; k <= j; k++) {
      let sum = curvature[j * SIZE + k];
      for (let r = 0; r < CONDITIONS; r++) sum += pull[r] * bends[(r * SIZE + j) * SIZE + k];
      addBoth(bent, j, k, sum, true);
    }
  }
  for (let i = 0; i < COUNT; i++) {
    const cost = isFree ? costs[i] + step[i] + ofMoment[i] * step[MOMENT] : costs[i];
    addBoth(bent, MOMENT, MOMENT, cost * LIGHT * costBends[i]);
  }
  // Where the bends leave no least, they are flattened until they do.
  let flat = damping;
  for (let k = 0; k < SIZE; k++) bent[k * SIZE + k] += flat * LIGHT;
  while (!solveInBox(bent, gradient, below, above, bowed) && flat < DAMPING.most) {
    const more = Math.max(0.1, 7 * flat);
    for (let k = 0; k < SIZE; k++) bent[k * SIZE + k] += more * LIGHT;
    flat += more;
  }
  if (flat < DAMPING.most) step.set(bowed);
  let longest = 0;
  for (let k = 0; k < SIZE; k++) longest = Math.max(longest, Math.abs(step[k]));
  return longest;
}

/** Adds to an entry of a symmetric matrix and its mirror image; `isFirst` writes it. */
function addBoth(out: Float64Array, a: number, b: number, value: number, isFirst = false): void {
  out[a * SIZE + b] = isFirst ? value : out[a * SIZE + b] + value;
  out[b * SIZE + a] = out[a * SIZE + b];
}
