import { Vector2, type Color } from 'three';
import { describe, expect, test } from 'vitest';
import { FLIGHT_LINES, FLIGHT_SCALE, FlightModel, placeOnModel } from '../../src/scene/lines/flightModel';
import { LineBatch } from '../../src/scene/lines/lineBatch';
import { theme } from './mountedSwing';

// A flight of our own with a draw against the target: rows of t (s), x, y, z (m).
const LAST = 60;
const track = Float64Array.from(
  Array.from({ length: LAST + 1 }, (_, i) => {
    const t = i / 10;
    return [t, 30 * t, 18 * t - 3 * t * t, -0.8 * t * t];
  }).flat(),
);
const ball = [0.1, 0.05, 0.9];

/** What the model draws, line by line. */
function drawModel(of: Float64Array | undefined) {
  const lines = new LineBatch(FLIGHT_LINES, new Vector2(800, 600)).take(FLIGHT_LINES);
  const drawn: { a: number[]; b: number[]; colour: Color; px: number }[] = [];
  const line = lines.line.bind(lines);
  lines.line = (a, b, colour, px, share) => {
    drawn.push({ a: Array.from(a), b: Array.from(b), colour, px });
    line(a, b, colour, px, share);
  };
  new FlightModel(theme, lines).draw(ball, of);
  return drawn;
}
/** From the ball, in the plane of the ground: the way to a place, rad, and how far it is, m. */
const bearing = ([x, , z]: readonly number[]): number => Math.atan2(z - ball[2], x - ball[0]);
const far = ([x, , z]: readonly number[]): number => Math.hypot(x - ball[0], z - ball[2]);

describe('a flight drawn to the landing', () => {
  const drawn = drawModel(track);
  const way = drawn.filter(({ colour, px }) => colour === theme.brass && px > 1.5).slice(0, 28);

  test('keeps every direction true, and divides every length by what is said beside it', () => {
    expect(FLIGHT_SCALE).toBe(80);
    expect(way.length).toBe(28);
    way.forEach(({ b }, i) => {
      // The same share of the flight's time in the track itself, worked out from its formula.
      const t = (6 * (i + 1)) / 28;
      const [x, z] = [30 * t, -0.8 * t * t];
      expect(Math.abs(bearing(b) - Math.atan2(z, x))).toBeLessThan(0.002);
      expect(far(b) * FLIGHT_SCALE).toBeCloseTo(Math.hypot(x, z), 0);
    });
  });

  test('leaves the ball at its own launch, and ends on the ground', () => {
    const { a, b } = way[0];
    expect(a).toEqual(ball.map((x) => expect.closeTo(x, 9) as number));
    // Up over along, over the first piece: the chord of the track, less what the tee's height takes away.
    const t = 6 / 28;
    const rise = (18 * t - 3 * t * t) / (30 * t);
    expect((b[1] - a[1]) / far(b)).toBeGreaterThan(rise - 0.06);
    expect((b[1] - a[1]) / far(b)).toBeLessThan(rise + 0.01);
    expect(way.at(-1)!.b[1]).toBeLessThan(0.01);
  });

  test('tapers, and carries the ball along itself to the landing', () => {
    expect(way.every(({ px }, i) => i === 0 || px < way[i - 1].px)).toBe(true);
    const at = new Float64Array(3);
    placeOnModel(track, 0, ball, at);
    expect([...at]).toEqual(ball.map((x) => expect.closeTo(x, 9) as number));
    placeOnModel(track, 5, ball, at);
    expect([...at]).toEqual(way.at(-1)!.b.map((x) => expect.closeTo(x, 9) as number));
  });

  test('fits the room kept for its lines, and is gone without a track', () => {
    expect(drawn.length).toBeLessThanOrEqual(FLIGHT_LINES);
    expect(drawModel(undefined)).toEqual([]);
  });
});
