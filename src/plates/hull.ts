import type { Frame } from './frame';

/**
 * Contours of turned solids. The hull of a part's projected rings is found in one pass: the points are sorted into slices across
 * the part, each slice keeps its two outermost points, and a monotone chain (A. M. Andrew 1979) runs over those. No sorting, nothing
 * allocated but the answer; a corner that shares its slice with a farther one is lost, which is less than half the pen's width.
 */
const SLICES = 240;
/** Slice of a place across the part. Slices are narrow at both ends, where a contour turns. */
const FINE = 4096;
const SLICE_AT = Uint8Array.from({ length: FINE + 1 }, (_, i) => {
  const u = i / FINE;
  const even = u < 0.5 ? Math.sqrt(u / 2) : 1 - Math.sqrt((1 - u) / 2);
  return 1 + Math.min(SLICES - 1, Math.floor(even * SLICES));
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

/**
 * Hull of the points `local` (x, y, z in turn, the part's own axes, m) placed by the matrix at `m` of `placement` and seen through
 * `frame`. Fills `hullPoints` and answers how many points it took; 0 when there is nothing to draw.
 */
export function findHull(local: Float64Array, placement: Float64Array, m: number, frame: Frame): number {
  const count = Math.min(MOST_POINTS, local.length / 3);
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
  for (let i = 0, at = 0; i < count; i++, at += 3) {
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
  top.fill(Infinity);
  bottom.fill(-Infinity);
  const fine = FINE / (high - low);
  for (let i = 0; i < count; i++) {
    const x = px[i];
    const y = py[i];
    // The two ends get slices of their own: their points are corners of the hull wherever they lie.
    const slice = x <= low ? 0 : x >= high ? SLICES + 1 : SLICE_AT[Math.floor((x - low) * fine)];
    if (y < top[slice]) {
      top[slice] = y;
      topAt[slice] = x;
    }
    if (y > bottom[slice]) {
      bottom[slice] = y;
      bottomAt[slice] = x;
    }
  }
  const upper = runChain(topAt, top, 1, 0);
  const n = runChain(bottomAt, bottom, -1, upper);
  return n > 1 && hullPoints[0] === hullPoints[2 * n - 2] && hullPoints[1] === hullPoints[2 * n - 1] ? n - 1 : n;
}

/** One side of the hull, left to right for the upper (sense 1), right to left for the lower; appended to `hullPoints` after `written`. */
function runChain(xs: Float64Array, ys: Float64Array, sense: 1 | -1, written: number): number {
  let size = 0;
  for (let step = 0; step < SLICES + 2; step++) {
    const i = sense === 1 ? step : SLICES + 1 - step;
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
  for (let i = 0; i < size; i++) {
    const x = Math.round(10 * chain[2 * i]);
    const y = Math.round(10 * chain[2 * i + 1]);
    if (n > 0 && hullPoints[2 * n - 2] === x && hullPoints[2 * n - 1] === y) continue;
    hullPoints[2 * n] = x;
    hullPoints[2 * n + 1] = y;
    n++;
  }
  return n;
}

/** The hull just found as a closed SVG path, tenths of a unit: whole numbers are short and quick to write. */
export function hullPath(count: number): string {
  if (count < 3) return '';
  let d = `M${hullPoints[0]} ${hullPoints[1]}L`;
  for (let i = 1; i < count; i++) d += `${hullPoints[2 * i]} ${hullPoints[2 * i + 1]} `;
  return d + 'Z';
}
