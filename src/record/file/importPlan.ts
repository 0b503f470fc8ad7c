import {
  RECORD_VERSION,
  type BookRecord,
  type LessonRecord,
  type PlayerRecord,
  type SwingRecord,
} from '../book/recordTypes';
import type { FileReading } from './readFile';

export type Records = ReadonlyMap<string, BookRecord>;

/** Which copy stays when book and file have different copies of the same record. */
export type Policy = 'newer' | 'ours' | 'theirs';

/** What an import would do, before it does it. */
export interface ImportPlan {
  readonly added: readonly BookRecord[];
  /** Records that are here in another state: the file's copy takes its place. */
  readonly changed: readonly { readonly ours: BookRecord; readonly theirs: BookRecord; readonly fields: string[] }[];
  /** Records that are here in another state and stay as they are. */
  readonly left: readonly BookRecord[];
  readonly same: number;
  /** Players made up because their lessons were readable and they were not. */
  readonly madeUp: readonly PlayerRecord[];
}

/** Works out what a file would add and change. Writes nothing. */
export function planImport(
  book: Records,
  { records }: Exclude<FileReading, { refused: string }>,
  policy: Policy,
): ImportPlan {
  const added: BookRecord[] = [];
  const changed: { ours: BookRecord; theirs: BookRecord; fields: string[] }[] = [];
  const left: BookRecord[] = [];
  let same = 0;
  const lessons = new Set([...book.values(), ...records].filter(({ kind }) => kind === 'lesson').map(({ id }) => id));
  for (const theirs of records) {
    const ours = book.get(theirs.id);
    // Without its lesson a still could not be reached, nor wiped by whoever looks for it.
    if (theirs.kind === 'still' && !lessons.has(theirs.lessonId)) continue;
    if (!ours) added.push(theirs);
    else if (JSON.stringify(ours) === JSON.stringify(theirs)) same++;
    else if (ours.kind === theirs.kind && takesTheirs(ours, theirs, policy))
      changed.push({ ours, theirs, fields: differingFields(ours, theirs) });
    else left.push(theirs);
  }
  return { added, changed, left, same, madeUp: makeUpPlayers(book, added) };
}

const takesTheirs = (ours: BookRecord, theirs: BookRecord, policy: Policy): boolean =>
  policy === 'theirs' || (policy === 'newer' && theirs.changedMs > ours.changedMs);

function differingFields(ours: BookRecord, theirs: BookRecord): string[] {
  const [a, b] = [ours, theirs] as unknown as Record<string, unknown>[];
  return Object.keys(a).filter((key) => key !== 'changedMs' && JSON.stringify(a[key]) !== JSON.stringify(b[key]));
}

/** Lessons whose player was lost get one, so that they can be reached. */
function makeUpPlayers(book: Records, added: readonly BookRecord[]): PlayerRecord[] {
  const players = [...book.values(), ...added].filter(({ kind }) => kind === 'player');
  const known = new Set(players.map(({ id }) => id));
  const made = new Map<string, PlayerRecord>();
  for (const record of added) {
    if (record.kind === 'player' || record.kind === 'still' || known.has(record.playerId) || made.has(record.playerId))
      continue;
    made.set(record.playerId, standIn(record));
  }
  return [...made.values()];
}

const standIn = ({ playerId, now, createdMs, changedMs }: LessonRecord | SwingRecord): PlayerRecord => ({
  kind: 'player',
  id: playerId,
  version: RECORD_VERSION,
  createdMs,
  changedMs,
  name: 'Recovered player',
  body: now.player,
  clubs: [],
  notes: '',
  archived: false,
  example: false,
});

/** One player with everything about him. */
export const recordsOf = (book: Records, playerId: string): BookRecord[] =>
  [...book.values()].filter((record) => (record.kind === 'player' ? record.id : record.playerId) === playerId);
