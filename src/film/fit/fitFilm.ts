import { solveCholesky, solveLeastSquares, type SolveStatus } from '../../math/leastSquares';
import { createPose } from '../../model/chain';
import type { FilmMarks } from '../marks';
import type { Pinhole } from '../pinhole';
import { createPlayer, type Expected, type Player } from './player';
import { createTerms, type Terms } from './terms';
import { UNKNOWN_COUNT } from './unknowns';

/** A film as the search left it: everything in standard deviations of its prior, and how sure each is. */
export interface FilmFit {
  readonly status: SolveStatus;
  readonly expected: Expected;
  readonly marks: FilmMarks;
  readonly terms: Terms;
  readonly x: Float64Array;
  readonly free: readonly number[];
  readonly player: Player;
  readonly camera: Pinhole;
  /** Sum of squares of what is left, marks and priors, and of what is left of the marks alone. */
  readonly cost: number;
  /** Cost over the number of marked coordinates: about 1 when all is well. */
  readonly costPerFreedom: number;
  /** Lower triangle of what was learnt (Cholesky), in the order of `free`. */
  readonly information: Float64Array;
  /** Logarithm of how likely the marks are with what is free, all values of it counted. Up to a constant of the marks. */
  readonly evidence: number;
}

/** Farthest any unknown may go, in standard deviations. */
const FARTHEST = 6;
const DIFFERENCE = 1e-5;
const STEPS = 60;
const TOLERANCE = 1e-7;

/**
 * Fits camera, address, times, joints and the movements in `dials` (places in `x`) to all marks of a film by damped least squares. `start`
 * is a fit to begin from; without it, what is expected.
 */
export function fitFilm(expected: Expected, marks: FilmMarks, dials: readonly number[], start?: Float64Array): FilmFit {
  const player = createPlayer(expected);
  const terms = createTerms(expected, marks, player);
  const free = [...terms.used, ...dials].toSorted((a, b) => a - b);
  const x = new Float64Array(UNKNOWN_COUNT);
  if (start) for (const i of free) x[i] = start[i];
  else terms.guess(x);
  const count = terms.count + free.length;
  const y = Float64Array.from(free, (i) => x[i]);
  const residuals = (at: Float64Array, out: Float64Array): void => {
    for (let k = 0; k < free.length; k++) {
      x[free[k]] = at[k];
      out[terms.count + k] = at[k];
    }
    terms.write(x, out);
  };
  const bound = new Float64Array(free.length).fill(FARTHEST);
  const found = solveLeastSquares(residuals, count, y, {
    lower: bound.map((each) => -each),
    upper: bound,
    difference: DIFFERENCE,
    maxSteps: STEPS,
    tolerance: TOLERANCE,
  });
  const at = new Float64Array(count);
  residuals(y, at);
  const information = learn(residuals, y, at);
  let logRoot = 0;
  for (let i = 0; i < free.length; i++) logRoot += Math.log(information[i * free.length + i]);
  player.take(x);
  return {
    status: found.status,
    expected,
    marks,
    terms,
    x,
    free,
    player,
    camera: terms.camera(x),
    cost: found.cost,
    costPerFreedom: found.cost / terms.count,
    information,
    evidence: -found.cost / 2 - logRoot,
  };
}

/** Cholesky factor of the normal matrix at the end, whose priors keep it positive definite. */
function learn(
  residuals: (x: Float64Array, out: Float64Array) => void,
  x: Float64Array,
  at: Float64Array,
): Float64Array {
  const n = x.length;
  const jacobian: Float64Array[] = [];
  const trial = new Float64Array(at.length);
  for (let i = 0; i < n; i++) {
    const kept = x[i];
    x[i] = kept + DIFFERENCE;
    residuals(x, trial);
    x[i] = kept;
    jacobian.push(trial.map((value, j) => (value - at[j]) / DIFFERENCE));
  }
  residuals(x, trial);
  const normal = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let j = 0; j < at.length; j++) sum += jacobian[a][j] * jacobian[b][j];
      normal[a * n + b] = normal[b * n + a] = sum;
    }
  }
  // Solving for anything leaves the factor behind.
  solveCholesky(normal, new Float64Array(n), new Float64Array(n), n);
  return normal;
}

const scratch = createPose();

/** A number that follows from the unknowns, and its standard deviation by first-order propagation. */
export function propagate(
  { x, free, information, player }: FilmFit,
  read: (x: Float64Array) => number,
): { readonly value: number; readonly sd: number } {
  const n = free.length;
  const trial = x.slice();
  const ask = (): number => {
    player.take(trial);
    return read(trial);
  };
  const value = ask();
  const slope = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const i = free[k];
    trial[i] = x[i] + DIFFERENCE;
    slope[k] = (ask() - value) / DIFFERENCE;
    trial[i] = x[i];
  }
  player.take(x);
  // The variance is the square of the forward substitution through the factor.
  let variance = 0;
  for (let i = 0; i < n; i++) {
    let sum = slope[i];
    for (let k = 0; k < i; k++) sum -= information[i * n + k] * slope[k];
    slope[i] = sum / information[i * n + i];
    variance += slope[i] ** 2;
  }
  return { value, sd: Math.sqrt(variance) };
}

/** Pose of the fitted player at a checkpoint: when it is passed by his own events, or NaN, in a buffer that the next call overwrites. */
export function poseAt(fit: Pick<FilmFit, 'player'>, at: 'arm' | 'shaft', t: number): Float64Array {
  fit.player.pose(at, t, scratch);
  return scratch;
}
