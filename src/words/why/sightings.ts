import type { MovementGroup } from '../../model/movements';
import { DIALS } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Explanation } from '../../solving/diagnosis/match';
import { sayMovement } from '../swing/dials';
import type { Units } from '../numbers/units';
import { sayUses } from './whatToChange';

/** What is seen at a checkpoint, and what its two sides are called. */
export const SEEN_PLACES: Readonly<
  Record<CheckpointId, { readonly title: string; readonly over: string; readonly under: string }>
> = {
  leadArmParallel: { title: 'Lead arm parallel: shaft from the trail bicep', over: 'Above', under: 'Below' },
  shaftParallel: { title: 'Shaft parallel: head from the hands', over: 'In front', under: 'Behind' },
};

/** Said with every list of explanations. */
export const ALIKE = 'Several bodies can look alike from one side.';
export const NOTHING_MARKED = 'Pull the ring on a plate to where you saw it, or type it.';

/** A misfit up to this lies within the coach's own give or take. */
const FITS = 1;

/** The sentence over the explanations: how many would look like what was seen, or that none does. At most 15 words. */
export function sayMatch(explanations: readonly Pick<Explanation, 'status'>[]): string {
  if (explanations.length === 0) return 'No movement of the model reaches this checkpoint. Mark the other one.';
  const count = explanations.filter(({ status }) => status === 'fits').length;
  if (count === 0) return 'Nothing looks like both marks. Check them, or widen your give or take.';
  if (count === 1) return 'One explanation would look like this.';
  return `${count} explanations would look like this.`;
}

/** "Lead wrist only: cupped 18°": what an explanation moves, away from the reference. */
export function sayExplanation(
  { uses, dials, movements }: Pick<Explanation, 'uses' | 'dials' | 'movements'>,
  units: Pick<Units, 'length'>,
): { readonly title: string; readonly text: string; readonly spoken: string } {
  const moved = DIALS.filter(
    ({ id, neutral, step }) => dials.includes(id) && Math.abs(movements[id] - neutral) >= step / 2,
  );
  const said = moved.map(({ id }) => sayMovement(id, movements, units));
  const groups = uses.filter((group: MovementGroup) => moved.some((dial) => dial.group === group));
  const list = said.map(({ phrase }) => phrase).join(', ');
  return {
    title: sayUses(groups.length > 0 ? groups : uses),
    text: list || 'as the reference',
    spoken: said.map(({ spoken }) => spoken).join(', ') || 'as the reference',
  };
}

/** How well an explanation fits: "fits", or by how many of the coach's own give or takes it misses. */
export const sayMisfit = (misfit: number): string =>
  misfit <= FITS ? 'fits within your ±' : `${Math.max(1.1, misfit).toFixed(1)} times your ± away`;
