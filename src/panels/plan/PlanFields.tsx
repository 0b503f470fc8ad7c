import { useId } from 'react';
import { firstOf, toText } from '../../checking/text';
import { PLAN_LIMITS, type ChosenPlan, type PlanDrill } from '../../store/document/chosenPlan';
import { TextField } from '../fields/TextField';

/** What may be said with a plan; what moves is chosen, not typed. */
type Said = Partial<Pick<ChosenPlan, 'feel' | 'drills' | 'words' | 'nextDate' | 'names'>>;

interface Props {
  readonly plan: ChosenPlan;
  readonly disabled: boolean;
  readonly onEdit: (label: string, part: Said) => void;
  /** A text, letter by letter; `first` since the field was entered. */
  readonly onType: (label: string, first: boolean, part: Said) => void;
  readonly onDone: () => void;
}

const kept = (typed: string, most: number): string => firstOf(toText(typed), most);
/** An empty name is none. */
const named = (typed: string): string | null => kept(typed, PLAN_LIMITS.name) || null;

/** What the coach says with the chosen plan: feel, up to three drills, his own words, the next day, and whose names go along. */
export function PlanFields({ plan, disabled, onEdit, onType, onDone }: Props) {
  const id = useId();
  const { feel, drills, words, nextDate, names } = plan;
  const typing = { disabled, onDone };
  return (
    <div className="plan-fields">
      <TextField
        label="Feel"
        value={feel}
        most={PLAN_LIMITS.feel}
        lines={2}
        {...typing}
        onType={(typed, first) => onType('Feel', first, { feel: kept(typed, PLAN_LIMITS.feel) })}
      />
      <Drills drills={drills} disabled={disabled} onEdit={onEdit} onType={onType} onDone={onDone} />
      <TextField
        label="Your own words to the player"
        value={words}
        most={PLAN_LIMITS.words}
        lines={3}
        {...typing}
        onType={(typed, first) => onType('Own words', first, { words: kept(typed, PLAN_LIMITS.words) })}
      />
      <div className="field">
        <label htmlFor={id}>Next lesson</label>
        <input
          id={id}
          type="date"
          value={nextDate ?? ''}
          min="1900-01-01"
          max="2199-12-31"
          readOnly={disabled}
          onChange={({ currentTarget: { value } }) => onEdit('Next lesson', { nextDate: value || null })}
        />
      </div>
      <TextField
        label="Player’s name on hand-outs, if it may be shown"
        value={names.player ?? ''}
        most={PLAN_LIMITS.name}
        {...typing}
        onType={(typed, first) => onType('Name on hand-outs', first, { names: { ...names, player: named(typed) } })}
      />
      <TextField
        label="Your name on hand-outs"
        value={names.coach ?? ''}
        most={PLAN_LIMITS.name}
        {...typing}
        onType={(typed, first) => onType('Name on hand-outs', first, { names: { ...names, coach: named(typed) } })}
      />
    </div>
  );
}

type DrillsProps = Omit<Props, 'plan'> & { readonly drills: readonly PlanDrill[] };

/** Up to three drills: a name, and how it goes. */
function Drills({ drills, disabled, onEdit, onType, onDone }: DrillsProps) {
  const withDrill = (at: number, part: Partial<PlanDrill>): readonly PlanDrill[] =>
    drills.map((drill, i) => (i === at ? { ...drill, ...part } : drill));
  return (
    <fieldset className="plan-drills">
      <legend>Drills, up to three</legend>
      {drills.map((drill, at) => (
        // Drills have no names of their own: their place is what tells them apart.
        <div className="plan-drill" key={at}>
          <TextField
            label={`Drill ${at + 1}`}
            value={drill.name}
            most={PLAN_LIMITS.drillName}
            disabled={disabled}
            onDone={onDone}
            onType={(typed, first) =>
              onType('Drill', first, { drills: withDrill(at, { name: kept(typed, PLAN_LIMITS.drillName) }) })
            }
          />
          <TextField
            label={`How drill ${at + 1} goes`}
            value={drill.how}
            most={PLAN_LIMITS.drillHow}
            lines={2}
            disabled={disabled}
            onDone={onDone}
            onType={(typed, first) =>
              onType('Drill', first, { drills: withDrill(at, { how: kept(typed, PLAN_LIMITS.drillHow) }) })
            }
          />
          {!disabled && (
            <button
              type="button"
              className="text-button"
              onClick={() => onEdit('Remove drill', { drills: drills.filter((_, i) => i !== at) })}
            >
              Remove<span className="unseen"> drill {at + 1}</span>
            </button>
          )}
        </div>
      ))}
      {!disabled && drills.length < PLAN_LIMITS.drills && (
        <button
          type="button"
          className="plain"
          onClick={() => onEdit('Add drill', { drills: [...drills, { name: '', how: '', often: '' }] })}
        >
          Add a drill
        </button>
      )}
    </fieldset>
  );
}
