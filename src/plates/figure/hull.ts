import type { Frame } from '../plate/frame';

const MOST_POINTS = 2048;

/** A point closer than this to the line between two corners is no corner, units: far below what any screen shows. */
export const FLAT = 0.15;

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
  /** The point farthest out of those last gathered; -1 where none is out by more than `FLAT`. */
  private farthest = -1;

  /**
   * Finds the hull of the points `local` (x, y, z in turn, the part's own axes, m) placed by the matrix at `m` of `placement` and seen
   * through `frame`; answers how many corners it has.
   */
  find(local: Float64Array, placement: Float64Array, m: number, frame: Frame): number {
    const { px, py, order, points } = this;
    this.count = 0;
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
    let left = 0;
    let right = 0;
    for (let i = 0; i < count; i++) {
      const at = 3 * i;
      const a = local[at];
      const b = local[at + 1];
      const c = local[at + 2];
      const x = x0 * a + x1 * b + x2 * c + x3;
      px[i] = x;
      py[i] = y0 * a + y1 * b + y2 * c + y3;
      if (x < px[left]) left = i;
      if (x > px[right]) right = i;
      order[i] = i;
    }
    if (!(px[right] - px[left] > 1e-6)) return 0;
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

  /** The hull last found as a closed SVG path, tenths of a unit: whole numbers are short and quick to read. */
  toPath(): string {
    const { count, points } = this;
    if (count < 3) return '';
    let path = `M${points[0]} ${points[1]}L`;
    for (let i = 1; i < count; i++) path += `${points[2 * i]} ${points[2 * i + 1]} `;
    return `${path}Z`;
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
    let most = FLAT * Math.sqrt(dx * dx + dy * dy);
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
}
