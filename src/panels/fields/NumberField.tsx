import { useId, useState } from 'react';
import { minus, sayEmpty, sayNotUnderstood, sayStays } from '../../words/numbers/ranges';
import { readHeight, readLength, readNumber, showFeet, type Read } from './readEntry';

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  /** Number in the field; undefined is an empty field. */
  readonly value: number | undefined;
  readonly decimals: number;
  /** May be left empty. */
  readonly optional?: boolean;
  readonly placeholder?: string;
  /** A person's height: feet and metres are understood too. */
  readonly isHeight?: boolean;
  /** Takes the number, or says in words why not. */
  readonly onTake: (typed: number | undefined) => string | undefined;
}

/** How a field reads and writes: lengths with or without their unit, a person's height in feet too. */
function entryOf({ unit, decimals, isHeight = false }: Pick<NumberFieldProps, 'unit' | 'decimals' | 'isHeight'>) {
  const length = /(?:^|\s)(cm|in)$/.exec(unit)?.[1] as 'cm' | 'in' | undefined;
  const inFeet = isHeight && length === 'in';
  return {
    read: (text: string): Read => {
      if (length === undefined) return readNumber(text);
      return isHeight ? readHeight(text, length) : readLength(text, length);
    },
    show: (value: number): string => (inFeet ? showFeet(value) : minus(Number(value.toFixed(decimals)))),
    withUnit: (shown: string): string => {
      if (inFeet) return shown;
      return unit === '°' ? `${shown}°` : `${shown} ${unit.replace('± ', '')}`;
    },
    wanted: length === undefined ? unit : inFeet ? 'feet' : length,
    unit: inFeet ? '' : unit,
  };
}

/** A drawer scrolls: the reason may stand below its edge. */
const bringIntoSight = (reason: HTMLElement | null): void => reason?.scrollIntoView({ block: 'nearest' });

/**
 * A typed number. Taken with Enter or when the field is left; what cannot be taken stays in the field with the reason and
 * the value that is still in use beside it, so nothing typed is lost.
 */
export function NumberField(props: NumberFieldProps) {
  const { label, value, optional, placeholder, onTake } = props;
  const { read, show, withUnit, wanted, unit } = entryOf(props);
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const [problem, setProblem] = useState<string>();

  const take = (): void => {
    if (draft === undefined) return;
    const typed = read(draft);
    const wrong = whyNot(typed);
    const stays = value === undefined ? '' : ` ${sayStays(withUnit(show(value)))}`;
    setProblem(wrong === undefined ? undefined : wrong + stays);
    if (wrong === undefined) setDraft(undefined);
  };
  const whyNot = (typed: number | undefined): string | undefined => {
    if (typed === undefined && !optional) return sayEmpty(label, wanted);
    if (typed !== undefined && !Number.isFinite(typed)) return sayNotUnderstood(draft ?? '', wanted);
    // What stands in the field anyway, typed again, changes nothing: not the decimals either that are not shown.
    const isShown = value === undefined ? typed === undefined : typed === read(show(value));
    return isShown ? undefined : onTake(typed);
  };

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        <input
          id={id}
          type="text"
          inputMode={(value !== undefined && value < 0) || unit === '' ? 'text' : 'decimal'}
          autoComplete="off"
          value={draft ?? (value === undefined ? '' : show(value))}
          placeholder={placeholder}
          aria-invalid={problem !== undefined}
          aria-describedby={problem === undefined ? undefined : `${id}-problem`}
          onChange={(event) => setDraft(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') take();
            if (event.key === 'Escape' && draft !== undefined) {
              event.stopPropagation();
              setDraft(undefined);
              setProblem(undefined);
            }
          }}
          onBlur={take}
        />
        {unit !== '' && <span className="field-unit">{unit}</span>}
      </span>
      {problem !== undefined && (
        <p className="field-problem" id={`${id}-problem`} role="alert" key={problem} ref={bringIntoSight}>
          {problem}
        </p>
      )}
    </div>
  );
}
