import { PART_IDS } from '../../figure/partIds';
import type { Outline, PlateFigure } from './drawnPart';
import type { Frame } from '../plate/frame';
import type { Matrix } from './shape';

/** Numbers a part in `PlateFigure.bounds`: the middle of a box around it, the radius of a ball around that, half the box's sides. */
export const BOUND_SIZE = 7;
/** Numbers of a projection: x and y (units) of a part's origin, then of one metre along each of its axes. */
const PROJECTION_SIZE = 8;

/** Outlines of a part that were drawn lately, and the projections in which they were drawn, one behind the other. */
interface Kept {
  readonly outlines: Outline[];
  readonly from: Float64Array;
  /** When each was last used; the least recently used is replaced. */
  readonly used: Float64Array;
  /** The one on the plate, or the last that was. */
  last: number;
}

/**
 * What a plate drew lately: a part that comes close to how it was seen before takes the contour of that time, moved by a flat map. One a
 * plate that is drawn again and again. Buys 0.8 ms of a slider's step for both plates (2.6 without, 1.8 with, medians; DEVELOPERS.md).
 */
export interface Drawn {
  plate: PlateFigure | undefined;
  readonly kept: readonly Kept[];
  /** Counts what was taken from `kept` or put there. */
  uses: number;
}
/** An empty cache for one plate. */
export const createDrawn = (): Drawn => ({
  plate: undefined,
  kept: PART_IDS.map(() => ({
    outlines: [],
    from: new Float64Array(MOST_KEPT * PROJECTION_SIZE),
    used: new Float64Array(MOST_KEPT),
    last: 0,
  })),
  uses: 0,
});

/** Outlines remembered of a part. Over a slider's whole way about half of the parts take half as many, a few more than twice as many. */
const MOST_KEPT = 24;

/** While everything moves a contour may be off by this by its turn, units: a quarter of what the pen is wide. */
export const SKETCH = 0.3;

/** Scratch: how the part that is asked about lies on the plate. */
const now = new Float64Array(PROJECTION_SIZE);

/** Notes how part `m` of `placement` lies on the plate; what is asked below is asked of it. */
export function project(placement: Float64Array, m: number, { side, scale }: Frame): void {
  const right = side * scale;
  now[0] = right * placement[m + 11];
  now[1] = -scale * placement[m + 10];
  for (let axis = 0; axis < 3; axis++) {
    now[2 + 2 * axis] = right * placement[m + 3 * axis + 2];
    now[3 + 2 * axis] = -scale * placement[m + 3 * axis + 1];
  }
}

/** Remembers an outline of part `i` that was drawn where it stands. */
export function remember(drawn: Drawn, i: number, outline: Outline): void {
  const own = drawn.kept[i];
  const { outlines, from, used } = own;
  let k = outlines.length;
  if (k === MOST_KEPT) {
    k = 0;
    for (let other = 1; other < MOST_KEPT; other++) if (used[other] < used[k]) k = other;
  }
  outlines[k] = outline;
  from.set(now, k * PROJECTION_SIZE);
  touch(drawn, own, k);
}

function touch(drawn: Drawn, own: Kept, k: number): void {
  own.used[k] = ++drawn.uses;
  own.last = k;
}

/** Forgets everything: another player's, or another club's. */
export function forget(drawn: Drawn, plate: PlateFigure): void {
  drawn.plate = plate;
  for (const { outlines } of drawn.kept) outlines.length = 0;
}

/** An outline of part `i` that can be carried to where the part lies, and how; nothing where it must be drawn anew. */
export function findKept(
  drawn: Drawn,
  i: number,
  bounds: Float64Array,
): { readonly outline: Outline; readonly matrix: Matrix } | undefined {
  const own = drawn.kept[i];
  const { outlines, from, last } = own;
  const count = outlines.length;
  for (let tried = 0; tried < count; tried++) {
    // The one on the plate first, then those drawn just after and before it: whatever moves goes to and fro.
    const k = (last + (tried % 2 ? (tried + 1) / 2 : count - tried / 2)) % count;
    const matrix = moveWithPart(from, k * PROJECTION_SIZE, i, bounds);
    if (!matrix) continue;
    touch(drawn, own, k);
    return { outline: outlines[k], matrix };
  }
  return undefined;
}

/**
 * The flat map that brings a contour of part `i` as it was drawn to where the part lies, as an SVG matrix in tenths of a unit. Nothing
 * where a point of the part would be off by more than `SKETCH`: then it has turned out of the plate too far.
 *
 * A point p of the part (its own axes) lies at F p + f where its contour was drawn and at N p + n where it is now. M = N W F' (F W F')^-1
 * brings one to the other with the least squares over the part's box, whose half sides squared are W. What is left, (N - M F) p, is at
 * most what it is in the box's corners.
 */
function moveWithPart(kept: Float64Array, from: number, i: number, bounds: Float64Array): Matrix | undefined {
  const b = i * BOUND_SIZE;
  let ff = 0;
  let fg = 0;
  let gg = 0;
  let xf = 0;
  let xg = 0;
  let yf = 0;
  let yg = 0;
  for (let axis = 0; axis < 3; axis++) {
    const at = 2 + 2 * axis;
    const half = bounds[b + 4 + axis];
    const f = half * kept[from + at];
    const g = half * kept[from + at + 1];
    const x = half * now[at];
    const y = half * now[at + 1];
    ff += f * f;
    fg += f * g;
    gg += g * g;
    xf += x * f;
    xg += x * g;
    yf += y * f;
    yg += y * g;
  }
  const size = ff * gg - fg * fg;
  const xx = (xf * gg - xg * fg) / size;
  const xy = (xg * ff - xf * fg) / size;
  const yx = (yf * gg - yg * fg) / size;
  const yy = (yg * ff - yf * fg) / size;
  let offX = 0;
  let offY = 0;
  // What is left at the middle of the part, which the map takes along.
  let across = now[0] - xx * kept[from] - xy * kept[from + 1];
  let down = now[1] - yx * kept[from] - yy * kept[from + 1];
  for (let axis = 0; axis < 3; axis++) {
    const at = 2 + 2 * axis;
    const leftX = now[at] - xx * kept[from + at] - xy * kept[from + at + 1];
    const leftY = now[at + 1] - yx * kept[from + at] - yy * kept[from + at + 1];
    const half = bounds[b + 4 + axis];
    offX += half * Math.abs(leftX);
    offY += half * Math.abs(leftY);
    across += bounds[b + axis] * leftX;
    down += bounds[b + axis] * leftY;
  }
  // Seen end on, a thin part has no size across: the map is then not a number, and the part is drawn anew.
  if (!(offX * offX + offY * offY <= SKETCH * SKETCH)) return undefined;
  return [xx, yx, xy, yy, 10 * across, 10 * down];
}
