import type { BatchedLines } from './lineBatch';
import type { Theme } from '../setting/theme';

/** The ball after the strike: when the head was there (reference s), and its track from its own place. */
export interface Struck {
  readonly t: number;
  /** Draw the whole flight as a small model, to where it lands. */
  readonly isWhole?: boolean;
  /** Rows of t, x, y, z: s of the player's own time, m. */
  readonly track: Float64Array;
}

const ROW = 4;
/** The track is drawn this far, m along the ground: farther off a line is lost in the distance. */
const DRAWN_TO = 7;
const STEPS = 24;
/** Lines that the way and the start line take at most. */
export const TRAIL_LINES = STEPS + 24;
/** The start line on the ground, m, and its dashes: dash, gap, dot, gap. */
const START_TO = 2.4;
const START_DASH = [0.2, 0.06, 0.03, 0.06];
const ON_GROUND = 0.0016;

/** The ball leaving along its computed track, with the line it starts on. Nothing is drawn before the strike. */
export class BallFlightTrail {
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);

  constructor(
    private readonly theme: Theme,
    private readonly lines: BatchedLines,
  ) {}

  /** Draws the way a ball struck from `ball` (m) has come `elapsed` s (the player's own) after the strike, and its start line. */
  draw(ball: ArrayLike<number>, struck: Struck | undefined, elapsed: number): void {
    this.lines.clear();
    if (struck && elapsed > 0) {
      if (!struck.isWhole) this.drawWay(struck.track, elapsed, ball);
      this.drawStart(struck.track, ball);
    }
    this.lines.commit();
  }

  private drawWay(track: Float64Array, elapsed: number, ball: ArrayLike<number>): void {
    this.b.set([ball[0], ball[1], ball[2]]);
    for (let i = 1; i <= STEPS; i++) {
      this.a.set(this.b);
      placeOnTrack(track, (elapsed * i) / STEPS, ball, this.b);
      this.lines.line(this.a, this.b, this.theme.ink, 1.8, 0.9);
      if (Math.hypot(this.b[0] - ball[0], this.b[2] - ball[2]) > DRAWN_TO) return;
    }
  }

  private drawStart(track: Float64Array, ball: ArrayLike<number>): void {
    const [dx, dz] = [track[ROW + 1], track[ROW + 3]];
    const size = Math.hypot(dx, dz);
    if (!(size > 0)) return;
    let from = 0.05;
    for (let i = 0; from < START_TO; i++) {
      const to = Math.min(START_TO, from + START_DASH[i % START_DASH.length]);
      if (i % 2 === 0) {
        this.a.set([ball[0] + (dx / size) * from, ON_GROUND, ball[2] + (dz / size) * from]);
        this.b.set([ball[0] + (dx / size) * to, ON_GROUND, ball[2] + (dz / size) * to]);
        this.lines.line(this.a, this.b, this.theme.ink, 1.8);
      }
      from = to;
    }
  }
}

/** Place on a track `elapsed` s after the strike, from `ball` (m); at its end it stays. Written into `out`. */
export function placeOnTrack(track: Float64Array, elapsed: number, ball: ArrayLike<number>, out: Float64Array): void {
  const last = track.length / ROW - 1;
  const step = track[last * ROW] / last;
  const at = Math.min(last, Math.max(0, elapsed / step));
  const row = Math.min(last - 1, Math.floor(at));
  const share = at - row;
  for (let axis = 0; axis < 3; axis++) {
    const from = track[row * ROW + 1 + axis];
    const to = track[(row + 1) * ROW + 1 + axis];
    out[axis] = ball[axis] + from + (to - from) * share;
  }
}
