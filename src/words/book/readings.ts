import type { CheckpointId } from '../../reading/checkpoints';
import { showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** What a coach saw, with his own give or take. */
interface Sighting {
  readonly cm: number;
  readonly plusMinusCm: number;
}
type Seen = { readonly [id in CheckpointId]: Sighting | null };
type Computed = { readonly [id in CheckpointId]: number | null };

const SIDES: Readonly<Record<CheckpointId, readonly [string, string, string]>> = {
  leadArmParallel: ['above', 'below', 'through the bicep'],
  shaftParallel: ['in front', 'behind', 'covers the hands'],
};

/** "7 cm above", "21 cm in front". */
export function sayCm(at: CheckpointId, cm: number, units: Pick<Units, 'length'>): string {
  const shown = showLength(Math.abs(cm) / 100, units);
  const [over, under, level] = SIDES[at];
  return shown.value === 0 ? level : `${shown.inSentence} ${cm > 0 ? over : under}`;
}

/** "7 cm above ± 2 cm". */
export const saySighting = (at: CheckpointId, { cm, plusMinusCm }: Sighting, units: Pick<Units, 'length'>): string =>
  `${sayCm(at, cm, units)} ± ${showLength(plusMinusCm / 100, units).text}`;

/** "Lead arm 7 cm above, shaft 21 cm in front": what was seen where it was, what was computed otherwise. */
export function sayBoth(seen: Seen | null, computed: Computed, units: Pick<Units, 'length'>): string {
  const one = (at: CheckpointId): string => {
    const sighting = seen?.[at];
    if (sighting) return `seen ${saySighting(at, sighting, units)}`;
    const cm = computed[at];
    return cm === null ? 'not reached' : `${sayCm(at, cm, units)}`;
  };
  return `Lead arm ${one('leadArmParallel')}, shaft ${one('shaftParallel')}`;
}
