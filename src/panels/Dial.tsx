import { useRef } from 'react';
import {
  dialValue,
  edgeDial,
  resetMovement,
  nudgeMovement,
  setMovement,
  useDesk,
  useWritten,
  type DeskState,
  type DialId,
} from '../store';
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

/** One dial: native slider on a rule, a step down and up, the value in words. The value is written, not rendered. */
export function Dial({ id, leads = false }: Props) {
  const units = useDesk(({ document }) => document.units);
  const dial = edgeDial(id);
  const { label, low, high } = dialWords(id, dial.neutral, units);
  const value = ({ document }: DeskState): number => dialValue(document.movements, id);
  // Nothing past the usual range: a caution stands there.
  const bracket = useDesk((state) => {
    const words = dialWords(id, value(state), units);
    return words.past === undefined ? words.bracket : undefined;
  });
  const end = useDesk((state) => (value(state) <= dial.min ? 'low' : value(state) >= dial.max ? 'high' : undefined));
  const slider = useRef<HTMLInputElement>(null);
  useWritten(value, (now) => {
    const { spoken, past } = dialWords(id, now, units);
    const { current: field } = slider;
    if (!field) return;
    if (field.valueAsNumber !== now) field.value = String(now);
    field.setAttribute('aria-valuetext', past === undefined ? spoken : `${spoken}. ${past}`);
  });
  const stepBy = (steps: number) => (): void => nudgeMovement(id, steps);

  return (
    <div className="dial" data-dial={id}>
      <div className="dial-top">
        <span className={leads ? 'dial-name' : 'dial-name dial-name-sub'}>{label}</span>
        {bracket === undefined ? (
          <span className="dial-past">
            <span>past usual range</span>
          </span>
        ) : (
          <span className="dial-bracket">({bracket})</span>
        )}
        <DialValue id={id} />
      </div>
      <StepButton sign="−" label={`${label}: ${low}`} atEnd={end === 'low'} onStep={stepBy(-1)} />
      <div className="rule">
        <DialRule id={id} ticks={TICKS[spokenLike(id)]} low={low} high={high} />
        <input
          ref={slider}
          type="range"
          min={dial.min}
          max={dial.max}
          step={dial.step}
          aria-label={label}
          onPointerDown={holdPointer}
          onKeyDown={holdKey}
          onDoubleClick={() => resetMovement(id)}
          onChange={(event) => setMovement(id, event.currentTarget.valueAsNumber)}
        />
      </div>
      <StepButton sign="+" label={`${label}: ${high}`} atEnd={end === 'high'} onStep={stepBy(1)} />
    </div>
  );
}
