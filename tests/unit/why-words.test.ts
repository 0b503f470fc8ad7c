import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { STILL } from '../../src/model/movements';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import type { Contributions, Part, Shares } from '../../src/solving/diagnosis/contributions';
import { crossingsAlong, isInRegion, sayMap, speakMap } from '../../src/words/why/corridor';
import { sayGuess, sayGuessScore } from '../../src/words/why/guess';
import { sayMatch } from '../../src/words/why/sightings';
import { sayVerdictShare, sayPlans, sayShare } from '../../src/words/why/whatToChange';
import { apportion, numberLedger, sayLedger, type LedgerOf } from '../../src/words/why/why';

const shares = (part: Partial<Shares>): Shares => ({ leadWrist: 0, rotation: 0, sideTilt: 0, setUp: 0, ...part });

/** A ledger in cm. */
function ledger(fromCm: number, partsCm: Partial<Shares>, more: Partial<LedgerOf> = {}): LedgerOf {
  const metres = shares(Object.fromEntries(Object.entries(partsCm).map(([part, cm]) => [part, cm / 100])));
  const sum = Object.values(metres).reduce((a, b) => a + b, 0);
  const shared: Contributions = {
    from: fromCm / 100,
    to: fromCm / 100 + sum,
    parts: metres,
    alone: metres,
    last: metres,
    evaluations: 16,
  };
  return {
    reading: 'bicepGap',
    shared,
    parts: Object.keys(partsCm) as Part[],
    units: { length: 'cm' },
    from: STILL,
    to: { ...STILL, leadWristFlexion: rad(-16), rotationDelay: -0.012, trailSideBend: rad(-4) },
    isFromReference: true,
    isTooFar: true,
    ...more,
  };
}

describe('shares that are rounded', () => {
  test('add up to the rounded total, each within one unit of its own value (method of largest remainders)', () => {
    const share = fc.integer({ min: -3000, max: 3000 }).map((n) => n / 100);
    fc.assert(
      fc.property(fc.array(share, { minLength: 1, maxLength: 4 }), fc.constantFrom(0, 1), (values, decimals) => {
        const exact = values.reduce((a, b) => a + b, 0);
        const total = Math.round(exact * 10 ** decimals) / 10 ** decimals;
        const rounded = apportion(values, total, decimals);
        if (values.every((value) => value === 0)) return;
        expect(rounded.reduce((a, b) => a + b, 0)).toBeCloseTo(total, 9);
        rounded.forEach((one, i) => expect(Math.abs(one - values[i])).toBeLessThan(10 ** -decimals + 1e-9));
        rounded.forEach((one, i) => values[i] === 0 && expect(one).toBe(0));
      }),
    );
  });

  test('three thirds of ten are 4, 3 and 3 (worked by hand)', () => {
    const third = 10 / 3;
    expect(apportion([third, third, third], 10, 0).toSorted((a, b) => a - b)).toEqual([3, 3, 4]);
  });

  test('the numbers beside the bars lead from the first reading to the second as printed', () => {
    const { from, to, parts } = numberLedger(ledger(2.24, { leadWrist: 1.94, rotation: 2.64, sideTilt: 0.64 }));
    expect([from, to]).toEqual(['2.2 cm', '7.5 cm']);
    const steps = Object.values(parts).reduce((sum, { share }) => sum + Number(share.replace('\u2212', '-')), 0);
    expect(2.2 + steps).toBeCloseTo(7.5, 9);
  });
});

describe('the sentence of the ledger', () => {
  test('names each cause in the words of a coach, the largest first', () => {
    const { text, spoken } = sayLedger(ledger(0, { leadWrist: 5.1, rotation: 3, sideTilt: 0.9 }));
    expect(text).toBe('Of 9 cm too steep: 5 from the cupped wrist, 3 from turning early, 1 from too little side bend.');
    expect(spoken).toContain('Of 9 centimetres too steep');
  });

  test('a movement that works the other way is taken off', () => {
    const { text } = sayLedger(ledger(0, { leadWrist: 6, sideTilt: -2 }));
    expect(text).toBe('Of 4 cm too steep: 6 from the cupped wrist, less 2 from too little side bend.');
  });

  test('one cause takes all of it', () => {
    expect(sayLedger(ledger(0, { leadWrist: 6.2 })).text).toBe('All 6 cm too steep come from the cupped wrist.');
  });

  test('movements that cancel out are said, not hidden', () => {
    const { text } = sayLedger(ledger(0, { leadWrist: 3, rotation: -3 }));
    expect(text).toBe('They cancel out: 3.0 from the cupped wrist, less 3.0 from turning early.');
  });

  test('two swings that are the same leave nothing to share out', () => {
    expect(sayLedger(ledger(1, {})).text).toMatch(/^Both swings read the same/);
  });
});

