import { describe, expect, test } from 'vitest';
import { RECORD_VERSION } from '../../src/record/book/recordTypes';
import { createKeeper, makeLesson, makePlayer, puts, standBook, type Fault, bookWords } from './record-stand';

describe('saving', () => {
  test('a change is kept and read back within 350 ms, however fast the changes come', async () => {
    const { book, keeper, clock } = await standBook();
    const player = makePlayer();
    for (let change = 0; change < 40; change++) {
      book.apply(puts({ ...player, notes: `note ${change}`, changedMs: 1000 + change }));
      await clock.go(20);
    }
    const kept = keeper.shelf.records.get(player.id) as { notes: string };
    expect(Number(kept.notes.slice(5))).toBeGreaterThanOrEqual(40 - 350 / 20);
    await clock.go(350);
    expect(keeper.shelf.records.get(player.id)).toMatchObject({ notes: 'note 39' });
    expect(book.state.getState().saving).toEqual({ phase: 'saved' });
  });

  test('a flush, as when the page hides, writes at once', async () => {
    const { book, keeper } = await standBook();
    const player = makePlayer();
    book.apply(puts(player));
    expect(keeper.shelf.records.size).toBe(0);
    expect(await book.flush()).toBe(true);
    expect(keeper.shelf.records.get(player.id)).toEqual(player);
  });

  test('the browser is asked to keep the book after the first lesson, once, and not for the example', async () => {
    const { book, clock, asked } = await standBook();
    const example = makePlayer({ example: true });
    book.apply(puts(example, makeLesson(example.id)));
    await clock.go(1000);
    expect(asked()).toBe(0);
    const player = makePlayer();
    book.apply(puts(player, makeLesson(player.id)));
    await clock.go(1000);
    book.apply(puts(makeLesson(player.id)));
    await clock.go(1000);
    expect(asked()).toBe(1);
    expect(book.state.getState().meta.promised).toBe(true);
  });
});

const FAULTS: Record<Exclude<Fault, null>, string> = {
  quota: 'The device is full.',
  abort: 'The device refused to write.',
  unknown: 'The device refused to write.',
  lost: 'The device refused to write.',
  never: 'The device does not answer.',
  null: 'The device refused to write.',
  unwritten: 'What was written reads back differently.',
};

describe.each(Object.entries(FAULTS) as [Exclude<Fault, null>, string][])('a store that fails (%s)', (fault, words) => {
  test('is said within 1 s of the change, offers a copy, and nothing is lost when it recovers', async () => {
    const { book, keeper, clock } = await standBook();
    const player = makePlayer();
    keeper.fault = fault;
    book.apply(puts(player));
    await clock.go(1000);
    expect(bookWords(book.state.getState(), clock.nowMs())).toEqual({
      text: `Not saved. ${words}`,
      offer: 'copy',
      alarm: true,
    });
    expect(book.state.getState().records.get(player.id)).toEqual(player);

    book.apply(puts({ ...player, notes: 'written while it failed', changedMs: 2000 }));
    await clock.go(5000);
    expect(book.state.getState().saving.phase).toBe('failed');
    keeper.fault = null;
    await clock.go(10_000);
    expect(book.state.getState().saving).toEqual({ phase: 'saved' });
    expect(keeper.shelf.records.get(player.id)).toMatchObject({ notes: 'written while it failed' });
  });
});

// One that only forgets what it is given does not show before the first write.
const AT_START = (Object.keys(FAULTS) as Exclude<Fault, null>[]).filter((fault) => fault !== 'unwritten');
describe.each(AT_START)('a store that fails (%s)', (fault) => {
  test('at the start: the app works, says so, and joins the store when it answers', async () => {
    const keeper = createKeeper();
    const before = makePlayer({ name: 'Kept before' });
    keeper.shelf.records.set(before.id, before);
    keeper.fault = fault;
    const { book, clock } = await standBook({ keeper });
    await clock.go(1100);
    expect(book.state.getState().mode).toBe('apart');
    expect(bookWords(book.state.getState(), clock.nowMs()).offer).toBe('copy');
    const player = makePlayer();
    expect(book.apply(puts(player))).toBe(true);
    keeper.fault = null;
    await clock.go(5000);
    expect(book.state.getState().mode).toBe('writing');
    expect([...keeper.shelf.records.keys()].toSorted()).toEqual([before.id, player.id].toSorted());
    expect(book.state.getState().records.get(before.id)).toEqual(before);
  });
});

