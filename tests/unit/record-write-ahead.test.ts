import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { openWriteAheadStorage, readWriteAheadEntry } from '../../src/record/storage/writeAheadStorage';
import { createClock, createKeeper, createShelf, makeLesson, makePlayer, puts, standBook } from './record-stand';

function createSmallStorage() {
  const texts = new Map<string, string>();
  const shelf = {
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
    removeItem: (key: string) => void texts.delete(key),
  };
  return { texts, journal: openWriteAheadStorage(() => shelf) };
}

describe('a page that closes before the store has answered', () => {
  test('leaves a note, and the next page takes it up: record, deletion, and which lesson is open', async () => {
    const [shelf, { journal, texts }] = [createShelf(), createSmallStorage()];
    const first = await standBook({ keeper: createKeeper(shelf), journal, name: 'first' });
    const [stays, goes] = [makePlayer(), makePlayer()];
    first.book.apply(puts(stays, goes));
    await first.clock.go(1000);
    const lesson = makeLesson(stays.id, { notes: 'last word' });
    first.keeper.fault = 'never'; // the page closes: whatever is asked of the store stays unanswered
    first.book.apply(puts(lesson));
    first.book.apply({ label: 'Delete', put: [], remove: [goes.id] });
    first.book.setMeta({ openLessonId: lesson.id });
    first.book.leave();
    expect(texts.size).toBe(1);

    const second = await standBook({ keeper: createKeeper(shelf), journal, name: 'second' });
    const { records, meta } = second.book.state.getState();
    expect([...records.keys()].toSorted()).toEqual([lesson.id, stays.id].toSorted());
    expect(meta.openLessonId).toBe(lesson.id);
    await second.clock.go(1000);
    expect(shelf.records.get(lesson.id)).toEqual(lesson);
    expect(shelf.records.has(goes.id)).toBe(false);
    expect(texts.size).toBe(0);
  });

  test('killed without a word loses no change older than 350 ms, though the store never answers', async () => {
    const [shelf, { journal }] = [createShelf(), createSmallStorage()];
    const first = await standBook({ keeper: createKeeper(shelf), journal, name: 'first' });
    const player = makePlayer();
    first.keeper.fault = 'never';
    let typed = 0;
    for (; typed < 100; typed++) {
      first.book.apply(puts({ ...player, notes: `letter ${typed}`, changedMs: 2000 + typed }));
      await first.clock.go(20);
    }
    const second = await standBook({ keeper: createKeeper(shelf), journal, name: 'second' });
    const { notes } = second.book.state.getState().records.get(player.id) as typeof player;
    expect((typed - 1 - Number(notes.slice(7))) * 20).toBeLessThanOrEqual(350);
  });

  test('of a page that never reached the store is taken up, and not lost under the notes of the next that does not', async () => {
    const [shelf, { journal }] = [createShelf(), createSmallStorage()];
    const [one, two] = [makePlayer(), makePlayer()];
    for (const [player, name] of [
      [one, 'first'],
      [two, 'second'],
    ] as const) {
      const keeper = createKeeper(shelf);
      keeper.fault = 'unknown';
      const { book, clock } = await standBook({ keeper, journal, name });
      await clock.go(500);
      book.apply(puts(player));
      await clock.go(500);
    }
    const third = await standBook({ keeper: createKeeper(shelf), journal, name: 'third' });
    await third.clock.go(500);
    expect([...shelf.records.keys()].toSorted()).toEqual([one.id, two.id].toSorted());
  });

  test('a tab that only reads leaves the note of the writer alone', async () => {
    const { journal, texts } = createSmallStorage();
    journal.write('the writer wrote this');
    const never = { request: () => new Promise<never>(() => {}) } as unknown as LockManager;
    const { book, clock } = await standBook({ journal, locks: never });
    await clock.go(500);
    expect(book.state.getState().mode).toBe('reading');
    book.leave();
    expect([...texts.values()]).toEqual(['the writer wrote this']);
  });

  test('does not turn back what was changed since', async () => {
    const [shelf, { journal }] = [createShelf(), createSmallStorage()];
    const old = await standBook({ keeper: createKeeper(shelf), journal, name: 'old' });
    const player = makePlayer();
    old.book.apply(puts(player));
    await old.clock.go(1000);
    old.keeper.fault = 'never';
    old.book.apply(puts({ ...player, notes: 'noted', changedMs: 2000 }));
    old.book.leave();
    shelf.records.set(player.id, { ...player, notes: 'changed since', changedMs: 3000 });
    const next = await standBook({ keeper: createKeeper(shelf), journal, clock: createClock(), name: 'next' });
    expect(next.book.state.getState().records.get(player.id)).toMatchObject({ notes: 'changed since' });
  });

  test('a wiped player is wiped from the note as well', async () => {
    const { journal, texts } = createSmallStorage();
    const { book, clock, keeper } = await standBook({ journal });
    const player = makePlayer();
    keeper.fault = 'quota';
    book.apply(puts(player));
    book.leave();
    expect([...texts.values()].join()).toContain(player.id);
    keeper.fault = null;
    const wiping = book.wipe(player.id);
    await clock.go(5000);
    expect(await wiping).toMatchObject({ left: 0 });
    expect([...texts.values()].join()).not.toContain(player.id);
  });
});

test.each([
  ['nothing', null],
  ['no JSON', '{'],
  ['a list', '[]'],
  ['no claim', '{"records":[],"removed":[],"meta":null}'],
  ['too deep', `{"claim":1,"records":${'['.repeat(1e5)}${']'.repeat(1e5)},"removed":[],"meta":null}`],
  ['a field twice', '{"claim":1,"claim":1,"records":[],"removed":[],"meta":null}'],
])('a note that is %s is no note', (_, text) => {
  expect(readWriteAheadEntry(text)).toBeUndefined();
});

test('of a damaged note the whole records are taken', () => {
  const player = makePlayer();
  const text = JSON.stringify({ claim: 1, records: [player, { ...player, name: 7 }], removed: [7, 'x'], meta: 'odd' });
  expect(readWriteAheadEntry(text)).toMatchObject({ records: [player], removed: ['x'], meta: { openLessonId: null } });
});

test('a browser without small storage only loses the note', () => {
  const journal = openWriteAheadStorage(() => {
    throw new DOMException('forbidden', 'SecurityError');
  });
  journal.write('x');
  journal.clear();
  expect(journal.read()).toBeNull();
});

test('a note that an earlier version left is taken up whole: its records are brought up to date', () => {
  for (const version of [1, 2]) {
    const path = new URL(`../fixtures/lesson-book-store-v${version}.json`, import.meta.url);
    const { records } = JSON.parse(readFileSync(path, 'utf8')) as {
      readonly records: readonly { readonly id: string }[];
    };
    const note = readWriteAheadEntry(JSON.stringify({ claim: 1, records, removed: [], meta: {} }));
    expect(note?.records.map(({ id }) => id)).toEqual(records.map(({ id }) => id));
  }
});
