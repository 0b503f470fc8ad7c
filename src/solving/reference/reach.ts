import { createLeastDistance } from '../../math/leastDistance';
import { DIALS, STILL, type MovementDial, type MovementId } from '../../model/movements';
import type { Band } from '../../reading/verdicts';
import { DIAL_COUNT, HALF_RANGE, toDials, type Judge } from '../diagnosis/judged';

/** Where a reading of the judge should come to lie, in that reading's unit: metres for the two judged ones. */
export interface Aim extends Band {
  /** Effort that one unit outside costs. High: staying outside never pays. 0: this reading is not asked about. */
  readonly weight: number;
}

/** Move the `free` dials away from `from` as little as can be, so that the judge's readings come to lie in their aims. */
export interface ReachProblem {
  readonly judge: Judge;
  /** Dial values now, model units, in the order of `DIALS`. */
  readonly from: Float64Array;
  /** Indices of the dials that may move; all others keep their value exactly. */
  readonly free: readonly number[];
  /** One for each reading, in the order in which the judge writes them. */
  readonly aims: readonly Aim[];
  /** How far each dial may go, in the order of `DIALS`. Default: its own limits. */
  readonly limits?: readonly DialLimits[];
}
/** How far a dial may go, in its own unit. */
export type DialLimits = Pick<MovementDial, 'min' | 'max'>;

/** A setting of the dials and what it does. */
export interface ReachPoint {
  readonly dials: Float64Array;
  /** Bicep gap and head depth, m, and what else the judge reads. */
  readonly readings: Float64Array;
  /** Root of the sum of squares of the changes, each over half of its dial's usual range. */
  readonly effort: number;
  /** How far each reading lies outside its aim, with sign: positive above it. */
  readonly outside: readonly number[];
  /** Square of the effort plus squares of what is outside, weighted: what is made small. */
  readonly cost: number;
}

const ROUNDS = 40;
/** Step of the difference quotients, in half ranges: far above the noise of the event search, well below any bend. */
const DIFFERENCE = 2e-4;
/** Largest first step, in half ranges. */
const FIRST_RADIUS = 1;
const SMALLEST_STEP = 1e-7;
/** Relative fall of the cost that is still progress. */
const PROGRESS = 1e-9;
/** Looks at the curve of the readings before a step is judged (second-order corrections). */
const CORRECTIONS = 2;

const outsideOf = ({ low, high }: Band, value: number): number =>
  value > high ? value - high : value < low ? value - low : 0;

/**
 * Smallest change that reaches the aims, or comes as close as the range of motion lets it: sequential least-distance steps
 * inside a trust region, dial limits as hard bounds of every step. The best of all `starts` (dial values) is returned;
 * undefined when the readings are missing at every start.
 * Source of the step: Lawson & Hanson, least-distance programming; of the corrections: Nocedal & Wright, Numerical
 * Optimization, 2nd ed. (2006), section 18.3.
 */
export function solveReach(problem: ReachProblem, starts: readonly ArrayLike<number>[]): ReachPoint | undefined {
  const descend = createDescent(problem);
  let best: ReachPoint | undefined;
  for (const start of starts) {
    const point = descend(start);
    if (point && (!best || point.cost < best.cost)) best = point;
  }
  return best;
}

/** Values that lie well toward steep and well toward shallow (common practice), as shares of the way to the dial's limits. */
const STEEP: Readonly<Record<MovementId, number>> = {
  leadWristFlexion: -0.6,
  rotationRate: 0.6,
  rotationDelay: -0.6,
  trailSideBend: -0.6,
  pelvisShift: -0.6,
};

/** Places to start a search from: where the dials are, the reference, well toward steep, well toward shallow. Dial values. */
export function startsFrom(from: Float64Array): Float64Array[] {
  const toward = (sign: number): Float64Array =>
    Float64Array.from(DIALS, ({ id, neutral, min, max }) => {
      const share = sign * STEEP[id];
      return neutral + share * (share > 0 ? max - neutral : neutral - min);
    });
  const reference = toDials(STILL);
  const isReference = from.every((value, i) => value === reference[i]);
  return [from, ...(isReference ? [] : [reference]), toward(1), toward(-1)];
}

/** The point at given dial values, clamped to the limits; undefined when a reading that is asked about is missing. */
export function reachPointAt(
  { judge, from, free, aims, limits = DIALS }: ReachProblem,
  dials: ArrayLike<number>,
): ReachPoint | undefined {
  const own = from.slice();
  let squares = 0;
  for (const i of free) {
    own[i] = clampDial(limits[i], from[i], dials[i]);
    squares += ((own[i] - from[i]) / HALF_RANGE[i]) ** 2;
  }
  const readings = new Float64Array(aims.length);
  judge.read(own, readings);
  const outside = aims.map(() => 0);
  let cost = squares;
  for (let k = 0; k < aims.length; k++) {
    if (aims[k].weight === 0) continue;
    if (Number.isNaN(readings[k])) return undefined;
    outside[k] = outsideOf(aims[k], readings[k]);
    cost += (aims[k].weight * outside[k]) ** 2;
  }
  return { dials: own, readings, effort: Math.sqrt(squares), outside, cost };
}

