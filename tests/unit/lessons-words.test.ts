import { describe, expect, test } from 'vitest';
import { CLOSED_BOOK, type BookState } from '../../src/record/book/bookState';
import { cleanName, duplicatePlayer, freeName, inverseOf } from '../../src/record/book/edits';
import { lessonsOf, listPlayers } from '../../src/record/book/lists';
import { movedToward, outsideCm, rowsOf } from '../../src/record/book/progress';
import { standingOf } from '../../src/record/book/standing';
import { sayBackup, sayBook, sayUnread } from '../../src/words/book/book';
import { sayMoved } from '../../src/words/book/progress';
import { saySighting } from '../../src/words/book/readings';
import { withEdit } from '../../src/record/book/bookState';
import { DEFAULT_DOCUMENT } from '../../src/store/document/document';
import { axisFor } from '../../src/panels/lessons/progress/plotScale';
import { rowsAt } from '../../src/panels/lessons/progress/rowsAt';
import type { ChosenPlan } from '../../src/store/document/chosenPlan';
import { FRESH_META, makeLesson, makePlan, makePlayer } from './record-stand';

const DAY_MS = 86_400_000;
const NOW_MS = new Date(2026, 10, 25, 14, 2).getTime();
const player = makePlayer();

const bookWith = (lessons: number, meta: Partial<BookState['meta']> = {}, createdMs = NOW_MS): BookState => {
  const records = [player, ...Array.from({ length: lessons }, () => makeLesson(player.id, { createdMs }))];
  return {
    ...CLOSED_BOOK,
    mode: 'writing',
    records: new Map(records.map((record) => [record.id, record])),
    savedMs: NOW_MS,
    meta: { ...FRESH_META, unsavedLessons: records.slice(1).map(({ id }) => id), ...meta },
  };
};

describe('the line under the desk', () => {
  test('says when it was saved and how old the backup is', () => {
    const state = bookWith(1, { lastBackupMs: NOW_MS - 3.2 * DAY_MS, unsavedLessons: [] });
    expect(sayBook(standingOf(state, NOW_MS), NOW_MS)).toEqual({
      text: 'Saved 14:02. Backup 3 days old.',
      offer: null,
      alarm: false,
    });
    expect(sayBackup(bookWith(2, { lastBackupMs: NOW_MS - DAY_MS }), NOW_MS)).toBe(
      'Backup 1 day old, 2 lessons since.',
    );
    expect(sayBackup(bookWith(0), NOW_MS)).toBe('No backup yet.');
  });

  test('is empty while there is nothing worth keeping, also with the example', () => {
    const example = makePlayer({ example: true });
    const records = new Map([example, makeLesson(example.id)].map((record) => [record.id, record]));
    expect(sayBook(standingOf({ ...bookWith(0), records: new Map() }, NOW_MS), NOW_MS).text).toBe('');
    expect(sayBook(standingOf({ ...bookWith(0), records }, NOW_MS), NOW_MS).text).toBe('');
  });

  test('reminds of a backup after 5 lessons or 7 days, not before, and never with nothing new', () => {
    expect(standingOf(bookWith(4), NOW_MS).needsBackup).toBe(false);
    expect(standingOf(bookWith(5), NOW_MS).needsBackup).toBe(true);
    expect(sayBook(standingOf(bookWith(5), NOW_MS), NOW_MS).offer).toBe('back up');
    expect(standingOf(bookWith(1, {}, NOW_MS - 6.9 * DAY_MS), NOW_MS).needsBackup).toBe(false);
    expect(standingOf(bookWith(1, {}, NOW_MS - 7 * DAY_MS), NOW_MS).needsBackup).toBe(true);
    expect(standingOf(bookWith(1, { lastBackupMs: NOW_MS - 8 * DAY_MS }), NOW_MS).needsBackup).toBe(true);
    expect(
      standingOf(bookWith(9, { lastBackupMs: NOW_MS - 80 * DAY_MS, unsavedLessons: [] }), NOW_MS).needsBackup,
    ).toBe(false);
  });

  test('says what this program cannot read', () => {
    expect(sayUnread({ ...bookWith(0), unread: { newer: 2, damaged: 1 } })).toBe(
      '2 records of a newer Slantwise and 1 damaged record: left untouched on this device.',
    );
    expect(sayUnread(bookWith(1))).toBeUndefined();
  });
});

