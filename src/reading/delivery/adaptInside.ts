import { rad } from '../../math/angle';
import { createBoxQuadratic } from '../../math/boxQuadratic';
import { ADAPTING } from '../../model/adaptation';
import { addBends, base, CONDITIONS, COUNT, findMisfit, findSlopes, scale, SIZE } from './adaptArm';
import type { Swing } from '../swing';

/** Ranges inside which the arms may adapt, rad. Deviation: Boone & Azen (1979); the others: the joints' own. */
export const RANGES: readonly (readonly [number, number])[] = [
  [rad(-60), rad(110)],
  [rad(-90), rad(60)],
  [rad(-150), rad(150)],
  [rad(-36), rad(22)],
];

/** Weights of the bounded search: head within a millimetre, path within a tenth of a degree, a little for the effort. */
const TIGHT = { head: 0.001, path: rad(0.1), effort: 30 };
const WEIGHTS = Float64Array.of(1 / TIGHT.head, 1 / TIGHT.head, 1 / TIGHT.head, 1 / TIGHT.path);
/** Largest change of a rate in the bounded search, units of effort. */
const LONGEST_RATE = 6;
/** The search ends with a step that changes no effort by more than this: the next would be its square. */
const SETTLED = 1e-4;
/** Steps shorter than this are near enough for the chain's own curvature to show the way. */
const NEAR = 1;
const MOST_STEPS = 60;
const SHORTEST_SHARE = 1 / 64;

const effort = new Float64Array(SIZE);
const trial = new Float64Array(SIZE);
const step = new Float64Array(SIZE);
const bowed = new Float64Array(SIZE);
const misfit = new Float64Array(CONDITIONS);
const pull = new Float64Array(CONDITIONS);
const slopes = new Float64Array(CONDITIONS * SIZE);
const lower = new Float64Array(SIZE);
const upper = new Float64Array(SIZE);
const below = new Float64Array(SIZE);
const above = new Float64Array(SIZE);
const gradient = new Float64Array(SIZE);
const curvature = new Float64Array(SIZE * SIZE);
const solveInBox = createBoxQuadratic(SIZE);

/**
 * Least squares inside the ranges, from no change at all: meets the conditions where it can and comes as close as it can where not.
 * Gauss-Newton, then Newton with exact derivatives, the ranges kept in every step: how far the arms come does not hang on where the
 * search was cut off. `out` receives the efforts. True when the head is within half a millimetre and the path within a twentieth of
 * a degree.
 */
export function searchInside(swing: Swing, path: number, out: Float64Array): boolean {
  for (let k = 0; k < SIZE; k++) {
    lower[k] = k < COUNT ? edge(k, 0) : -LONGEST_RATE;
    upper[k] = k < COUNT ? edge(k, 1) : LONGEST_RATE;
    trial[k] = Math.min(upper[k], Math.max(lower[k], 0));
  }
  findMisfit(swing, path, trial, misfit);
  let cost = costOf(trial);
  let isNear = false;
  for (let steps = 0; steps < MOST_STEPS; steps++) {
    effort.set(trial);
    const longest = findStep(swing, path, isNear);
    let next = tryShare(swing, path, 1);
    if (longest <= SETTLED) break;
    for (let share = 0.5; !(next < cost) && share >= SHORTEST_SHARE; share /= 2) next = tryShare(swing, path, share);
    if (next < cost) {
      isNear = longest < NEAR;
      cost = next;
      continue;
    }
    trial.set(effort);
    if (!isNear) break;
    isNear = false;
  }
  out.set(trial);
  findMisfit(swing, path, out, misfit);
  const away = Math.max(Math.abs(misfit[0]), Math.abs(misfit[1]), Math.abs(misfit[2]));
  return away < TIGHT.head / 2 && Math.abs(misfit[3]) < TIGHT.path / 2;
}

/** Lower (0) or upper (1) end of an offset, in units of effort. */
const edge = (i: number, end: 0 | 1): number => (RANGES[i][end] - base[ADAPTING[i]]) / scale[i];

/** What the bounded search makes least, for the misfit that was found last. */
function costOf(efforts: Float64Array): number {
  let sum = 0;
  for (let r = 0; r < CONDITIONS; r++) sum += (misfit[r] * WEIGHTS[r]) ** 2;
  for (let k = 0; k < SIZE; k++) sum += (efforts[k] / TIGHT.effort) ** 2;
  return sum;
}

function tryShare(swing: Swing, path: number, share: number): number {
  for (let k = 0; k < SIZE; k++) trial[k] = Math.min(upper[k], Math.max(lower[k], effort[k] + share * step[k]));
  findMisfit(swing, path, trial, misfit);
  return costOf(trial);
}

/** The step to the least of the cost as its slopes, or its slopes and bends, foretell it. Answers its longest change of an effort. */
function findStep(swing: Swing, path: number, withBends: boolean): number {
  findMisfit(swing, path, effort, misfit);
  findSlopes(slopes);
  for (let a = 0; a < SIZE; a++) {
    below[a] = lower[a] - effort[a];
    above[a] = upper[a] - effort[a];
    gradient[a] = effort[a] / TIGHT.effort ** 2;
    for (let r = 0; r < CONDITIONS; r++) gradient[a] += slopes[r * SIZE + a] * misfit[r] * WEIGHTS[r] ** 2;
    for (let b = 0; b <= a; b++) {
      let sum = a === b ? 1 / TIGHT.effort ** 2 : 0;
      for (let r = 0; r < CONDITIONS; r++) sum += slopes[r * SIZE + a] * slopes[r * SIZE + b] * WEIGHTS[r] ** 2;
      curvature[a * SIZE + b] = sum;
      curvature[b * SIZE + a] = sum;
    }
  }
  if (!solveInBox(curvature, gradient, below, above, step)) step.fill(0);
  if (withBends) bendStep();
  let longest = 0;
  for (let k = 0; k < SIZE; k++) longest = Math.max(longest, Math.abs(step[k]));
  return longest;
}

/**
 * The same step with the bends counted in, each by the misfit that the straight step would leave: what it mends must not pull. Where
 * they leave no least, the straight step stays.
 */
function bendStep(): void {
  for (let r = 0; r < CONDITIONS; r++) {
    let left = misfit[r];
    for (let k = 0; k < SIZE; k++) left += slopes[r * SIZE + k] * step[k];
    pull[r] = left * WEIGHTS[r] ** 2;
  }
  addBends(pull, curvature);
  if (solveInBox(curvature, gradient, below, above, bowed)) step.set(bowed);
}
