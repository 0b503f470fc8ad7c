import { DIALS, type Movements } from '../../model/movements';
import { capital } from '../numbers/capital';
import type { Units } from '../numbers/units';
import { sayMovement } from '../swing/dials';

/** Said under a downswing that takes `times` as long as the player's. */
export const saySlow = (times: number): string => `The downswing, ${times} times slower.`;

/** On the last card of a clip, and beside every code. */
export const SCAN = 'Scan the code to open this swing.';
/** Said where a code is too small for all the words of a plan. */
export const SCAN_PART = 'Your own words are too long for the code. The link holds them all.';

/** Under a code where there is little room. */
export const SCAN_SHORT = 'Scan to see it move';
export const SCAN_WHY = 'The code holds it all: nothing is sent anywhere.';

/** On a sheet while no plan is chosen. */
export const NO_PLAN = 'No plan is chosen yet. Choose one under What to change.';

/** On a sheet for a swing that has nothing to change. */
export const NOTHING_TO_CHANGE = 'On plane at both checkpoints: keep it as it is.';

/** While the desk is doubled: said where files are made. */
export const NOT_EXAGGERATED = 'Clips, sheets, models and tables show the swing as it is, not exaggerated.';

/** "Cupped 16°, 8 % more turn": what differs from the reference. */
export function sayDialled(movements: Movements, units: Pick<Units, 'length'>): string {
  const phrases = DIALS.filter((dial) => Math.abs(movements[dial.id] - dial.neutral) > dial.step / 10).map(
    ({ id }) => sayMovement(id, movements, units).phrase,
  );
  if (phrases.length === 0) return 'As reference';
  return capital(phrases.join(', '));
}
