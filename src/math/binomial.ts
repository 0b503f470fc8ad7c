/** Where a share may lie, 0 to 1. */
export interface ShareInterval {
  readonly low: number;
  readonly high: number;
}

/** Halvings of the search: more than a double has digits. */
const HALVINGS = 60;
/** A term of a tail that is smaller than the sum by this factor ends it. */
const NEGLIGIBLE = 1e-17;

/** Logarithm of the binomial coefficient "`n` over `k`". */
function logChoose(n: number, k: number): number {
  let sum = 0;
  for (let i = 1; i <= Math.min(k, n - k); i++) sum += Math.log((n - i + 1) / i);
  return sum;
}

/** Probability of `k` hits or more in `n` tries, each a hit with probability `p`. Summed from `k` up. */
function tailAbove(n: number, k: number, p: number, choose: number): number {
  let term = Math.exp(choose + k * Math.log(p) + (n - k) * Math.log1p(-p));
  const odds = p / (1 - p);
  let sum = 0;
  for (let i = k; i <= n; i++) {
    sum += term;
    term *= ((n - i) / (i + 1)) * odds;
    if (term < sum * NEGLIGIBLE) break;
  }
  return sum;
}

/** The `p` at which `k` hits or more in `n` tries have the probability `chance`, under one half: it grows with `p`. */
function findShare(n: number, k: number, chance: number): number {
  const choose = logChoose(n, k);
  let low = 0;
  // There the median is k hits. Far above it the first term is too small for a number.
  let high = k / n;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (tailAbove(n, k, middle, choose) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The exact interval of a share of which `hits` in `tries` were seen: at either end, what was seen or anything more extreme has half of
 * the probability that is left, 2.5 in 100 at the usual `level`. It covers the truth at least as often as it says.
 * Source: C. Clopper and E. Pearson, The Use of Confidence or Fiducial Limits, Biometrika 26 (1934).
 */
export function exactInterval(hits: number, tries: number, level = 0.95): ShareInterval {
  const chance = (1 - level) / 2;
  return {
    low: hits === 0 ? 0 : findShare(tries, hits, chance),
    high: hits === tries ? 1 : 1 - findShare(tries, tries - hits, chance),
  };
}
