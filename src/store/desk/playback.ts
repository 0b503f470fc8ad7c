import { current, desk, put } from './desk';
import { swingSpan } from './sessionActions';
import { POSITION_IDS } from '../../reading/positions';

/** Nothing plays by itself for longer, s by the clock. */
const LONGEST_RUN = 5;
/** With reduced motion: one position at a time, s by the clock. */
const STEPPED = 0.5;

interface Run {
  startedAtMs: number | undefined;
  readonly from: number;
  readonly steps: readonly number[] | null;
}

/** Cache: the run that is under way. */
const clock: { run: Run | null } = { run: null };

const wantsStillness = (): boolean =>
  typeof matchMedia === 'function' && matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Where playing starts: at the playhead, or from the finish as early as the run allows, the top at the latest. */
function startOf(t: number, perSecond: number): number {
  const { from, to } = swingSpan();
  if (t < to - 1e-3) return t;
  return Math.max(from, Math.min(0, to - LONGEST_RUN * perSecond));
}

/** Seconds of reference time per second of the clock. */
const rate = (): number => desk.getState().session.speed / current().swing.tempo;

/** Plays by the clock from the playhead; from the finish it starts over. Stops at the finish, after five seconds at most. */
export function play(): void {
  const { session } = desk.getState();
  if (session.playing) return;
  const from = startOf(session.t, rate());
  const { positions } = current();
  const steps = wantsStillness()
    ? POSITION_IDS.map((id) => positions[id]).filter((t): t is number => t !== null && t > from + 1e-6)
    : null;
  const started: Run = { startedAtMs: undefined, from, steps };
  clock.run = started;
  put({ session: { ...session, t: from, held: null, playing: true, bench: null } });
  requestAnimationFrame((nowMs) => tick(started, nowMs));
}

/** Stops where it is. */
export function pause(): void {
  clock.run = null;
  const { session } = desk.getState();
  if (session.playing) put({ session: { ...session, playing: false } });
}

/** One frame of a run. A run that was stopped, or followed by another, asks for no more. */
function tick(mine: Run, nowMs: number): void {
  const { session } = desk.getState();
  if (clock.run !== mine || !session.playing) return;
  mine.startedAtMs ??= nowMs;
  const { t, done } = timeAt(mine, (nowMs - mine.startedAtMs) / 1000);
  if (done) clock.run = null;
  put({ session: { ...session, t, playing: !done } });
  if (!done) requestAnimationFrame((next) => tick(mine, next));
}

/** Reference time of a run after `elapsed` seconds of the clock. */
function timeAt({ from, steps }: Run, elapsed: number): { readonly t: number; readonly done: boolean } {
  const over = elapsed >= LONGEST_RUN;
  if (steps) {
    const passed = Math.min(steps.length, Math.floor(elapsed / STEPPED));
    return { t: passed === 0 ? from : steps[passed - 1], done: over || passed >= steps.length };
  }
  const { to } = swingSpan();
  const t = from + Math.min(elapsed, LONGEST_RUN) * rate();
  return { t: Math.min(t, to), done: over || t >= to };
}
