import type { Positions } from '../store';

/** Nothing plays by itself for longer, s by the clock. */
const LONGEST_RUN = 5;
/** With reduced motion: one position at a time, s by the clock. */
const STEPPED = 0.8;

interface ClockState {
  /** Reference time of the first swing, s. */
  readonly t: number;
  readonly playing: boolean;
}

/** One clock for both swings: by the time of the first. Runs only while it plays. */
export interface Clock {
  readonly get: () => ClockState;
  readonly subscribe: (tell: () => void) => () => void;
  readonly set: (t: number) => void;
  readonly play: (speed: number) => void;
  readonly pause: () => void;
}

const wantsStillness = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * A clock that stands at lead arm parallel. It plays from the top to just after impact, over and over for five seconds, and ends where it
 * began. `tempo`: seconds of the player's own time for one of the reference.
 */
export function createClock(positions: Positions, tempo: number): Clock {
  const from = positions.P4 ?? 0;
  const to = (positions.P7 ?? from + 0.25) + 0.03;
  const rest = positions.P5 ?? from;
  let state: ClockState = { t: rest, playing: false };
  let run = 0;
  const listeners = new Set<() => void>();
  const put = (next: ClockState): void => {
    state = next;
    for (const tell of listeners) tell();
  };
  const stops = [positions.P4, positions.P5, positions.P6, positions.P7].filter((t): t is number => t !== null);
  const timeAt = (elapsed: number, speed: number): number => {
    if (wantsStillness()) return stops[Math.min(stops.length - 1, Math.floor(elapsed / STEPPED))] ?? rest;
    const gone = (elapsed * speed) / tempo;
    return from + (gone % (to - from));
  };
  const isOver = (elapsed: number): boolean =>
    elapsed >= LONGEST_RUN || (wantsStillness() && elapsed >= STEPPED * stops.length);
  return {
    get: () => state,
    subscribe(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    set(t) {
      run++;
      put({ t, playing: false });
    },
    play(speed) {
      const mine = ++run;
      let startedMs: number | undefined;
      const tick = (nowMs: number): void => {
        if (mine !== run) return;
        startedMs ??= nowMs;
        const elapsed = (nowMs - startedMs) / 1000;
        if (isOver(elapsed)) return put({ t: rest, playing: false });
        put({ t: timeAt(elapsed, speed), playing: true });
        requestAnimationFrame(tick);
      };
      put({ t: timeAt(0, speed), playing: true });
      requestAnimationFrame(tick);
    },
    pause() {
      run++;
      if (state.playing) put({ ...state, playing: false });
    },
  };
}
