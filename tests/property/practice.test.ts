import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { codeOf, fitsCode } from '../../src/export/picture/qrCode';
import { readPractice } from '../../src/practice/check';
import { LONGEST_CODE, readPracticeCode, toPracticeCode } from '../../src/practice/code';
import { FELT, MOST_REPETITIONS, PRACTICE_LIMITS, type Practice } from '../../src/practice/practice';
import { toName } from '../../src/checking/text';

const letters = Array.from('0123456789abcdefghijklmnopqrstuvwxyz');
const planIds = fc.string({ unit: fc.constantFrom(...letters), minLength: 12, maxLength: 24 });
const dates = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2120-12-31'), noInvalidDate: true })
  .map((at) => at.toISOString().slice(0, 10));
const words = fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ maxLength: 200 }));

const practicesOf = (mostDays: number): fc.Arbitrary<Practice> =>
  fc.nat(3).chain((drills) => {
    const perDrill = <T>(one: fc.Arbitrary<T>) => fc.array(one, { minLength: drills, maxLength: drills });
    const day = fc.record({
      date: dates,
      done: perDrill(fc.boolean()),
      counts: perDrill(fc.nat(MOST_REPETITIONS)),
    });
    return fc.record({
      planId: planIds,
      days: fc
        .uniqueArray(day, { maxLength: mostDays, selector: ({ date }) => date })
        .map((days) => days.toSorted((a, b) => (a.date < b.date ? -1 : 1))),
      felt: perDrill(fc.constantFrom(null, ...FELT)),
      words: words.map((text) => toName(text.slice(0, PRACTICE_LIMITS.words)).slice(0, PRACTICE_LIMITS.words)),
    });
  });
const practices = practicesOf(PRACTICE_LIMITS.days).filter((practice) => toName(practice.words) === practice.words);

describe('code of a practice', () => {
  test('comes back as the practice it was made from', () => {
    fc.assert(
      fc.property(practices, (practice) => {
        expect(readPractice(practice)).toEqual(practice);
        const code = toPracticeCode(practice);
        expect(readPracticeCode(code)).toEqual({ practice });
        expect(readPracticeCode(` ${code.replace(/.{60}/g, '$&\r\n')}\n`)).toEqual({ practice });
        expect(code.length).toBeLessThanOrEqual(LONGEST_CODE);
        expect(fitsCode(code)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('stays under 1,500 letters with 30 days, three drills and 200 letters of words', () => {
    const full: Practice = {
      planId: 'z'.repeat(24),
      days: Array.from({ length: 30 }, (_, i) => ({
        date: `2026-11-${String(i + 1).padStart(2, '0')}`,
        done: [true, true, true],
        counts: [MOST_REPETITIONS, MOST_REPETITIONS, MOST_REPETITIONS],
      })),
      felt: ['most times', 'most times', 'most times'],
      words: '漢'.repeat(200),
    };
    const code = toPracticeCode(full);
    expect(code.length).toBeLessThan(1500);
    expect(readPracticeCode(code)).toEqual({ practice: full });
    // 177 squares a side is version 40, the largest (ISO/IEC 18004); four squares of quiet zone on either side.
    expect(codeOf(code).length).toBeLessThan(177 + 8);
  });

  test('damaged in any way is never read as another practice', () => {
    const alphabet = [...letters, ...letters.map((one) => one.toUpperCase()), '-', '_', '.', ' ', 'é'];
    const change = fc.record({
      kind: fc.constantFrom('set', 'drop', 'add', 'cut', 'swap'),
      at: fc.nat(10_000),
      letter: fc.constantFrom(...alphabet),
    });
    const codes = fc.sample(practicesOf(30), 50).map(toPracticeCode);
    let refused = 0;
    fc.assert(
      fc.property(fc.nat(codes.length - 1), fc.array(change, { minLength: 1, maxLength: 4 }), (which, changes) => {
        const list = Array.from(codes[which]);
        for (const { kind, at, letter } of changes) {
          const i = at % (list.length + 1);
          if (kind === 'set') list[i] = letter;
          else if (kind === 'drop') list.splice(i, 1);
          else if (kind === 'add') list.splice(i, 0, letter);
          else if (kind === 'cut') list.length = i;
          else [list[0], list[i]] = [list[i] ?? letter, list[0] ?? letter];
        }
        const damaged = list.join('');
        const read = readPracticeCode(damaged);
        if ('problem' in read) refused++;
        else expect(damaged.replace(/\s/g, '')).toBe(codes[which]);
      }),
      { numRuns: 10_000 },
    );
    expect(refused).toBeGreaterThan(9000);
  });

  test('of a newer version, too long, or of something else says so', () => {
    expect(readPracticeCode('p2.AAAA')).toEqual({ problem: 'a newer Slantwise wrote it' });
    expect(readPracticeCode(`p1.${'A'.repeat(LONGEST_CODE)}`)).toEqual({ problem: 'it is too long' });
    for (const text of ['', 'hello', 's1.AAAA', 'p.AAAA'])
      expect(readPracticeCode(text)).toEqual({ problem: 'it is no practice code, or part of it is missing' });
    expect(readPracticeCode('p1.AAAAAAAA')).toEqual({ problem: 'it is damaged' });
  });
});
