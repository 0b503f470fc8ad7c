import type { Frame } from '../plate/frame';

/**
 * Contours of turned solids: the hull of a part's projected points by halving. Between two corners of the hull the point farthest out
 * is the next corner; where none is farther out than `FLAT`, there is none (W. F. Eddy 1977, A. Bykat 1978). Corners come in turn,
 * nothing is sorted, and nothing is allocated but the answer.
 */
const MOST_POINTS = 2048;
const px = new Float64Array(MOST_POINTS);
const py = new Float64Array(MOST_POINTS);
/** Numbers of points, those between two corners next to each other. */
const order = new Uint16Array(MOST_POINTS);
/** Hull points in turn, tenths of a unit: x and y. */
export const hullPoints = new Int32Array(MOST_POINTS * 2);
let corners = 0;

/** A point closer than this to the line between two corners is no corner, units: far below what any screen shows. */
export const FLAT = 0.15;
/** The same for the hull being found. */
let flat = FLAT;

/**
 * Hull of the points `local` (x, y, z in turn, the part's own axes, m) placed by the matrix at `m` of `placement` and seen through
 * `frame`. Fills `hullPoints` and answers how many points it took; 0 when there is nothing to draw. `leans` (`findLeans`) leaves
 * out what cannot be on the contour from here. A point within `flatness` (units) of the line between two corners is no corner.
 */
export function findHull(
  local: Float64Array,
  placement: Float64Array,
  m: number,
  frame: Frame,
  leans?: Float32Array,
  flatness = FLAT,
): number {
  flat = flatness;
  const all = Math.min(MOST_POINTS, local.length / 3);
  let count = all;
  if (leans) {
    lookAlong(placement, m);
    count = findEdge(leans, all);
  }
  const kx = frame.side * frame.scale;
  const ky = -frame.scale;
  // Rows of the matrix that matter: world z to the right, world y up.
  const x0 = kx * placement[m + 2];
  const x1 = kx * placement[m + 5];
  const x2 = kx * placement[m + 8];
  const x3 = frame.x0 + kx * placement[m + 11];
  const y0 = ky * placement[m + 1];
  const y1 = ky * placement[m + 4];
  const y2 = ky * placement[m + 7];
  const y3 = frame.y0 + ky * placement[m + 10];
  let left = 0;
  let right = 0;
  for (let i = 0; i < count; i++) {
    const at = 3 * (leans ? order[i] : i);
    const a = local[at];
    const b = local[at + 1];
    const c = local[at + 2];
    const x = x0 * a + x1 * b + x2 * c + x3;
    px[i] = x;
    py[i] = y0 * a + y1 * b + y2 * c + y3;
    if (x < px[left]) left = i;
    if (x > px[right]) right = i;
  }
  if (!(px[right] - px[left] > 1e-6)) return 0;
  for (let i = 0; i < count; i++) order[i] = i;
  corners = 0;
  const upper = gatherOutside(left, right, 0, count);
  const highest = farthest;
  const lower = gatherOutside(right, left, upper, count);
  const lowest = farthest;
  putCorner(left);
  findCorners(left, right, 0, upper, highest);
  putCorner(right);
  findCorners(right, left, upper, lower, lowest);
  const last = 2 * corners - 2;
  return corners > 1 && hullPoints[0] === hullPoints[last] && hullPoints[1] === hullPoints[last + 1]
    ? corners - 1
    : corners;
}

/** The point farthest out of those last gathered; -1 where none is out by more than `flat`. */
let farthest = -1;

/**
 * Brings those of the points between `from` and `to` in `order` that lie outside the line from `a` to `b` to the front; answers where
 * they end. Outside is to the left, going that way with y down the plate.
 */
function gatherOutside(a: number, b: number, from: number, to: number): number {
  const ax = px[a];
  const ay = py[a];
  const dx = px[b] - ax;
  const dy = py[b] - ay;
  let end = from;
  let most = flat * Math.sqrt(dx * dx + dy * dy);
  farthest = -1;
  for (let i = from; i < to; i++) {
    const point = order[i];
    const off = dy * (px[point] - ax) - dx * (py[point] - ay);
    if (off <= 0) continue;
    order[i] = order[end];
    order[end++] = point;
    if (off > most) {
      most = off;
      farthest = point;
    }
  }
  return end;
}

