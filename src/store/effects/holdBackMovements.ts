import { withMovements } from '../../reading/swing';
import { current, subscribe } from '../desk/desk';
import { setGuess } from '../desk/guess';
import type { DeskState } from '../desk/state';
import { toMovements } from '../document/convert';

/** The first change of a movement is held back: what stood before it stays on the plates and on the stage. */
function holdBack(now: DeskState, before: DeskState): void {
  const { guess } = now.session;
  if (!guess || guess.stage === 'open' || now.session.guess !== before.session.guess) return;
  if (now.document.movements === before.document.movements) return;
  const stood = withMovements(current().referenceSwing, toMovements(before.document.movements));
  setGuess(
    { ...guess, stage: 'open', drawn: guess.stage === 'ready' ? guess.drawn : {} },
    { swing: stood, label: 'Guess first: draw where the shaft will go' },
  );
}

/** Another player, club or top makes what was held back meaningless. */
function letGo(now: DeskState, before: DeskState): void {
  const { guess } = now.session;
  if (guess?.stage !== 'open') return;
  const { player, club, setUp } = now.document;
  if (player !== before.document.player || club !== before.document.club || setUp !== before.document.setUp) {
    setGuess({ ...guess, stage: 'ready', drawn: {} }, null);
  }
}

/** With "guess first" on, movements wait until the player has drawn where the shaft will go. Answers how to end that. */
export function holdBackMovements(): () => void {
  const ends = [subscribe(holdBack), subscribe(letGo)];
  return () => {
    for (const end of ends) end();
  };
}
