import { roundTo, showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** What came of it from the first to the last lesson in which the coach noted what he saw. */
export type Moved =
  | { readonly missing: 'nothing seen' | 'seen once' }
  | {
      /** Toward the band (+) or away from it (-), cm. */
      readonly towardCm: number;
      /** The give or take of both readings together (root of the sum of squares), cm. */
      readonly doubtCm: number;
      readonly inside: 'both' | 'now' | 'before' | 'neither';
    };

/**
 * The honest sentence: how far it moved, and how far the coach's own reading can be off. At most 15 words.
 * Movement inside the reading error is called that.
 */
export function sayMoved(moved: Moved, units: Pick<Units, 'length'>): string {
  if ('missing' in moved) {
    return moved.missing === 'nothing seen'
      ? 'Nothing seen is noted yet. Note what you see in each lesson.'
      : 'Seen once. The next lesson will show whether it moved.';
  }
  const { towardCm, doubtCm, inside } = moved;
  const say = (cm: number): string => showLength(Math.abs(cm) / 100, units).inSentence;
  if (inside === 'both') return `Inside the band at first and now; your own reading error is ${say(doubtCm)}.`;
  const size = roundTo(Math.abs(towardCm), 0);
  const way = towardCm >= 0 ? 'toward the band' : 'away from the band';
  if (size === 0) return `Has not moved; your own reading error is ${say(doubtCm)}.`;
  if (Math.abs(towardCm) <= doubtCm)
    return `Moved ${say(towardCm)} ${way}: within your own reading error of ${say(doubtCm)}.`;
  return `Moved ${say(towardCm)} ${way}; your own reading error is ${say(doubtCm)}.`;
}

export const NOTHING_TO_DRAW = 'No lesson yet: nothing to draw.';
export const BAR_MEANS =
  'Bar: what you saw, with your margin. Farther right is steeper. Hatched: steep. Bare: on plane. Dotted: over-shallow.';
export const STRIP_MEANS = 'Strip: on plane, a rule of thumb. Square: the model, where it was fitted to what you saw.';
export const STROKES_MEAN = 'Strokes: days the player practised, as he says.';
export const READING_ERROR = 'The reading error is your margin at the first and the last reading together.';

/** The drawing of progress in words, for those who do not see it. */
export const sayProgressPlot = (lessons: number): string =>
  `Both checkpoints over ${lessons} lessons, the oldest on top. The numbers are in the table below.`;