/** Puts the corners of the hull between two of them: all that lie outside stand between `from` and `to` in `order`. */
function findCorners(a: number, b: number, from: number, to: number, corner: number): void {
  if (corner < 0) return;
  const before = gatherOutside(a, corner, from, to);
  const first = farthest;
  const after = gatherOutside(corner, b, before, to);
  const second = farthest;
  findCorners(a, corner, from, before, first);
  putCorner(corner);
  findCorners(corner, b, before, after, second);
}

function putCorner(point: number): void {
  const x = Math.round(10 * px[point]);
  const y = Math.round(10 * py[point]);
  const before = 2 * corners - 2;
  if (corners > 0 && hullPoints[before] === x && hullPoints[before + 1] === y) return;
  hullPoints[2 * corners] = x;
  hullPoints[2 * corners + 1] = y;
  corners++;
}

const look = new Float64Array(3);

/** The direction of view (world X) as a part sees it that may be stretched along its own axes: across it surfaces turn away. */
function lookAlong(p: Float64Array, m: number): void {
  const x = p[m] / (p[m] * p[m] + p[m + 1] * p[m + 1] + p[m + 2] * p[m + 2]);
  const y = p[m + 3] / (p[m + 3] * p[m + 3] + p[m + 4] * p[m + 4] + p[m + 5] * p[m + 5]);
  const z = p[m + 6] / (p[m + 6] * p[m + 6] + p[m + 7] * p[m + 7] + p[m + 8] * p[m + 8]);
  const size = Math.sqrt(x * x + y * y + z * z);
  look[0] = x / size;
  look[1] = y / size;
  look[2] = z / size;
}

/** Fills `order` with the points whose surface neither faces the viewer nor the other way; answers how many. */
function findEdge(leans: Float32Array, all: number): number {
  const x = look[0];
  const y = look[1];
  const z = look[2];
  let count = 0;
  for (let i = 0, at = 0; i < all; i++, at += 4) {
    const facing = leans[at] * x + leans[at + 1] * y + leans[at + 2] * z;
    order[count] = i;
    if (Math.abs(facing) <= leans[at + 3]) count++;
  }
  return count;
}

/** Most characters of a whole number and the space after it. */
const MOST_DIGITS = 12;
const written = new Uint8Array(hullPoints.length * MOST_DIGITS);
const decoder = new TextDecoder();
const [MINUS, SPACE, ZERO, MOVE, LINE, CLOSE] = ['-', ' ', '0', 'M', 'L', 'Z'].map((sign) => sign.charCodeAt(0));

/**
 * The hull just found as a closed SVG path, tenths of a unit: whole numbers are short and quick to write. Written as bytes and decoded
 * at once: joined from pieces, the paths of a drag would be most of what has to be cleared away.
 */
export function hullPath(count: number): string {
  if (count < 3) return '';
  let at = 0;
  for (let i = 0; i < count; i++) {
    if (i < 2) written[at++] = i === 0 ? MOVE : LINE;
    at = writeNumber(hullPoints[2 * i], at);
    written[at++] = SPACE;
    at = writeNumber(hullPoints[2 * i + 1], at);
    if (i > 0) written[at++] = SPACE;
  }
  written[at++] = CLOSE;
  return decoder.decode(written.subarray(0, at));
}

/** Writes a whole number in decimal digits; answers where the next character goes. */
function writeNumber(value: number, at: number): number {
  let rest = value;
  if (rest < 0) {
    written[at++] = MINUS;
    rest = -rest;
  }
  let end = at + 1;
  for (let bound = 10; bound <= rest; bound *= 10) end++;
  for (let i = end - 1; i >= at; i--) {
    const tens = Math.floor(rest / 10);
    written[i] = ZERO + rest - 10 * tens;
    rest = tens;
  }
  return end;
}
