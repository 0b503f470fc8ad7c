import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { createIdbStorage, LAYOUT } from '../../src/record/storage/idbStorage';
import { NewerStore, Outdated } from '../../src/record/storage/storagePort';
import { FRESH_META } from '../../src/record/storage/storagePort';
import type { LessonBook } from '../../src/record/book/lessonBook';
import { HAND_OVER_MS } from '../../src/record/storage/writerLock';
import { createRandom } from '../reference/random';
import {
  createAir,
  createClock,
  createKeeper,
  createLocks,
  createShelf,
  makePlayer,
  puts,
  standBook,
  bookWords,
} from './record-stand';

const INTERLEAVINGS = Number(process.env['RECORD_INTERLEAVINGS'] ?? 200);
const modeOf = (book: LessonBook) => book.state.getState().mode;

/** Two tabs of one browser: one store, one lock, one channel, one clock. */
async function openTwo() {
  const [shelf, locks, air, clock] = [createShelf(), createLocks(), createAir(), createClock()];
  const open = (name: string) => {
    const channel = air.tune();
    return standBook({ keeper: createKeeper(shelf), locks, clock, channel, name }).then((stand) => ({
      ...stand,
      channel,
    }));
  };
  const first = await open('first-tab');
  const second = await open('second-tab');
  await clock.go(300);
  return { shelf, clock, first, second };
}

describe('two tabs', () => {
  test('the first writes, the second reads, says so and offers to take over', async () => {
    const { clock, first, second } = await openTwo();
    expect([modeOf(first.book), modeOf(second.book)]).toEqual(['writing', 'reading']);
    expect(bookWords(second.book.state.getState(), clock.nowMs())).toMatchObject({
      text: 'Another tab writes the lesson book.',
      offer: 'take over',
    });
    expect(second.book.apply(puts(makePlayer()))).toBe(false);
  });

  test('what the writer keeps is there for the reader a moment later', async () => {
    const { clock, first, second } = await openTwo();
    const player = makePlayer();
    first.book.apply(puts(player));
    await clock.go(500);
    expect(second.book.state.getState().records.get(player.id)).toEqual(player);
  });

  test('taking over waits for what the other has in hand', async () => {
    const { clock, shelf, first, second } = await openTwo();
    const player = makePlayer();
    first.book.apply(puts(player));
    const taking = second.book.takeOver();
    await clock.go(HAND_OVER_MS + 500);
    await taking;
    expect([modeOf(first.book), modeOf(second.book)]).toEqual(['reading', 'writing']);
    expect(shelf.records.get(player.id)).toEqual(player);
    expect(second.book.state.getState().records.get(player.id)).toEqual(player);
  });

  test('a sleeping tab is passed by; awake again, its last change goes to the writer', async () => {
    const { clock, shelf, first, second } = await openTwo();
    const player = makePlayer();
    first.keeper.fault = 'never';
    first.channel.deaf = true;
    first.book.apply(puts(player));
    const taking = second.book.takeOver();
    await clock.go(HAND_OVER_MS + 50);
    await taking;
    first.keeper.fault = null;
    first.channel.deaf = false;
    await clock.go(5000);
    expect([modeOf(first.book), modeOf(second.book)]).toEqual(['reading', 'writing']);
    expect(shelf.records.get(player.id)).toEqual(player);
    expect(first.book.state.getState().saving).toEqual({ phase: 'saved' });
  });

  test(`over ${INTERLEAVINGS} random interleavings nothing is lost and both agree`, async () => {
    for (let seed = 1; seed <= INTERLEAVINGS; seed++) {
      const random = createRandom(seed);
      const { shelf, clock, first, second } = await openTwo();
      const tabs = [first, second];
      const accepted = new Map<string, number>();
      const players = [makePlayer(), makePlayer()];
      const takings: Promise<void>[] = [];
      for (let step = 0; step < 24; step++) {
        const tab = tabs[Math.floor(random() * 2)];
        const roll = random();
        if (roll < 0.6) {
          const player = players[Math.floor(random() * 2)];
          const now = tab.book.state.getState().records.get(player.id) ?? player;
          const changedMs = Math.max(clock.nowMs(), now.changedMs + 1);
          const notes = `step ${step}`;
          if (tab.book.apply(puts({ ...player, notes, changedMs }))) accepted.set(player.id, step);
        } else if (roll < 0.75) takings.push(tab.book.takeOver());
        else if (roll < 0.85) tab.keeper.fault = random() < 0.5 ? 'quota' : 'abort';
        else tab.keeper.fault = null;
        await clock.go(Math.floor(random() * 400));
      }
      for (const tab of tabs) tab.keeper.fault = null;
      await clock.go(20_000);
      await Promise.all(takings);
      await clock.go(1000);
      const modes = tabs.map(({ book }) => modeOf(book)).toSorted();
      expect(modes, `seed ${seed}`).toEqual(['reading', 'writing']);
      for (const [id, step] of accepted) {
        const wanted = { notes: `step ${step}` };
        expect(shelf.records.get(id), `seed ${seed}`).toMatchObject(wanted);
        for (const { book } of tabs)
          expect(book.state.getState().records.get(id), `seed ${seed}`).toMatchObject(wanted);
      }
    }
  }, 600_000);
});

