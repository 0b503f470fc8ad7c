import type { Box, Point, Segment } from './frame';

/** Things on a plate that may not lie on one another. */
export interface Obstacles {
  readonly boxes: Box[];
  readonly lines: Segment[];
}

export const boxAround = ({ x, y }: Point, halfWidth: number, halfHeight = halfWidth): Box => ({
  left: x - halfWidth,
  top: y - halfHeight,
  right: x + halfWidth,
  bottom: y + halfHeight,
});

export const isInside = (box: Box, room: Box): boolean =>
  box.left >= room.left && box.right <= room.right && box.top >= room.top && box.bottom <= room.bottom;

export const doBoxesMeet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** True when any part of the segment lies inside the box (Liang and Barsky's clipping). */
export function doesLineCross({ from, to }: Segment, box: Box): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  for (const [p, q] of [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ]) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const r = q / p;
    if (p < 0) enter = Math.max(enter, r);
    else leave = Math.min(leave, r);
    if (enter > leave) return false;
  }
  return true;
}

/** True when `box` keeps clear of everything placed so far. */
export const isClear = (box: Box, { boxes, lines }: Obstacles): boolean =>
  !boxes.some((other) => doBoxesMeet(box, other)) && !lines.some((line) => doesLineCross(line, box));

/** The part of a box's side nearest to a point: where a leader starts. */
export const nearestOn = (box: Box, { x, y }: Point): Point => ({
  x: Math.min(box.right, Math.max(box.left, x)),
  y: Math.min(box.bottom, Math.max(box.top, y)),
});
