import type { Figure } from '../figure/figure';
import { MATRIX_SIZE } from '../figure/partIds';
import type { PictureSize } from './marks';
import { toImage } from './pinhole';

/** Contour of every part of a placed figure as a camera sees it, px: x and y in turn, convex. */
export function traceParts(
  { parts }: Figure,
  placement: Float64Array,
  sight: Float64Array,
  size: PictureSize,
): readonly Float64Array[] {
  const image = new Float64Array(2);
  return parts.map(({ rings }, part) => {
    const m = part * MATRIX_SIZE;
    const points: [number, number][] = [];
    for (let i = 0; i < rings.length; i += 3) {
      const at = (axis: number): number =>
        placement[m + 9 + axis] +
        rings[i] * placement[m + axis] +
        rings[i + 1] * placement[m + 3 + axis] +
        rings[i + 2] * placement[m + 6 + axis];
      toImage(sight, size, at(0), at(1), at(2), image);
      points.push([image[0], image[1]]);
    }
    return hullOf(points);
  });
}

/** Convex hull by Andrew's monotone chain (Information Processing Letters 9, 1979). */
function hullOf(points: [number, number][]): Float64Array {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (from: readonly [number, number][]): [number, number][] => {
    const chain: [number, number][] = [];
    for (const p of from) {
      while (chain.length > 1) {
        const [a, b] = [chain.at(-2)!, chain.at(-1)!];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return Float64Array.from([...half(sorted), ...half(sorted.toReversed())].flat());
}
