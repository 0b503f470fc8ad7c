import type { Frame } from '../plate/frame';

const MOST_POINTS = 2048;

/** A point closer than this to the line between two corners is no corner, units: far below what any screen shows. */
export const FLAT = 0.15;

/** Most characters of a whole number and the space after it. */
const MOST_DIGITS = 12;
const [MINUS, SPACE, ZERO, MOVE, LINE, CLOSE] = ['-', ' ', '0', 'M', 'L', 'Z'].map((sign) => sign.charCodeAt(0));

/**
 * Contours of turned solids: the hull of a part's projected points by halving. Between two corners of the hull the point farthest out
 * is the next corner; where none is farther out than `FLAT`, there is none (W. F. Eddy 1977, A. Bykat 1978). Corners come in turn,
 * nothing is sorted, and nothing is allocated but the path. Holds the last hull it found, and the room to find the next one in.
 */
export class HullFinder {
  /** Corners of the hull last found, in turn, tenths of a unit: x and y. As many as `count` says. */
  readonly points = new Int32Array(MOST_POINTS * 2);
  /** How many corners were found; 0 when there is nothing to draw. */
  count = 0;

  private readonly px = new Float64Array(MOST_POINTS);
  private readonly py = new Float64Array(MOST_POINTS);
  /** Numbers of points, those between two corners next to each other. */
  private readonly order = new Uint16Array(MOST_POINTS);
  private readonly look = new Float64Array(3);
  private readonly written = new Uint8Array(MOST_POINTS * 2 * MOST_DIGITS);
  private readonly decoder = new TextDecoder();
  private flat = FLAT;
  /** The point farthest out of those last gathered; -1 where none is out by more than `flat`. */
  private farthest = -1;

  /**
   * Finds the hull of the points `local` (x, y, z in turn, the part's own axes, m) placed by the matrix at `m` of `placement` and seen
   * through `frame`; answers how many corners it has. `leans` (`findSilhouetteCandidates`) leaves out what cannot be on the contour
   * from here. A point within `flatness` (units) of the line between two corners is no corner.
   */
  find(
    local: Float64Array,
    placement: Float64Array,
    m: number,
    frame: Frame,
    leans?: Float32Array,
    flatness = FLAT,
  ): number {
    const { px, py, order, points } = this;
    this.flat = flatness;
    this.count = 0;
    const all = Math.min(MOST_POINTS, local.length / 3);
    let count = all;
    if (leans) {
      this.lookAlong(placement, m);
      count = this.findEdge(leans, all);
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
    const upper = this.gatherOutside(left, right, 0, count);
    const highest = this.farthest;
    const lower = this.gatherOutside(right, left, upper, count);
    const lowest = this.farthest;
    this.putCorner(left);
    this.findCorners(left, right, 0, upper, highest);
    this.putCorner(right);
    this.findCorners(right, left, upper, lower, lowest);
    const last = 2 * this.count - 2;
    if (this.count > 1 && points[0] === points[last] && points[1] === points[last + 1]) this.count--;
    return this.count;
  }

  /**
   * The hull last found as a closed SVG path, tenths of a unit: whole numbers are short and quick to write. Written as bytes and
   * decoded at once: joined from pieces, the paths of a drag would be most of what has to be cleared away.
   */
  toPath(): string {
    const { count, points, written } = this;
    if (count < 3) return '';
    let at = 0;
    for (let i = 0; i < count; i++) {
      if (i < 2) written[at++] = i === 0 ? MOVE : LINE;
      at = writeNumber(written, points[2 * i], at);
      written[at++] = SPACE;
      at = writeNumber(written, points[2 * i + 1], at);
      if (i > 0) written[at++] = SPACE;
    }
    written[at++] = CLOSE;
    return this.decoder.decode(written.subarray(0, at));
  }

  /**
   * Brings those of the points between `from` and `to` in `order` that lie outside the line from `a` to `b` to the front; answers where
   * they end. Outside is to the left, going that way with y down the plate.
   */
  private gatherOutside(a: number, b: number, from: number, to: number): number {
    const { px, py, order } = this;
    const ax = px[a];
    const ay = py[a];
    const dx = px[b] - ax;
    const dy = py[b] - ay;
    let end = from;
    let most = this.flat * Math.sqrt(dx * dx + dy * dy);
    let farthest = -1;
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
    this.farthest = farthest;
    return end;
  }

  /** Puts the corners of the hull between two of them: all that lie outside stand between `from` and `to` in `order`. */
  private findCorners(a: number, b: number, from: number, to: number, corner: number): void {
    if (corner < 0) return;
    const before = this.gatherOutside(a, corner, from, to);
    const first = this.farthest;
    const after = this.gatherOutside(corner, b, before, to);
    const second = this.farthest;
    this.findCorners(a, corner, from, before, first);
    this.putCorner(corner);
    this.findCorners(corner, b, before, after, second);
  }

  private putCorner(point: number): void {
    const { points, count } = this;
    const x = Math.round(10 * this.px[point]);
    const y = Math.round(10 * this.py[point]);
    const before = 2 * count - 2;
    if (count > 0 && points[before] === x && points[before + 1] === y) return;
    points[2 * count] = x;
    points[2 * count + 1] = y;
    this.count = count + 1;
  }

  /** The direction of view (world X) as a part sees it that may be stretched along its own axes: across it surfaces turn away. */
  private lookAlong(p: Float64Array, m: number): void {
    const x = p[m] / (p[m] * p[m] + p[m + 1] * p[m + 1] + p[m + 2] * p[m + 2]);
    const y = p[m + 3] / (p[m + 3] * p[m + 3] + p[m + 4] * p[m + 4] + p[m + 5] * p[m + 5]);
    const z = p[m + 6] / (p[m + 6] * p[m + 6] + p[m + 7] * p[m + 7] + p[m + 8] * p[m + 8]);
    const size = Math.sqrt(x * x + y * y + z * z);
    this.look[0] = x / size;
    this.look[1] = y / size;
    this.look[2] = z / size;
  }

  /** Fills `order` with the points whose surface neither faces the viewer nor the other way; answers how many. */
  private findEdge(leans: Float32Array, all: number): number {
    const { order, look } = this;
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
}

/** Writes a whole number in decimal digits; answers where the next character goes. */
function writeNumber(written: Uint8Array, value: number, start: number): number {
  let at = start;
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
