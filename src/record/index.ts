import { readStored } from './book/bookState';
import { deviceClock } from './storage/clock';
import { computeCm, linkDesk } from './book/deskLink';
import { writeEverything } from './file/everything';
import { makeExample } from './book/example';
import { fileName, writeFile } from './file/file';
import { createIdbStorage } from './storage/idbStorage';
import { recordsOf, type ImportPlan } from './file/importPlan';
import { LIMITS, type BookRecord } from './book/recordTypes';
import { openWriteAheadStorage } from './storage/writeAheadStorage';
import { createLessonBook } from './book/lessonBook';
import { createOffline } from './storage/offline';
import { saveFile } from './file/saveFile';
import type { Channel, Word } from './storage/writerLock';

export * from './book/edits';
export * from './book/recordTypes';
export type { KeptCamera, KeptFilm } from './film/keptFilm';
export * from './book/lists';
export * from './book/progress';
export * from './book/practice';
export { standingOf } from './book/standing';
export { asSeenHere, computeCm, computeIfFound } from './book/deskLink';
export { EXAMPLE_ID } from './book/example';
export { planImport, type ImportPlan, type Policy } from './file/importPlan';
export { readFile, type FileReading } from './file/readFile';
export { saveFile } from './file/saveFile';
export type { BookState } from './book/bookState';

/** Connects the tabs of this browser; without BroadcastChannel each is on its own. */
function openChannel(): Channel {
  if (typeof BroadcastChannel === 'undefined') return { post: () => {}, listen: () => {} };
  const channel = new BroadcastChannel('slantwise.lesson-book');
  return {
    post: (word) => channel.postMessage(word),
    listen: (hear) => channel.addEventListener('message', ({ data }: MessageEvent<Word>) => hear(data)),
  };
}

const browser = typeof navigator === 'undefined' ? undefined : navigator;

const keeper = createIdbStorage();

/** The lesson book of this device. */
export const book = createLessonBook({
  keeper,
  clock: deviceClock,
  newId: () => crypto.randomUUID(),
  // Absent where the page is not served securely.
  locks: (browser as Partial<Navigator> | undefined)?.locks,
  channel: openChannel(),
  journal: openWriteAheadStorage(() => localStorage),
  askToKeep: async () => (await (browser as Partial<Navigator> | undefined)?.storage?.persist?.()) ?? false,
});

export const deskLink = linkDesk(book, deviceClock);

const serviceWorker = (browser as Partial<Navigator> | undefined)?.serviceWorker;

/** The installed program and its updates. */
export const offline = createOffline(
  serviceWorker,
  () => new URL('./sw.js', document.baseURI).href,
  // Of any tab: the book itself says whether a lesson is open.
  () => book.state.getState().meta.openLessonId !== null,
  () => {
    deskLink.follow();
    return book.flush();
  },
  () => location.reload(),
);

/** Writes a word into the store, reads it back and removes it. Answers "read back", or what went wrong. */
export const probeStore = (): Promise<string> =>
  Promise.race([
    keeper.probe(crypto.randomUUID()).then(
      (same) => (same ? 'read back' : 'something else'),
      () => 'it cannot be reached',
    ),
    new Promise<string>((resolve) => deviceClock.after(1000, () => resolve('nothing'))),
  ]);

/** Reads the book and keeps it from now on. Once, after the desk has been set. */
export function startBook(): void {
  const { state } = book;
  const stop = state.subscribe(({ mode, meta, records }) => {
    if (mode !== 'writing') return;
    stop();
    if (meta.exampleShown) return;
    book.setMeta({ exampleShown: true });
    if (records.size === 0) book.apply({ label: '', put: makeExample(computeCm), remove: [] });
  });
  deskLink.start();
  book.start();
  // The self-test reads this list to show what was requested, so it must not overflow.
  performance.setResourceTimingBufferSize(5000);
  const leave = (): void => {
    deskLink.follow();
    book.leave();
  };
  window.addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && leave());
}

/** Records that go into a file: pictures of people only where they were asked for. */
const withoutStills = (records: Iterable<BookRecord>): BookRecord[] =>
  [...records].filter(({ kind }) => kind !== 'still');

/** Saves the whole book as a file, and remembers that it was. False: with its stills it was too long, and went without. */
export function backUp(withStills = false): boolean {
  deskLink.follow();
  const nowMs = deviceClock.nowMs();
  const { records } = book.state.getState();
  const whole = withStills ? writeFile(records.values(), nowMs) : undefined;
  // What is too long would not be read back.
  const isTooLong = whole !== undefined && whole.length > LIMITS.fileText;
  const text = whole === undefined || isTooLong ? writeFile(withoutStills(records.values()), nowMs) : whole;
  saveFile(fileName(nowMs), text);
  book.setMeta({ lastBackupMs: nowMs, unsavedLessons: [] });
  return !isTooLong;
}

/** Makes an import as one change: undo takes all of it back. */
export const importRecords = ({ added, changed, madeUp }: ImportPlan): boolean =>
  book.apply({ label: 'Import', put: [...madeUp, ...added, ...changed.map(({ theirs }) => theirs)], remove: [] });

/** Saves one player with everything about him, to hand over. */
export function handOver(playerId: string): void {
  deskLink.follow();
  const nowMs = deviceClock.nowMs();
  const records = withoutStills(recordsOf(book.state.getState().records, playerId));
  const player = records.find((record) => record.kind === 'player');
  saveFile(fileName(nowMs, player?.name), writeFile(records, nowMs));
}

/** Saves everything, even when parts of the program have failed: what is in memory, or else what is in the store. */
export async function saveEverything(): Promise<void> {
  const { mode, records } = book.state.getState();
  const kept = mode === 'opening' ? await readKept() : [];
  const { name, text } = writeEverything(withoutStills([...kept, ...records.values()]), deviceClock.nowMs());
  saveFile(name, text);
}

/** The records in the store, or none when it does not answer soon. */
function readKept(): Promise<BookRecord[]> {
  return Promise.race([
    keeper.load().then(
      (stored) => [...readStored(stored).records.values()],
      () => [],
    ),
    new Promise<BookRecord[]>((resolve) => deviceClock.after(1000, () => resolve([]))),
  ]);
}
