import type { Frame } from './frame';

/**
 * Contours of turned solids. The hull of a part's projected rings is found in one pass: the points are sorted into slices across
 * the part, each slice keeps its two outermost points, and a monotone chain (A. M. Andrew 1979) runs over those. No sorting, nothing
 * allocated but the answer; a corner that shares its slice with a farther one is lost, which is less than half the pen's width.
 */
const SLICES = 240;
/** Smaller parts take fewer slices: so many, and so many more for each unit across. */
const FEWEST = 64;
const MORE = 2;
/** Slice of a place across the part, in shares of their number. Slices are narrow at both ends, where a contour turns. */
const FINE = 4096;
const SLICE_AT = Float64Array.from({ length: FINE + 1 }, (_, i) => {
  const u = i / FINE;
  return Math.min(1 - 1e-9, u < 0.5 ? Math.sqrt(u / 2) : 1 - Math.sqrt((1 - u) / 2));
});
const top = new Float64Array(SLICES + 2);
const topAt = new Float64Array(SLICES + 2);
const bottom = new Float64Array(SLICES + 2);
const bottomAt = new Float64Array(SLICES + 2);
/** Hull points in turn, tenths of a unit: x and y. */
export const hullPoints = new Int32Array(4 * (SLICES + 2) * 2);
const chain = new Float64Array((SLICES + 2) * 2);
const MOST_POINTS = 2048;
const px = new Float64Array(MOST_POINTS);
const py = new Float64Array(MOST_POINTS);
const edge = new Uint16Array(MOST_POINTS + 1);

/**
 * Hull of the points `local` (x, y, z in turn, the part's own axes, m) placed by the matrix at `m` of `placement` and seen through
 * `frame`. Fills `hullPoints` and answers how many points it took; 0 when there is nothing to draw. `leans` (`findLeans`) leaves
 * out what cannot be on the contour from here.
 */
export function findHull(
  local: Float64Array,
  placement: Float64Array,
  m: number,
  frame: Frame,
  leans?: Float32Array,
): number {
  let count = Math.min(MOST_POINTS, local.length / 3);
  if (leans) {
    lookAlong(placement, m);
    count = findEdge(leans, count);
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
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < count; i++) {
    const at = 3 * (leans ? edge[i] : i);
    const a = local[at];
    const b = local[at + 1];
    const c = local[at + 2];
    const x = x0 * a + x1 * b + x2 * c + x3;
    px[i] = x;
    py[i] = y0 * a + y1 * b + y2 * c + y3;
    if (x < low) low = x;
    if (x > high) high = x;
  }
  if (!(high - low > 1e-6)) return 0;
  const slices = Math.min(SLICES, Math.ceil(FEWEST + MORE * (high - low)));
  top.fill(Infinity, 0, slices + 2);
  bottom.fill(-Infinity, 0, slices + 2);
  const fine = FINE / (high - low);
  for (let i = 0; i < count; i++) {
    const x = px[i];
    const y = py[i];
    // The two ends get slices of their own: their points are corners of the hull wherever they lie.
    const slice =
      x <= low ? 0 : x >= high ? slices + 1 : 1 + Math.floor(slices * SLICE_AT[Math.floor((x - low) * fine)]);
    if (y < top[slice]) {
      top[slice] = y;
      topAt[slice] = x;
    }
    if (y > bottom[slice]) {
      bottom[slice] = y;
      bottomAt[slice] = x;
    }
  }
  const upper = runChain(topAt, top, slices, 1, 0);
  const n = runChain(bottomAt, bottom, slices, -1, upper);
  return n > 1 && hullPoints[0] === hullPoints[2 * n - 2] && hullPoints[1] === hullPoints[2 * n - 1] ? n - 1 : n;
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

/** Fills `edge` with the points whose surface neither faces the viewer nor the other way; answers how many. */
function findEdge(leans: Float32Array, all: number): number {
  const x = look[0];
  const y = look[1];
  const z = look[2];
  let count = 0;
  for (let i = 0, at = 0; i < all; i++, at += 4) {
    const facing = leans[at] * x + leans[at + 1] * y + leans[at + 2] * z;
    edge[count] = i;
    if (Math.abs(facing) <= leans[at + 3]) count++;
  }
  return count;
}

/** One side of the hull, left to right for the upper (sense 1), right to left for the lower; appended to `hullPoints` after `written`. */
function runChain(xs: Float64Array, ys: Float64Array, slices: number, sense: 1 | -1, written: number): number {
  let size = 0;
  for (let step = 0; step < slices + 2; step++) {
    const i = sense === 1 ? step : slices + 1 - step;
    const y = ys[i];
    if (!Number.isFinite(y)) continue;
    const x = xs[i];
    while (size >= 2) {
      const ax = chain[2 * size - 4];
      const ay = chain[2 * size - 3];
      if ((chain[2 * size - 2] - ax) * (y - ay) - (chain[2 * size - 1] - ay) * (x - ax) > 0) break;
      size--;
    }
    chain[2 * size] = x;
    chain[2 * size + 1] = y;
    size++;
  }
  let n = written;
  let kept = 0;
  for (let i = 0; i < size; i++) {
    if (i > 0 && i + 1 < size && isFlat(kept, i + 1)) continue;
    kept = i;
    const x = Math.round(10 * chain[2 * i]);
    const y = Math.round(10 * chain[2 * i + 1]);
    if (n > 0 && hullPoints[2 * n - 2] === x && hullPoints[2 * n - 1] === y) continue;
    hullPoints[2 * n] = x;
    hullPoints[2 * n + 1] = y;
    n++;
  }
  return n;
}

/** A corner closer than this to the line past it is left out, units: far below what any screen shows. */
const FLAT = 0.08;
/** Most corners left out in a row, so that looking back stays short. */
const MOST_SKIPPED = 8;

/** Whether everything on the chain between two of its corners lies on their line, give or take `FLAT`. */
function isFlat(from: number, to: number): boolean {
  if (to - from > MOST_SKIPPED) return false;
  const ax = chain[2 * from];
  const ay = chain[2 * from + 1];
  const dx = chain[2 * to] - ax;
  const dy = chain[2 * to + 1] - ay;
  const most = FLAT * FLAT * (dx * dx + dy * dy);
  for (let i = from + 1; i < to; i++) {
    const off = dx * (chain[2 * i + 1] - ay) - dy * (chain[2 * i] - ax);
    if (off * off > most) return false;
  }
  return true;
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
