import { createStore, type StoreApi } from 'zustand/vanilla';
import { CLOSED_BOOK, readStored, withEdit, type BookState } from './bookState';
import { countLessons, isNewer, isOf, readLate } from './changes';
import { afterAwake, type Clock } from '../storage/clock';
import { inverseOf, withDeskOf, type Birth, type Edit } from './edits';
import { recordsOf } from '../file/importPlan';
import { readWriteAheadEntry, type WriteAheadStorage } from '../storage/writeAheadStorage';
import { NewerStore, type StoragePort, type Meta } from '../storage/storagePort';
import type { BookRecord } from './recordTypes';
import { createWriteAheadLog } from '../storage/writeAheadLog';
import { createWriterLock, type Channel, type Locks } from '../storage/writerLock';
import { createWriter } from '../storage/writer';

/** What the book needs from the browser; tests replace it. */
export interface Ports {
  readonly keeper: StoragePort;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly locks: Locks | undefined;
  readonly channel: Channel;
  readonly journal: WriteAheadStorage;
  /** Asks the browser to keep the book when space runs out; answers what it promises. */
  readonly askToKeep: () => Promise<boolean>;
}

export interface LessonBook {
  readonly state: StoreApi<BookState>;
  start(): void;
  /** Makes a change. False when another tab writes the book: nothing was changed. */
  apply(edit: Edit): boolean;
  /** Takes the last edit back. Answers what it was. */
  undo(): string | undefined;
  setMeta(part: Partial<Meta>): void;
  birth(): Birth;
  flush(): Promise<boolean>;
  /** The page may be about to close: pending changes go to the write-ahead log at once, and to the store if there is time. */
  leave(): void;
  takeOver(): Promise<void>;
  /** Removes a player for good and checks the store for anything left. */
  wipe(playerId: string): Promise<{ readonly removed: number; readonly left: number }>;
}

/** Edits that can be taken back. */
const LONGEST_UNDO = 50;
/** Records a note holds at most: a whole import is in its file anyway. */
const LONGEST_NOTE = 200;
/** A tab that does not get the lock within this opens the book read-only, ms. */
const TURN_MS = 250;
const REOPEN_MS = 1000;
/** Before the store has given a claim. */
const NO_CLAIM = -1;

