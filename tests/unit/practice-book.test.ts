import { describe, expect, test } from 'vitest';
import { toPracticeCode } from '../../src/practice/code';
import { gainedBy, mergePractice } from '../../src/practice/merge';
import { PRACTICE_LIMITS, type Practice } from '../../src/practice/practice';
import { duplicateLesson, inverseOf } from '../../src/record/book/edits';
import { practiceOf, takePractice } from '../../src/record/book/practice';
import { rowsOf } from '../../src/record/book/progress';
import type { BookRecord, LessonRecord } from '../../src/record/book/recordTypes';
import { writeFile } from '../../src/record/file/file';
import { readFile } from '../../src/record/file/readFile';
import { readRecord } from '../../src/record/file/validate';
import { DEFAULT_DOCUMENT } from '../../src/store/document/document';
import { makeLesson, makePlan, makePlayer } from './record-stand';

const NOW_MS = Date.UTC(2026, 11, 9);
const player = makePlayer();
const plan = makePlan();
const planned = (date: string, fields: Partial<LessonRecord> = {}) =>
  makeLesson(player.id, { date, now: { ...DEFAULT_DOCUMENT, plan }, ...fields });
const day = (date: string, ...counts: number[]) => ({ date, done: counts.map((count) => count > 0), counts });
const practice = (fields: Partial<Practice> = {}): Practice => ({
  planId: plan.id,
  days: [day('2026-12-02', 5, 0), day('2026-12-03', 8, 12)],
  felt: ['sometimes', null],
  words: 'Easier on the range',
  ...fields,
});
const bookOf = (...records: BookRecord[]) => new Map(records.map((record) => [record.id, record]));

/** Takes a code and answers the book after it. */
function take(book: ReadonlyMap<string, BookRecord>, code: string) {
  const taken = takePractice(book, code, NOW_MS);
  if ('problem' in taken) throw new Error(taken.problem);
  return { ...taken, book: new Map([...book, ...taken.edit.put.map((record) => [record.id, record] as const)]) };
}

