import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { RECORD_VERSION } from '../../src/record/book/recordTypes';
import { createIdbStorage, LAYOUT } from '../../src/record/storage/idbStorage';
import { openWriteAheadStorage } from '../../src/record/storage/writeAheadStorage';
import { createRandom } from '../reference/random';
import { createAir, createClock, createLocks, makePlayer, puts, standBook, type Stand } from './record-stand';

const INTERLEAVINGS = Number(process.env['RECORD_INTERLEAVINGS'] ?? 60);
/** The layout of a program that came later: one step more. */
const LATER = [...LAYOUT, () => {}];

/** Tabs of one browser on one IndexedDB; each runs the program of its layout. */
function openBrowser(place: string) {
  const texts = new Map<string, string>();
  const journal = openWriteAheadStorage(() => ({
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
    removeItem: (key) => void texts.delete(key),
  }));
  // The store answers in turns of its own, so each stop of the clock has to last for a whole write.
  const [locks, air, clock] = [createLocks(), createAir(), createClock(undefined, 40)];
  const open = (name: string, layout: typeof LAYOUT): Promise<Stand> => {
    const keeper = createIdbStorage(place, layout);
    return standBook({ keeper: keeper as never, locks, clock, channel: air.tune(), journal, name });
  };
  return { clock, open };
}
const modeOf = ({ book }: Stand) => book.state.getState().mode;
const notesIn = ({ book }: Stand, id: string): unknown =>
  (book.state.getState().records.get(id) as { notes: string } | undefined)?.notes;

test(`over ${INTERLEAVINGS} random interleavings of an old and a new version nothing is lost and the new one ends with everything`, async () => {
  for (let seed = 1; seed <= INTERLEAVINGS; seed++) {
    const random = createRandom(seed);
    const { clock, open } = openBrowser(`versions-${seed}`);
    const old = await open('old-tab', LAYOUT);
    await clock.go(300);
    expect(modeOf(old), `seed ${seed}`).toBe('writing');
    const players = [makePlayer(), makePlayer()];
    const accepted = new Map<string, string>();
    const takings: Promise<void>[] = [];
    let later: Stand | undefined;
    const arrival = Math.floor(random() * 10);
    for (let step = 0; step < 16; step++) {
      if (step === arrival) later = await open('new-tab', LATER);
      const tab = later && random() < 0.5 ? later : old;
      const roll = random();
      if (roll < 0.75) {
        const player = players[Math.floor(random() * 2)];
        const before = tab.book.state.getState().records.get(player.id) ?? player;
        const changedMs = Math.max(clock.nowMs(), before.changedMs + 1);
        const notes = `step ${step}`;
        if (tab.book.apply(puts({ ...player, notes, changedMs }))) accepted.set(player.id, notes);
      } else if (roll < 0.85 && later) takings.push(later.book.takeOver());
      await clock.go(Math.floor(random() * 400));
    }
    takings.push(later!.book.takeOver());
    await clock.go(8000);
    await Promise.all(takings);
    await clock.go(2000);
    expect([modeOf(old), modeOf(later!)], `seed ${seed}`).toEqual(['reading', 'writing']);
    const { records } = await createIdbStorage(`versions-${seed}`, LATER).load();
    const stored = new Map((records as { id: string; notes: string }[]).map(({ id, notes }) => [id, notes]));
    for (const [id, notes] of accepted) {
      expect(notesIn(later!, id), `seed ${seed}`).toBe(notes);
      expect(stored.get(id), `seed ${seed}`).toBe(notes);
    }
    expect(old.book.state.getState().saving, `seed ${seed}`).toEqual({ phase: 'saved' });
  }
}, 600_000);

test('a tab of an old version that can no longer write says so, and its last change is taken up by the new one', async () => {
  const { clock, open } = openBrowser('last-word');
  const old = await open('old-tab', LAYOUT);
  await clock.go(300);
  const later = await open('new-tab', LATER);
  await clock.go(500);
  const player = makePlayer();
  expect(old.book.apply(puts(player))).toBe(true);
  await clock.go(1000);
  expect(old.book.state.getState().saving).toMatchObject({ problem: expect.stringContaining('newer') as string });
  const taking = later.book.takeOver();
  await clock.go(4000);
  await taking;
  expect(later.book.state.getState().records.get(player.id)).toEqual(player);
  expect(old.book.state.getState().saving).toEqual({ phase: 'saved' });
});

test('a record of a newer version that arrives from another tab is not taken, and not said to be', async () => {
  const air = createAir();
  const { book, keeper, clock } = await standBook({ channel: air.tune() });
  const other = air.tune();
  const heard: unknown[] = [];
  other.listen((word) => heard.push(word));
  const [fine, newer] = [makePlayer(), { ...makePlayer(), version: RECORD_VERSION + 1, hat: 'cap' }];
  other.post({ say: 'please write', from: 'other', records: [fine, newer as never], removed: [] });
  await clock.go(1000);
  expect([...keeper.shelf.records.keys()]).toEqual([fine.id]);
  expect(book.state.getState().records.has(newer.id)).toBe(false);
  expect(heard).toContainEqual({ say: 'taken', to: 'other', ids: [fine.id] });
});
