import type { CheckpointId } from '../../reading/checkpoints';
import type { Bands } from '../../reading/verdicts';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';
import { LENGTHS, type Units } from '../numbers/units';
import { showLength } from '../numbers/numbers';
import { sayJudged } from './whatToChange';

/** What is asked before something moves, and once it waits to be shown. */
export const GUESS_FIRST = 'Guess first: move a slider. The figure waits for you.';
export const GUESS_WHERE = 'Where will the shaft go? Set it, or pull the rings.';
/** What the drawers of the swing say meanwhile: they would give it away. */
export const GUESS_WAITS = 'This waits until the guess is shown.';
/** On the plate, at the line that was drawn. */
export const GUESSED_LINE = 'your guess';
export const NOTHING_GUESSED = 'Nothing was drawn: there is no gap to show.';

/** Which way a guess moves at a checkpoint, up and down the reading. */
export const GUESS_WAYS: Readonly<Record<CheckpointId, readonly [more: string, less: string]>> = {
  leadArmParallel: ['higher', 'lower'],
  shaftParallel: ['farther in front', 'farther behind'],
};

/** A guess counts as near within this, m. Our choice. */
const NEAR_GUESS_M = 0.02;

/** "Within 2 cm: 3 of 5 guesses." How many guesses were near; each as drawn and where it went, m. */
export function sayGuessScore(
  made: readonly { readonly drawn: number; readonly went: number }[],
  units: Pick<Units, 'length'>,
): string {
  const near = made.filter(({ drawn, went }) => Math.abs(drawn - went) <= NEAR_GUESS_M).length;
  const { inSentence } = showLength(NEAR_GUESS_M, units);
  return `Within ${inSentence}: ${near} of ${made.length} ${made.length === 1 ? 'guess' : 'guesses'}.`;
}

/** One step of a guess, m: a whole centimetre, or half an inch. */
export const guessStep = ({ length }: Pick<Units, 'length'>): number =>
  length === 'in' ? 0.5 * LENGTHS.in.metres : 0.01;

/** Two judged readings of a guess: what was drawn, what the model shows, and the gap between them, m. */
export function sayGuess(
  id: CheckpointId,
  drawn: number,
  real: number,
  bands: Bands,
  units: Pick<Units, 'length'>,
): string {
  const gap = showLength(Math.abs(real - drawn), units);
  const at = CHECKPOINT_NAMES[id].title;
  if (gap.value === 0) return `${at}: you drew it where it went, ${sayJudged(id, real, bands, units).text}.`;
  const [up, down] = id === 'leadArmParallel' ? ['higher', 'lower'] : ['farther in front', 'farther behind'];
  const { text } = sayJudged(id, real, bands, units);
  return `${at}: it went to ${text}, ${gap.inSentence} ${real > drawn ? up : down} than you drew.`;
}