/** A closed lesson book on these ports; nothing is read before it is opened. */
export function createLessonBook({ keeper, clock, newId, locks, channel, journal, askToKeep }: Ports): LessonBook {
  const state = createStore<BookState>(() => CLOSED_BOOK);
  const put = (part: Partial<BookState>): void => state.setState(part);
  const get = state.getState;

  const writer = createWriter(
    keeper,
    { record: (id) => get().records.get(id), meta: () => get().meta },
    clock,
    (saving, savedMs) => {
      put(savedMs === undefined ? { saving } : { saving, savedMs });
      if (savedMs !== undefined) {
        notes.kept();
        channel.post({ say: 'written' });
        askOnce();
      }
    },
    () => stepBack(),
  );

  let asked = false;
  /** Once, after the user's first own lesson. */
  const askOnce = (): void => {
    const { meta } = get();
    if (asked || meta.promised !== null || meta.unsavedLessons.length === 0) return;
    asked = true;
    void askToKeep().then((promised) => setMeta({ promised }));
  };

  const stillWaiting = () => {
    const { records } = get();
    const ids = writer.waiting();
    const mine = ids.map((id) => records.get(id)).filter((record) => record !== undefined);
    return { ids, mine, gone: ids.filter((id) => !records.has(id)) };
  };

  /** Reads the store again. What is not yet written stays as it is on screen. */
  const reload = async (): Promise<void> => {
    const stored = readStored(await keeper.load());
    const here = get();
    // What another tab has changed later is the newer word.
    const isOvertaken = (id: string): boolean => {
      const [ours, theirs] = [here.records.get(id), stored.records.get(id)];
      return ours !== undefined && theirs !== undefined && !isNewer(ours, theirs);
    };
    writer.drop(writer.waiting().filter(isOvertaken));
    const { mine, gone } = stillWaiting();
    const { openLessonId, desk } = here.meta;
    const meta = here.mode === 'apart' ? { ...stored.meta, openLessonId, desk } : stored.meta;
    put({ records: withEdit(stored.records, { put: mine, remove: gone }), unread: stored.unread, meta });
  };

  /** Another tab has written: read again, until it works. */
  const refresh = (): void =>
    void reload().catch(() => clock.after(REOPEN_MS, () => get().mode === 'reading' && refresh()));

  const stayApart = (error: unknown): void => {
    const problem =
      error instanceof NewerStore
        ? 'A newer Slantwise has changed the lesson book. It is left untouched. Update this page.'
        : 'The lesson book cannot be reached on this device.';
    put({ mode: 'apart', saving: { phase: 'failed', problem } });
    // What an earlier page left in the log must not be overwritten by this one.
    if (!(error instanceof NewerStore)) takeUpNote(NO_CLAIM);
    keeper.reconnect();
  };

  let claimed = 0;
  const isOurs = (): boolean => get().mode === 'writing' || get().mode === 'apart';
  const notes = createWriteAheadLog(journal, clock, isOurs, () => {
    const { ids, mine, gone } = stillWaiting();
    if (!writer.isWaiting() || ids.length > LONGEST_NOTE) return undefined;
    return JSON.stringify({ claim: claimed, records: mine, removed: gone, meta: get().meta });
  });
  /** Applies what the previous page could not write before it closed; newer changes are kept. */
  const takeUpNote = (claim: number): void => {
    const note = readWriteAheadEntry(journal.read());
    if (!note) return;
    const { records } = get();
    const late = note.records.filter((record) => isNewer(record, records.get(record.id)));
    // Its metadata and deletions count only if nobody has written in between.
    const isLatest = note.claim === claim - 1;
    const removed = isLatest ? note.removed.filter((id) => records.has(id)) : [];
    if (isLatest) put({ meta: note.meta });
    if (isLatest || late.length > 0) applyQuietly({ label: '', put: late, remove: removed });
  };

  const open = async (): Promise<void> => {
    try {
      const claim = await answerWithin(keeper.claim());
      await answerWithin(reload());
      // The lock may have been lost while the store was answering.
      if (!turnstile.holds()) return;
      put({ saving: { phase: 'saved' } });
      takeUpNote(claim);
      put({ mode: 'writing' });
      writer.setClaim(claim);
      claimed = claim;
    } catch (error) {
      if (!turnstile.holds()) return;
      stayApart(error);
      if (!(error instanceof NewerStore)) clock.after(REOPEN_MS, () => turnstile.holds() && void open());
    }
  };
  /** A store that never answers must not keep the app waiting. */
  const answerWithin = <T>(work: Promise<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      const callOff = afterAwake(clock, REOPEN_MS, () => reject(new Error('no answer')));
      work.then(resolve, reject).finally(callOff);
    });

  const turnstile = createWriterLock(newId(), locks, channel, clock, {
    onTurn: open,
    onLost() {
      writer.setClaim(null);
      stepBack();
    },
    finish: async () => void (await writer.flush()),
  });

  /** Another tab writes now. */
  const stepBack = (): void => {
    put({ mode: 'reading', undo: [] });
    passOn();
    refresh();
  };

  let callOffPassing: (() => void) | undefined;
  /** Sends changes that could not be written here to the tab that writes now, until it confirms them. */
  const passOn = (): void => {
    callOffPassing?.();
    const { ids, mine, gone } = stillWaiting();
    if (ids.length === 0 || get().mode !== 'reading') return;
    put({ saving: { phase: 'failed', problem: 'Another tab took over before the last change was kept.' } });
    channel.post({ say: 'please write', from: turnstile.me, records: mine, removed: gone });
    callOffPassing = clock.after(REOPEN_MS, passOn);
  };

  channel.listen((word) => {
    const { mode, records } = get();
    if (word.say === 'written' && mode === 'reading') refresh();
    if (word.say === 'taken' && word.to === turnstile.me) {
      writer.drop(word.ids);
      if (writer.waiting().length === 0) put({ saving: { phase: 'saved' } });
      refresh();
    }
    if (word.say === 'please write' && mode === 'writing') {
      const theirs = readLate(word.records);
      const newer = theirs.filter((record) => isNewer(record, records.get(record.id)));
      const removed = word.removed.filter((id) => records.has(id));
      const ids = [...theirs.map(({ id }) => id), ...word.removed];
      applyQuietly({ label: 'From another tab', put: newer, remove: removed });
      void writer.flush().then((fine) => fine && channel.post({ say: 'taken', to: word.from, ids }));
    }
  });

  const applyQuietly = (edit: Edit): void => {
    const { records, meta } = get();
    put({ records: withEdit(records, edit), meta: countLessons(meta, records, edit) });
    writer.mark([...edit.put.map(({ id }) => id), ...edit.remove]);
    notes.changed();
  };

  const apply = (edit: Edit): boolean => {
    const { mode, records, undo } = get();
    if (mode === 'reading' || mode === 'opening') return false;
    const inverse = inverseOf(records, edit);
    applyQuietly(edit);
    if (edit.label !== '') put({ undo: [...undo.slice(1 - LONGEST_UNDO), inverse] });
    return true;
  };

  /** Undoing an edit must not undo what was dialled since: the desk has its own undo. */
  const keepDesk = (record: BookRecord): BookRecord => {
    const now = get().records.get(record.id);
    const isOpen = record.id === get().meta.openLessonId && record.kind === 'lesson' && now?.kind === 'lesson';
    return isOpen ? withDeskOf(record, now) : record;
  };

  const setMeta = (part: Partial<Meta>): void => {
    const { mode, meta } = get();
    if (mode === 'reading' || mode === 'opening') return;
    put({ meta: { ...meta, ...part } });
    writer.mark([]);
    notes.changed();
  };

  return {
    state,
    apply,
    setMeta,
    start() {
      turnstile.enter();
      clock.after(TURN_MS, () => {
        if (get().mode !== 'opening' || turnstile.holds()) return;
        reload().then(() => get().mode === 'opening' && !turnstile.holds() && put({ mode: 'reading' }), stayApart);
      });
    },
    undo() {
      const { undo, mode } = get();
      const last = undo.at(-1);
      if (!last || mode === 'reading') return undefined;
      put({ undo: undo.slice(0, -1) });
      applyQuietly({ ...last, put: last.put.map(keepDesk) });
      return last.label;
    },
    birth: () => ({ id: newId(), nowMs: clock.nowMs() }),
    flush: () => writer.flush(),
    leave() {
      notes.now();
      void writer.flush();
    },
    takeOver: () => turnstile.takeOver(),
    async wipe(playerId) {
      const { records, undo, meta } = get();
      const ids = recordsOf(records, playerId).map(({ id }) => id);
      if (!apply({ label: '', put: [], remove: ids })) return { removed: 0, left: ids.length };
      const wiped = new Set(ids);
      const isHis = (edit: Edit): boolean =>
        edit.put.some((record) => isOf(record, playerId, wiped)) || edit.remove.some((id) => wiped.has(id));
      const closed = wiped.has(meta.openLessonId ?? '') ? { openLessonId: null, desk: null } : {};
      put({ undo: undo.filter((edit) => !isHis(edit)), meta: { ...get().meta, ...closed } });
      journal.clear();
      await writer.flush();
      const { records: raw } = await keeper.load();
      const left = raw.filter((record) => isOf(record, playerId, wiped)).length;
      return { removed: ids.length - left, left };
    },
  };
}
