import { DIALS, MOVEMENT_GROUPS, type MovementGroup, type MovementId } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Bands } from '../../reading/verdicts';
import type { Judged } from '../../solving/diagnosis/judged';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';
import { lowered } from '../numbers/capital';
import { showJudged } from '../numbers/judged';
import { formatTyped, roundTo, showLength, type Shown } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** Movements as plans and lessons name them. */
export const GROUPS: Readonly<Record<MovementGroup, string>> = {
  leadWrist: 'Lead wrist',
  rotation: 'Body turn',
  sideTilt: 'Side bend',
};

/** Which movements a plan or an explanation uses: "Lead wrist only", "Lead wrist and body turn", "A little of each". */
export function sayUses(uses: readonly MovementGroup[]): string {
  if (uses.length === 0) return 'Nothing';
  if (uses.length === 1) return `${GROUPS[uses[0]]} only`;
  if (uses.length === MOVEMENT_GROUPS.length) return 'A little of each';
  return `${GROUPS[uses[0]]} and ${GROUPS[uses[1]].toLowerCase()}`;
}

/** A judged reading in words of its side: "7 cm above", "2 cm in front". Units as chosen; m in. */
export function sayJudged(
  id: CheckpointId,
  metres: number,
  bands: Bands,
  units: Pick<Units, 'length'>,
): { readonly text: string; readonly spoken: string } {
  if (!Number.isFinite(metres)) return { text: 'not reached', spoken: 'not reached' };
  const shown = showJudged(metres, bands[id], units);
  const side = (zero: string, up: string, down: string, text: string): string =>
    shown.value === 0 ? zero : `${text} ${shown.value > 0 ? up : down}`;
  const say = (text: string): string =>
    id === 'leadArmParallel'
      ? side('on the bicep', 'above', 'below', text)
      : side('over the hands', 'in front', 'behind', text);
  return { text: say(shown.inSentence), spoken: say(shown.spoken) };
}

/** "16° toward bowed", "8 ms later": by how much one dial changes. New less old, model units. */
export function sayDifference(id: MovementId, change: number, units: Pick<Units, 'length'>): string {
  const edge = roundTo(change / DIALS.find((dial) => dial.id === id)!.edgeUnit, 4);
  const size = formatTyped(Math.abs(edge));
  const isMore = edge > 0;
  switch (id) {
    case 'leadWristFlexion':
      return `${size}° toward ${isMore ? 'bowed' : 'cupped'}`;
    case 'rotationRate':
      return `${formatTyped(Math.abs(edge) * 100)} % ${isMore ? 'more' : 'less'} turn`;
    case 'rotationDelay':
      return `${size} ms ${isMore ? 'later' : 'earlier'}`;
    case 'trailSideBend':
      return `${size}° ${isMore ? 'to the trail side' : 'toward the target'}`;
    case 'pelvisShift':
      return `${showLength(Math.abs(change), units).inSentence} ${isMore ? 'to target' : 'back'}`;
  }
}

/** The farther of two readings outside their bands: "2 cm" short. Nothing outside: undefined. */
function farthest({ leadArmParallel, shaftParallel }: Judged): number {
  return Math.max(Math.abs(leadArmParallel), Math.abs(shaftParallel));
}

/** "Closest, 2 cm short": how far a plan stays outside the bands. */
export function sayShort(short: Judged, units: Pick<Units, 'length'>): Shown {
  const metres = farthest(short);
  const shown = showLength(metres, units);
  return shown.value === 0 ? showLength(metres, units, 1) : shown;
}

export interface PlanLead {
  readonly status: 'planned' | 'already' | 'missing';
  readonly plans: readonly {
    readonly uses: readonly MovementGroup[];
    readonly status: 'reached' | 'closest';
    readonly short: Judged;
  }[];
}

/** Where plans end: on the nearest edge of the bands, or well inside them. */
export type PlanAim = 'edge' | 'inside';

/** The one sentence of the change plan, at most 15 words. */
export function sayPlans({ status, plans }: PlanLead, units: Pick<Units, 'length'>, aim: PlanAim = 'edge'): string {
  if (status === 'already') return 'Both checkpoints are on plane: nothing has to change.';
  if (status === 'missing' || plans.length === 0) {
    return status === 'missing'
      ? 'A checkpoint is never reached, however the free movements are set.'
      : 'The free movements do not bring the checkpoints any closer.';
  }
  const [first] = plans;
  if (first.status === 'closest') {
    return `Out of reach with these movements: the closest stays ${sayShort(first.short, units).inSentence} short.`;
  }
  const singles = plans.filter(({ uses, status: reached }) => uses.length === 1 && reached === 'reached');
  if (first.uses.length > 1) {
    const name = sayUses(first.uses);
    if (singles.length === 0) return `${name}: one movement alone does not reach it.`;
    return `${name} is ${BEST[aim]}.`;
  }
  return `${GROUPS[first.uses[0]]} alone is ${BEST[aim]}.`;
}

const BEST: Readonly<Record<PlanAim, string>> = {
  edge: 'the smallest change',
  inside: 'the smallest change with more margin',
};

/** "93 of 100": a share as a count people can picture. Only a certainty is all or nothing. */
export function sayShare(share: number): string {
  const count = Math.round(share * 100);
  if (count >= 100 && share < 1) return 'more than 99 of 100';
  if (count <= 0 && share > 0) return 'fewer than 1 of 100';
  return `${count} of 100`;
}

/** "Lands on plane in 93 of 100 within your own ±3 cm." The give or take in m. */
export const sayLanding = (share: number, plusMinus: number, units: Pick<Units, 'length'>): string =>
  `Lands on plane in ${sayShare(share)} within your own ±${showLength(plusMinus, units).inSentence}.`;

/** Said with a plan that more margin was asked of and that has none to give. */
export const NO_MORE_MARGIN = 'These movements alone cannot land more often than the smallest change.';

/** From here on a verdict is called almost certain, and below this it is too close to call (our choice). */
const [CERTAIN, OPEN] = [0.99, 0.6];

/** "Probably steep at lead arm parallel: 83 of 100." How surely a verdict stands within the coach's own margin. */
export function sayVerdictShare(id: CheckpointId, word: string, share: number): string {
  const at = CHECKPOINT_NAMES[id].inSentence;
  const small = lowered(word);
  if (share >= CERTAIN) return `Almost certainly ${small} at ${at}.`;
  if (share >= OPEN) return `Probably ${small} at ${at}: ${sayShare(share)}.`;
  return `Too close to call at ${at}: ${small} in ${sayShare(share)}.`;
}

export const LOOKING_FOR_CHANGE = 'Looking for the smallest change …';
