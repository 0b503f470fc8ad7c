import type { PictureSize } from './marks';

/**
 * The camera of a film. World frame of the model; it looks along +X. Yaw: positive to the right, from +X toward +Z. Pitch: positive up. Roll:
 * positive clockwise as seen from behind. rad. The middle of the picture is where the line of sight meets it.
 */
export interface Pinhole {
  /** m. */
  readonly eye: readonly [number, number, number];
  readonly yaw: number;
  readonly pitch: number;
  readonly roll: number;
  /** px. */
  readonly focal: number;
}

/** Room for a camera in numbers: eye, right, up, forward, focal length. */
export const createSight = (): Float64Array => new Float64Array(13);

/** A camera as its axes, written into `out`. Allocates nothing. */
export function aim(
  ex: number,
  ey: number,
  ez: number,
  yaw: number,
  pitch: number,
  roll: number,
  focal: number,
  out: Float64Array,
): void {
  const cy = Math.cos(yaw);
  const sy = Math.sin(yaw);
  const cp = Math.cos(pitch);
  const sp = Math.sin(pitch);
  const cr = Math.cos(roll);
  const sr = Math.sin(roll);
  // Level axes: forward, right, up.
  const ux = -sp * cy;
  const uy = cp;
  const uz = -sp * sy;
  out[0] = ex;
  out[1] = ey;
  out[2] = ez;
  out[3] = -sy * cr - ux * sr;
  out[4] = -uy * sr;
  out[5] = cy * cr - uz * sr;
  out[6] = ux * cr - sy * sr;
  out[7] = uy * cr;
  out[8] = uz * cr + cy * sr;
  out[9] = cp * cy;
  out[10] = sp;
  out[11] = cp * sy;
  out[12] = focal;
}

/** The axes of a camera. */
export function sightOf({ eye, yaw, pitch, roll, focal }: Pinhole, out = createSight()): Float64Array {
  aim(eye[0], eye[1], eye[2], yaw, pitch, roll, focal, out);
  return out;
}

/** A point nearer than this in front of the camera, or behind it, is drawn at this distance, m: keeps a search on its way. */
const NEAREST = 0.05;

/** Image of a world point, px, written into `out`. Allocates nothing. */
export function toImage(
  sight: Float64Array,
  size: PictureSize,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
  at = 0,
): void {
  const dx = x - sight[0];
  const dy = y - sight[1];
  const dz = z - sight[2];
  const depth = Math.max(NEAREST, dx * sight[9] + dy * sight[10] + dz * sight[11]);
  const scale = sight[12] / depth;
  out[at] = size.w / 2 + scale * (dx * sight[3] + dy * sight[4] + dz * sight[5]);
  out[at + 1] = size.h / 2 - scale * (dx * sight[6] + dy * sight[7] + dz * sight[8]);
}

/** Image of a direction, as of a point infinitely far away: homogeneous, so that one beside the picture has an image too. */
export function toFarImage(
  sight: Float64Array,
  size: PictureSize,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
): void {
  const depth = x * sight[9] + y * sight[10] + z * sight[11];
  out[0] = depth * (size.w / 2) + sight[12] * (x * sight[3] + y * sight[4] + z * sight[5]);
  out[1] = depth * (size.h / 2) - sight[12] * (x * sight[6] + y * sight[7] + z * sight[8]);
  out[2] = depth;
}
