import { NumberField } from '../../panels/fields/NumberField';
import type { Units } from '../../store';
import { outside } from '../../words/numbers/ranges';
import type { Lines } from './contour';
import { LINE_LIMITS } from './Stage';

/** Where the device may stand, m. */
const PLACE_LIMITS = { distance: { min: 1.5, max: 6 }, height: { min: 0.3, max: 1.8 } } as const;

export interface Standing {
  readonly distance: number;
  readonly height: number;
}

interface Props {
  readonly lines: Lines;
  readonly onLines: (lines: Lines) => void;
  readonly standing: Standing;
  readonly onStanding: (standing: Standing) => void;
  readonly length: Units['length'];
  readonly onDone: () => void;
}

const METRES_PER_FOOT = 0.3048;
const LENGTHS = { cm: { unit: 'm', per: 1 }, in: { unit: 'ft', per: METRES_PER_FOOT } } as const;
const PERCENT = { unit: '%', per: 0.01, decimals: 0 } as const;

/** Makes the contour as large as the player, and seen from where the device stands. */
export function FitControls({ lines, onLines, standing, onStanding, length, onDone }: Props) {
  return (
    <fieldset className="mirror-fit" aria-label="Fit the contour">
      {(['head', 'feet'] as const).map((name) => (
        <Row
          key={name}
          label={name === 'head' ? 'Head line' : 'Feet line'}
          {...PERCENT}
          // Up on the screen is up on the slider.
          {...{ min: 1 - LINE_LIMITS[name].max, max: 1 - LINE_LIMITS[name].min, step: 0.005 }}
          value={1 - lines[name]}
          onChange={(value) => onLines({ ...lines, [name]: 1 - value })}
        />
      ))}
      {(['distance', 'height'] as const).map((name) => (
        <Row
          key={name}
          label={name === 'distance' ? 'Camera distance' : 'Camera height'}
          {...LENGTHS[length]}
          decimals={1}
          {...PLACE_LIMITS[name]}
          step={0.1}
          value={standing[name]}
          onChange={(value) => onStanding({ ...standing, [name]: value })}
        />
      ))}
      <button type="button" className="plain mirror-main" onClick={onDone}>
        Done
      </button>
    </fieldset>
  );
}

interface RowProps {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  /** What is typed, and how much of `value` one of it is. */
  readonly unit: string;
  readonly per: number;
  readonly decimals: number;
  readonly onChange: (value: number) => void;
}

/** One measure, dragged or typed. */
function Row({ label, min, max, step, value, unit, per, decimals, onChange }: RowProps) {
  return (
    <div className="mirror-row">
      <NumberField
        label={label}
        unit={unit}
        decimals={decimals}
        value={value / per}
        onTake={(typed) => {
          const problem = outside(label, typed!, min / per, max / per, unit, decimals);
          if (problem === undefined) onChange(typed! * per);
          return problem;
        }}
      />
      <input
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-label={label}
        aria-valuetext={`${(value / per).toFixed(decimals)} ${unit}`}
        onChange={(event) => onChange(event.currentTarget.valueAsNumber)}
      />
    </div>
  );
}
