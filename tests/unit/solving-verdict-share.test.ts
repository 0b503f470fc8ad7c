import { describe, expect, test } from 'vitest';
import { normalShareBelow } from '../../src/math/normal';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { drawCloud, findVerdictShare, findVerdictShares, shareInBand } from '../../src/solving/diagnosis/verdictShare';

const band = DEFAULT_BANDS.leadArmParallel;
const shareOf = (cm: number, plusMinusCm: number) =>
  findVerdictShare({ value: cm / 100, plusMinus: plusMinusCm / 100 }, band);

describe('the share in which a verdict stands', () => {
  test('9 cm steep, give or take 3, is steep in every case that matters', () => {
    const { verdict, share } = shareOf(9, 3);
    expect(verdict).toBe('steep');
    expect(share).toBeGreaterThan(0.999);
  });

  test('on the edge of the band it is a toss-up', () => {
    expect(shareOf(1.5, 1).verdict).toBe('onPlane');
    expect(shareOf(1.5, 1).share).toBeCloseTo(0.5, 6);
    expect(shareOf(1.6, 4).share).toBeGreaterThan(0.5);
  });

  test('one give or take outside the band, the verdict stands in 97.7 of 100', () => {
    expect(shareOf(3.5, 2).share).toBeCloseTo(0.97725, 5);
    expect(shareOf(-3.5, 2)).toMatchObject({ verdict: 'shallow' });
    expect(shareOf(-3.5, 2).share).toBeCloseTo(0.97725, 5);
  });

  test('the three shares sum to one', () => {
    for (const cm of [-12, -3, -1.5, 0, 0.4, 1.5, 2, 7]) {
      const { shares } = shareOf(cm, 2.5);
      expect(shares.steep + shares.onPlane + shares.shallow).toBeCloseTo(1, 12);
    }
  });

  test('both checkpoints have their own; what was not seen has none', () => {
    const shares = findVerdictShares({ shaftParallel: { value: 0.12, plusMinus: 0.04 } }, DEFAULT_BANDS);
    expect(Object.keys(shares)).toEqual(['shaftParallel']);
    expect(shares.shaftParallel?.verdict).toBe('steep');
  });

  test('without any doubt a plan either lands in the band or does not', () => {
    expect(shareInBand({ value: 0.0149, plusMinus: 0 }, band)).toBe(1);
    expect(shareInBand({ value: 0.0151, plusMinus: 0 }, band)).toBe(0);
  });
});

describe('the cloud on the plate', () => {
  const sighting = { value: 0.03, plusMinus: 0.02 };

  test('is the same for the same seed, and another for another', () => {
    expect(drawCloud(sighting, 50, 7)).toEqual(drawCloud(sighting, 50, 7));
    expect(drawCloud(sighting, 50, 7)).not.toEqual(drawCloud(sighting, 50, 8));
  });

  test('shows the verdict standing in as many points as the number says', () => {
    const COUNT = 100_000;
    const steep = drawCloud(sighting, COUNT, 1).filter((value) => value > band.high).length / COUNT;
    const { share } = findVerdictShare(sighting, band);
    expect(Math.abs(steep - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / COUNT));
  });

  test('keeps 95 of 100 points within the give or take', () => {
    const COUNT = 100_000;
    const within = drawCloud(sighting, COUNT, 2).filter((value) => Math.abs(value - 0.03) <= 0.02).length / COUNT;
    expect(Math.abs(within - 0.9545)).toBeLessThan(4 * Math.sqrt((0.9545 * 0.0455) / COUNT));
  });
});

describe('the normal distribution', () => {
  // The density summed by Simpson's rule in 20,000 steps: an error below 1e-13. C.
  test('is the area under the bell curve', () => {
    const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    for (let z = -6; z <= 6; z += 0.37) {
      const STEPS = 20_000;
      const h = z / STEPS;
      let sum = density(0) + density(z);
      for (let i = 1; i < STEPS; i++) sum += (i % 2 === 1 ? 4 : 2) * density(i * h);
      expect(Math.abs(normalShareBelow(z) - 0.5 - (sum * h) / 3)).toBeLessThan(1e-12);
    }
  });

  test('ends at nothing and at all', () => {
    expect([normalShareBelow(-40), normalShareBelow(0), normalShareBelow(40)]).toEqual([0, 0.5, 1]);
  });
});
