import { deg, toDeg, toRad } from '../../math/angle';
import type { Player } from '../../model/body';
import { USUAL_TRIPODS, type CameraView, type Tripod } from '../../reading/camera/camera';

/** A tripod as the coach types it. Right means to the coach's right, behind the camera, whichever hand the player plays with. */
export interface CameraPlace {
  /** Down the line: behind the hands. Face on: in front of the ball line. */
  readonly distanceM: number;
  readonly heightM: number;
  /** Off the line of the hands, or off the middle of the stance. */
  readonly rightCm: number;
  /** Off the hands at address. */
  readonly aimRightDeg: number;
  readonly clockwiseDeg: number;
  /** Of a phone held upright, from top to bottom. */
  readonly fieldDeg: number;
}
export type Cameras = { readonly [view in CameraView]: CameraPlace };

const usual = (view: CameraView): CameraPlace => ({
  distanceM: USUAL_TRIPODS[view].distance,
  heightM: USUAL_TRIPODS[view].height,
  rightCm: 0,
  aimRightDeg: 0,
  clockwiseDeg: 0,
  fieldDeg: Math.round(toDeg(USUAL_TRIPODS[view].field)),
});
export const USUAL_CAMERAS: Cameras = { downTheLine: usual('downTheLine'), faceOn: usual('faceOn') };

/** From a camera at the club to one across the range, from one on the ground to one held over a head. */
export const CAMERA_LIMITS: Readonly<Record<keyof CameraPlace, { readonly min: number; readonly max: number }>> = {
  distanceM: { min: 1, max: 20 },
  heightM: { min: 0.1, max: 3 },
  rightCm: { min: -200, max: 200 },
  aimRightDeg: { min: -20, max: 20 },
  clockwiseDeg: { min: -20, max: 20 },
  fieldDeg: { min: 15, max: 120 },
};
export const CAMERA_FIELDS = Object.keys(CAMERA_LIMITS) as readonly (keyof CameraPlace)[];

/** A tripod as the player's own frame has it: for a left-handed player the coach's right is its left. */
export function toTripod(place: CameraPlace, { handed }: Player): Tripod {
  const side = handed === 'left' ? -1 : 1;
  return {
    distance: place.distanceM,
    height: place.heightM,
    offset: (side * place.rightCm) / 100,
    aim: side * toRad(deg(place.aimRightDeg)),
    roll: side * toRad(deg(place.clockwiseDeg)),
    field: toRad(deg(place.fieldDeg)),
  };
}