describe('practice in the lesson book', () => {
  const [first, second] = [planned('2026-11-25'), planned('2026-12-03')];
  const book = bookOf(player, makePlayer(), makeLesson(player.id), second, first);

  test('goes to the lesson in which its plan began, and is seen in every lesson of that plan', () => {
    const { lessonId, said, book: after } = take(book, toPracticeCode(practice()));
    expect(lessonId).toBe(first.id);
    expect(said).toBe('Practice from the player: 2 days. Undo takes it back.');
    expect(practiceOf(after, after.get(second.id) as LessonRecord)).toEqual([practice()]);
    expect(inverseOf(book, takenEdit(book)).put).toEqual([first]);
  });
  const takenEdit = (of: typeof book) => take(of, toPracticeCode(practice())).edit;

  test('of an unknown plan, damaged, newer or taken before changes nothing and says why', () => {
    const code = toPracticeCode(practice());
    const { book: after } = take(book, code);
    const problemOf = (text: string, of = after): unknown => takePractice(of, text, NOW_MS);
    expect(problemOf(code)).toEqual({ problem: 'This practice is in the lesson already. Nothing was changed.' });
    expect(problemOf(toPracticeCode(practice({ planId: makePlan().id })))).toEqual({
      problem: 'No lesson in this book has the plan of this practice. Nothing was changed.',
    });
    expect(problemOf(`${code.slice(0, -3)}AAA`)).toEqual({
      problem: 'The practice could not be read: it is damaged. Nothing was changed.',
    });
    expect(problemOf(code.replace('p1', 'p2'))).toEqual({
      problem: 'The practice could not be read: a newer Slantwise wrote it. Nothing was changed.',
    });
    const twin = makePlayer({ name: 'Twin' });
    expect(problemOf(code, bookOf(player, twin, first, planned('2026-11-25', { playerId: twin.id })))).toEqual({
      problem: 'Wren and Twin have the same plan. Clear it in one of them first. Nothing was changed.',
    });
  });

  test('that came later is put together with what is there, and says what it brought', () => {
    const { book: after } = take(book, toPracticeCode(practice()));
    const later = practice({ days: [day('2026-12-03', 9, 3), day('2026-12-04', 1, 0)], felt: [null, 'most times'] });
    const { said, book: last } = take(after, toPracticeCode(later));
    expect(said).toBe('Practice from the player: 1 day more, more on 1 day, new answers. Undo takes it back.');
    expect((last.get(first.id) as LessonRecord).practice).toEqual([
      practice({
        days: [day('2026-12-02', 5, 0), day('2026-12-03', 9, 12), day('2026-12-04', 1, 0)],
        felt: ['sometimes', 'most times'],
      }),
    ]);
    expect(takePractice(last, toPracticeCode(practice()), NOW_MS)).toHaveProperty('problem');
  });

  test('of another plan of the same lesson stands beside the first', () => {
    const { book: after } = take(book, toPracticeCode(practice()));
    const next = makePlan();
    const anew = { ...(after.get(first.id) as LessonRecord), now: { ...DEFAULT_DOCUMENT, plan: next } };
    const { book: last } = take(bookOf(player, anew), toPracticeCode(practice({ planId: next.id })));
    expect(practiceOf(last, last.get(first.id) as LessonRecord)).toHaveLength(2);
  });

  test('of a seventh plan is refused: six are kept, and none of them makes way', () => {
    const kept = Array.from({ length: 6 }, (_, at) =>
      practice({ planId: makePlan().id, days: [day(`2026-11-0${at + 1}`, 1, 0)] }),
    );
    const full = bookOf(player, { ...first, practice: kept });
    expect(takePractice(full, toPracticeCode(practice()), NOW_MS)).toEqual({
      problem: 'This lesson holds the practice of six plans already. Nothing was changed.',
    });
  });

  test('goes into a backup and comes back; a copy of the lesson leaves it; a damaged one is refused', () => {
    const { edit } = take(book, toPracticeCode(practice()));
    const [lesson] = edit.put as [LessonRecord];
    const reading = readFile(writeFile([player, lesson], NOW_MS));
    expect('records' in reading && reading.records).toEqual([player, lesson]);
    const guessed = { ...lesson, guesses: [{ at: 'leadArmParallel', drawnCm: 3, wentCm: 4 }] } as const;
    expect(duplicateLesson(guessed, { id: 'copy-00001', nowMs: NOW_MS }, '2026-12-09').put[0]).not.toHaveProperty(
      'guesses',
    );
    expect(duplicateLesson(lesson, { id: 'copy-00001', nowMs: NOW_MS }, '2026-12-09').put[0]).not.toHaveProperty(
      'practice',
    );
    for (const wrong of [
      [practice({ planId: 'No plan' })],
      [practice({ days: [day('2026-02-30', 1, 1)] })],
      [practice({ words: 'two\nlines' })],
      [practice(), practice()],
      practice(),
    ])
      expect(readRecord({ ...lesson, practice: wrong })).toHaveProperty('damage');
    expect(readRecord(first)).toEqual({ record: first });
  });

  test('is counted in days between one lesson and the next, a day of two plans once', () => {
    const kept = [practice(), practice({ planId: makePlan().id, days: [day('2026-12-03', 1, 1)] })];
    const rows = rowsOf([planned('2026-11-25', { practice: kept }), second], ({ now }) => now.seen);
    expect(rows.map(({ practised }) => practised)).toEqual([1, 1]);
  });
});

describe('two practices of one plan', () => {
  test('merge to the same whichever days come first, and again to themselves', () => {
    const other = practice({ days: [day('2026-12-01', 2, 2), day('2026-12-03', 3, 20)] });
    const merged = mergePractice(practice(), other);
    expect(mergePractice(other, practice())).toEqual(merged);
    expect(gainedBy(merged, mergePractice(merged, other))).toBeUndefined();
  });
  test('an older one that comes late does not take newer answers and words back', () => {
    const older = practice({ days: [day('2026-12-01', 2, 2)], felt: ['not yet', 'not yet'], words: 'Hard' });
    expect(mergePractice(practice(), older)).toMatchObject({
      felt: ['sometimes', 'not yet'],
      words: 'Easier on the range',
    });
  });
  test('of too many days keep the latest', () => {
    const days = (month: string) =>
      Array.from({ length: 84 }, (_, i) =>
        day(`20${20 + (i % 3)}-${month}-${String(1 + Math.floor(i / 3)).padStart(2, '0')}`, 1, 1),
      ).toSorted((a, b) => a.date.localeCompare(b.date));
    const merged = mergePractice(practice({ days: days('01') }), practice({ days: days('02') }));
    expect(merged.days).toHaveLength(PRACTICE_LIMITS.days);
    expect(merged.days.at(-1)!.date).toBe('2022-02-28');
  });
});
