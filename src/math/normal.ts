const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);
const FAR = 8;

/**
 * Share of a normal distribution below `z` standard deviations, 0 to 1. Zero: one half. Absolute error below 1e-14.
 * Source: G. Marsaglia, Evaluating the Normal Distribution, Journal of Statistical Software 11(4), 2004.
 */
export function normalShareBelow(z: number): number {
  if (z < -FAR) return 0;
  if (z > FAR) return 1;
  let term = z;
  let sum = z;
  for (let odd = 3; ; odd += 2) {
    term *= (z * z) / odd;
    if (sum + term === sum) break;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / ROOT_TWO_PI;
}

/**
 * A stream of numbers from 0 up to but not including 1, the same for the same seed on every machine.
 * Source: the public-domain generator "mulberry32" (T. Ettinger, 2017); enough to draw and to sample, not for secrets.
 */
export function createRandom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let x = Math.imul(state ^ (state >>> 15), 1 | state);
    x = (x + Math.imul(x ^ (x >>> 7), 61 | x)) ^ x;
    return ((x ^ (x >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * A stream of standard normal numbers (mean 0, standard deviation 1) from a stream of uniform ones.
 * Source: Box & Muller, A Note on the Generation of Random Normal Deviates, Annals of Mathematical Statistics 29 (1958).
 */
export function createNormal(random: () => number): () => number {
  let kept: number | undefined;
  return () => {
    if (kept !== undefined) {
      const value = kept;
      kept = undefined;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - random()));
    const turn = 2 * Math.PI * random();
    kept = radius * Math.sin(turn);
    return radius * Math.cos(turn);
  };
}
