import { boxAround, isClear, isInside, type Obstacles } from '../annotation/boxes';
import { along, type Box, type Point, type Segment } from '../plate/frame';
import { captionWidth, figureWidth, letteringAt, type Figure } from '../annotation/lettering';

/** Drawings from above are made in css px: the target is up, and what everybody sees as right is right. */
export const LETTERS = letteringAt(1, false);
/** Numbers on these drawings are smaller than on a plate: they are said again in the table. */
const NUMBER_PX = 22;
/** Sizes of the numbers on these drawings, css px. */
export const NUMBERS = { ...LETTERS, figure: NUMBER_PX };

/** Unit vector of a heading seen from above: rad from the target, + right. */
export const headingOf = (angle: number): Point => ({ x: Math.sin(angle), y: -Math.cos(angle) });
/** A direction turned a quarter to the right, y down. */
export const toRightOf = ({ x, y }: Point): Point => ({ x: -y, y: x });
const backFrom = ({ x, y }: Point): Point => ({ x: -x, y: -y });

/** An arrowhead with its tip at `tip`, pointing along `direction`. */
export function arrowAt(tip: Point, direction: Point, length = 13, half = 4.6): Point[] {
  const foot = along(tip, direction, -length);
  const side = toRightOf(direction);
  return [tip, along(foot, side, half), along(tip, direction, -length * 0.76), along(foot, side, -half)];
}

/** Words centred on a place, with the box they fill. */
export interface Label {
  readonly text: string;
  /** Middle of the base line. */
  readonly at: Point;
  readonly box: Box;
  /** From the words to what they name, where they stand apart from it. */
  readonly leader?: Segment;
}

const RISE = 0.72;
const MARGIN = 2;

const labelAround = (text: string, middle: Point): Label => {
  const box = boxAround(middle, captionWidth(text, LETTERS) / 2 + MARGIN, LETTERS.caption / 2 + MARGIN);
  return { text, at: { x: middle.x, y: middle.y + (LETTERS.caption * RISE) / 2 }, box };
};

/** A number with its unit, its middle at a point. */
export const numberAround = (middle: Point, number: string, unit: string): Figure => {
  const halfHeight = (NUMBERS.figure * RISE) / 2;
  const box = boxAround(middle, figureWidth(number, unit, NUMBERS) / 2 + MARGIN, halfHeight + MARGIN);
  return { number, unit, at: { x: middle.x, y: middle.y + halfHeight }, box };
};

/** How far from its target a label is tried, px: beside it, then farther off. */
const DISTANCES = [6, 16, 28, 44] as const;
const TURNS = Array.from({ length: 16 }, (_, i) => (i % 2 ? -1 : 1) * Math.ceil(i / 2) * (Math.PI / 8));

/**
 * The first free place for something with a box, around `target`: nearest first, and at each distance from the direction `first` round
 * to both sides. What is found becomes an obstacle for whatever comes later.
 */
export function findPlace<T extends { readonly box: Box }>(
  make: (middle: Point) => T,
  target: Point,
  first: Point,
  room: Box,
  obstacles: Obstacles,
  distances: readonly number[] = DISTANCES,
): T | undefined {
  const { box } = make({ x: 0, y: 0 });
  const size = { x: (box.right - box.left) / 2, y: (box.bottom - box.top) / 2 };
  const heading = Math.atan2(first.y, first.x);
  for (const distance of distances) {
    for (const turn of TURNS) {
      const d = { x: Math.cos(heading + turn), y: Math.sin(heading + turn) };
      // From the middle of the box to its edge along `d`, so that every place stands equally far off.
      const reach = Math.min(size.x / Math.abs(d.x || 1e-9), size.y / Math.abs(d.y || 1e-9));
      const made = make(along(target, d, distance + reach));
      if (!isInside(made.box, room) || !isClear(made.box, obstacles)) continue;
      obstacles.boxes.push(made.box);
      return made;
    }
  }
  return undefined;
}

/** Names what lies at `target`, where there is room. */
export const findLabel = (
  text: string,
  target: Point,
  first: Point,
  room: Box,
  obstacles: Obstacles,
  distances?: readonly number[],
): Label | undefined => findPlace((middle) => labelAround(text, middle), target, first, room, obstacles, distances);

/** A line that labels keep clear of, also at its ends. */
export const lineThrough = (at: Point, direction: Point, before: number, after: number): Segment => ({
  from: along(at, backFrom(direction), before),
  to: along(at, direction, after),
});

/** Room for lettering in a drawing of this size, css px. */
export const roomIn = (width: number, height: number, edge = 4): Box => ({
  left: edge,
  top: edge,
  right: width - edge,
  bottom: height - edge,
});
