import type { Clock } from './clock';
import type { WriteAheadStorage } from './writeAheadStorage';

/** A change the store has not taken by then is noted, ms: the usual wait and a usual write, with some to spare. */
const NOTE_MS = 200;

/**
 * Keeps the journal in step with what is in hand: however long the store takes or how often it fails, whoever opens the
 * book next finds every change that is older than `NOTE_MS`.
 */
export interface WriteAheadLog {
  /** Something has changed. */
  changed(): void;
  /** The store has taken something: what it took needs no note any more. */
  kept(): void;
  /** Notes what is in hand, now. */
  now(): void;
}

/**
 * `inHand` answers the text of a note, or undefined when nothing waits or there is too much of it. `isOurs`: whether this
 * tab keeps the book, and so the journal.
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
