import type { FramePoints } from '../../scene/camera/framePoints';

/**
 * What pictures of these swings must hold until an instant (s): three numbers a point, m. One set for all of them, so that swings side
 * by side are seen from the same place.
 */
export function pointsUntil(swings: readonly FramePoints[], until: number): Float64Array {
  const parts = swings.flatMap(({ struck, through }) => [
    struck,
    // And the next one: the club gets to `until` between two of them.
    ...through.filter((_, i) => i > 0 && through[i - 1].t < until).map(({ points }) => points),
  ]);
  const all = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
