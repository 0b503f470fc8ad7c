import type { CheckpointId } from '../../reading/checkpoints';
import { withMovements } from '../../reading/swing';
import { toMovements } from '../document/convert';
import { current, desk, put, subscribe } from './desk';
import { stopTrial } from './contributionPlayback';
import type { Guess } from './whyState';

const set = (guess: Guess | null, trial = desk.getState().session.trial): void =>
  put({ session: { ...desk.getState().session, guess, trial } });

/** Guess first, on or off: with it the model waits until the player has drawn where the shaft will go. */
export function setGuessFirst(on: boolean): void {
  stopTrial();
  set(on ? { stage: 'ready', drawn: {} } : null, null);
}

/** The player draws the shaft line or the head, m as the judged reading. */
export function drawGuess(id: CheckpointId, metres: number): void {
  const { guess } = desk.getState().session;
  if (guess) set({ stage: guess.stage, drawn: { ...guess.drawn, [id]: metres } });
}

/** The model moves, and the gap to what was drawn is there to see. */
export function showGuess(): void {
  const { guess } = desk.getState().session;
  if (guess?.stage === 'open') set({ ...guess, stage: 'shown' }, null);
}

/** The player wants to guess again: the next movement is held back. */
export function guessAgain(): void {
  if (desk.getState().session.guess) set({ stage: 'ready', drawn: {} }, null);
}

// The first change of a movement is held back: what stood before it stays on the plates and on the stage.
subscribe((now, before) => {
  const { guess } = now.session;
  if (!guess || guess.stage === 'open' || now.session.guess !== before.session.guess) return;
  if (now.document.movements === before.document.movements) return;
  const stood = withMovements(current().referenceSwing, toMovements(before.document.movements));
  set(
    { stage: 'open', drawn: guess.stage === 'ready' ? guess.drawn : {} },
    { swing: stood, label: 'Guess first: draw where the shaft will go' },
  );
});

// Another player, club or top makes what was held back meaningless.
subscribe((now, before) => {
  const { guess } = now.session;
  if (guess?.stage !== 'open') return;
  const { player, club, setUp } = now.document;
  if (player !== before.document.player || club !== before.document.club || setUp !== before.document.setUp) {
    set({ stage: 'ready', drawn: {} }, null);
  }
});
