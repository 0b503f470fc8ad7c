import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { toCalendar } from '../../src/practice/calendar';
import { readPractice } from '../../src/practice/check';
import { dayAfter, weekOf } from '../../src/practice/days';
import { answerFelt, countDrill, noPractice, practiceOn, tickDrill } from '../../src/practice/edit';
import { mergePractice } from '../../src/practice/merge';
import { FELT, MOST_REPETITIONS, PRACTICE_LIMITS, type Practice } from '../../src/practice/practice';

const ID = 'k3v9x2m7q4ab';
const fresh = noPractice(ID, 3);

describe('days', () => {
  test('follow one another as the calendar of the platform has them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), fc.integer({ min: -4000, max: 4000 }), (from, by) => {
        const iso = (number: number): string => new Date(number * 86_400_000).toISOString().slice(0, 10);
        expect(dayAfter(iso(from), by)).toBe(iso(from + by));
      }),
    );
  });
  test('stand in weeks from Monday to Sunday, over the end of a year too', () => {
    expect(weekOf('2027-01-01')).toEqual([
      '2026-12-28',
      '2026-12-29',
      '2026-12-30',
      '2026-12-31',
      '2027-01-01',
      '2027-01-02',
      '2027-01-03',
    ]);
    for (const day of ['2026-12-28', '2027-01-03']) expect(weekOf(day)[0]).toBe('2026-12-28');
  });
});

describe('practice', () => {
  test('is ticked and counted day by day, and a day that is empty again goes', () => {
    const one = countDrill(tickDrill(fresh, '2026-12-02', 0, true), '2026-12-02', 1, 1);
    expect(one.days).toEqual([{ date: '2026-12-02', done: [true, false, false], counts: [0, 1, 0] }]);
    const earlier = countDrill(one, '2026-12-01', 2, 5);
    expect(earlier.days.map(({ date }) => date)).toEqual(['2026-12-01', '2026-12-02']);
    expect(countDrill(tickDrill(one, '2026-12-02', 0, false), '2026-12-02', 1, -1).days).toEqual([]);
  });
  test('counts neither below none nor past the most', () => {
    expect(countDrill(fresh, '2026-12-02', 0, -1).days).toEqual([]);
    const many = countDrill(fresh, '2026-12-02', 0, 5000);
    expect(practiceOn(many, '2026-12-02').counts).toEqual([MOST_REPETITIONS, 0, 0]);
  });
  test('is answered drill by drill', () => {
    const felt = answerFelt(fresh, 1, 'sometimes');
    expect(felt.felt).toEqual([null, 'sometimes', null]);
    expect(answerFelt(felt, 1, 'most times').felt).toEqual([null, 'most times', null]);
  });
  test('goes on with what is there when the coach adds a drill to the plan', () => {
    const before = countDrill(tickDrill(noPractice(ID, 2), '2026-12-02', 0, true), '2026-12-02', 1, 4);
    expect(mergePractice(answerFelt(before, 1, 'sometimes'), fresh)).toEqual({
      planId: ID,
      days: [{ date: '2026-12-02', done: [true, false, false], counts: [0, 4, 0] }],
      felt: [null, 'sometimes', null],
      words: '',
    });
  });
  test('keeps the newest days where there are too many', () => {
    const days = Array.from({ length: PRACTICE_LIMITS.days + 5 }, (_, i) => dayAfter('2026-12-01', i));
    const all = days.reduce((practice, day) => tickDrill(practice, day, 0, true), fresh);
    expect(all.days.map(({ date }) => date)).toEqual(days.slice(5));
  });
  test('after any steps is read back from its JSON as it was', () => {
    const step = fc.tuple(
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 2 }),
      fc.oneof(fc.boolean(), fc.integer({ min: -3, max: 400 }), fc.constantFrom(...FELT)),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const practice = steps.reduce((was: Practice, [day, drill, what]) => {
          const date = dayAfter('2026-12-01', day);
          if (typeof what === 'boolean') return tickDrill(was, date, drill, what);
          return typeof what === 'number' ? countDrill(was, date, drill, what) : answerFelt(was, drill, what);
        }, fresh);
        expect(readPractice(JSON.parse(JSON.stringify(practice)))).toEqual(practice);
      }),
    );
  });
  test.each([
    ['another form', []],
    ['a field that nobody knows', { ...fresh, more: 1 }],
    ['lists of another length', { ...fresh, days: [{ date: '2026-12-02', done: [true], counts: [1] }] }],
    [
      'a day twice',
      { ...fresh, days: [1, 2].map(() => ({ date: '2026-12-02', done: [true, false, false], counts: [0, 0, 0] })) },
    ],
    [
      'a day that no calendar has',
      { ...fresh, days: [{ date: '2026-13-02', done: [true, false, false], counts: [0, 0, 0] }] },
    ],
    ['words too long', { ...fresh, words: 'a'.repeat(PRACTICE_LIMITS.words + 1) }],
  ])('with %s is refused', (_, value) => {
    expect(readPractice(value)).toBeUndefined();
  });
});

describe('the calendar file', () => {
  const text = toCalendar({
    uid: `${ID}@slantwise`,
    stamp: '20261130T101500Z',
    from: '2026-12-01',
    until: '2026-12-07',
    title: 'Swing practice',
    text: 'Ruler on the wrist: 10 slow rehearsals, 5 balls; twice\nPause at the top – hold it a full second, let the arms start, and the belt follow',
  });

  // Reference: RFC 5545, read by ical.js, an independent parser.
  test('is read by another library: one event a day for a week, at six, with an alarm', () => {
    const event = new ICAL.Event(new ICAL.Component(ICAL.parse(text) as unknown[]).getFirstSubcomponent('vevent')!);
    const days: string[] = [];
    const all = event.iterator();
    for (let next = all.next(); next; next = all.next()) days.push(next.toString());
    expect(days).toEqual(Array.from({ length: 7 }, (_, i) => `${dayAfter('2026-12-01', i)}T18:00:00`));
    expect(event.summary).toBe('Swing practice');
    expect(event.description).toBe(
      'Ruler on the wrist: 10 slow rehearsals, 5 balls; twice\nPause at the top – hold it a full second, let the arms start, and the belt follow',
    );
    expect(event.component.getFirstSubcomponent('valarm')!.getFirstPropertyValue('action')).toBe('DISPLAY');
  });
  // RFC 5545, 3.1: lines end in CRLF and have at most 75 octets without it; the rest of a folded line begins with a space.
  test('ends its lines in CRLF and folds them after at most 75 bytes', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    const lines = text.split('\r\n').slice(0, -1);
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
    for (const line of lines) {
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n]/);
    }
  });
});
