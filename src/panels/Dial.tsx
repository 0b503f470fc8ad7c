import { dialValue, edgeDial, resetMovement, nudgeMovement, setMovement, useDesk, type DialId } from '../store';
import { DialRule } from './DialRule';
import { DialValue } from './DialValue';
import { dialWords, spokenLike } from './dialWords';
import { holdKey, holdPointer } from './gesture';
import { StepButton } from './StepButton';

/** Divisions of the rule; each is a round number of steps. */
const TICKS = { leadWristFlexion: 16, rotationRate: 16, rotationDelay: 16, trailTilt: 15, pelvisShift: 20 } as const;

interface Props {
  readonly id: DialId;
  /** The first dial of a movement carries its name in the book face. */
  readonly leads?: boolean;
}

/** One dial: native slider on a rule, a step down and up, the value in words. */
export function Dial({ id, leads = false }: Props) {
  const value = useDesk(({ document }) => dialValue(document.movements, id));
  const units = useDesk(({ document }) => document.units);
  const dial = edgeDial(id);
  const { label, bracket, low, high, spoken, past } = dialWords(id, value, units);
  const stepBy = (steps: number) => (): void => nudgeMovement(id, steps);

  return (
    <div className="dial" data-dial={id}>
      <div className="dial-top">
        <span className={leads ? 'dial-name' : 'dial-name dial-name-sub'}>{label}</span>
        {past === undefined ? (
          <span className="dial-bracket">({bracket})</span>
        ) : (
          <span className="dial-past">
            <span>past usual range</span>
          </span>
        )}
        <DialValue id={id} value={value} />
      </div>
      <StepButton sign="−" label={`${label}: ${low}`} atEnd={value <= dial.min} onStep={stepBy(-1)} />
      <div className="rule">
        <DialRule dial={dial} value={value} ticks={TICKS[spokenLike(id)]} low={low} high={high} />
        <input
          type="range"
          min={dial.min}
          max={dial.max}
          step={dial.step}
          value={value}
          aria-label={label}
          aria-valuetext={past === undefined ? spoken : `${spoken}. ${past}`}
          onPointerDown={holdPointer}
          onKeyDown={holdKey}
          onDoubleClick={() => resetMovement(id)}
          onChange={(event) => setMovement(id, event.currentTarget.valueAsNumber)}
        />
      </div>
      <StepButton sign="+" label={`${label}: ${high}`} atEnd={value >= dial.max} onStep={stepBy(1)} />
    </div>
  );
}
