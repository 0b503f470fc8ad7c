import { solveCholesky } from './leastSquares';

/** Where a component stands: between its ends, or held at one of them. */
const FREE = 0;
const AT_LOWER = 1;
const AT_UPPER = 2;

/** Finds the least of a quadratic in a box: see `createBoxQuadratic`. */
export type BoxQuadratic = (
  curvature: Float64Array,
  slope: Float64Array,
  lower: ArrayLike<number>,
  upper: ArrayLike<number>,
  out: Float64Array,
) => boolean;

/**
 * Makes a solver for the least of 1/2 s'As + b's with every component of s (`size` of them) between its two ends: A is `curvature`
 * (symmetric, positive definite, row by row), b `slope`. Writes s into `out`; false when A is not positive definite where it matters or
 * a number is not finite. Allocates only when made. Source: active sets, Nocedal & Wright, Numerical Optimization, 2nd ed. (2006), section 16.5.
 */
export function createBoxQuadratic(size: number): BoxQuadratic {
  const held = new Uint8Array(size);
  const gradient = new Float64Array(size);
  const step = new Float64Array(size);
  const system = new Float64Array(size * size);
  const right = new Float64Array(size);
  const reduced = new Float64Array(size);

  function slopeAt(curvature: Float64Array, slope: Float64Array, s: Float64Array): void {
    for (let i = 0; i < size; i++) {
      let sum = slope[i];
      for (let j = 0; j < size; j++) sum += curvature[i * size + j] * s[j];
      gradient[i] = sum;
    }
  }

  /** From here to the least over the free components, into `step`. */
  function stepOverFree(curvature: Float64Array): boolean {
    let count = 0;
    for (let i = 0; i < size; i++) if (held[i] === FREE) right[count++] = -gradient[i];
    let at = 0;
    for (let i = 0; i < size; i++) {
      if (held[i] !== FREE) continue;
      for (let j = 0; j < size; j++) if (held[j] === FREE) system[at++] = curvature[i * size + j];
    }
    if (!solveCholesky(system, right, reduced, count)) return false;
    let isFinite = true;
    for (let i = 0, k = 0; i < size; i++) {
      step[i] = held[i] === FREE ? reduced[k++] : 0;
      isFinite &&= Number.isFinite(step[i]);
    }
    return isFinite;
  }

  /** Goes along `step` as far as the box lets it, and holds what it ran into. Whether it came all the way. */
  function walk(lower: ArrayLike<number>, upper: ArrayLike<number>, s: Float64Array): boolean {
    let share = 1;
    let hit = -1;
    for (let i = 0; i < size; i++) {
      if (step[i] === 0) continue;
      const room = (step[i] < 0 ? lower[i] : upper[i]) - s[i];
      if (room / step[i] >= share) continue;
      share = room / step[i];
      hit = i;
    }
    for (let i = 0; i < size; i++) s[i] += share * step[i];
    if (hit < 0) return true;
    held[hit] = step[hit] < 0 ? AT_LOWER : AT_UPPER;
    s[hit] = held[hit] === AT_LOWER ? lower[hit] : upper[hit];
    return false;
  }

  /** Lets go of the held component that presses hardest away from its end. False when none does. */
  function letGo(): boolean {
    let most = 0;
    let which = -1;
    for (let i = 0; i < size; i++) {
      const pull = held[i] === AT_LOWER ? -gradient[i] : held[i] === AT_UPPER ? gradient[i] : 0;
      if (pull <= most) continue;
      most = pull;
      which = i;
    }
    if (which >= 0) held[which] = FREE;
    return which >= 0;
  }

  return (curvature, slope, lower, upper, out) => {
    for (let i = 0; i < size; i++) {
      if (!(upper[i] - lower[i] < Infinity)) return false;
      out[i] = Math.min(upper[i], Math.max(lower[i], 0));
    }
    slopeAt(curvature, slope, out);
    for (let i = 0; i < size; i++) {
      if (out[i] === lower[i] && gradient[i] > 0) held[i] = AT_LOWER;
      else if (out[i] === upper[i] && gradient[i] < 0) held[i] = AT_UPPER;
      else held[i] = FREE;
    }
    // Every round holds or lets go of one component: far fewer than the sets there are, and never for ever.
    for (let round = 0; round < 12 * size; round++) {
      slopeAt(curvature, slope, out);
      if (!stepOverFree(curvature)) return false;
      if (!walk(lower, upper, out)) continue;
      slopeAt(curvature, slope, out);
      if (!letGo()) return true;
    }
    return false;
  };
}