describe('a slow store', () => {
  test('a page that was held up for seconds does not take its own delay for silence', async () => {
    const { book, keeper, clock } = await standBook();
    const said: string[] = [];
    book.state.subscribe((state) => said.push(state.saving.phase));
    const commit = keeper.commit.bind(keeper);
    // Four seconds pass in one go while the write is on its way; its answer stands in line behind the timers.
    keeper.commit = async (...batch) => {
      await Promise.resolve();
      clock.jump(4000);
      await new Promise<void>((resolve) => clock.after(1, resolve));
      await commit(...batch);
    };
    book.apply(puts(makePlayer()));
    await clock.go(500);
    await clock.go(500);
    expect(said).not.toContain('failed');
    expect(said.at(-1)).toBe('saved');
  });

  test('that takes two seconds for a write is said to be late, and then that everything is saved', async () => {
    const { book, keeper, clock } = await standBook();
    const commit = keeper.commit.bind(keeper);
    keeper.commit = async (...batch) => {
      await new Promise<void>((resolve) => clock.after(2000, resolve));
      await commit(...batch);
    };
    book.apply(puts(makePlayer()));
    await clock.go(1000);
    expect(bookWords(book.state.getState(), clock.nowMs()).text).toBe('Not saved. The device does not answer.');
    await clock.go(9000);
    expect(bookWords(book.state.getState(), clock.nowMs()).text).toMatch(/^Saved /);
  });

  test('with nothing in it but the example raises no alarm; with the first player of one’s own it does within 1 s', async () => {
    const { book, keeper, clock } = await standBook();
    const example = makePlayer({ id: 'example-player-1', example: true });
    keeper.fault = 'never';
    book.apply(puts(example));
    await clock.go(30_000);
    expect(bookWords(book.state.getState(), clock.nowMs())).toMatchObject({ text: '', alarm: false });
    const player = makePlayer();
    book.apply(puts(player));
    await clock.go(1000);
    expect(bookWords(book.state.getState(), clock.nowMs())).toMatchObject({ offer: 'copy', alarm: true });
    // Somebody who was to be removed and is still there is worth an alarm too.
    book.apply({ label: 'Delete', put: [], remove: [player.id] });
    await clock.go(10_000);
    expect(bookWords(book.state.getState(), clock.nowMs())).toMatchObject({ offer: 'copy', alarm: true });
  });
});

describe('what is in the store', () => {
  test('that cannot be read, or comes from a newer program, stays there untouched and is counted', async () => {
    const keeper = createKeeper();
    const fine = makePlayer();
    const newer = { ...makePlayer(), version: RECORD_VERSION + 1, shoeSize: 44 };
    const damaged = { ...makePlayer(), name: 7 };
    for (const record of [fine, newer, damaged]) keeper.shelf.records.set(record.id, record);
    const { book, clock } = await standBook({ keeper });
    expect([...book.state.getState().records.keys()]).toEqual([fine.id]);
    expect(book.state.getState().unread).toEqual({ newer: 1, damaged: 1 });
    book.apply(puts(makePlayer()));
    await clock.go(1000);
    expect(keeper.shelf.records.get(newer.id)).toEqual(newer);
    expect(keeper.shelf.records.get(damaged.id)).toEqual(damaged);
  });

  test('of a wiped player is gone: nothing of him is left, and undo does not bring him back', async () => {
    const { book, keeper, clock } = await standBook();
    const [wren, other] = [makePlayer(), makePlayer({ name: 'Robin' })];
    const lessons = [makeLesson(wren.id), makeLesson(wren.id)];
    book.apply(puts(wren, other, ...lessons, makeLesson(other.id)));
    book.apply({ label: 'Delete a lesson', put: [], remove: [lessons[0].id] });
    await clock.go(1000);
    expect(await book.wipe(wren.id)).toEqual({ removed: 2, left: 0 });
    expect(JSON.stringify([...keeper.shelf.records.values()])).not.toContain(wren.id);
    expect(book.undo()).toBeUndefined();
    expect(keeper.shelf.records.size).toBe(2);
  });

  test('of a wiped player that a broken store keeps is said to be left', async () => {
    const { book, keeper, clock } = await standBook();
    const wren = makePlayer();
    book.apply(puts(wren, makeLesson(wren.id)));
    await clock.go(1000);
    keeper.fault = 'unwritten';
    const wiping = book.wipe(wren.id);
    await clock.go(1000);
    expect(await wiping).toEqual({ removed: 0, left: 2 });
  });
});