describe('progress', () => {
  const band = { lowCm: -1.5, highCm: 1.5 };
  const saw = (...cms: [cm: number, give: number][]) =>
    rowsOf(
      cms.map(([cm, plusMinusCm], at) =>
        makeLesson(player.id, {
          date: `2026-01-${10 + at}`,
          now: {
            ...DEFAULT_DOCUMENT,
            seen: { leadArmParallel: { cm, plusMinusCm, from: 'eye' }, shaftParallel: null },
          },
        }),
      ),
      ({ now }) => now.seen,
    ).map(({ seen }) => seen.leadArmParallel);
  const say = (...cms: [cm: number, give: number][]): string =>
    sayMoved(movedToward(saw(...cms), band), { length: 'cm' });

  test('is told from what was seen, with the reading error of both readings together', () => {
    // Root of 2 squared plus 2 squared is 2.8, shown as 3.
    expect(say([6, 2], [3, 1], [2, 2])).toBe('Moved 4 cm toward the band; your own reading error is 3 cm.');
  });
  test('is called what it is when it is smaller than the reading error', () => {
    expect(say([6, 3], [4, 3])).toBe('Moved 2 cm toward the band: within your own reading error of 4 cm.');
    expect(say([3, 1], [9, 1])).toBe('Moved 6 cm away from the band; your own reading error is 1 cm.');
    expect(say([6, 3], [6, 3])).toBe('Has not moved; your own reading error is 4 cm.');
    expect(say([1, 1], [-1, 1])).toBe('Inside the band at first and now; your own reading error is 1 cm.');
  });
  test('works from either side: an over-shallow player moves toward the band too', () => {
    expect(say([-9, 1], [-3, 1])).toBe('Moved 6 cm toward the band; your own reading error is 1 cm.');
  });
  test('claims nothing from one reading or none', () => {
    expect(say([6, 2])).toMatch(/^Seen once/);
    expect(say()).toMatch(/^Nothing seen/);
  });
  test('every sentence has at most 15 words', () => {
    for (const before of [-12, -2, 0, 1, 4, 30]) {
      for (const now of [-12, -2, 0, 1, 4, 30]) {
        for (const length of ['cm', 'in'] as const) {
          const sentence = sayMoved(movedToward(saw([before, 3], [now, 2]), band), { length });
          expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(15);
        }
      }
    }
  });
  test('distance from the band is zero inside and grows outside', () => {
    expect([-4, -1.5, 0, 1.5, 2].map((cm) => outsideCm(cm, band))).toEqual([2.5, 0, 0, 0, 0.5]);
  });
  test('a sighting is said with its side and its give or take', () => {
    expect(saySighting('leadArmParallel', { cm: -4, plusMinusCm: 2 }, { length: 'cm' })).toBe('4 cm below ± 2 cm');
  });
  test('the axis holds every value on even steps', () => {
    expect(axisFor([-3.4, 21], 6)).toEqual({ low: -5, high: 25, ticks: [-5, 0, 5, 10, 15, 20, 25] });
    expect(axisFor([2, 2], 6).ticks.length).toBeGreaterThan(1);
  });
  test('lessons stand apart by their days, never closer than a bar with room, never farther than four', () => {
    expect(rowsAt(['2026-01-01', '2026-01-02', '2026-01-11', '2026-06-01'], 10)).toEqual([10, 50, 122, 242]);
  });

  test('a plan is flagged where it begins; the model is shown only where it was fitted to what was seen', () => {
    const plan = makePlan();
    const seen = { leadArmParallel: { cm: 6, plusMinusCm: 2, from: 'eye' as const }, shaftParallel: null };
    const at = (date: string, of: ChosenPlan | null, cm: number) =>
      makeLesson(player.id, {
        date,
        now: { ...DEFAULT_DOCUMENT, seen, plan: of },
        computedCm: { leadArmParallel: cm, shaftParallel: 3 },
      });
    const lessons = [at('2026-01-01', null, 5), at('2026-01-08', plan, 3.9), at('2026-01-15', plan, 8)];
    const rows = rowsOf(lessons, ({ now }) => now.seen);
    expect(rows.map(({ newPlan }) => newPlan)).toEqual([null, 'Less cup', null]);
    expect(rows.map(({ fittedCm }) => fittedCm.leadArmParallel)).toEqual([5, null, 8]);
    expect(rows.map(({ fittedCm }) => fittedCm.shaftParallel)).toEqual([null, null, null]);
  });
});

