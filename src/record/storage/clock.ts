/** Time and chance as the book sees them, so that tests can hold them still. */
export interface Clock {
  /** ms since 1970. */
  nowMs(): number;
  /** Calls back after a while; answers the function that calls it off. */
  after(delayMs: number, callBack: () => void): () => void;
}

export const deviceClock: Clock = {
  nowMs: () => Date.now(),
  after: (delayMs, callBack) => {
    const timer = setTimeout(callBack, delayMs);
    return () => clearTimeout(timer);
  },
};

/** A page may be held up by its own work for seconds: it is given at least this many turns to hear an answer. */
const TURNS = 8;

/**
 * Calls back after so much time in which the page was awake. What has arrived while it was held up is heard first, so
 * that a busy page does not take its own delay for silence.
 */
export function afterAwake(clock: Clock, delayMs: number, callBack: () => void): () => void {
  let callOff = (): void => {};
  const wait = (turns: number): void => {
    callOff = clock.after(delayMs / TURNS, () => (turns > 1 ? wait(turns - 1) : callBack()));
  };
  wait(TURNS);
  return () => callOff();
}
