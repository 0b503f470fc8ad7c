import { useId, useRef, useState } from 'react';
import { setMovement, useDesk, type DialId } from '../store';
import { dialWords, typingOf, typingProblem } from './dialWords';

interface Props {
  readonly id: DialId;
  readonly value: number;
}

/** The dialled value in words; a tap turns it into a field. Enter takes what was typed, Escape leaves it. */
export function DialValue({ id, value }: Props) {
  const units = useDesk(({ document }) => document.units);
  const [typing, setTyping] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const { label, short } = dialWords(id, value, units);
  const close = (): void => {
    setTyping(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  if (typing) return <DialField id={id} value={value} onClose={close} onLeave={() => setTyping(false)} />;
  return (
    <button
      ref={button}
      type="button"
      className="dial-value"
      aria-label={`${label}: ${short}. Type a value`}
      onClick={() => setTyping(true)}
    >
      <span>{short}</span>
    </button>
  );
}

/** The field was asked for by a tap on the value: the keyboard goes there, with everything selected. */
const takeFocus = (field: HTMLInputElement | null): void => {
  field?.focus();
  field?.select();
};

function DialField({ id, value, onClose, onLeave }: Props & { onClose: () => void; onLeave: () => void }) {
  const units = useDesk(({ document }) => document.units);
  const problemId = useId();
  const [problem, setProblem] = useState<string>();
  const { label, low, high } = dialWords(id, value, units);
  const { unit, decimals, toField, fromField } = typingOf(id, units);

  /** True when the typed value was taken. */
  const take = (field: HTMLInputElement): boolean => {
    const wrong = typingProblem(id, field.valueAsNumber, units);
    setProblem(wrong);
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
      {problem !== undefined && (
        <span className="dial-problem" id={problemId} role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
