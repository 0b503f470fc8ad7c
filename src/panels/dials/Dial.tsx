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
} from '../../store';
import { DialRule } from './DialRule';
import { DialValue } from './DialValue';
import { dialWords, spokenLike } from '../../words/swing/edgeDials';
import { useDoubleTap } from './doubleTap';
import { holdKey, holdPointer } from './gesture';
import { StepButton } from './StepButton';

/** Divisions of the rule; each is a round number of steps. */
const TICKS = {
  leadWristFlexion: 16,
  rotationRate: 16,
  rotationDelay: 16,
  trailSideBend: 12,
  pelvisShift: 20,
} as const;

interface Props {
  readonly id: DialId;
  /** The first dial of a movement carries its name in the book face. */
  readonly leads?: boolean;
}

/** One dial: native slider on a rule, a step down and up, the value in words. The value is written, not rendered. */
export function Dial({ id, leads = false }: Props) {
  const units = useDesk(({ document }) => document.units);
  const isChosen = useDesk(({ session }) => session.dial === id);
  const dial = edgeDial(id);
  const { label, low, high } = dialWords(id, dial.neutral, units);
  const value = ({ document }: DeskState): number => dialValue(document.movements, id);
  const slider = useRef<HTMLInputElement>(null);
  const note = useRef<HTMLSpanElement>(null);
  const { putDown, liftUp } = useDoubleTap();
  useWritten(value, (now) => {
    const { spoken, past, bracket } = dialWords(id, now, units);
    const { current: field } = slider;
    if (!field || !note.current) return;
    writeNote(note.current, past === undefined ? bracket : undefined);
    if (field.valueAsNumber !== now) field.value = String(now);
    field.setAttribute('aria-valuetext', past === undefined ? spoken : `${spoken}. ${past}`);
  });
  const stepBy = (steps: number) => (): void => nudgeMovement(id, steps);

  return (
    <div className="dial" data-dial={id} data-chosen={isChosen}>
      <div className="dial-top">
        <span className={leads ? 'dial-name' : 'dial-name dial-name-sub'}>{label}</span>
        <span ref={note} />
        <DialValue id={id} />
      </div>
      <StepButton sign="−" label={`${label}: ${low}`} atEnd={(state) => value(state) <= dial.min} onStep={stepBy(-1)} />
      <div className="rule">
        <DialRule id={id} ticks={TICKS[spokenLike(id)]} low={low} high={high} />
        <input
          ref={slider}
          type="range"
          min={dial.min}
          max={dial.max}
          step={dial.step}
          aria-label={label}
          onInput={({ currentTarget }) => setMovement(id, currentTarget.valueAsNumber)}
          onPointerDown={(event) => {
            holdPointer(event);
            putDown(event);
          }}
          onKeyDown={holdKey}
          onPointerUp={(event) => liftUp(event) && resetMovement(id)}
        />
      </div>
      <StepButton sign="+" label={`${label}: ${high}`} atEnd={(state) => value(state) >= dial.max} onStep={stepBy(1)} />
    </div>
  );
}

/** What stands beside the name: the anatomist's word, or a caution where there is none. */
function writeNote(note: HTMLElement, bracket: string | undefined): void {
  const name = bracket === undefined ? 'dial-past' : 'dial-bracket';
  const text = bracket === undefined ? 'past usual range' : `(${bracket})`;
  if (note.className === name && note.textContent === text) return;
  note.className = name;
  if (bracket !== undefined) note.textContent = text;
  else {
    const words = document.createElement('span');
    words.textContent = text;
    note.replaceChildren(words);
  }
}