/** A value inside the dial's limits; a value that is outside them now may stay, not go further. */
function clampDial({ min, max }: DialLimits, now: number, value: number): number {
  return Math.min(Math.max(value, Math.min(min, now)), Math.max(max, now));
}

function createDescent(problem: ReachProblem): (start: ArrayLike<number>) => ReachPoint | undefined {
  const { from, free, aims, limits = DIALS } = problem;
  const n = free.length;
  const count = aims.length;
  /** A change of each free dial, and what each reading is left outside by. */
  const size = n + count;
  const step = createLeastDistance(size, 2 * size);
  const slope = new Float64Array(count * n);
  const level = new Float64Array(count);
  const target = new Float64Array(DIAL_COUNT);

  const changeOf = (point: ReachPoint, j: number): number =>
    (point.dials[free[j]] - from[free[j]]) / HALF_RANGE[free[j]];

  /** Slopes of the readings over each free dial, per half range; from below where the dial is at its upper limit. */
  function differentiate(here: ReachPoint): void {
    for (let j = 0; j < n; j++) {
      const i = free[j];
      const little = DIFFERENCE * HALF_RANGE[i];
      const upward = here.dials[i] + little <= Math.max(limits[i].max, from[i]);
      target.set(here.dials);
      target[i] += upward ? little : -little;
      const there = reachPointAt(problem, target);
      const run = there ? (there.dials[i] - here.dials[i]) / HALF_RANGE[i] : 1;
      for (let k = 0; k < count; k++) slope[k * n + j] = there ? (there.readings[k] - here.readings[k]) / run : 0;
    }
  }

  /** Where the straight-line picture through `point` would have the readings at `from`. */
  function levelThrough(point: ReachPoint): void {
    for (let k = 0; k < count; k++) {
      level[k] = point.readings[k];
      for (let j = 0; j < n; j++) level[k] -= slope[k * n + j] * changeOf(point, j);
    }
  }

  /** Least effort in the straight-line picture, no further than `radius` half ranges from `here`. Dial values, into `target`. */
  function proposeStep(here: ReachPoint, radius: number): boolean {
    const { matrix, bound, x } = step;
    matrix.fill(0);
    let row = 0;
    const limit = (column: number, sign: number, value: number): void => {
      matrix[row * size + column] = sign;
      bound[row++] = sign * value;
    };
    for (let j = 0; j < n; j++) {
      const i = free[j];
      const now = changeOf(here, j);
      limit(j, 1, Math.max(now - radius, Math.min(0, (limits[i].min - from[i]) / HALF_RANGE[i])));
      limit(j, -1, Math.min(now + radius, Math.max(0, (limits[i].max - from[i]) / HALF_RANGE[i])));
    }
    for (let k = 0; k < count; k++) {
      if (aims[k].weight === 0) continue;
      for (const [sign, edge] of [[1, aims[k].low] as const, [-1, aims[k].high] as const]) {
        for (let j = 0; j < n; j++) matrix[row * size + j] = sign * slope[k * n + j];
        matrix[row * size + n + k] = sign / aims[k].weight;
        bound[row++] = sign * (edge - level[k]);
      }
    }
    if (!step.solve(row)) return false;
    target.set(from);
    for (let j = 0; j < n; j++) target[free[j]] = from[free[j]] + x[j] * HALF_RANGE[free[j]];
    return true;
  }

  /** The best of a proposed step and its corrections. */
  function tryStep(here: ReachPoint, radius: number): ReachPoint | undefined {
    levelThrough(here);
    let best: ReachPoint | undefined;
    for (let i = 0; i <= CORRECTIONS; i++) {
      if (!proposeStep(here, radius)) break;
      const there = reachPointAt(problem, target);
      if (!there) break;
      if (best && there.cost >= best.cost * (1 - PROGRESS)) break;
      best = there;
      levelThrough(there);
    }
    return best;
  }

  return (start) => {
    let here = reachPointAt(problem, start);
    let radius = FIRST_RADIUS;
    let isKnown = false;
    for (let round = 0; here && round < ROUNDS && radius > SMALLEST_STEP; round++) {
      if (!isKnown) differentiate(here);
      const there = tryStep(here, radius);
      let moved = 0;
      for (let j = 0; there && j < n; j++) moved = Math.max(moved, Math.abs(changeOf(there, j) - changeOf(here, j)));
      isKnown = !there || here.cost - there.cost <= PROGRESS * (1 + here.cost);
      if (isKnown) {
        if (there && moved < SMALLEST_STEP) break;
        radius = Math.min(radius, there ? moved : radius) / 4;
      } else {
        here = there;
        if (moved > radius / 2) radius *= 2;
      }
    }
    return here;
  };
}
