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
