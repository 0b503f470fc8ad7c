import type { Clock } from './clock';
import type { BookRecord } from '../book/recordTypes';

/** Messages between tabs. */
export type Word =
  | { readonly say: 'please hand over'; readonly to: 'writer'; readonly from: string }
  | { readonly say: 'yours'; readonly to: string }
  | { readonly say: 'written' }
  /** A tab that lost the right to write with changes still in hand passes them on: nothing is lost. */
  | {
      readonly say: 'please write';
      readonly from: string;
      readonly records: readonly BookRecord[];
      readonly removed: readonly string[];
    }
  | { readonly say: 'taken'; readonly to: string; readonly ids: readonly string[] };

export interface Channel {
  post(word: Word): void;
  listen(hear: (word: Word) => void): void;
}

/** The part of the browser's lock manager that is used. */
export type Locks = Pick<LockManager, 'request'>;

const WRITER_LOCK = 'slantwise.lesson-book.writer';
/** A writer that has not handed over by then is taken to be asleep, ms. */
export const HAND_OVER_MS = 900;

export interface WriterLock {
  /** Gets in line; `onTurn` is called when this tab may write. */
  enter(): void;
  /** Asks the writing tab to finish and takes over; from a sleeping one the lock is taken. */
  takeOver(): Promise<void>;
  /** Whether it is still this tab's turn. */
  holds(): boolean;
  readonly me: string;
}

export interface WriterLockEvents {
  readonly onTurn: () => Promise<void>;
  /** The right to write has gone to another tab. */
  readonly onLost: () => void;
  /** Finish what is in hand: another tab wants to write. */
  readonly finish: () => Promise<void>;
}

/** One writer per browser: a Web Lock held by one tab at a time, with messages to hand it over. */
export function createWriterLock(
  me: string,
  locks: Locks | undefined,
  channel: Channel,
  clock: Clock,
  { onTurn, onLost, finish }: WriterLockEvents,
): WriterLock {
  let holding = false;
  let heard: (() => void) | undefined;

  const hold = async (options: LockOptions): Promise<void> => {
    if (!locks) {
      holding = true;
      return onTurn();
    }
    try {
      await locks.request(WRITER_LOCK, options, async () => {
        holding = true;
        await onTurn();
        // Held until another tab takes it away or this one closes.
        await new Promise<never>(() => {});
      });
    } catch {
      // The lock was taken away.
    }
    holding = false;
    onLost();
    enter();
    return undefined;
  };
  const enter = (): void => void hold({ mode: 'exclusive' });

  channel.listen((word) => {
    if (word.say === 'please hand over' && holding) {
      void finish().finally(() => channel.post({ say: 'yours', to: word.from }));
    } else if (word.say === 'yours' && word.to === me) {
      heard?.();
    }
  });

  return {
    me,
    enter,
    holds: () => holding,
    async takeOver() {
      if (holding || !locks) return;
      await new Promise<void>((resolve) => {
        const callOff = clock.after(HAND_OVER_MS, resolve);
        heard = () => {
          callOff();
          resolve();
        };
        channel.post({ say: 'please hand over', to: 'writer', from: me });
      });
      heard = undefined;
      if (!holding) void hold({ mode: 'exclusive', steal: true });
    },
  };
}
