import type { Box, Point, Segment } from '../plate/frame';

/** Boxes on a plate that must not overlap. */
export interface Obstacles {
  readonly boxes: Box[];
  readonly lines: Segment[];
}

/** The box around a point; as tall as it is wide unless said otherwise. */
export const boxAround = ({ x, y }: Point, halfWidth: number, halfHeight = halfWidth): Box => ({
  left: x - halfWidth,
  top: y - halfHeight,
  right: x + halfWidth,
  bottom: y + halfHeight,
});

/** A box with a margin all round. */
export const grow = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

/** Whether a box lies inside a room, edges included. */
export const isInside = (box: Box, room: Box): boolean =>
  box.left >= room.left && box.right <= room.right && box.top >= room.top && box.bottom <= room.bottom;

/** Whether a point lies in a box, edges included. */
export const holds = (box: Box, { x, y }: Point): boolean =>
  x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;

/** Whether two boxes overlap; sharing an edge is not enough. */
export const doBoxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** True when any part of the segment lies inside the box (Liang and Barsky's clipping). */
export function doesLineCross({ from, to }: Segment, box: Box): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const { left, right, top, bottom } = box;
  if (dx === 0 && (from.x < left || from.x > right)) return false;
  if (dy === 0 && (from.y < top || from.y > bottom)) return false;
  // Shares of the segment at which it passes each pair of sides; the whole of it where it runs along them.
  const x1 = dx === 0 ? 0 : ((dx > 0 ? left : right) - from.x) / dx;
  const x2 = dx === 0 ? 1 : ((dx > 0 ? right : left) - from.x) / dx;
  const y1 = dy === 0 ? 0 : ((dy > 0 ? top : bottom) - from.y) / dy;
  const y2 = dy === 0 ? 1 : ((dy > 0 ? bottom : top) - from.y) / dy;
  return Math.max(0, x1, y1) <= Math.min(1, x2, y2);
}

/** True when `box` keeps clear of everything placed so far. */
export const isClear = (box: Box, { boxes, lines }: Obstacles): boolean =>
  !boxes.some((other) => doBoxesMeet(box, other)) && !lines.some((line) => doesLineCross(line, box));

/** The part of a box's side nearest to a point: where a leader starts. */
export const nearestOn = (box: Box, { x, y }: Point): Point => ({
  x: Math.min(box.right, Math.max(box.left, x)),
  y: Math.min(box.bottom, Math.max(box.top, y)),
});
