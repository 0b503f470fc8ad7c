import { standingOf } from '../../src/record/book/standing';
import type { BookState } from '../../src/record/book/bookState';
import { sayBook, type BookWords } from '../../src/words/book/book';
import { createLessonBook, type LessonBook } from '../../src/record/book/lessonBook';
import { type Batch, FRESH_META, Outdated, type StoragePort } from '../../src/record/storage/storagePort';
import type { BookRecord, LessonRecord, PlayerRecord } from '../../src/record/book/recordTypes';
import { NOTHING_COMPUTED } from '../../src/record/book/recordTypes';
import { NO_WRITE_AHEAD, type WriteAheadStorage } from '../../src/record/storage/writeAheadStorage';
import type { Clock } from '../../src/record/storage/clock';
import type { Channel, Locks, Word } from '../../src/record/storage/writerLock';
import type { ChosenPlan } from '../../src/store/document/chosenPlan';
import { DEFAULT_DOCUMENT, STILL_DIALLED } from '../../src/store/document/document';
import { draftPlan } from '../../src/store/plan/draftPlan';

/** A clock that stands still until it is told to go on. `turns`: how long it lets others work at each stop. */
export function createClock(startMs = Date.UTC(2026, 10, 25, 14, 2), turns = 12) {
  let now = startMs;
  let timers: { at: number; order: number; call: () => void }[] = [];
  let order = 0;
  const settle = async (): Promise<void> => {
    for (let turn = 0; turn < turns; turn++) await new Promise((resolve) => setImmediate(resolve));
  };
  const clock: Clock & { go(ms: number): Promise<void>; settle(): Promise<void>; jump(ms: number): void } = {
    nowMs: () => now,
    /** Time passes while the page can do nothing. */
    jump(ms) {
      now += ms;
    },
    after(delayMs, call) {
      const timer = { at: now + delayMs, order: order++, call };
      timers.push(timer);
      return () => {
        timers = timers.filter((one) => one !== timer);
      };
    },
    settle,
    async go(ms) {
      const end = now + ms;
      await settle();
      for (;;) {
        const next = timers.filter(({ at }) => at <= end).toSorted((a, b) => a.at - b.at || a.order - b.order)[0];
        if (!next) break;
        timers = timers.filter((one) => one !== next);
        now = Math.max(now, next.at);
        next.call();
        await settle();
      }
      now = Math.max(now, end);
    },
  };
  return clock;
}

/** A store in memory that can be told to fail. Several books may share its shelf, as tabs do. */
export interface Shelf {
  claim: number;
  records: Map<string, unknown>;
  meta: unknown;
}
export const createShelf = (): Shelf => ({ claim: 0, records: new Map(), meta: undefined });

/** `null`: it fails and says nothing, as some browsers do; `unwritten`: it says yes and writes nothing. */
export type Fault = 'quota' | 'abort' | 'unknown' | 'null' | 'never' | 'lost' | 'unwritten' | null;

export function createKeeper(shelf: Shelf = createShelf()) {
  const fail = (fault: Fault): Promise<never> | undefined => {
    if (fault === 'never') return new Promise<never>(() => {});
    if (fault === 'quota') return Promise.reject(new DOMException('full', 'QuotaExceededError'));
    if (fault === 'abort') return Promise.reject(new DOMException('aborted', 'AbortError'));
    if (fault === 'unknown') return Promise.reject(new DOMException('?', 'UnknownError'));
    if (fault === 'null') return Promise.reject(null);
    if (fault === 'lost') return Promise.reject(new DOMException('closing', 'InvalidStateError'));
    return undefined;
  };
  const keeper: StoragePort & { fault: Fault; commits: Batch[]; shelf: Shelf } = {
    fault: null,
    commits: [],
    shelf,
    claim: async () => (await fail(keeper.fault)) ?? ++shelf.claim,
    async load() {
      await fail(keeper.fault);
      return { records: structuredClone([...shelf.records.values()]), meta: structuredClone(shelf.meta) };
    },
    async commit(claim, batch) {
      await fail(keeper.fault);
      if (claim !== shelf.claim) throw new Outdated('late');
      keeper.commits.push(batch);
      if (keeper.fault === 'unwritten') return;
      for (const record of structuredClone(batch.put)) shelf.records.set(record.id, record);
      for (const id of batch.remove) shelf.records.delete(id);
      shelf.meta = structuredClone(batch.meta);
    },
    readBack: async (ids) => structuredClone(ids.map((id) => shelf.records.get(id))),
    probe: async () => true,
    reconnect() {},
  };
  return keeper;
}

