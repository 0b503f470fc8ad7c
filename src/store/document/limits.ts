import { toDeg } from '../../math/angle';
import { ARM_ANGLE_LIMITS } from '../../reading/checkpoints';
import type { BallFlight, SetUp } from './document';

/** What the set-up takes, in the unit it is typed in. */
export const SET_UP_LIMITS: Readonly<Record<keyof SetUp, { readonly min: number; readonly max: number }>> = {
  handDepthCm: { min: -12, max: 12 },
  handHeightCm: { min: -12, max: 12 },
  turnDeg: { min: -20, max: 20 },
  wristSetDeg: { min: -20, max: 20 },
  downswingMs: { min: 180, max: 400 },
};

/** The days golf is played on: a strong gale (Beaufort 9) and the highest courses are just inside. */
export const BALL_LIMITS: Readonly<
  Record<Exclude<keyof BallFlight, 'rule' | 'faceReturned'>, { readonly min: number; readonly max: number }>
> = {
  tailWindMps: { min: -25, max: 25 },
  crossWindMps: { min: -25, max: 25 },
  altitudeM: { min: -400, max: 4500 },
};

/** How far the face can be returned: not at all, or all the way to square. */
export const FACE_RETURNED_LIMITS = { min: 0, max: 1 } as const;

/** The widest edge of a checkpoint band. */
export const BAND_LIMIT_CM = 40;

export const ARM_ANGLE_LIMITS_DEG = {
  min: Math.round(toDeg(ARM_ANGLE_LIMITS.min)),
  max: Math.round(toDeg(ARM_ANGLE_LIMITS.max)),
} as const;
