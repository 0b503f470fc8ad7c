import type { CheckpointId } from '../../reading/checkpoints';
import { desk, put } from './desk';
import { stopTrial } from './sessionActions';
import type { Guess } from './whyState';

/** What was guessed, and the swing that stands meanwhile in place of the one now. */
export const setGuess = (guess: Guess | null, trial = desk.getState().session.trial): void =>
  put({ session: { ...desk.getState().session, guess, trial } });

/** Guess first, on or off: with it the model waits until the player has drawn where the shaft will go. */
export function setGuessFirst(on: boolean): void {
  stopTrial();
  setGuess(on ? { stage: 'ready', drawn: {} } : null, null);
}

/** The player draws the shaft line or the head, m as the judged reading. */
export function drawGuess(id: CheckpointId, metres: number): void {
  const { guess } = desk.getState().session;
  if (guess) setGuess({ stage: guess.stage, drawn: { ...guess.drawn, [id]: metres } });
}

/** The model moves, and the gap to what was drawn is there to see. */
export function showGuess(): void {
  const { guess } = desk.getState().session;
  if (guess?.stage === 'open') setGuess({ ...guess, stage: 'shown' }, null);
}

/** The player wants to guess again: the next movement is held back. */
export function guessAgain(): void {
  if (desk.getState().session.guess) setGuess({ stage: 'ready', drawn: {} }, null);
}
