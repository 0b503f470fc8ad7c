import { useId } from 'react';

interface Option<T extends string> {
  readonly value: T;
  readonly text: string;
}
interface Props<T extends string> {
  readonly label: string;
  readonly options?: readonly Option<T>[];
  /** Options under headings, after those without. */
  readonly groups?: readonly { readonly label: string; readonly options: readonly Option<T>[] }[];
  readonly value: T;
  readonly onPick: (value: T) => void;
}

const listed = <T extends string>(options: readonly Option<T>[]) =>
  options.map(({ value, text }) => (
    <option key={value} value={value}>
      {text}
    </option>
  ));

/** One of several, as a native list. */
export function Pick<T extends string>({ label, options = [], groups = [], value, onPick }: Props<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onPick(event.currentTarget.value as T)}>
        {listed(options)}
        {groups.map((group) => (
          <optgroup key={group.label} label={group.label}>
            {listed(group.options)}
          </optgroup>
        ))}
      </select>
    </div>
  );
}
