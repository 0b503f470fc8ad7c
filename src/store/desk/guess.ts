import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, type CheckpointId } from '../../reading/checkpoints';
import { judgedReading } from '../../reading/verdicts';
import { current, desk, put } from './desk';
import { stopTrial } from './sessionActions';
import type { Guess, GuessMade } from './whyState';

/** What was guessed, and the swing that stands meanwhile in place of the one now. */
export const setGuess = (guess: Guess | null, trial = desk.getState().session.trial): void =>
  put({ session: { ...desk.getState().session, guess, trial } });

/** Guess first, on or off: with it the model waits until the player has drawn where the shaft will go. */
export function setGuessFirst(on: boolean): void {
  stopTrial();
  setGuess(on ? { stage: 'ready', drawn: {}, made: [] } : null, null);
}

/** The player draws the shaft line or the head, m as the judged reading. */
export function drawGuess(id: CheckpointId, metres: number): void {
  const { guess } = desk.getState().session;
  if (guess) setGuess({ ...guess, drawn: { ...guess.drawn, [id]: metres } });
}

/** The model moves, and the gap to what was drawn is there to see. */
export function showGuess(): void {
  const { guess } = desk.getState().session;
  if (guess?.stage !== 'open') return;
  setGuess({ ...guess, stage: 'shown' }, null);
  const { checkpoints } = current();
  const made = CHECKPOINT_IDS.flatMap((id): GuessMade[] => {
    const [drawn, checkpoint] = [guess.drawn[id], checkpoints[id]];
    return drawn === undefined || !isReached(checkpoint) ? [] : [{ id, drawn, went: judgedReading(id, checkpoint) }];
  });
  if (made.length > 0) setGuess({ ...guess, stage: 'shown', made: [...guess.made, ...made] });
}

/** The player wants to guess again: the next movement is held back. */
export function guessAgain(): void {
  const { guess } = desk.getState().session;
  if (guess) setGuess({ ...guess, stage: 'ready', drawn: {} }, null);
}
