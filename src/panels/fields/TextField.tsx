import { useId, useRef, useState } from 'react';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly most: number;
  readonly lines?: number;
  readonly disabled?: boolean;
  /** Takes what is typed, letter by letter: nothing waits for the field to be left. `first` since the field was entered. */
  readonly onType: (typed: string, first: boolean) => void;
  /** The field was left after something was typed. */
  readonly onDone?: () => void;
}

/** A text of one line or several. What stands in it is already in the book. */
export function TextField({ label, value, most, lines = 1, disabled = false, onType, onDone }: Props) {
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const typed = useRef(false);
  const shared = {
    id,
    value: draft ?? value,
    maxLength: most,
    readOnly: disabled,
    autoComplete: 'off',
    onFocus: () => {
      typed.current = false;
    },
    onBlur: () => {
      setDraft(undefined);
      if (typed.current) onDone?.();
    },
    onChange: (event: { currentTarget: { value: string } }) => {
      setDraft(event.currentTarget.value);
      onType(event.currentTarget.value, !typed.current);
      typed.current = true;
    },
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {lines === 1 ? <input type="text" {...shared} /> : <textarea rows={lines} {...shared} />}
    </div>
  );
}
