import { rad } from '../../math/angle';
import type { Frame } from '../../plates/plate/frame';
import type { View } from '../../scene/camera/view';
import type { PixelSize } from '../clip/formats';

/** So narrow that lengths at any depth of the body are true to a hundredth. */
const FOV = rad(1);

/**
 * The camera down the line that sees the world as a frame of `size` px lays it out: near-parallel, true at depth `x` (m). The drawing is
 * made in the frame, the body with the camera, and both lie on one another.
 */
export function viewOf({ side, scale, x0, y0 }: Frame, { width, height }: PixelSize, x: number): View {
  return {
    target: [x, (y0 - height / 2) / scale, (side * (width / 2 - x0)) / scale],
    yaw: rad(-90),
    pitch: 0,
    distance: height / (2 * scale * Math.tan(FOV / 2)),
    fov: FOV,
  };
}

/** A frame that puts the world point (y, z; m) at a place (px). */
export const frameAt = (side: 1 | -1, scale: number, y: number, z: number, px: number, py: number): Frame => ({
  side,
  scale,
  x0: px - side * scale * z,
  y0: py + scale * y,
});

/** Between two frames, 0 to 1: what both show moves evenly and grows evenly. */
export function betweenFrames(from: Frame, to: Frame, share: number): Frame {
  if (share >= 1) return to;
  const scale = from.scale * (to.scale / from.scale) ** share;
  // One point stays where it is while the picture grows; where it does not grow it slides.
  const same = Math.abs(to.scale / from.scale - 1) < 1e-6;
  const gone = same ? share : (scale - from.scale) / (to.scale - from.scale);
  return {
    side: to.side,
    scale,
    x0: from.x0 + (to.x0 - from.x0) * gone,
    y0: from.y0 + (to.y0 - from.y0) * gone,
  };
}
