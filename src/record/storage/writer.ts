import { afterAwake, type Clock } from './clock';
import { Outdated, NewerStore, type Batch, type StoragePort, type Meta } from './storagePort';
import type { BookRecord } from '../book/recordTypes';

/** How saving stands. `failed` stays until a write has come through; `of`: ids of what was to be written. */
export type Saving =
  | { readonly phase: 'saved' | 'waiting' | 'saving' }
  | { readonly phase: 'failed'; readonly problem: string; readonly of?: readonly string[] };

export interface Source {
  readonly record: (id: string) => BookRecord | undefined;
  readonly meta: () => Meta;
}

/** A change waits this long for others to join it, and a write this long for its answer before it is given up, ms. */
const JOIN_MS = 120;
const PATIENCE_MS = 800;
/** After a failure the next try may take longer: a slow store must get its chance. */
const LONGEST_PATIENCE_MS = 3200;
const RETRY_MS = [500, 1000, 2000, 4000, 8000];

export interface Writer {
  /** These records differ from what is kept: put, or gone. None: only what the book knows about itself. */
  mark(ids: Iterable<string>): void;
  /** Writes now. Answers whether everything is kept and was read back. */
  flush(): Promise<boolean>;
  /** From now on commits under this claim; without one, nothing is written. */
  setClaim(claim: number | null): void;
  /** Ids of what is not yet kept, what is on its way included. */
  waiting(): readonly string[];
  /** Whether anything is not yet kept, also of what the book knows about itself. */
  isWaiting(): boolean;
  /** Removes ids from what is pending: kept elsewhere, or overtaken. */
  drop(ids: Iterable<string>): void;
}

/**
 * Writes changes to the store within `JOIN_MS` and the time of the write. A write that fails or does not answer is
 * reported at once and retried until it succeeds; its changes stay pending.
 */
export function createWriter(
  keeper: StoragePort,
  source: Source,
  clock: Clock,
  tell: (saving: Saving, savedMs?: number) => void,
  onOutdated: () => void,
): Writer {
  let dirty = new Set<string>();
  let onTheirWay: ReadonlySet<string> = new Set();
  let pending = false;
  let isWriting = false;
  let claim: number | null = null;
  let cancelTimer: (() => void) | undefined;
  let running: Promise<boolean> | undefined;
  let failures = 0;

  const schedule = (delayMs: number): void => {
    cancelTimer ??= clock.after(delayMs, () => {
      cancelTimer = undefined;
      void flush();
    });
  };

  const patienceMs = (): number => Math.min(PATIENCE_MS * 2 ** failures, LONGEST_PATIENCE_MS);

  const writeOnce = async (): Promise<boolean> => {
    const taken = dirty;
    onTheirWay = taken;
    [dirty, pending, isWriting] = [new Set(), false, true];
    // A failure stays in sight until a write has come through.
    if (failures === 0) tell({ phase: 'saving' });
    try {
      await withPatience(commitAndCompare(keeper, claim!, batchOf(taken, source)), clock, patienceMs());
    } catch (error) {
      dirty = new Set([...onTheirWay, ...dirty]);
      onTheirWay = new Set();
      [pending, isWriting] = [true, false];
      if (error instanceof Outdated) {
        claim = null;
        onOutdated();
        return false;
      }
      tell({ phase: 'failed', problem: sayFailure(error), of: [...dirty] });
      keeper.reconnect();
      cancelTimer?.();
      cancelTimer = undefined;
      failures++;
      if (error instanceof NewerStore) claim = null;
      else schedule(RETRY_MS[Math.min(failures, RETRY_MS.length) - 1]);
      return false;
    }
    onTheirWay = new Set();
    isWriting = false;
    failures = 0;
    tell({ phase: pending ? 'waiting' : 'saved' }, clock.nowMs());
    return true;
  };

  const flush = (): Promise<boolean> => {
    if (claim === null) return Promise.resolve(!pending);
    cancelTimer?.();
    cancelTimer = undefined;
    running ??= (async () => {
      let fine = true;
      while (fine && pending && claim !== null) fine = await writeOnce();
      return fine && !pending;
    })().finally(() => {
      running = undefined;
      if (pending && claim !== null) schedule(JOIN_MS);
    });
    return running;
  };

  return {
    mark(ids) {
      for (const id of ids) dirty.add(id);
      pending = true;
      if (claim === null) return;
      if (failures === 0) tell({ phase: 'waiting' });
      schedule(JOIN_MS);
    },
    flush,
    setClaim(next) {
      claim = next;
      failures = 0;
      if (claim !== null && pending) schedule(0);
    },
    waiting: () => [...new Set([...onTheirWay, ...dirty])],
    isWaiting: () => pending || isWriting,
    drop(ids) {
      const gone = new Set(ids);
      dirty = new Set([...dirty].filter((id) => !gone.has(id)));
      onTheirWay = new Set([...onTheirWay].filter((id) => !gone.has(id)));
      pending &&= dirty.size > 0;
    },
  };
}

function batchOf(ids: ReadonlySet<string>, { record, meta }: Source): Batch {
  const put: BookRecord[] = [];
  const remove: string[] = [];
  for (const id of ids) {
    const now = record(id);
    if (now) put.push(now);
    else remove.push(id);
  }
  return { put, remove, meta: meta() };
}

/** The write has not arrived in the store as it was meant. */
class Different extends Error {}

async function commitAndCompare(keeper: StoragePort, claim: number, batch: Batch): Promise<void> {
  await keeper.commit(claim, batch);
  const there = await keeper.readBack([...batch.put.map(({ id }) => id), ...batch.remove]);
  const meant = [...batch.put, ...batch.remove.map(() => undefined)];
  const same = (at: number): boolean => JSON.stringify(there[at]) === JSON.stringify(meant[at]);
  if (!meant.every((_, at) => same(at))) throw new Different();
}

/** The store has not answered. */
class Silent extends Error {}

function withPatience(work: Promise<void>, clock: Clock, patienceMs: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const callOff = afterAwake(clock, patienceMs, () => reject(new Silent()));
    work.then(resolve, reject).finally(callOff);
  });
}

function sayFailure(error: unknown): string {
  if (error instanceof Silent) return 'The device does not answer.';
  if (error instanceof Different) return 'What was written reads back differently.';
  if (error instanceof NewerStore) return 'A newer Slantwise has changed the lesson book. Update this page.';
  const name = typeof error === 'object' && error !== null ? (error as { name?: unknown }).name : undefined;
  if (name === 'QuotaExceededError') return 'The device is full.';
  return 'The device refused to write.';
}
