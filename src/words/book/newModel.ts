import type { CheckpointId } from '../../reading/checkpoints';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';

type Computed = { readonly [id in CheckpointId]: number | null };

/** Stands in place of "computed by the model" until the record has been opened. */
export const COMPUTED_EARLIER = 'computed by an earlier model';

export const SOME_EARLIER = 'Some readings were computed by an earlier model; opening their lesson renews them.';

const WAYS: Readonly<Record<CheckpointId, readonly [string, string]>> = {
  leadArmParallel: ['higher', 'lower'],
  shaftParallel: ['farther in front', 'farther behind'],
};

function sayShift(at: CheckpointId, before: number | null, now: number | null, units: Pick<Units, 'length'>): string {
  if (now === null) return before === null ? 'not reached' : 'no longer reached';
  if (before === null) return 'reached';
  const shown = showLength(Math.abs(now - before) / 100, units, 1);
  return shown.value === 0 ? 'the same' : `${shown.inSentence} ${WAYS[at][now > before ? 0 : 1]}`;
}

/**
 * What is said once when a lesson or a saved swing of the first model is opened: that it has changed, and by how much both judged
 * readings moved. Readings in cm, null where a checkpoint is not reached.
 */
export function sayNewModel(
  what: 'lesson' | 'swing',
  before: Computed,
  now: Computed,
  units: Pick<Units, 'length'>,
): string {
  const shifts = CHECKPOINT_IDS.map(
    (at) => `${CHECKPOINT_NAMES[at].inSentence} ${sayShift(at, before[at], now[at], units)}`,
  );
  return `The model has changed since this ${what} was saved. Its lean is now side bend. Computed now: ${shifts.join(', ')}.`;
}
