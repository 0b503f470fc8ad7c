import type { Document } from '../../store/document/document';
import type { BookRecord } from '../book/recordTypes';

/** The book's metadata. */
export interface Meta {
  readonly lastBackupMs: number | null;
  /** Lessons written since the last backup, by id: each counts once. */
  readonly unsavedLessons: readonly string[];
  readonly openLessonId: string | null;
  /** The desk as it was before a lesson was opened; it comes back when the lesson closes. */
  readonly desk: Document | null;
  /** The example has been shown once; removed, it does not come back. */
  readonly exampleShown: boolean;
  /** Whether the browser promised to keep the book; null while it has not been asked. */
  readonly promised: boolean | null;
}

export const FRESH_META: Meta = {
  lastBackupMs: null,
  unsavedLessons: [],
  openLessonId: null,
  desk: null,
  exampleShown: false,
  promised: null,
};

/** One commit: all of it or nothing. */
export interface Batch {
  readonly put: readonly BookRecord[];
  readonly remove: readonly string[];
  readonly meta: Meta;
}

/** Where the book is kept. Every method may fail or never answer; the writer lives with both. */
export interface StoragePort {
  /** Takes the right to write from whoever had it. Answers the number under which this writer commits from now on. */
  claim(): Promise<number>;
  load(): Promise<{ readonly records: readonly unknown[]; readonly meta: unknown }>;
  /** Rejects with `Outdated` when another writer has claimed since. */
  commit(claim: number, batch: Batch): Promise<void>;
  /** What is really there under these ids, for the comparison after a write; undefined where nothing is. */
  readBack(ids: readonly string[]): Promise<readonly unknown[]>;
  /** Writes a word beside the book, reads it back and removes it. Answers whether it came back the same. */
  probe(word: string): Promise<boolean>;
  /** Drops the connection; the next call makes a new one. */
  reconnect(): void;
}

/** Another writer has taken over. */
export class Outdated extends Error {
  override name = 'Outdated';
}
/** A newer program has changed the store: it is left untouched. */
export class NewerStore extends Error {
  override name = 'NewerStore';
}
