import { showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** Nearer than this, m, two bodies cover each other; nearer than `same` they are one to the eye. Our choice. */
const NEAR = 0.06;
const SAME = 0.006;

/** The legend of the swing that is compared with: where it nearly coincides with the one shown, how far they are apart at most (m). */
export function sayComparison(gap: number, units: Pick<Units, 'length'>): string {
  if (gap >= NEAR) return 'comparison';
  if (gap < SAME) return 'comparison: the same here';
  return `comparison: at most ${showLength(gap, units).inSentence} apart`;
}
