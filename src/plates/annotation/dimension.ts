import { boxAround, isClear, isInside, type Obstacles } from './boxes';
import { along, type Box, type Point, type Segment } from '../plate/frame';
import { figureAround, type Figure, type Lettering } from './lettering';

/** A dimension as a draughtsman sets it: the line, two oblique ticks, and the number. */
export interface Dimension {
  readonly line: Segment;
  readonly ticks: readonly [Segment, Segment];
  readonly figure: Figure;
}

const TICK = 5.5;
/** From this length on (units; 15 cm) the number stands at the line, not past its end. */
const LONG = 45;
/** How far a dimension line runs past its ticks. */
const OVERRUN = 26;
const OVERRUN_LONG = 7;
const CLEAR = 5;

const tickAt = (p: Point, direction: Point): Segment => {
  // Turned by 45 degrees from the line.
  const t = { x: (direction.x - direction.y) * Math.SQRT1_2, y: (direction.x + direction.y) * Math.SQRT1_2 };
  return { from: along(p, t, -TICK), to: along(p, t, TICK) };
};

interface Wanted {
  readonly from: Point;
  readonly to: Point;
  /** Unit vector along the dimension, toward the side where a short dimension's number is put first. */
  readonly toward: Point;
  /** Unit vector across it: away from what is measured. */
  readonly away: Point;
  readonly number: string;
  readonly unit: string;
}

/**
 * A dimension from `from` to `to`, its number where it fits the room and touches nothing: past one end, past the other, or beside the
 * line. Nothing when none of them does.
 */
export function findDimension(
  wanted: Wanted,
  letters: Lettering,
  room: Box,
  obstacles: Obstacles,
): Dimension | undefined {
  const { from, to, toward, away, number, unit } = wanted;
  const side = (p: Point): number => p.x * toward.x + p.y * toward.y;
  const [first, last] = side(from) >= side(to) ? [from, to] : [to, from];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const back = { x: -toward.x, y: -toward.y };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const probe = figureAround(middle, number, unit, letters);
  const halfWidth = probe.box.right - middle.x;
  const halfHeight = probe.box.bottom - middle.y;
  /** From the middle of the number to its edge, going `d`. */
  const reach = (d: Point): number => Math.abs(d.x) * halfWidth + Math.abs(d.y) * halfHeight;
  const past = (end: Point, d: Point): Placed => {
    const figure = figureAround(along(end, d, OVERRUN / 2 + CLEAR + reach(d)), number, unit, letters);
    const other = end === first ? last : first;
    return { figure, line: { from: along(other, { x: -d.x, y: -d.y }, OVERRUN), to: along(end, d, OVERRUN / 2) } };
  };
  const beside = (d: Point): Placed => ({
    figure: figureAround(along(middle, d, CLEAR + 2 + reach(d)), number, unit, letters),
    line: { from: along(first, toward, OVERRUN_LONG), to: along(last, back, OVERRUN_LONG) },
  });
  const around = {
    boxes: [...obstacles.boxes, boxAround(first, TICK), boxAround(last, TICK)],
    lines: obstacles.lines,
  };
  // Worked out one after the other: the first of them mostly fits.
  const places = [
    () => past(first, toward),
    () => past(last, back),
    () => beside(away),
    () => beside({ x: -away.x, y: -away.y }),
  ];
  for (let i = 0; i < places.length; i++) {
    const found = places[length >= LONG ? (i + 2) % places.length : i]();
    if (isInside(found.figure.box, room) && isClear(found.figure.box, around)) {
      return { ...found, ticks: [tickAt(from, toward), tickAt(to, toward)] };
    }
  }
  return undefined;
}

interface Placed {
  readonly figure: Figure;
  readonly line: Segment;
}
