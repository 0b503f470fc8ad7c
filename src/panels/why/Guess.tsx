import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached, type CheckpointId } from '../../reading/checkpoints';
import { judgedReading } from '../../reading/verdicts';
import { useDerived, useDesk } from '../../store';
import { drawGuess, guessAgain, setGuessFirst, showGuess } from '../../store/desk/guess';
import { CHECKPOINT_NAMES } from '../../words';
import {
  GUESS_FIRST,
  GUESS_WAYS,
  GUESS_WHERE,
  guessStep,
  NOTHING_GUESSED,
  sayGuess,
  sayGuessScore,
} from '../../words/why/guess';
import { sayJudged } from '../../words/why/whatToChange';
import './guess.css';

/** Guess first: what to do now, and what came of the last guess. */
export function GuessNotice() {
  const stage = useDesk(({ session }) => session.guess?.stage);
  if (stage === undefined) return null;
  return (
    <div className="slip slip-guess" data-stage={stage} aria-live="polite">
      {stage === 'ready' && <p>{GUESS_FIRST}</p>}
      {stage === 'open' && (
        <>
          <p>{GUESS_WHERE}</p>
          {CHECKPOINT_IDS.map((id) => (
            <Stepper key={id} id={id} />
          ))}
        </>
      )}
      {stage === 'shown' && <Gaps />}
      <div className="guess-acts">
        {stage === 'open' && (
          <button type="button" className="plain" onClick={showGuess}>
            Show it
          </button>
        )}
        {stage === 'shown' && (
          <button type="button" className="plain" onClick={guessAgain}>
            Guess again
          </button>
        )}
        <button type="button" className="text-button" onClick={() => setGuessFirst(false)}>
          Stop guessing
        </button>
      </div>
    </div>
  );
}

/** A guess by steps: where no plate with its ring is in sight, and by keyboard. */
function Stepper({ id }: { id: CheckpointId }) {
  const units = useDesk(({ document }) => document.units);
  const drawn = useDesk(({ session }) => session.guess?.drawn[id]);
  const checkpoint = useDerived((derived) => derived.checkpoints[id]);
  const bands = useDerived((derived) => derived.bands);
  if (!isReached(checkpoint)) return null;
  const from = drawn ?? judgedReading(id, checkpoint);
  const [more, less] = GUESS_WAYS[id];
  const { title } = CHECKPOINT_NAMES[id];
  const step = (by: number): void => drawGuess(id, from + by * guessStep(units));
  const { text, spoken } = sayJudged(id, from, bands, units);
  return (
    <div className="guess-step">
      <p>{title}</p>
      <button type="button" className="plain" aria-label={`${title}: ${less}`} onClick={() => step(-1)}>
        −
      </button>
      <b aria-label={spoken}>{drawn === undefined ? '?' : text}</b>
      <button type="button" className="plain" aria-label={`${title}: ${more}`} onClick={() => step(1)}>
        +
      </button>
    </div>
  );
}

function Gaps() {
  const made = useDesk(({ session }) => session.guess?.made) ?? [];
  const drawn = useDesk(({ session }) => session.guess?.drawn) ?? {};
  const bands = useDerived((derived) => derived.bands);
  const units = useDesk(({ document }) => document.units);
  const last = CHECKPOINT_IDS.flatMap((id) =>
    drawn[id] === undefined ? [] : made.filter((one) => one.id === id).slice(-1),
  );
  if (last.length === 0) return <p>{NOTHING_GUESSED}</p>;
  return (
    <div>
      {last.map(({ id, drawn: guessed, went }) => (
        <p key={id}>{sayGuess(id, guessed, went, bands, units)}</p>
      ))}
      <p className="guess-score">{sayGuessScore(made, units)}</p>
    </div>
  );
}
