/** A time at which something happens, or the reason why it never does. Seconds. */
export type Crossing = { readonly t: number } | { readonly missing: 'never-crosses' | 'not-finite' };

const MAX_STEPS = 100;

/**
 * Root of `f` between `a` and `b` by Brent's method. `fa` and `fb` are the values at the ends and must differ in sign.
 * Returns the abscissa to within `tolerance`, in the unit of `a`.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
 */
export function solveBrent(f: (x: number) => number, a: number, b: number, fa: number, fb: number, tolerance: number) {
  let c = a;
  let fc = fa;
  let step = b - a;
  let previous = step;
  for (let i = 0; i < MAX_STEPS; i++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = previous = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const limit = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= limit || fb === 0) return b;
    if (Math.abs(previous) >= limit && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const u = fa / fc;
        const v = fb / fc;
        p = s * (2 * half * u * (u - v) - (b - a) * (v - 1));
        q = (u - 1) * (v - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(limit * q), Math.abs(previous * q))) {
        previous = step;
        step = p / q;
      } else {
        step = previous = half;
      }
    } else {
      step = previous = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > limit ? step : half > 0 ? limit : -limit;
    fb = f(b);
  }
  return b;
}

/**
 * First time in `[from, to]` at which `signal` falls through zero: bracket by `step` (s), then Brent to `tolerance` (s).
 * A signal that starts at or below zero must rise above it first.
 */
export function findFall(
  signal: (t: number) => number,
  from: number,
  to: number,
  step: number,
  tolerance = 1e-9,
): Crossing {
  let t0 = from;
  let s0 = signal(t0);
  while (t0 < to) {
    const t1 = Math.min(t0 + step, to);
    const s1 = signal(t1);
    if (!Number.isFinite(s1)) return { missing: 'not-finite' };
    if (s0 > 0 && s1 <= 0) return { t: solveBrent(signal, t0, t1, s0, s1, tolerance) };
    t0 = t1;
    s0 = s1;
  }
  return { missing: 'never-crosses' };
}
