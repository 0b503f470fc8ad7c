import type { MovementGroup } from '../../model/movements';
import { DIALS } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Explanation } from '../../solving/diagnosis/match';
import type { Cause } from '../../solving/diagnosis/causes';
import { sayCm, saySighting } from '../book/readings';
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

export const CAUSES = 'Causes, the most likely first';
export const LOOKING_FOR_CAUSES = 'Looking for what would look like this …';
/** Said with every list of explanations. */
export const ALIKE = 'More than one cause can look the same from one side.';
export const FROM_WHERE = 'Marks: measured by you. Explanations: computed by the model, from the reference swing.';
export const NOTHING_MARKED = 'Pull the ring on a plate to where you saw it, or type it.';

/** A misfit up to this lies within the coach's own give or take. */
const FITS = 1;

/** The sentence over the causes: how many would look like what was seen, or that none does. At most 15 words. */
export function sayMatch(causes: readonly Pick<Explanation, 'status'>[]): string {
  if (causes.length === 0) return 'No movement of the model reaches this checkpoint. Mark the other one.';
  const count = causes.filter(({ status }) => status === 'fits').length;
  if (count === 0) return 'No swing explains both marks. Check them, or widen your margin.';
  if (count === 1) return 'One cause would look like this.';
  return `${count} causes would look like this.`;
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

/** How well a cause fits: inside the coach's margin, or by how many margins outside. */
const sayMisfit = (misfit: number): string =>
  misfit <= FITS
    ? 'fits within your margin'
    : misfit <= NEARLY
      ? 'just outside your margin'
      : `${misfit.toFixed(1)} times your margin away`;
const NEARLY = 1.25;

const BEYOND = 'past the usual range';

/** "fits within your margin, past the usual range" */
export const sayFit = ({ misfit, isUsual }: Pick<Cause, 'misfit' | 'isUsual'>): string =>
  isUsual ? sayMisfit(misfit) : `${sayMisfit(misfit)}, ${BEYOND}`;

/** A mark as it was seen, and as it counts. */
interface MarkOf {
  readonly cm: number;
  readonly plusMinusCm: number;
}

/** "You saw 12 cm in front. Without your camera: 3 cm in front ± 5 cm." What was seen stands beside what counts. */
export const sayHonest = (id: CheckpointId, seen: MarkOf, honest: MarkOf, units: Pick<Units, 'length'>): string =>
  `You saw ${sayCm(id, seen.cm, units)}. Without your camera: ${saySighting(id, honest, units)}.`;

export const SEE_FIRST = 'First enter what you saw.';
