/** The book's clock and timers, which tests replace. */
export interface Clock {
  /** ms since 1970. */
  nowMs(): number;
  /** Calls back after a delay; returns the function that cancels it. */
  after(delayMs: number, callBack: () => void): () => void;
}

export const deviceClock: Clock = {
  nowMs: () => Date.now(),
  after: (delayMs, callBack) => {
    const timer = setTimeout(callBack, delayMs);
    return () => clearTimeout(timer);
  },
};

/** A page may be blocked by its own work for seconds: it gets at least this many turns of the event loop to hear an answer. */
const TURNS = 8;

/**
 * A timeout that counts only time in which the page could respond. Answers that arrived while it was blocked are handled
 * first, so that a busy page is not mistaken for a silent store.
 */
export function afterAwake(clock: Clock, delayMs: number, callBack: () => void): () => void {
  let callOff = (): void => {};
  const wait = (turns: number): void => {
    callOff = clock.after(delayMs / TURNS, () => (turns > 1 ? wait(turns - 1) : callBack()));
  };
  wait(TURNS);
  return () => callOff();
}