/** Nobody else is there. */
const silence = (): Channel => ({ post: () => {}, listen: () => {} });

export type Stand = {
  book: LessonBook;
  keeper: ReturnType<typeof createKeeper>;
  clock: ReturnType<typeof createClock>;
  asked: () => number;
};

/** A lesson book on a store in memory, with time standing still. Opened, unless said otherwise. */
export async function standBook(
  options: {
    keeper?: ReturnType<typeof createKeeper>;
    clock?: ReturnType<typeof createClock>;
    locks?: Locks;
    channel?: Channel;
    journal?: WriteAheadStorage;
    name?: string;
    /** False: the test starts it. */
    starts?: boolean;
  } = {},
): Promise<Stand> {
  const {
    keeper = createKeeper(),
    clock = createClock(),
    locks,
    channel = silence(),
    journal = NO_WRITE_AHEAD,
    name = 'tab',
    starts = true,
  } = options;
  let asks = 0;
  let ids = 0;
  const book = createLessonBook({
    keeper,
    clock,
    newId: () => `${name}-id-${String(++ids).padStart(8, '0')}`,
    locks,
    channel,
    journal,
    askToKeep: async () => {
      asks++;
      return true;
    },
  });
  if (starts) book.start();
  await clock.settle();
  return { book, keeper, clock, asked: () => asks };
}

let made = 0;
const number = (): string => String(++made).padStart(8, '0');

export const makePlayer = (fields: Partial<PlayerRecord> = {}): PlayerRecord => ({
  kind: 'player',
  id: `player-${number()}`,
  version: 3,
  createdMs: 1000,
  changedMs: 1000,
  name: 'Wren',
  body: { statureM: 1.7, handed: 'left' },
  clubs: ['7-iron'],
  notes: '',
  archived: false,
  example: false,
  ...fields,
});

export const makeLesson = (playerId: string, fields: Partial<LessonRecord> = {}): LessonRecord => ({
  kind: 'lesson',
  id: `lesson-${number()}`,
  version: 3,
  createdMs: 1000,
  changedMs: 1000,
  playerId,
  date: '2026-11-25',
  now: DEFAULT_DOCUMENT,
  computedCm: NOTHING_COMPUTED,
  notes: '',
  ...fields,
});

/** A plan as it is chosen on the desk. */
export const makePlan = (fields: Partial<ChosenPlan> = {}): ChosenPlan => ({
  ...draftPlan(
    `plan${number()}`,
    {
      from: { ...STILL_DIALLED, leadWristFlexionDeg: -20 },
      movements: STILL_DIALLED,
      targetCm: { leadArmParallel: 0.4, shaftParallel: -4.2 },
    },
    null,
  ),
  ...fields,
});

export const puts = (...put: BookRecord[]) => ({ label: 'test', put, remove: [] });
export { FRESH_META };

/** The browser's lock manager in little: one holder, a line behind it, and stealing. */
export function createLocks(): Locks {
  type Waiting = { start: () => void };
  let holder: { reject: (reason: unknown) => void } | undefined;
  const line: Waiting[] = [];
  const next = (): void => {
    if (!holder) line.shift()?.start();
  };
  const request = (
    _name: string,
    options: LockOptions,
    work: (lock: Lock | null) => Promise<unknown>,
  ): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const start = (): void => {
        const mine = { reject };
        holder = mine;
        const end = (): void => {
          if (holder !== mine) return;
          holder = undefined;
          next();
        };
        work({ name: _name, mode: 'exclusive' }).then(resolve, reject).finally(end);
      };
      if (options.steal) {
        holder?.reject(new DOMException('stolen', 'AbortError'));
        start();
      } else if (holder) line.push({ start });
      else start();
    });
  return { request: request as Locks['request'] };
}

/** A broadcast channel between tabs; what is said arrives a turn later, at everybody else. */
export function createAir() {
  const tabs: { hear: (word: Word) => void; of: object }[] = [];
  return {
    tune(): Channel & { deaf: boolean } {
      const me = { deaf: false };
      return Object.assign(me, {
        post(word: Word) {
          const copy = structuredClone(word);
          setImmediate(() => {
            for (const { hear, of } of tabs) if (of !== me && !(of as { deaf: boolean }).deaf) hear(copy);
          });
        },
        listen(hear: (word: Word) => void) {
          tabs.push({ hear, of: me });
        },
      });
    },
  };
}

/** What the line under the desk says about a book. */
export const bookWords = (state: BookState, nowMs: number): BookWords => sayBook(standingOf(state, nowMs), nowMs);
