import { SetupError } from '../../model/body';
import { MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { Bands } from '../../reading/verdicts';

const inCm = (metres: number): string => `${(metres * 100).toFixed(1)} cm`;

/** Throws `SetupError` when a band is not a pair of numbers with the lower one first. */
export function checkBands(bands: Bands): void {
  for (const id of CHECKPOINT_IDS) {
    const { low, high } = bands[id];
    if (!Number.isFinite(low) || !Number.isFinite(high)) {
      throw new SetupError(`bands.${id}`, `A band needs two numbers. Enter its lower and its upper edge.`);
    }
    if (low > high) {
      throw new SetupError(
        `bands.${id}`,
        `The lower edge ${inCm(low)} lies above the upper edge ${inCm(high)}. Swap them.`,
      );
    }
  }
}

/** The movements that may change, without repeats. Throws `SetupError` when there is none, or one that does not exist. */
export function checkAllow(allow: readonly MovementGroup[]): readonly MovementGroup[] {
  for (const group of allow) {
    if (!MOVEMENT_GROUPS.includes(group)) {
      throw new SetupError('allow', `There is no movement "${group}". Choose from ${MOVEMENT_GROUPS.join(', ')}.`);
    }
  }
  if (allow.length === 0) throw new SetupError('allow', 'Every movement is locked. Unlock at least one.');
  return MOVEMENT_GROUPS.filter((group) => allow.includes(group));
}
