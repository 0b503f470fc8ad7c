import { sayWhen } from './days';

const DAY_MS = 86_400_000;

/** How the lesson book stands, in words; with what to do about it, if anything. */
export interface BookWords {
  readonly text: string;
  readonly offer: 'copy' | 'take over' | 'back up' | null;
  /** Something is not kept: said as an alarm. */
  readonly alarm: boolean;
}

/** The last backup (ms since 1970; null: none yet), and the lessons that were changed since. */
interface BackedUp {
  readonly meta: { readonly lastBackupMs: number | null; readonly unsavedLessons: readonly string[] };
}

/** How the lesson book stands, in facts. */
export interface BookStanding extends BackedUp {
  readonly mode: 'opening' | 'writing' | 'reading' | 'apart';
  /** Why something worth keeping is not kept; null while all is well. */
  readonly problem: string | null;
  readonly isSaved: boolean;
  /** When a record of the coach's own was last kept, ms since 1970; null while there is none. */
  readonly lastMs: number | null;
  readonly needsBackup: boolean;
}

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** "Backup 3 days old." */
export function sayBackup({ meta: { lastBackupMs, unsavedLessons } }: BackedUp, nowMs: number): string {
  if (lastBackupMs === null) return 'No backup yet.';
  const days = Math.floor((nowMs - lastBackupMs) / DAY_MS);
  const age = days <= 0 ? 'Backup less than a day old' : `Backup ${plural(days, 'day')} old`;
  return unsavedLessons.length === 0 ? `${age}.` : `${age}, ${plural(unsavedLessons.length, 'lesson')} since.`;
}

/** The line under the desk. Empty while there is nothing worth keeping. */
export function sayBook(standing: BookStanding, nowMs: number): BookWords {
  const { mode, problem, isSaved, lastMs, needsBackup } = standing;
  const quiet = { offer: null, alarm: false } as const;
  if (problem !== null) return { text: `Not saved. ${problem}`, offer: 'copy', alarm: true };
  if (mode === 'reading') return { text: 'Another tab writes the lesson book.', offer: 'take over', alarm: false };
  if (mode === 'opening' || lastMs === null) return { text: '', ...quiet };
  if (!isSaved) return { text: 'Saving …', ...quiet };
  const saved = `Saved ${sayWhen(lastMs, nowMs)}.`;
  return { text: `${saved} ${sayBackup(standing, nowMs)}`, offer: needsBackup ? 'back up' : null, alarm: false };
}

/** What this program could not read and left in the store; undefined when there is nothing. */
export function sayUnread({
  unread: { newer, damaged },
}: {
  readonly unread: { readonly newer: number; readonly damaged: number };
}): string | undefined {
  const parts: string[] = [];
  if (newer > 0) parts.push(`${plural(newer, 'record')} of a newer Slantwise`);
  if (damaged > 0) parts.push(`${plural(damaged, 'damaged record')}`);
  return parts.length === 0 ? undefined : `${parts.join(' and ')}: left untouched on this device.`;
}

export const EXAMPLE = 'An example of our own invention, no real player.';
export const NO_LESSON = 'No lesson yet';
/** Nobody to show: in the whole book, or of those that were searched for. */
export const sayNobody = (search: string): string =>
  search === '' ? 'Nobody in the book yet.' : `Nobody found for "${search}".`;
export const BOOK_FILE_TOO_LARGE = 'This file is too large for a lesson book.';
export const HAND_OVER = 'To hand over one player, open the player and choose "Export player". Stills stay here.';
/** How many records the book holds. */
export const sayRecords = (count: number): string => `${count} records are in the book.`;

export const NO_PLAN = 'No plan yet. Choose one under What to change.';
export const LESSON_SAVED = 'The lesson is saved.';

/** Whether what is dialled on the desk goes into the lesson that is looked at. */
export const sayOnDesk = (isOpen: boolean): string =>
  isOpen ? 'Open: what you dial goes into this lesson.' : 'Closed. The desk shows something else.';
