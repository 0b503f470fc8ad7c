/** Writes the slope of `y` at `t` into `out`. */
export type Slope = (t: number, y: Float64Array, out: Float64Array) => void;

const C = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const A = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
/** Fifth-order minus embedded fourth-order weights. */
const E = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];
const D = [
  -12715105075 / 11282082432, 0, 87487479700 / 32700410799, -10690763975 / 1880347072,
  701980252875 / 199316789632, -1453857185 / 822651844, 69997945 / 29380423,
]; // prettier-ignore

/**
 * Dormand-Prince 5(4) steps for y' = slope(t, y), error-controlled, with fourth-order dense output over the last step.
 * `tolerance` bounds the error of a step in each component, relative to 1 + |y|. Allocates only when made.
 * Source: Hairer, Norsett & Wanner, Solving Ordinary Differential Equations I, 2nd ed. (1993), section II.5-6.
 */
export function createOde(slope: Slope, size: number, tolerance: number, longestStep: number) {
  const row = () => new Float64Array(size);
  const k = [row(), row(), row(), row(), row(), row(), row()];
  const from = row();
  const y = row();
  const ode = { t: 0, h: 0, next: longestStep, y, start, step, at };

  /** Puts the state at `y0`. The first step tried is `h` long. */
  function start(t: number, y0: ArrayLike<number>, h: number): void {
    y.set(y0);
    ode.t = t;
    ode.h = 0;
    ode.next = h;
    slope(t, y, k[6]!);
  }

  /** Takes one step, from `t - h` to `t`. False when no step of 1e-10 or more keeps the tolerance: nothing is finite there. */
  function step(): boolean {
    from.set(y);
    k[0]!.set(k[6]!);
    for (let h = Math.min(ode.next, longestStep); h > 1e-10; ) {
      for (let s = 1; s < 7; s++) {
        for (let i = 0; i < size; i++) y[i] = from[i]! + h * blend(A[s]!, s, i);
        slope(ode.t + C[s]! * h, y, k[s]!);
      }
      let error = 0;
      for (let i = 0; i < size; i++) error += ((h * blend(E, 7, i)) / (tolerance * (1 + Math.abs(from[i]!)))) ** 2;
      error = Math.sqrt(error / size);
      ode.next = h * Math.min(5, Math.max(0.2, 0.9 * error ** -0.2 || 0.2));
      if (error <= 1) return ((ode.t += ode.h = h), true);
      h = ode.next;
    }
    return false;
  }

  /** Component `i` at fraction `x` of the last step: 0 its start, 1 its end. */
  function at(x: number, i: number): number {
    const rise = y[i]! - from[i]!;
    const bend = ode.h * k[0]![i]! - rise;
    const twist = rise - ode.h * k[6]![i]! - bend;
    return from[i]! + x * (rise + (1 - x) * (bend + x * (twist + (1 - x) * ode.h * blend(D, 7, i))));
  }

  function blend(weights: readonly number[], stages: number, i: number): number {
    let sum = 0;
    for (let s = 0; s < stages; s++) sum += weights[s]! * k[s]![i]!;
    return sum;
  }
  return ode;
}
