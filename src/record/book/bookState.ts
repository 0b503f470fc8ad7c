import { readDocument } from '../../store/document/validate';
import { migrate } from './migrations';
import { FRESH_META, type Meta } from '../storage/storagePort';
import type { Edit } from './edits';
import type { Records } from '../file/importPlan';
import type { BookRecord } from './recordTypes';
import { readRecord } from '../file/validate';
import type { Saving } from '../storage/writer';

/**
 * `opening`: not read yet. `writing`: this tab keeps the book. `reading`: another tab does. `apart`: the store cannot be
 * reached; what is written stays on screen until it can.
 */
export type Mode = 'opening' | 'writing' | 'reading' | 'apart';

export interface BookState {
  readonly mode: Mode;
  readonly records: Records;
  readonly meta: Meta;
  readonly saving: Saving;
  /** When a write was last read back, ms since 1970; null before the first. */
  readonly savedMs: number | null;
  /** What the last edits changed, newest last: undone one by one. Not kept over a reload. */
  readonly undo: readonly Edit[];
  /** Records in the store that this program cannot read. They stay there, untouched. */
  readonly unread: { readonly newer: number; readonly damaged: number };
}

export const CLOSED_BOOK: BookState = {
  mode: 'opening',
  records: new Map(),
  meta: FRESH_META,
  saving: { phase: 'saved' },
  savedMs: null,
  undo: [],
  unread: { newer: 0, damaged: 0 },
};

/** The contents of a store. Each record is read on its own, so a damaged one does not affect the others. */
export function readStored({ records, meta }: { readonly records: readonly unknown[]; readonly meta: unknown }) {
  const found = new Map<string, BookRecord>();
  const unread = { newer: 0, damaged: 0 };
  for (const raw of records) {
    const read = readRecord(migrate(raw));
    if ('record' in read) found.set(read.record.id, read.record);
    else unread['newer' in read ? 'newer' : 'damaged']++;
  }
  return { records: found, unread, meta: readMeta(meta) };
}

const timeOrNull = (value: unknown): number | null => (Number.isSafeInteger(value) ? (value as number) : null);

/** The book's metadata; damaged fields get their defaults. */
export function readMeta(value: unknown): Meta {
  if (typeof value !== 'object' || value === null) return FRESH_META;
  const given = value as { readonly [K in keyof Meta]?: unknown };
  const desk = given.desk === null ? undefined : readDocument(given.desk);
  const ids = Array.isArray(given.unsavedLessons) ? (given.unsavedLessons as unknown[]) : [];
  return {
    lastBackupMs: timeOrNull(given.lastBackupMs),
    unsavedLessons: ids.filter((id) => typeof id === 'string'),
    openLessonId: typeof given.openLessonId === 'string' ? given.openLessonId : null,
    desk: desk && 'document' in desk ? desk.document : null,
    exampleShown: given.exampleShown === true,
    promised: typeof given.promised === 'boolean' ? given.promised : null,
  };
}

/** The records with an edit made. */
export function withEdit(records: Records, { put, remove }: Pick<Edit, 'put' | 'remove'>): Records {
  const next = new Map(records);
  for (const record of put) next.set(record.id, record);
  for (const id of remove) next.delete(id);
  return next;
}
