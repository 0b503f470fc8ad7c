import { useId, useRef, useState } from 'react';
import {
  dialValue,
  edgeDial,
  putText,
  setMovement,
  useDesk,
  useWritten,
  type DeskState,
  type DialId,
} from '../../store';
import { sayStays } from '../../words/numbers/ranges';
import { dialWords, typingOf, typingProblem } from '../../words/swing/edgeDials';

interface Props {
  readonly id: DialId;
}

/** The dialled value in words; a tap turns it into a field. Enter takes what was typed, Escape leaves it. */
export function DialValue({ id }: Props) {
  const units = useDesk(({ document }) => document.units);
  const [typing, setTyping] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const { label } = dialWords(id, edgeDial(id).neutral, units);
  const words = useRef<HTMLSpanElement>(null);
  const dialled = ({ document }: DeskState): number => dialValue(document.movements, id);
  useWritten(dialled, (value) => {
    if (words.current) putText(words.current, dialWords(id, value, units).short);
  });
  useWritten(dialled, (value) => {
    button.current?.setAttribute('aria-label', `${label}: ${dialWords(id, value, units).short}. Type a value`);
  });
  const close = (): void => {
    setTyping(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  if (typing) return <DialField id={id} onClose={close} onLeave={() => setTyping(false)} />;
  return (
    // The name is completed with the value as that is written.
    <button ref={button} type="button" className="dial-value" aria-label={label} onClick={() => setTyping(true)}>
      <span ref={words} />
    </button>
  );
}

/** The field was asked for by a tap on the value: the keyboard goes there, with everything selected. */
const takeFocus = (field: HTMLInputElement | null): void => {
  field?.focus();
  field?.select();
};

function DialField({ id, onClose, onLeave }: Props & { onClose: () => void; onLeave: () => void }) {
  const units = useDesk(({ document }) => document.units);
  const value = useDesk(({ document }) => dialValue(document.movements, id));
  const problemId = useId();
  const [problem, setProblem] = useState<string>();
  const { label, short, low, high, bracket } = dialWords(id, value, units);
  const { unit, decimals, toField, fromField } = typingOf(id, units);

  /** True when the typed value was taken. */
  const take = (field: HTMLInputElement): boolean => {
    const wrong = typingProblem(edgeDial(id), field.valueAsNumber, units);
    setProblem(wrong === undefined ? undefined : `${wrong} ${sayStays(short)}`);
    if (wrong === undefined && field.valueAsNumber !== toField(value)) setMovement(id, fromField(field.valueAsNumber));
    return wrong === undefined;
  };

  return (
    <span className="dial-typing">
      <input
        type="number"
        ref={takeFocus}
        defaultValue={toField(value)}
        step={10 ** -decimals}
        aria-label={`${label}, ${unit}: minus is ${low}, plus is ${high}`}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : problemId}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && take(event.currentTarget)) onClose();
          if (event.key === 'Escape') {
            event.stopPropagation();
            onClose();
          }
        }}
        onBlur={(event) => {
          if (take(event.currentTarget)) onLeave();
        }}
      />
      <span aria-hidden="true">{unit}</span>
      {problem === undefined ? (
        <span className="dial-problem" aria-hidden="true">
          Minus is {low}, plus is {high} ({bracket}).
        </span>
      ) : (
        <span className="dial-problem" id={problemId} role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
