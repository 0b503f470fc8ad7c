import { useId } from 'react';

interface Props<T extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  /** Null: none yet. */
  readonly value: T | null;
  readonly onChoose: (value: T) => void;
  /** The options say enough by themselves: the label is only heard. */
  readonly isPlain?: boolean;
}

/** One of a few, side by side: native radio buttons under the look of the board. */
export function Choice<T extends string>({ label, options, value, onChoose, isPlain }: Props<T>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend className={isPlain ? 'unseen' : undefined}>{label}</legend>
      <div className="choice-options">
        {options.map((option) => (
          <label key={option.value}>
            <input type="radio" name={name} checked={option.value === value} onChange={() => onChoose(option.value)} />
            <span>{option.text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
