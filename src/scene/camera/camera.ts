import { Vector3, type PerspectiveCamera } from 'three';
import { toDeg } from '../../math/angle';
import { eyeDirection, type View } from './view';

const at = new Vector3();

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
  camera.near = 0.06;
  camera.far = 30;
  camera.lookAt(at.set(target[0], target[1], target[2] * mirror));
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
