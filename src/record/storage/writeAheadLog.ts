import type { Clock } from './clock';
import type { WriteAheadStorage } from './writeAheadStorage';

/** A change that the store has not taken by then goes to the log, ms: longer than the usual delay and write together. */
const NOTE_MS = 200;

/**
 * Keeps pending changes in local storage: however slow the store is or how often it fails, the next page finds every
 * change older than `NOTE_MS`.
 */
export interface WriteAheadLog {
  /** Something has changed. */
  changed(): void;
  /** The store has taken something, which the log no longer needs to hold. */
  kept(): void;
  /** Writes pending changes to the log now. */
  now(): void;
}

/**
 * `inHand` returns the pending changes as text, undefined when there are none or too many. `isOurs`: whether this tab
 * writes the book, and so the log.
 */
export function createWriteAheadLog(
  journal: WriteAheadStorage,
  clock: Clock,
  isOurs: () => boolean,
  inHand: () => string | undefined,
): WriteAheadLog {
  let callOff: (() => void) | undefined;
  let isNoted = false;

  const now = (): void => {
    callOff?.();
    callOff = undefined;
    if (!isOurs()) return;
    const text = inHand();
    if (text === undefined) journal.clear();
    else journal.write(text);
    isNoted = text !== undefined;
  };

  return {
    now,
    changed() {
      callOff ??= clock.after(NOTE_MS, now);
    },
    kept() {
      if (isNoted || inHand() === undefined) now();
    },
  };
}
