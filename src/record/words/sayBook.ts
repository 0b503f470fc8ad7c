import type { BookState } from '../book/bookState';
import { isOfExampleId } from '../book/example';
import { toDay } from '../file/file';
import type { BookRecord } from '../book/recordTypes';

const DAY_MS = 86_400_000;
/** When to remind of a backup: after so many days or so many lessons. */
export const REMIND_DAYS = 7;
export const REMIND_LESSONS = 5;

/** How the book stands, in words; with what to do about it, if anything. */
export interface BookWords {
  readonly text: string;
  readonly offer: 'copy' | 'take over' | 'back up' | null;
  /** Something is not kept: said as an alarm. */
  readonly alarm: boolean;
}

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** "25 Nov 2026" of a day "2026-11-25". */
export function sayDay(day: string): string {
  const [year, month, date] = day.split('-').map(Number);
  return `${date} ${MONTHS[month - 1]} ${year}`;
}

/** "14:02" today, "25 Nov 2026" before. */
export function sayWhen(ms: number, nowMs: number): string {
  if (toDay(ms) !== toDay(nowMs)) return sayDay(toDay(ms));
  const at = new Date(ms);
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
}

/** "Backup 3 days old." */
export function sayBackup({ meta: { lastBackupMs, unsavedLessons } }: BookState, nowMs: number): string {
  if (lastBackupMs === null) return 'No backup yet.';
  const days = Math.floor((nowMs - lastBackupMs) / DAY_MS);
  const age = days <= 0 ? 'Backup less than a day old' : `Backup ${plural(days, 'day')} old`;
  return unsavedLessons.length === 0 ? `${age}.` : `${age}, ${plural(unsavedLessons.length, 'lesson')} since.`;
}

/** Whether to remind: lessons are waiting for a backup, many of them or for long. */
export function needsBackup({ meta, records }: BookState, nowMs: number): boolean {
  const waiting = meta.unsavedLessons.length;
  if (waiting === 0) return false;
  const first = (): number => Math.min(...meta.unsavedLessons.map((id) => records.get(id)?.createdMs ?? nowMs));
  const since = meta.lastBackupMs ?? first();
  return waiting >= REMIND_LESSONS || nowMs - since >= REMIND_DAYS * DAY_MS;
}

function isOfExample(records: BookState['records'], record: BookRecord): boolean {
  const player = record.kind === 'player' ? record : records.get(record.playerId);
  return player?.kind === 'player' && player.example;
}

/** The line under the desk. Empty while there is nothing worth keeping. */
export function sayBook(state: BookState, nowMs: number): BookWords {
  const { mode, saving, savedMs, records } = state;
  const quiet = { offer: null, alarm: false } as const;
  const own = [...records.values()].filter((record) => !isOfExample(records, record));
  // A book that has only ever held the example has nothing to lose: what fails is tried again without a word.
  const isAtStake = (of: readonly string[] = []): boolean =>
    mode !== 'writing' || own.length > 0 || of.some((id) => !isOfExampleId(id));
  if (saving.phase === 'failed' && isAtStake(saving.of))
    return { text: `Not saved. ${saving.problem}`, offer: 'copy', alarm: true };
  if (mode === 'reading') return { text: 'Another tab writes the lesson book.', offer: 'take over', alarm: false };
  if (mode === 'opening' || own.length === 0) return { text: '', ...quiet };
  if (saving.phase !== 'saved') return { text: 'Saving …', ...quiet };
  const last = savedMs ?? Math.max(...own.map(({ changedMs }) => changedMs));
  const saved = `Saved ${sayWhen(last, nowMs)}.`;
  const remind = needsBackup(state, nowMs);
  return { text: `${saved} ${sayBackup(state, nowMs)}`, offer: remind ? 'back up' : null, alarm: false };
}

/** What this program could not read and left in the store; undefined when there is nothing. */
export function sayUnread({ unread: { newer, damaged } }: BookState): string | undefined {
  const parts: string[] = [];
  if (newer > 0) parts.push(`${plural(newer, 'record')} of a newer Slantwise`);
  if (damaged > 0) parts.push(`${plural(damaged, 'damaged record')}`);
  return parts.length === 0 ? undefined : `${parts.join(' and ')}: left untouched on this device.`;
}
