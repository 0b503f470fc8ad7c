import { useId, useState } from 'react';
import { minus } from '../../words/numbers/ranges';

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  /** Number in the field; undefined is an empty field. */
  readonly value: number | undefined;
  readonly decimals: number;
  /** May be left empty. */
  readonly optional?: boolean;
  readonly placeholder?: string;
  /** Takes the number, or says in words why not. */
  readonly onTake: (typed: number | undefined) => string | undefined;
}

/** Reads what people type: comma or point, any minus sign. */
function parse(text: string): number | undefined {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  return plain === '' ? undefined : Number(plain);
}

const show = (value: number | undefined, decimals: number): string =>
  value === undefined ? '' : minus(Number(value.toFixed(decimals)));

/** What stands in the field anyway, typed again, changes nothing: not the decimals either that are not shown. */
const isShown = (typed: number | undefined, value: number | undefined, decimals: number): boolean =>
  typed === (value === undefined ? undefined : Number(value.toFixed(decimals)));

/** A drawer scrolls: the reason may stand below its edge. */
const bringIntoSight = (reason: HTMLElement | null): void => reason?.scrollIntoView({ block: 'nearest' });

/**
 * A typed number. Taken with Enter or when the field is left; what cannot be taken stays in the field with the reason
 * beside it, so nothing typed is lost.
 */
export function NumberField({ label, unit, value, decimals, optional, placeholder, onTake }: NumberFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const [problem, setProblem] = useState<string>();

  const take = (): void => {
    if (draft === undefined) return;
    const typed = parse(draft);
    const wrong = whyNot(typed);
    setProblem(wrong);
    if (wrong === undefined) setDraft(undefined);
  };
  const whyNot = (typed: number | undefined): string | undefined => {
    if (typed === undefined && !optional) return `${label} is empty. Enter a number in ${unit}.`;
    if (typed !== undefined && !Number.isFinite(typed)) return `"${draft}" is not a number. Enter one in ${unit}.`;
    if (isShown(typed, value, decimals)) return undefined;
    return onTake(typed);
  };

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        <input
          id={id}
          type="text"
          inputMode={value !== undefined && value < 0 ? 'text' : 'decimal'}
          autoComplete="off"
          value={draft ?? show(value, decimals)}
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
        <span className="field-unit">{unit}</span>
      </span>
      {problem !== undefined && (
        <p className="field-problem" id={`${id}-problem`} role="alert" key={problem} ref={bringIntoSight}>
          {problem}
        </p>
      )}
    </div>
  );
}
