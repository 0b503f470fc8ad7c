import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached } from '../../reading/checkpoints';
import { judgedReading } from '../../reading/verdicts';
import { useDerived, useDesk } from '../../store';
import { guessAgain, setGuessFirst, showGuess } from '../../store/desk/guess';
import { sayGuess } from '../../words/why/whatToChange';

/** What is shown for a moment in place of the swing now. */
export function TrialNotice() {
  const label = useDesk(({ session }) => (session.guess ? undefined : session.trial?.label));
  return label === undefined ? null : <p className="slip slip-mark">Only {label}</p>;
}

/** Guess first: what to do now, and what came of the last guess. */
export function GuessNotice() {
  const guess = useDesk(({ session }) => session.guess);
  if (!guess) return null;
  return (
    <div className="slip slip-guess" aria-live="polite">
      {guess.stage === 'ready' && <p>Guess first: move a slider. The figure waits for you.</p>}
      {guess.stage === 'open' && <p>Where will the shaft go? Pull the rings on the plates, then show it.</p>}
      {guess.stage === 'shown' && <Gaps />}
      {guess.stage === 'open' && (
        <button type="button" className="plain" onClick={showGuess}>
          Show it
        </button>
      )}
      {guess.stage === 'shown' && (
        <button type="button" className="plain" onClick={guessAgain}>
          Guess again
        </button>
      )}
      <button type="button" className="text-button" onClick={() => setGuessFirst(false)}>
        Stop guessing
      </button>
    </div>
  );
}

function Gaps() {
  const drawn = useDesk(({ session }) => session.guess?.drawn);
  const checkpoints = useDerived((derived) => derived.checkpoints);
  const bands = useDerived((derived) => derived.bands);
  const units = useDesk(({ document }) => document.units);
  const said = CHECKPOINT_IDS.flatMap((id) => {
    const checkpoint = checkpoints[id];
    const guessed = drawn?.[id];
    if (guessed === undefined || !isReached(checkpoint)) return [];
    return [sayGuess(id, guessed, judgedReading(id, checkpoint), bands, units)];
  });
  return said.length === 0 ? (
    <p>Nothing was drawn: there is no gap to show.</p>
  ) : (
    <div>
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
