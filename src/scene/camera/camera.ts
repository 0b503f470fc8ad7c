import { Vector3, type PerspectiveCamera } from 'three';
import { toDeg } from '../../math/angle';
import { DISTANCE_LIMITS, eyeDirection, type View } from './view';

const at = new Vector3();

/** What is drawn lies no farther behind the target than this, m. */
const BEHIND = 15;
/** A contour is pushed behind its solid by 0.0004 of the depth's range, which at the near plane's usual place is about this far, m. */
const PUSH = 0.08;

/**
 * Near plane of a camera at this distance, m. One that stands far away, to see almost without perspective, has its own: the contour's push
 * grows with the square of the distance over it.
 */
const nearOf = (distance: number): number =>
  distance <= DISTANCE_LIMITS.max ? 0.06 : (0.0004 * distance * distance) / (2 * PUSH);

/** Points a camera as a view says; `mirror` -1 for the picture of a left-handed player. */
export function pointCamera(
  camera: PerspectiveCamera,
  { target, yaw, pitch, distance, fov }: View,
  mirror: 1 | -1,
): void {
  const back = eyeDirection({ yaw, pitch });
  camera.position.set(
    target[0] + back[0] * distance,
    target[1] + back[1] * distance,
    (target[2] + back[2] * distance) * mirror,
  );
  camera.fov = toDeg(fov);
  camera.near = nearOf(distance);
  camera.far = Math.max(30, distance + BEHIND);
  camera.lookAt(at.set(target[0], target[1], target[2] * mirror));
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
