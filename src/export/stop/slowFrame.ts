import { pointsAt } from '../../scene/camera/framePoints';
import type { Frame } from '../../plates/plate/frame';
import type { StopPainter } from './stopPainter';
import type { ShownSwing } from '../task/exportSnapshot';
import type { ClipStage } from '../clip/clipStage';
import type { Shot } from '../clip/storyboard';

/** Instants of the way that are looked at. */
const STEPS = 8;
/** Shares of the picture that stay free: sides, top, bottom. */
const FREE = { side: 0.03, top: 0.04, bottom: 0.03 } as const;

/** The frame from which a slow shot starts: all of the body and its club on the whole way, as large as they can be. */
export function slowFrame(
  stage: ClipStage,
  { takes: shown, from, to }: Shot,
  takes: readonly ShownSwing[],
  handed: 'right' | 'left',
  { size }: StopPainter,
): Frame {
  const { figure, ball } = stage.built;
  const side = handed === 'left' ? -1 : 1;
  let [low, high, near, far] = [0, -Infinity, Infinity, -Infinity];
  for (const [i, take] of shown.entries()) {
    for (let step = 0; step <= STEPS; step++) {
      const t = from[i] + ((to[i] - from[i]) * step) / STEPS;
      const points = pointsAt(takes[take].swing, figure, ball, t, true);
      for (let at = 0; at < points.length; at += 3) {
        low = Math.min(low, points[at + 1]);
        high = Math.max(high, points[at + 1]);
        near = Math.min(near, side * points[at + 2]);
        far = Math.max(far, side * points[at + 2]);
      }
    }
  }
  const room = { width: size.width * (1 - 2 * FREE.side), height: size.height * (1 - FREE.top - FREE.bottom) };
  const scale = Math.min(room.width / (far - near), room.height / (high - low));
  const middle = size.width > size.height ? 0.56 + (side === 1 ? 0 : -0.12) : 0.5;
  return {
    side,
    scale,
    x0: size.width * middle - (scale * (near + far)) / 2,
    y0: size.height * (1 - FREE.bottom) + scale * low,
  };
}
