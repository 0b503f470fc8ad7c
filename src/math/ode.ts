/** Writes the slope of the state `y` into `out`. Time, where it matters, is a component of the state. */
export type Slope = (y: Float64Array, out: Float64Array) => void;

// prettier-ignore
const STAGES = Float64Array.of(1 / 5, 3 / 40, 9 / 40, 44 / 45, -56 / 15, 32 / 9,
  19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729,
  9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656,
  35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84);
/** Fifth-order minus embedded fourth-order weights. */
const ERROR = Float64Array.of(71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40);
// prettier-ignore
const DENSE = Float64Array.of(-12715105075 / 11282082432, 0, 87487479700 / 32700410799, -10690763975 / 1880347072,
  701980252875 / 199316789632, -1453857185 / 822651844, 69997945 / 29380423);
const SHORTEST = 1e-10;

/**
 * Dormand-Prince 5(4) for y' = slope(y): error-controlled steps, fourth-order dense output over the last one.
 * `tolerance` bounds the error of a step, relative to 1 + |y|; `start` may ask for another. Call `start` first. Allocates only
 * when made, so one may serve many starts. Source: Hairer, Norsett & Wanner, Solving Ordinary Differential Equations I, 2nd ed.
 * (1993), sections II.5 and II.6.
 */
export function createOde(slope: Slope, size: number, tolerance: number, longestStep: number) {
  const y = new Float64Array(size);
  const from = new Float64Array(size);
  /** The seven slopes of a step, one after the other, and a window on each. */
  const slopes = new Float64Array(7 * size);
  const k = Array.from({ length: 7 }, (_, s) => slopes.subarray(s * size, (s + 1) * size));
  /** `h` is the length of the last step, `next` of the one to be tried. */
  const ode = { t: 0, h: 0, next: 0, tolerance, y, start, step, at };

  function start(y0: ArrayLike<number>, firstStep: number, finer = tolerance): void {
    for (let i = 0; i < size; i++) y[i] = y0[i];
    ode.t = 0;
    ode.next = firstStep;
    ode.tolerance = finer;
    slope(y, k[6]);
  }

  /** The state at each stage of a step of length `h`, and its slope there. */
  function tryStep(h: number): void {
    let row = 0;
    for (let s = 1; s < 7; s++) {
      for (let i = 0; i < size; i++) {
        let sum = 0;
        for (let j = 0; j < s; j++) sum += STAGES[row + j] * slopes[j * size + i];
        y[i] = from[i] + h * sum;
      }
      row += s;
      slope(y, k[s]);
    }
  }

  /** One step on. False when even the shortest step misses the tolerance: there the slope is not finite. */
  function step(): boolean {
    for (let i = 0; i < size; i++) {
      from[i] = y[i];
      slopes[i] = slopes[6 * size + i];
    }
    for (let h = Math.min(ode.next, longestStep); h > SHORTEST; h = ode.next) {
      tryStep(h);
      let sum = 0;
      for (let i = 0; i < size; i++) {
        let off = 0;
        for (let s = 0; s < 7; s++) off += ERROR[s] * slopes[s * size + i];
        sum += ((h * off) / (1 + Math.abs(from[i]))) ** 2;
      }
      const error = Math.sqrt(sum / size) / ode.tolerance;
      ode.next = h * Math.min(5, Math.max(0.2, 0.9 * error ** -0.2 || 0.2));
      ode.h = h;
      if (error <= 1) return (ode.t += h) > 0;
    }
    return false;
  }

  /** Component `i` within the last step: `x` 0 is its start, 1 its end. */
  function at(x: number, i: number): number {
    const rise = y[i] - from[i];
    const bend = ode.h * slopes[i] - rise;
    const twist = rise - ode.h * slopes[6 * size + i] - bend;
    let dense = 0;
    for (let s = 0; s < 7; s++) dense += DENSE[s] * slopes[s * size + i];
    return from[i] + x * (rise + (1 - x) * (bend + x * (twist + (1 - x) * ode.h * dense)));
  }
  return ode;
}