describe('the store in IndexedDB', () => {
  let stores = 0;
  const name = (): string => `book-${++stores}`;

  test('keeps records and gives them back', async () => {
    const keeper = createIdbStorage(name());
    const claim = await keeper.claim();
    const player = makePlayer();
    await keeper.commit(claim, { put: [player], remove: [], meta: FRESH_META });
    expect(await keeper.readBack([player.id, 'nobody'])).toEqual([player, undefined]);
    keeper.reconnect();
    expect(await keeper.load()).toEqual({ records: [player], meta: FRESH_META });
    await keeper.commit(claim, { put: [], remove: [player.id], meta: FRESH_META });
    expect((await keeper.load()).records).toEqual([]);
    expect(await keeper.probe('a word')).toBe(true);
  });

  test('a writer that was passed by cannot write any more, not even half a batch', async () => {
    const place = name();
    const [old, young] = [createIdbStorage(place), createIdbStorage(place)];
    const claim = await old.claim();
    await young.claim();
    const late = old.commit(claim, { put: [makePlayer()], remove: [], meta: FRESH_META });
    await expect(late).rejects.toBeInstanceOf(Outdated);
    expect((await young.load()).records).toEqual([]);
  });

  test('an old store is brought forward, with everything in it', async () => {
    const place = name();
    const player = makePlayer();
    const old = createIdbStorage(place);
    await old.commit(await old.claim(), { put: [player], remove: [], meta: FRESH_META });
    const newer = createIdbStorage(place, [...LAYOUT, (db) => void db.createObjectStore('clips')]);
    expect((await newer.load()).records).toEqual([player]);
  });

  test('a store of a newer program is left untouched and said so; the old tab stands aside', async () => {
    const place = name();
    const player = makePlayer();
    const [old, newer] = [createIdbStorage(place), createIdbStorage(place, [...LAYOUT, () => {}])];
    const claim = await old.claim();
    await old.commit(claim, { put: [player], remove: [], meta: FRESH_META });
    expect((await newer.load()).records).toEqual([player]);
    await expect(old.load()).rejects.toBeInstanceOf(NewerStore);
    await expect(old.commit(claim, { put: [], remove: [player.id], meta: FRESH_META })).rejects.toBeInstanceOf(
      NewerStore,
    );
    expect((await newer.load()).records).toEqual([player]);
  });

  test('a book on a newer store says so, works on, and writes nothing', async () => {
    const clock = createClock();
    const keeper = Object.assign(createKeeper(), { claim: () => Promise.reject(new NewerStore('newer')) });
    const { book } = await standBook({ keeper, clock });
    const player = makePlayer();
    expect(book.apply(puts(player))).toBe(true);
    await clock.go(20_000);
    expect(bookWords(book.state.getState(), clock.nowMs())).toMatchObject({ offer: 'copy', alarm: true });
    expect(book.state.getState().saving).toMatchObject({
      problem: expect.stringContaining('newer Slantwise') as string,
    });
    expect(keeper.shelf.records.size).toBe(0);
  });
});
