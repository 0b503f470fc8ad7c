import { smoothRise } from '../../math/spline';
import type { Theme } from '../setting/theme';
import { placeOnTrack } from './ballFlightTrail';
import type { BatchedLines } from './lineBatch';

/** The flight stands on the board as a model: directions are true, lengths divided by this. Said beside it. */
export const FLIGHT_SCALE = 80;
/** The ball runs along it in this time, s of the player's own. */
const RUNS_IN = 0.4;
const STEPS = 28;
const RING_SIDES = 18;
/** Lines that it takes at most: twice the way, its shadow, twice the ring, the cross, the pin and its pennant. */
export const FLIGHT_LINES = 2 * STEPS + STEPS / 2 + 2 * RING_SIDES + 4 + 1 + 5;
/** Pens, css px: brass in ink; they taper toward the landing, which is far away. */
const PEN = { ink: 4.6, brass: 2.9, shadow: 1.1, taper: 0.35 } as const;
/** m. */
const ON_GROUND = 0.0016;
const LANDING = { ring: 0.062, cross: [0.05, 0.1], pin: 0.15, pennant: 0.085, row: 0.011 } as const;

/** Numbers a row of a track takes: t, x, y, z. */
const ROW = 4;
/** The last instant of a track, s. */
const endOf = (track: Float64Array): number => track[track.length - ROW];

/** Where the ball is on the model, `elapsed` s (the player's own) after the strike, from `ball` (m). Written into `out`. */
export function placeOnModel(
  track: Float64Array,
  elapsed: number,
  ball: ArrayLike<number>,
  out: Float64Array,
): Float64Array {
  return modelAt(track, smoothRise(elapsed / RUNS_IN), ball, out);
}

/** A place on the model at a share of the flight's time. It starts at the ball and ends on the ground. */
function modelAt(track: Float64Array, share: number, ball: ArrayLike<number>, out: Float64Array): Float64Array {
  placeOnTrack(track, endOf(track) * share, ball, out);
  for (let axis = 0; axis < 3; axis++) out[axis] = ball[axis] + (out[axis] - ball[axis]) / FLIGHT_SCALE;
  out[1] = Math.max(ON_GROUND, out[1] + (ON_GROUND - ball[1]) * share);
  return out;
}

/** A whole flight as a small model on the ground, from the ball to a pin where it lands. */
export class FlightModel {
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);
  private readonly end = new Float64Array(3);

  constructor(
    private readonly theme: Theme,
    private readonly lines: BatchedLines,
  ) {}

  /** Draws the flight along `track` of a ball that lay at `ball` (m); of no track it draws nothing. */
  draw(ball: ArrayLike<number>, track: Float64Array | undefined): void {
    this.lines.clear();
    if (track) {
      this.drawShadow(track, ball);
      this.drawWay(track, ball, this.theme.contour, PEN.ink);
      this.drawWay(track, ball, this.theme.brass, PEN.brass);
      this.drawLanding(modelAt(track, 1, ball, this.end));
    }
    this.lines.commit();
  }

  private drawWay(track: Float64Array, ball: ArrayLike<number>, colour: Theme['ink'], px: number): void {
    for (let i = 0; i < STEPS; i++) {
      const to = (i + 1) / STEPS;
      modelAt(track, i / STEPS, ball, this.a);
      modelAt(track, to, ball, this.b);
      this.lines.line(this.a, this.b, colour, px * (1 - PEN.taper * to));
    }
  }

  /** Dashes on the ground tell height from width. */
  private drawShadow(track: Float64Array, ball: ArrayLike<number>): void {
    for (let i = 0; i < STEPS; i += 2) {
      modelAt(track, i / STEPS, ball, this.a)[1] = ON_GROUND;
      modelAt(track, (i + 1) / STEPS, ball, this.b)[1] = ON_GROUND;
      this.lines.line(this.a, this.b, this.theme.ink, PEN.shadow, 0.45);
    }
  }

  /** A ring with a cross on the ground and a pin with a pennant, as on a plan. */
  private drawLanding(at: Float64Array): void {
    const { contour, brass, ink } = this.theme;
    const turn = (2 * Math.PI) / RING_SIDES;
    for (const [colour, px] of [
      [contour, 4.4],
      [brass, 2.6],
    ] as const) {
      for (let i = 0; i < RING_SIDES; i++) {
        this.round(at, LANDING.ring, i * turn, this.a);
        this.lines.line(this.a, this.round(at, LANDING.ring, (i + 1) * turn, this.b), colour, px);
      }
    }
    for (let i = 0; i < 4; i++) {
      this.round(at, LANDING.cross[0], (i * Math.PI) / 2, this.a);
      this.lines.line(this.a, this.round(at, LANDING.cross[1], (i * Math.PI) / 2, this.b), ink, 1.25);
    }
    this.a.set([at[0], ON_GROUND, at[2]]);
    this.b.set([at[0], LANDING.pin, at[2]]);
    this.lines.line(this.a, this.b, ink, 1.6);
    for (let i = 0; i < 5; i++) {
      const up = LANDING.pin - i * LANDING.row;
      this.a.set([at[0], up, at[2]]);
      this.b.set([at[0] + LANDING.pennant * (1 - i / 5), up, at[2]]);
      this.lines.line(this.a, this.b, brass, 2.6);
    }
  }

  private round(at: Float64Array, radius: number, angle: number, out: Float64Array): Float64Array {
    out[0] = at[0] + radius * Math.cos(angle);
    out[1] = ON_GROUND;
    out[2] = at[2] + radius * Math.sin(angle);
    return out;
  }
}