describe('the list', () => {
  const named = (name: string) => makePlayer({ name });
  const players = [named('Zoë'), named('ann'), named('Åke'), named('Player 10'), named('Player 9')];
  const lessons = [
    makeLesson(players[0].id, { date: '2026-01-01', notes: 'Shank on the fourth ball' }),
    makeLesson(players[1].id, { date: '2026-03-01' }),
  ];
  const book = new Map([...players, ...lessons].map((record) => [record.id, record]));
  const names = (search: string, sortBy: 'name' | 'lastLesson' = 'name') =>
    listPlayers(book, search, sortBy, false).map(({ player: one }) => one.name);

  test('sorts as people do: without regard to capitals and accents, numbers by size', () => {
    expect(names('')).toEqual(['Åke', 'ann', 'Player 9', 'Player 10', 'Zoë']);
    expect(names('', 'lastLesson').slice(0, 2)).toEqual(['ann', 'Zoë']);
  });
  test('finds without accents, and by what stands in a lesson', () => {
    expect(names('ake')).toEqual(['Åke']);
    expect(names('SHANK')).toEqual(['Zoë']);
    expect(names('nobody')).toEqual([]);
  });
  test('lessons come latest first', () => {
    const two = [makeLesson(player.id, { date: '2026-01-01' }), makeLesson(player.id, { date: '2026-02-01' })];
    expect(lessonsOf(new Map(two.map((one) => [one.id, one])), player.id).map(({ date }) => date)).toEqual([
      '2026-02-01',
      '2026-01-01',
    ]);
  });
});

describe('editing', () => {
  const book = new Map([player].map((record) => [record.id, record]));
  test('a name is one line, short, and free of what cannot be seen', () => {
    expect(cleanName('  Ann\n\u202e\u0000 Bee  ')).toBe('Ann Bee');
    expect(cleanName('x'.repeat(500))).toHaveLength(60);
    expect(cleanName(`${'x'.repeat(59)}\u{1F426}`)).toBe('x'.repeat(59));
    expect(cleanName('\ud800')).toBe('\ufffd');
    expect(freeName(book, 'Wren')).toBe('Wren 2');
  });
  test('a duplicate has everything and shares nothing', () => {
    const lesson = makeLesson(player.id);
    const both = new Map([player, lesson].map((record) => [record.id, record] as const));
    let ids = 0;
    const copy = duplicatePlayer(both, player, () => ({ id: `copy-0000${++ids}`, nowMs: 5000 }));
    expect(copy.put.map(({ kind }) => kind)).toEqual(['player', 'lesson']);
    expect(copy.put[1]).toMatchObject({ playerId: copy.put[0].id, date: lesson.date });
    expect(copy.put.some(({ id }) => both.has(id))).toBe(false);
  });
  test('every change can be taken back exactly', () => {
    const changed = { ...player, notes: 'new', changedMs: 2000 };
    const other = makePlayer();
    for (const edit of [
      { label: 'a', put: [changed], remove: [] },
      { label: 'b', put: [other], remove: [player.id] },
    ]) {
      expect(withEdit(withEdit(book, edit), inverseOf(book, edit))).toEqual(book);
    }
  });
});
