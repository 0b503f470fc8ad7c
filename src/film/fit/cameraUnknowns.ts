import type { PictureSize, TypedCamera } from '../marks';
import { aim, type Pinhole } from '../pinhole';
import type { Expected } from './player';
import { CAMERA_PRIOR, FULL_FRAME_MM, U } from './unknowns';

/** The camera among the unknowns. */
export interface CameraUnknowns {
  /** Its eye along one axis of the world, m. */
  eye(x: Float64Array, axis: 0 | 1 | 2): number;
  /** Its axes, written into `sight`. */
  look(x: Float64Array, sight: Float64Array): void;
  read(x: Float64Array): Pinhole;
  /** Where a search starts: behind the player, as far away as the club is short in the picture, with the club where it was marked. */
  guess(x: Float64Array, club: { readonly px: number; readonly middle: readonly [number, number] }): void;
}

/** The camera among the unknowns, about where a phone stands behind the hands of this player. */
export function createCameraUnknowns(expected: Expected, size: PictureSize, typed?: TypedCamera): CameraUnknowns {
  const { head, hands, swing, lean } = expected;
  const usualFocal = CAMERA_PRIOR.focal.mean + Math.log(Math.hypot(size.w, size.h) / FULL_FRAME_MM);
  const eye = (x: Float64Array, axis: 0 | 1 | 2): number => {
    if (axis === 0) return hands[0] + CAMERA_PRIOR.eyeX.mean + CAMERA_PRIOR.eyeX.sd * x[U.eyeX];
    if (axis === 1) return CAMERA_PRIOR.eyeY.mean + CAMERA_PRIOR.eyeY.sd * x[U.eyeY];
    return hands[2] + CAMERA_PRIOR.eyeZ.sd * x[U.eyeZ];
  };
  const focal = (x: Float64Array): number => Math.exp(usualFocal + CAMERA_PRIOR.focal.sd * x[U.focal]);
  const yaw = (x: Float64Array): number => CAMERA_PRIOR.yaw.sd * x[U.yaw];
  const pitch = (x: Float64Array): number => CAMERA_PRIOR.pitch.mean + CAMERA_PRIOR.pitch.sd * x[U.pitch];
  const roll = (x: Float64Array): number => CAMERA_PRIOR.roll.sd * x[U.roll];
  return {
    eye,
    look(x, sight) {
      aim(eye(x, 0), eye(x, 1), eye(x, 2), yaw(x), pitch(x), roll(x), focal(x), sight);
    },
    read: (x) => ({
      eye: [eye(x, 0), eye(x, 1), eye(x, 2)],
      yaw: yaw(x),
      pitch: pitch(x),
      roll: roll(x),
      focal: focal(x),
    }),
    guess(x, { px, middle: [u, v] }) {
      const usual = Math.exp(usualFocal);
      const away = (usual * swing.rig.club.length * Math.cos(lean)) / px;
      const { eyeX, eyeY } = CAMERA_PRIOR;
      x[U.eyeX] = (-away - eyeX.mean) / eyeX.sd;
      x[U.eyeY] = ((typed?.height?.value ?? eyeY.mean) - eyeY.mean) / eyeY.sd;
      const bearing = Math.atan2((head[2] + hands[2]) / 2 - eye(x, 2), away);
      const rise = Math.atan2((head[1] + hands[1]) / 2 - eye(x, 1), away);
      x[U.yaw] = (bearing - Math.atan2(u - size.w / 2, usual)) / CAMERA_PRIOR.yaw.sd;
      x[U.pitch] = (rise - Math.atan2(size.h / 2 - v, usual) - CAMERA_PRIOR.pitch.mean) / CAMERA_PRIOR.pitch.sd;
    },
  };
}
