import { useDesk, type CheckpointId } from '../../store';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { asKept, SEEN_LIMITS, USUAL_GIVE_CM, type Seen, type Sighting } from '../../store/document/sighting';
import { LENGTHS } from '../../words';
import { outside } from '../../words/numbers/ranges';
import { SEE_FIRST, SEEN_PLACES } from '../../words/why/sightings';
import { Choice } from '../fields/Choice';
import { NumberField } from '../fields/NumberField';
import './seen.css';

interface Props {
  readonly seen: Seen;
  /** Takes a mark, or none any more. */
  readonly onSee: (id: CheckpointId, sighting: Sighting | null) => void;
  readonly disabled?: boolean;
  /** What is said of a mark below it. */
  readonly note?: (id: CheckpointId) => React.ReactNode;
}

/** The one place where it is entered what a coach saw: on the desk and in a lesson the same. */
export const SeenEntry = (props: Props) => (
  <div className="seen-fields">
    {CHECKPOINT_IDS.map((id) => (
      <Mark key={id} id={id} {...props} />
    ))}
  </div>
);

/** One mark, typed: how far, on which side, and the coach's own margin. An empty field takes the mark away. */
function Mark({ id, seen, onSee, disabled = false, note }: Props & { id: CheckpointId }) {
  const { length } = useDesk(({ document }) => document.units);
  const { metres, symbol, decimals } = LENGTHS[length];
  const cmPerUnit = metres * 100;
  const { title, over, under } = SEEN_PLACES[id];
  const sighting = seen[id];
  const take = (part: Partial<Sighting>): void => {
    if (disabled) return;
    onSee(id, asKept({ cm: 0, plusMinusCm: USUAL_GIVE_CM, ...sighting, from: 'typed', ...part }));
  };
  const whyNot = (label: string, typed: number, { min, max }: { min: number; max: number }): string | undefined =>
    outside(label, typed, Math.max(0, min) / cmPerUnit, max / cmPerUnit, symbol, 1);
  return (
    <fieldset className="seen" id={`mark-${id}`}>
      <legend>{title}</legend>
      <NumberField
        label="Seen"
        unit={symbol}
        decimals={decimals + 1}
        optional
        value={sighting === null ? undefined : Math.abs(sighting.cm) / cmPerUnit}
        onTake={(typed) => {
          if (typed === undefined) {
            if (!disabled) onSee(id, null);
            return undefined;
          }
          // A minus is taken at its word; a plain number keeps the side that was chosen.
          const side = typed < 0 || (sighting !== null && sighting.cm < 0) ? -1 : 1;
          const problem = whyNot('Seen', Math.abs(typed), SEEN_LIMITS.cm);
          if (problem === undefined) take({ cm: side * Math.abs(typed) * cmPerUnit + 0 });
          return problem;
        }}
      />
      <NumberField
        label="Margin"
        unit={`± ${symbol}`}
        decimals={decimals + 1}
        optional
        placeholder={String(Number((USUAL_GIVE_CM / cmPerUnit).toFixed(1)))}
        value={sighting === null ? undefined : sighting.plusMinusCm / cmPerUnit}
        onTake={(typed) => {
          if (!sighting) return typed === undefined ? undefined : SEE_FIRST;
          const margin = typed ?? USUAL_GIVE_CM / cmPerUnit;
          const problem = whyNot('Margin', margin, SEEN_LIMITS.plusMinusCm);
          if (problem === undefined) take({ plusMinusCm: margin * cmPerUnit, from: sighting.from });
          return problem;
        }}
      />
      {sighting !== null && (
        <Choice
          label="Side"
          value={sighting.cm < 0 ? 'under' : 'over'}
          options={[
            { value: 'over', text: over },
            { value: 'under', text: under },
          ]}
          onChoose={(side) =>
            take({ cm: Math.abs(sighting.cm) * (side === 'under' ? -1 : 1) + 0, from: sighting.from })
          }
        />
      )}
      {sighting !== null && !disabled && (
        <button type="button" className="plain mark-forget" onClick={() => onSee(id, null)}>
          Clear<span className="unseen">: {title}</span>
        </button>
      )}
      {note?.(id)}
    </fieldset>
  );
}
