/** How a search ended. `stalled`: no step makes it better although the goal is not met. */
export type SolveStatus = 'converged' | 'stalled' | 'step-limit' | 'not-finite';

export interface LeastSquaresResult {
  readonly status: SolveStatus;
  /** Root mean square of the residuals at the end, in their own (weighted) unit. */
  readonly residual: number;
  /** Sum of their squares. Of two ends of one problem the lower is the better, however many residuals were counted. */
  readonly cost: number;
  readonly evaluations: number;
  readonly steps: number;
}

export interface LeastSquaresOptions {
  readonly lower: ArrayLike<number>;
  readonly upper: ArrayLike<number>;
  /** Step of the forward difference, in each unknown's own unit. */
  readonly difference: number;
  readonly maxSteps: number;
  /** Ends when a step lowers the cost by less than this share of it. */
  readonly tolerance: number;
}

/**
 * Damped least squares (Levenberg-Marquardt) with forward differences and box bounds by projection.
 * `x` is the start and receives the best point found; `residuals(x, out)` fills `count` weighted residuals.
 * Nothing throws: a residual that is not finite ends the search with that status at the best point so far.
 * Source: J. J. More, The Levenberg-Marquardt algorithm: implementation and theory (1978), damping scaled by the diagonal.
 */
export function solveLeastSquares(
  residuals: (x: Float64Array, out: Float64Array) => void,
  count: number,
  x: Float64Array,
  options: LeastSquaresOptions,
): LeastSquaresResult {
  const n = x.length;
  const { lower, upper, difference, maxSteps, tolerance } = options;
  const r = new Float64Array(count);
  const trialR = new Float64Array(count);
  const trial = new Float64Array(n);
  const jacobian = new Float64Array(n * count);
  const normal = new Float64Array(n * n);
  const system = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  const step = new Float64Array(n);
  for (let i = 0; i < n; i++) x[i] = clamp(x[i], lower[i], upper[i]);
  residuals(x, r);
  let cost = sumOfSquares(r);
  let evaluations = 1;
  let damping = 1e-3;
  const end = (status: SolveStatus, steps: number): LeastSquaresResult => ({
    status,
    residual: Math.sqrt(cost / count),
    cost,
    evaluations,
    steps,
  });
  if (!Number.isFinite(cost)) return end('not-finite', 0);
  for (let k = 0; k < maxSteps; k++) {
    for (let i = 0; i < n; i++) {
      const kept = x[i];
      const h = kept + difference <= upper[i] ? difference : -difference;
      x[i] = kept + h;
      residuals(x, trialR);
      x[i] = kept;
      for (let j = 0; j < count; j++) jacobian[i * count + j] = (trialR[j] - r[j]) / h;
    }
    evaluations += n;
    formNormal(jacobian, r, n, count, normal, gradient);
    let improved = false;
    for (let attempt = 0; attempt < 12 && !improved; attempt++) {
      system.set(normal);
      for (let i = 0; i < n; i++) system[i * n + i] += damping * (normal[i * n + i] + 1e-12);
      if (solveCholesky(system, gradient, step, n)) {
        for (let i = 0; i < n; i++) trial[i] = clamp(x[i] - step[i], lower[i], upper[i]);
        residuals(trial, trialR);
        evaluations++;
        const trialCost = sumOfSquares(trialR);
        if (trialCost < cost) {
          const gain = (cost - trialCost) / cost;
          x.set(trial);
          r.set(trialR);
          cost = trialCost;
          damping = Math.max(damping / 5, 1e-12);
          improved = true;
          if (gain < tolerance) return end('converged', k + 1);
          continue;
        }
      }
      damping *= 4;
    }
    if (!improved) return end(damping > 1e6 ? 'converged' : 'stalled', k + 1);
  }
  return end('step-limit', maxSteps);
}

const clamp = (v: number, low: number, high: number): number => (v < low ? low : v > high ? high : v);

function sumOfSquares(r: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < r.length; i++) sum += r[i] * r[i];
  return sum;
}

function formNormal(
  jacobian: Float64Array,
  r: Float64Array,
  n: number,
  count: number,
  normal: Float64Array,
  gradient: Float64Array,
): void {
  for (let a = 0; a < n; a++) {
    let g = 0;
    for (let j = 0; j < count; j++) g += jacobian[a * count + j] * r[j];
    gradient[a] = g;
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let j = 0; j < count; j++) sum += jacobian[a * count + j] * jacobian[b * count + j];
      normal[a * n + b] = sum;
      normal[b * n + a] = sum;
    }
  }
}

/** Solves `a x = b` for a symmetric positive definite `a` (n by n, destroyed). False when it is not positive definite. */
export function solveCholesky(a: Float64Array, b: ArrayLike<number>, x: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j];
      for (let k = 0; k < j; k++) sum -= a[i * n + k] * a[j * n + k];
      if (i === j) {
        if (!(sum > 0)) return false;
        a[i * n + i] = Math.sqrt(sum);
      } else {
        a[i * n + j] = sum / a[j * n + j];
      }
    }
  }
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= a[i * n + k] * x[k];
    x[i] = sum / a[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i];
    for (let k = i + 1; k < n; k++) sum -= a[k * n + i] * x[k];
    x[i] = sum / a[i * n + i];
  }
  return true;
}
