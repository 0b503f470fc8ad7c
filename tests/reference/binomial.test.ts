import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { exactInterval } from '../../src/math/binomial';

describe('the exact interval of a share', () => {
  // R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998), table I, method 5
  // (Clopper-Pearson, 95 %). The numbers are quoted from memory.
  test.each([
    [81, 263, 0.2527, 0.3676],
    [15, 148, 0.0578, 0.1617],
    [0, 20, 0, 0.1684],
    [1, 29, 0.0009, 0.1776],
  ])('%d of %d is that of the published table', (hits, tries, low, high) => {
    const found = exactInterval(hits, tries);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  // The ends are quantiles of beta distributions: jStat, a library of its own, to what its search for a quantile resolves.
  test.each([
    [1, 10, 0.95],
    [5, 10, 0.95],
    [37, 100, 0.9],
    [417, 1000, 0.95],
    [775, 2230, 0.95],
    [9990, 10_000, 0.99],
  ])('%d of %d at level %d is that of the beta distribution by jStat', (hits, tries, level) => {
    const { low, high } = exactInterval(hits, tries, level);
    const chance = (1 - level) / 2;
    expect(Math.abs(low - jstat.beta.inv(chance, hits, tries - hits + 1))).toBeLessThan(1e-7);
    expect(Math.abs(high - jstat.beta.inv(1 - chance, hits + 1, tries - hits))).toBeLessThan(1e-7);
  });

  test('at either end, what was seen or anything more extreme has 2.5 in 100, by the binomial distribution of jStat', () => {
    for (const [hits, tries] of [
      [3, 12],
      [20, 25],
      [50, 90],
    ]) {
      const { low, high } = exactInterval(hits, tries);
      expect(1 - jstat.binomial.cdf(hits - 1, tries, low)).toBeCloseTo(0.025, 6);
      expect(jstat.binomial.cdf(hits, tries, high)).toBeCloseTo(0.025, 6);
    }
  });

  test('none of so many and all of so many have their closed form', () => {
    expect(exactInterval(0, 100).high).toBeCloseTo(1 - 0.025 ** (1 / 100), 12);
    expect(exactInterval(100, 100)).toEqual({ low: expect.closeTo(0.025 ** (1 / 100), 12) as number, high: 1 });
  });
});
