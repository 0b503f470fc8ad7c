import { exactOptional, type InferOutput } from 'valibot';
import { eachOf, fields, listUpTo, numberIn, oneOf } from '../checking/schemas';
import { rad, toDeg, type Rad } from '../math/angle';
import { SetupError } from '../model/body';
import { MOVEMENT_GROUPS } from '../model/movements';
import { CHECKPOINT_IDS } from '../reading/checkpointTable';
import { ARM_ANGLE_LIMITS, DEFAULT_ARM_ANGLE } from '../reading/checkpoints';
import { DEFAULT_BANDS, type Bands } from '../reading/verdicts';
import { LineError } from './lineError';

/** At which angle of the lead arm the first checkpoint is read, deg. */
export const armAngleSchema = numberIn(
  Math.round(toDeg(ARM_ANGLE_LIMITS.min)),
  Math.round(toDeg(ARM_ANGLE_LIMITS.max)),
);

/** Angle of the lead arm at the first checkpoint, rad; without one, that of the desk. */
export const toArmAngle = (checkpointArmDeg: number | undefined): Rad =>
  checkpointArmDeg === undefined ? DEFAULT_ARM_ANGLE : rad(checkpointArmDeg);

/** How far the face is returned: 0 left as it comes, 1 square to the target. */
export const faceReturnedSchema = numberIn(0, 1);

/** Wide: the model itself says what a band has to be. */
const edge = numberIn(-100, 100);
const band = exactOptional(fields({ lowCm: edge, highCm: edge }));
export const bandsSchema = fields(eachOf(CHECKPOINT_IDS, () => band));

/** Bands in metres; a band that is not given is the usual one. */
export function toBands(given: InferOutput<typeof bandsSchema> = {}): Bands {
  const toBand = (id: keyof Bands): Bands[keyof Bands] => {
    const typed = given[id];
    return typed ? { low: typed.lowCm / 100, high: typed.highCm / 100 } : DEFAULT_BANDS[id];
  };
  return { leadArmParallel: toBand('leadArmParallel'), shaftParallel: toBand('shaftParallel') };
}

export const allowSchema = listUpTo(oneOf(MOVEMENT_GROUPS), 10);

/** What the model refuses becomes an error of its line, under the model's own name of the field. */
export function orLineError<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof SetupError) throw new LineError(error.field, error.message);
    throw error;
  }
}
