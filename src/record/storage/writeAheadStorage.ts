import { readMeta } from '../book/bookState';
import { migrate } from '../book/migrations';
import type { Meta } from './storagePort';
import { LIMITS, type BookRecord } from '../book/recordTypes';
import { findObstacle } from '../file/jsonGuard';
import { readRecord } from '../file/validate';

/** Changes that were pending when a page closed. A closing page has no time for IndexedDB, only for local storage. */
export interface WriteAheadEntry {
  /** Under which claim it would have been written. */
  readonly claim: number;
  readonly records: readonly BookRecord[];
  readonly removed: readonly string[];
  readonly meta: Meta;
}

/** A place for one text that is written synchronously: local storage. */
export interface WriteAheadStorage {
  write(text: string): void;
  read(): string | null;
  clear(): void;
}

/** A log that keeps nothing.
 * @internal For books that tests stand up without the small storage. */
export const NO_WRITE_AHEAD: WriteAheadStorage = { write: () => {}, read: () => null, clear: () => {} };
const KEY = 'slantwise.lesson-journal';

/** Local storage, if there is any. A refused write is ignored: the store has its own try. */
export function openWriteAheadStorage(
  shelf: () => Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>,
): WriteAheadStorage {
  const attempt = <T>(work: () => T, otherwise: T): T => {
    try {
      return work();
    } catch {
      return otherwise;
    }
  };
  return {
    write: (text) => attempt(() => shelf().setItem(KEY, text), undefined),
    read: () => attempt(() => shelf().getItem(KEY), null),
    clear: () => attempt(() => shelf().removeItem(KEY), undefined),
  };
}

/** Reads an entry as untrusted input: field by field, each record whole or not at all. */
export function readWriteAheadEntry(text: string | null): WriteAheadEntry | undefined {
  if (text === null || findObstacle(text, LIMITS.fileText, LIMITS.depth) !== undefined) return undefined;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  const { claim, records, removed, meta } = value as { readonly [K in keyof WriteAheadEntry]?: unknown };
  if (!Number.isSafeInteger(claim) || !Array.isArray(records) || !Array.isArray(removed)) return undefined;
  const read = (records as unknown[]).map((raw) => readRecord(migrate(raw)));
  return {
    claim: claim as number,
    records: read.flatMap((one) => ('record' in one ? [one.record] : [])),
    removed: (removed as unknown[]).filter((id) => typeof id === 'string'),
    meta: readMeta(meta),
  };
}
