/** Room for one problem size, worked out once. Dimensionless throughout. */
export interface LeastDistance {
  /** Rows of `matrix` (row by row) and entries of `bound`: the caller fills `count` of them. */
  readonly matrix: Float64Array;
  readonly bound: Float64Array;
  /** The answer. */
  readonly x: Float64Array;
  /** The point nearest to the origin with `matrix x >= bound`, into `x`. False when no point meets every row. */
  solve(count: number): boolean;
}

const SMALLEST = 1e-12;

/**
 * Least-distance programming: the shortest `x` of `size` numbers under at most `most` linear inequalities, exact up to rounding.
 * Source: Lawson & Hanson, Solving Least Squares Problems (1974), chapter 23: LDP by way of non-negative least squares (NNLS).
 */
export function createLeastDistance(size: number, most: number): LeastDistance {
  const rows = size + 1;
  const matrix = new Float64Array(most * size);
  const bound = new Float64Array(most);
  const x = new Float64Array(size);
  /** Columns of the NNLS problem, each the row of an inequality with its bound, scaled to unit length. */
  const columns = new Float64Array(most * rows);
  const y = new Float64Array(most);
  const pull = new Float64Array(most);
  const residual = new Float64Array(rows);
  const fit = new Float64Array(most);
  const work = new Float64Array(most * rows);
  const right = new Float64Array(rows);
  const passive: number[] = [];

  function solve(count: number): boolean {
    scale(count);
    solveNonNegative(count);
    findResidual();
    let length = 0;
    for (let i = 0; i < rows; i++) length = Math.max(length, Math.abs(residual[i]));
    if (length < SMALLEST || residual[size] > -SMALLEST * length) return false;
    for (let i = 0; i < size; i++) x[i] = -residual[i] / residual[size];
    return true;
  }

  function scale(count: number): void {
    for (let j = 0; j < count; j++) {
      let sum = bound[j] * bound[j];
      for (let i = 0; i < size; i++) sum += matrix[j * size + i] ** 2;
      const factor = sum > 0 ? 1 / Math.sqrt(sum) : 0;
      for (let i = 0; i < size; i++) columns[j * rows + i] = matrix[j * size + i] * factor;
      columns[j * rows + size] = bound[j] * factor;
    }
  }

  /** E y - f, with f the last unit vector. */
  function findResidual(): void {
    residual.fill(0);
    residual[size] = -1;
    for (const j of passive) for (let i = 0; i < rows; i++) residual[i] += y[j] * columns[j * rows + i];
  }

  /** min |E y - f| over y >= 0: columns enter one by one, and leave when their share would turn negative. */
  function solveNonNegative(count: number): void {
    y.fill(0);
    passive.length = 0;
    for (let round = 0; round < 4 * count; round++) {
      findResidual();
      for (let j = 0; j < count; j++) {
        let sum = 0;
        for (let i = 0; i < rows; i++) sum -= columns[j * rows + i] * residual[i];
        pull[j] = passive.includes(j) ? 0 : sum;
      }
      if (!enter(count)) return;
      while (!stepToFit());
    }
  }

  /** Takes in the column that pulls hardest and keeps a positive share; false when none is left. */
  function enter(count: number): boolean {
    for (;;) {
      let best = -1;
      for (let j = 0; j < count; j++) if (pull[j] > SMALLEST && (best < 0 || pull[j] > pull[best])) best = j;
      if (best < 0 || passive.length >= rows) return false;
      passive.push(best);
      fitPassive();
      if (fit[passive.length - 1] > 0) return true;
      passive.pop();
      pull[best] = 0;
    }
  }

  /** Goes toward the unconstrained fit as far as the shares stay positive; true when it got there. */
  function stepToFit(): boolean {
    let step = 1;
    passive.forEach((j, k) => {
      if (fit[k] <= 0) step = Math.min(step, y[j] / (y[j] - fit[k]));
    });
    passive.forEach((j, k) => {
      y[j] += step * (fit[k] - y[j]);
    });
    if (step === 1) return true;
    for (let k = passive.length - 1; k >= 0; k--) {
      if (y[passive[k]] > SMALLEST) continue;
      y[passive[k]] = 0;
      passive.splice(k, 1);
    }
    fitPassive();
    return false;
  }

  /** Least squares over the passive columns by Householder reflections, into `fit`. */
  function fitPassive(): void {
    const n = passive.length;
    passive.forEach((j, k) => work.set(columns.subarray(j * rows, (j + 1) * rows), k * rows));
    right.fill(0);
    right[size] = 1;
    for (let k = 0; k < n; k++) reflect(k, n);
    for (let k = n - 1; k >= 0; k--) {
      let sum = right[k];
      for (let c = k + 1; c < n; c++) sum -= work[c * rows + k] * fit[c];
      const pivot = work[k * rows + k];
      fit[k] = Math.abs(pivot) > SMALLEST ? sum / pivot : 0;
    }
  }

  function reflect(k: number, n: number): void {
    let norm = 0;
    for (let i = k; i < rows; i++) norm += work[k * rows + i] ** 2;
    if (norm === 0) return;
    const pivot = work[k * rows + k];
    const alpha = pivot > 0 ? -Math.sqrt(norm) : Math.sqrt(norm);
    const half = norm - pivot * alpha;
    work[k * rows + k] = pivot - alpha;
    for (let c = k + 1; c <= n; c++) {
      const column = c === n ? right : work.subarray(c * rows, (c + 1) * rows);
      let dot = 0;
      for (let i = k; i < rows; i++) dot += work[k * rows + i] * column[i];
      for (let i = k; i < rows; i++) column[i] -= (dot / half) * work[k * rows + i];
    }
    work[k * rows + k] = alpha;
  }

  return { matrix, bound, x, solve };
}