describe('the sentence of the map', () => {
  const square = (x0: number, y0: number, x1: number, y1: number) =>
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
      [x0, y0],
    ].map(([u, v]) => [rad(u), v / 1000] as const);
  const map = (region: readonly (readonly (readonly [number, number])[])[], x: number, y: number) =>
    sayMap({ x: 'leadWristFlexion', y: 'rotationDelay', point: [rad(x), y / 1000], both: region });

  test('says what one movement alone needs, as far as the outline that is drawn', () => {
    expect(crossingsAlong(0, [rad(0), 0], [square(10, -5, 20, 5)])[0]).toBeCloseTo(rad(10), 12);
    expect(map([square(10, -5, 20, 5)], 0, 0)).toMatch(/^Wrist alone needs 10° more bowed\./);
  });

  test('says when neither alone is enough, and what a mix takes', () => {
    expect(map([square(10, 5, 20, 15)], 0, 0)).toBe(
      'Neither alone is enough: it takes 10° more bowed with 5 ms later.',
    );
  });

  test('says how far the edge is from inside, and when there is no way at all', () => {
    expect(map([square(-4, -9, 20, 9)], 0, 0)).toBe('Both checkpoints are on plane; the edge is 4° more cupped away.');
    expect(map([], 0, 0)).toBe('No mix of these two brings both checkpoints on plane.');
  });

  test('a screen reader hears the units written out', () => {
    expect(speakMap(map([square(10, 5, 20, 15)], 0, 0))).toBe(
      'Neither alone is enough: it takes 10 degrees more bowed with 5 milliseconds later.',
    );
  });

  test('a hole in a region is not inside it', () => {
    const ring = [square(-10, -10, 10, 10), square(-5, -5, 5, 5)];
    expect(isInRegion([rad(7), 0], ring)).toBe(true);
    expect(isInRegion([rad(0), 0], ring)).toBe(false);
  });
});

describe('plans, marks and guesses in words', () => {
  const short = { leadArmParallel: 0, shaftParallel: 0 };
  test('the sentence of the plan says which change is smallest, or how far it stays off', () => {
    const reached = { status: 'reached', short } as const;
    const units = { length: 'cm' } as const;
    expect(sayPlans({ status: 'already', plans: [] }, units)).toBe(
      'Both checkpoints are on plane: nothing has to change.',
    );
    expect(sayPlans({ status: 'planned', plans: [{ uses: ['leadWrist'], ...reached }] }, units)).toBe(
      'Lead wrist alone is the smallest change.',
    );
    expect(sayPlans({ status: 'planned', plans: [{ uses: ['leadWrist'], ...reached }] }, units, 'inside')).toBe(
      'Lead wrist alone is the smallest change with more margin.',
    );
    const closest = { uses: ['sideTilt'], status: 'closest', short: { ...short, shaftParallel: 0.021 } } as const;
    expect(sayPlans({ status: 'planned', plans: [closest] }, units)).toBe(
      'Out of reach with these movements: the closest stays 2 cm short.',
    );
  });

  test('a share is a count out of a hundred, and only a certainty is all of them', () => {
    expect(sayShare(0.934)).toBe('93 of 100');
    expect(sayShare(0.9999)).toBe('more than 99 of 100');
    expect(sayShare(1)).toBe('100 of 100');
    expect(sayVerdictShare('leadArmParallel', 'Steep', 0.93)).toBe('Probably steep at lead arm parallel: 93 of 100.');
    expect(sayVerdictShare('leadArmParallel', 'Steep', 0.997)).toBe('Almost certainly steep at lead arm parallel.');
    expect(sayVerdictShare('shaftParallel', 'On plane', 0.52)).toBe(
      'Too close to call at shaft parallel: on plane in 52 of 100.',
    );
  });

  test('contradictory marks are said to be that', () => {
    expect(sayMatch([{ status: 'closest' }, { status: 'closest' }])).toMatch(/^No swing explains both marks/);
  });

  test('a guess is compared in centimetres and words', () => {
    expect(sayGuess('leadArmParallel', 0.04, 0.07, DEFAULT_BANDS, { length: 'cm' })).toBe(
      'Lead arm parallel: it went to 7 cm above, 3 cm higher than you drew.',
    );
    expect(sayGuess('shaftParallel', 0.1, -0.05, DEFAULT_BANDS, { length: 'cm' })).toBe(
      'Shaft parallel: it went to 5 cm behind, 15 cm farther behind than you drew.',
    );
  });

  test('the score counts the guesses that came near, in the units in use', () => {
    const made = [
      { drawn: 0.04, went: 0.055 },
      { drawn: 0.04, went: 0.0601 },
      { drawn: 0, went: -0.02 },
    ];
    expect(sayGuessScore(made, { length: 'cm' })).toBe('Within 2 cm: 2 of 3 guesses.');
    expect(sayGuessScore(made.slice(1, 2), { length: 'cm' })).toBe('Within 2 cm: 0 of 1 guess.');
    expect(sayGuessScore(made, { length: 'in' })).toMatch(/^Within .*inch.*: 2 of 3 guesses\.$/);
  });
});
