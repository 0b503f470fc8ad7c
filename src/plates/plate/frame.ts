/** Units of a plate: the drawing's own coordinates, x to the right, y down. */
export const PLATE_WIDTH = 320;
export const PLATE_HEIGHT = 292;
/** Units per metre, on both plates, so that they can be compared. */
export const SCALE = 300;

/** A point on a plate, in its units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
/** A straight line from point to point. */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
}
/** An upright rectangle on a plate. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The whole plate. The drawing may run past it to the frame; what has to be read may not. */
export const SHEET: Box = { left: 0, top: 0, right: PLATE_WIDTH, bottom: PLATE_HEIGHT };

/**
 * Where the world lies on a plate: the view down the line, along +X, without perspective. World z (toward the ball) runs to the right,
 * to the left for a left-handed player (`side` -1); world y (up) runs up. Lengths in metres come out in units.
 */
export interface Frame {
  readonly side: 1 | -1;
  /** Units per metre: `SCALE`, less only where a reading would not fit the plate. */
  readonly scale: number;
  /** Units at world z = 0 and y = 0. */
  readonly x0: number;
  readonly y0: number;
}

/** World z (m) to the right on the plate, units. */
export const toX = (frame: Frame, z: number): number => frame.x0 + frame.side * frame.scale * z;
/** World y (m) up on the plate, units. */
export const toY = (frame: Frame, y: number): number => frame.y0 - frame.scale * y;
/** A point of a flat buffer (x, y, z at `at`), seen down the line. */
export const toPoint = (frame: Frame, buffer: ArrayLike<number>, at: number): Point => ({
  x: toX(frame, buffer[at + 2]),
  y: toY(frame, buffer[at + 1]),
});

/** The point so far from another along a direction (unit vector). */
export const along = (from: Point, direction: Point, distance: number): Point => ({
  x: from.x + direction.x * distance,
  y: from.y + direction.y * distance,
});

/** How a plate is framed: which hand, and the largest scale, units per metre. Plates side by side share the smaller of theirs. */
export interface Framing {
  readonly side: 1 | -1;
  readonly most?: number;
}

/** Round a world point that is wished on the sheet, and how far the essentials may come down out of their room for it, units. */
const WISH_AROUND = 24;
const WISH_LOWER = 10;

/**
 * A frame that puts the world point (y, z) in m at the unit point `at`, moved as little as needed to keep all `essentials`
 * (world y and z in turn, m) inside `room`; where they are wider than the room, the scale shrinks. For a point (m) that is wished it is
 * moved on as far as they allow.
 */
export function fitFrame(
  { side, most = SCALE }: Framing,
  y: number,
  z: number,
  at: Point,
  essentials: readonly number[],
  room: Box,
  wish?: readonly [y: number, z: number],
): Frame {
  let [low, high, near, far] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < essentials.length; i += 2) {
    low = Math.min(low, essentials[i]);
    high = Math.max(high, essentials[i]);
    near = Math.min(near, side * essentials[i + 1]);
    far = Math.max(far, side * essentials[i + 1]);
  }
  const wide = (room.right - room.left) / (far - near || 1e-9);
  const tall = (room.bottom - room.top) / (high - low || 1e-9);
  const scale = Math.min(most, wide, tall);
  let x0 = at.x - side * scale * z;
  let y0 = at.y + scale * y;
  x0 += shiftInside(x0 + scale * near, x0 + scale * far, room.left, room.right);
  y0 += shiftInside(y0 - scale * high, y0 - scale * low, room.top, room.bottom);
  if (wish) {
    const x = x0 + side * scale * wish[1];
    const wanted = shiftInside(x, x, WISH_AROUND, PLATE_WIDTH - WISH_AROUND);
    x0 += Math.min(Math.max(wanted, room.left - x0 - scale * near), room.right - x0 - scale * far);
    // Never up: what stands at the foot of the plate stays there.
    y0 += Math.max(0, Math.min(WISH_AROUND + scale * wish[0], room.bottom + WISH_LOWER + scale * low) - y0);
  }
  return { side, scale, x0, y0 };
}

function shiftInside(from: number, to: number, low: number, high: number): number {
  return from < low ? low - from : to > high ? high - to : 0;
}

/** How far one can go from `from` along the unit vector `direction` before leaving `box`; 0 from outside. */
export function roomAlong(from: Point, direction: Point, box: Box): number {
  const x =
    direction.x > 0
      ? (box.right - from.x) / direction.x
      : direction.x < 0
        ? (box.left - from.x) / direction.x
        : Infinity;
  const y =
    direction.y > 0
      ? (box.bottom - from.y) / direction.y
      : direction.y < 0
        ? (box.top - from.y) / direction.y
        : Infinity;
  return Math.max(0, Math.min(x, y));
}
