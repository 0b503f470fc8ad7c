import { describe, expect, test } from 'vitest';
import { createBoxQuadratic } from '../../src/math/boxQuadratic';
import { createRandom } from './random';

interface Problem {
  readonly a: readonly (readonly number[])[];
  readonly b: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
}

/** Solves the square system `a x = b` by elimination with pivoting. */
function eliminate(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const m = a.map((row, i) => [...row, b[i]]);
  for (let k = 0; k < m.length; k++) {
    const pivot = m.slice(k).reduce((best, row, i) => (Math.abs(row[k]) > Math.abs(m[best][k]) ? i + k : best), k);
    [m[k], m[pivot]] = [m[pivot], m[k]];
    for (let i = 0; i < m.length; i++) {
      if (i === k) continue;
      const f = m[i][k] / m[k][k];
      for (let j = k; j <= m.length; j++) m[i][j] -= f * m[k][j];
    }
  }
  return m.map((row, i) => row[m.length] / row[i]);
}

const valueAt = ({ a, b }: Problem, s: readonly number[]): number =>
  s.reduce((sum, si, i) => sum + si * (b[i] + a[i].reduce((dot, aij, j) => dot + aij * s[j], 0) / 2), 0);

/** The least by trying every way of holding components at their ends: slow and plain. */
function leastByTrying(problem: Problem): number[] {
  const { a, b, lower, upper } = problem;
  const n = b.length;
  let best: number[] | undefined;
  for (let way = 0; way < 3 ** n; way++) {
    const kind = b.map((_, i) => Math.floor(way / 3 ** i) % 3);
    const s = kind.map((k, i) => (k === 1 ? lower[i] : k === 2 ? upper[i] : 0));
    const free = kind.flatMap((k, i) => (k === 0 ? [i] : []));
    const found = eliminate(
      free.map((i) => free.map((j) => a[i][j])),
      free.map((i) => -b[i] - a[i].reduce((sum, aij, j) => sum + aij * s[j], 0)),
    );
    free.forEach((i, k) => (s[i] = found[k]));
    const isInside = s.every((v, i) => v >= lower[i] - 1e-12 && v <= upper[i] + 1e-12);
    if (isInside && (!best || valueAt(problem, s) < valueAt(problem, best))) best = s;
  }
  return best!;
}

function solve({ a, b, lower, upper }: Problem): { ok: boolean; s: number[] } {
  const out = new Float64Array(b.length);
  const ok = createBoxQuadratic(b.length)(Float64Array.from(a.flat()), Float64Array.from(b), lower, upper, out);
  return { ok, s: [...out] };
}

describe('the least of a quadratic in a box', () => {
  test('the bowl over (3, -1), looked at between 0 and 2 by 0 and 5, is least in the corner (2, 0)', () => {
    const a = [
      [1, 0],
      [0, 1],
    ];
    expect(solve({ a, b: [-3, 1], lower: [0, 0], upper: [2, 5] })).toEqual({ ok: true, s: [2, 0] });
    expect(solve({ a, b: [-3, 1], lower: [-9, -9], upper: [9, 9] })).toEqual({ ok: true, s: [3, -1] });
  });

  test('an end met on the way is let go again when the least lies away from it', () => {
    // A valley along (1, 1): the straight way to (-0.5, -3) leaves the box above, the least inside lies below.
    const problem = {
      a: [
        [1, -0.9],
        [-0.9, 1],
      ],
      b: [-2.2, 2.55],
      lower: [-1, -1],
      upper: [1, 1],
    };
    const { s } = solve(problem);
    leastByTrying(problem).forEach((value, i) => expect(s[i]).toBeCloseTo(value, 12));
  });

  test('agrees with trying every way of holding components at their ends on 1,000 random problems', () => {
    const random = createRandom(8);
    const between = (low: number, high: number): number => low + (high - low) * random();
    let atEnds = 0;
    for (let i = 0; i < 1000; i++) {
      const n = 1 + (i % 5);
      const rows = Array.from({ length: n + (i % 3) }, () => Array.from({ length: n }, () => between(-1, 1)));
      // As the search of the arms has it: some directions stiff, some hardly held at all.
      const soft = 10 ** between(-4, 0);
      const a = Array.from({ length: n }, (_, r) =>
        Array.from({ length: n }, (__, c) => rows.reduce((sum, row) => sum + row[r] * row[c], r === c ? soft : 0)),
      );
      const lower = a.map(() => between(-2, 0.5));
      const problem: Problem = {
        a,
        b: a.map(() => between(-3, 3)),
        lower,
        upper: lower.map((low) => low + between(0, 3)),
      };
      const { ok, s } = solve(problem);
      expect(ok).toBe(true);
      s.forEach((value, k) => {
        expect(value).toBeGreaterThanOrEqual(problem.lower[k]);
        expect(value).toBeLessThanOrEqual(problem.upper[k]);
        if (value === problem.lower[k] || value === problem.upper[k]) atEnds++;
      });
      const expected = leastByTrying(problem);
      expected.forEach((value, k) => expect(Math.abs(s[k] - value), `problem ${i}`).toBeLessThan(1e-8));
    }
    expect(atEnds).toBeGreaterThan(1000);
  });

  test('says so when there is no least, or no box', () => {
    const saddle = [
      [1, 0],
      [0, -1],
    ];
    expect(solve({ a: saddle, b: [0, 0], lower: [-1, -1], upper: [1, 1] }).ok).toBe(false);
    expect(solve({ a: [[1]], b: [0], lower: [-Infinity], upper: [1] }).ok).toBe(false);
    expect(solve({ a: [[1]], b: [NaN], lower: [-1], upper: [1] }).ok).toBe(false);
  });
});
