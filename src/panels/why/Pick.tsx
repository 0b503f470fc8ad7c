import { useId } from 'react';

interface Props<T extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly value: T;
  readonly onPick: (value: T) => void;
}

/** One of several, as a native list. */
export function Pick<T extends string>({ label, options, value, onPick }: Props<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onPick(event.currentTarget.value as T)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}
