import { toDeg } from '../math/angle';
import { ARM_ANGLE_LIMITS } from '../reading/checkpoints';
import type { SetUp } from './document';

/** What the set-up takes, in the unit it is typed in. */
export const SET_UP_LIMITS: Readonly<Record<keyof SetUp, { readonly min: number; readonly max: number }>> = {
  handDepthCm: { min: -12, max: 12 },
  handHeightCm: { min: -12, max: 12 },
  turnDeg: { min: -20, max: 20 },
  wristSetDeg: { min: -20, max: 20 },
  downswingMs: { min: 180, max: 400 },
};

/** The widest edge of a checkpoint band. */
export const BAND_LIMIT_CM = 40;

export const ARM_ANGLE_LIMITS_DEG = {
  min: Math.round(toDeg(ARM_ANGLE_LIMITS.min)),
  max: Math.round(toDeg(ARM_ANGLE_LIMITS.max)),
} as const;
