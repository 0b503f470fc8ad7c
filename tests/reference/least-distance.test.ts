import { describe, expect, test } from 'vitest';
import { createLeastDistance } from '../../src/math/leastDistance';
import { createRandom } from './random';

/** Solves the square system `a x = b` by elimination with pivoting; undefined when it has none or many solutions. */
function eliminate(a: number[][], b: number[]): number[] | undefined {
  const m = a.map((row, i) => [...row, b[i]]);
  const n = m.length;
  for (let k = 0; k < n; k++) {
    const pivot = m.slice(k).reduce((best, row, i) => (Math.abs(row[k]) > Math.abs(m[best][k]) ? i + k : best), k);
    [m[k], m[pivot]] = [m[pivot], m[k]];
    if (Math.abs(m[k][k]) < 1e-9) return undefined;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const f = m[i][k] / m[k][k];
      for (let j = k; j <= n; j++) m[i][j] -= f * m[k][j];
    }
  }
  return m.map((row, i) => row[n] / row[i]);
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i], 0);

/** Shortest point by trying every set of inequalities that could hold with equality: slow and plain. */
function shortestByTrying(rows: number[][], bounds: number[]): number[] | undefined {
  const n = rows[0].length;
  let best: number[] | undefined;
  for (let set = 0; set < 1 << rows.length; set++) {
    const active = rows.map((_, i) => i).filter((i) => set & (1 << i));
    if (active.length > n) continue;
    const share = eliminate(
      active.map((i) => active.map((j) => dot(rows[i], rows[j]))),
      active.map((i) => bounds[i]),
    );
    if (!share) continue;
    const x = Array.from({ length: n }, (_, c) => active.reduce((sum, i, k) => sum + share[k] * rows[i][c], 0));
    if (rows.every((row, i) => dot(row, x) >= bounds[i] - 1e-9) && (!best || dot(x, x) < dot(best, best))) best = x;
  }
  return best;
}

describe('least-distance programming', () => {
  test('agrees with trying every set of active inequalities on 2,000 random problems', () => {
    const random = createRandom(3);
    let solvable = 0;
    for (let i = 0; i < 2000; i++) {
      const n = 1 + (i % 4);
      const count = 1 + (i % 7);
      const rows = Array.from({ length: count }, () => Array.from({ length: n }, () => 2 * random() - 1));
      const bounds = rows.map(() => 2 * random() - 1);
      const expected = shortestByTrying(rows, bounds);
      const problem = createLeastDistance(n, count);
      problem.matrix.set(rows.flat());
      problem.bound.set(bounds);
      if (!expected) continue;
      solvable++;
      expect(problem.solve(count)).toBe(true);
      const size = 1 + Math.hypot(...expected);
      expected.forEach((value, c) => expect(Math.abs(problem.x[c] - value)).toBeLessThan(1e-8 * size * size));
    }
    expect(solvable).toBeGreaterThan(1000);
  });

  test('says so when no point meets every inequality', () => {
    const problem = createLeastDistance(2, 2);
    problem.matrix.set([1, 0, -1, 0]);
    problem.bound.set([1, 1]);
    expect(problem.solve(2)).toBe(false);
  });

  test('stays at the origin when the origin will do', () => {
    const problem = createLeastDistance(2, 2);
    problem.matrix.set([1, 0, 0, 1]);
    problem.bound.set([-1, -2]);
    expect(problem.solve(2)).toBe(true);
    expect([...problem.x].map(Math.abs)).toEqual([0, 0]);
  });
});
