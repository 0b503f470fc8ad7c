import type { Units } from '../../store';
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
const say = (metres: number, length: Units['length']): string =>
  length === 'cm' ? `${metres.toFixed(1)} m` : `${(metres / METRES_PER_FOOT).toFixed(1)} ft`;

/** Makes the contour as large as the player, and seen from where the device stands. */
export function FitControls({ lines, onLines, standing, onStanding, length, onDone }: Props) {
  const percent = (share: number): string => `${Math.round((1 - share) * 100)} % up`;
  return (
    <fieldset className="mirror-fit" aria-label="Fit the contour">
      {(['head', 'feet'] as const).map((name) => (
        <Row
          key={name}
          label={name === 'head' ? 'Head line' : 'Feet line'}
          // Up on the screen is up on the slider.
          {...{ min: 1 - LINE_LIMITS[name].max, max: 1 - LINE_LIMITS[name].min, step: 0.005 }}
          value={1 - lines[name]}
          text={percent(lines[name])}
          onChange={(value) => onLines({ ...lines, [name]: 1 - value })}
        />
      ))}
      {(['distance', 'height'] as const).map((name) => (
        <Row
          key={name}
          label={name === 'distance' ? 'Camera distance' : 'Camera height'}
          {...PLACE_LIMITS[name]}
          step={0.1}
          value={standing[name]}
          text={say(standing[name], length)}
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
  readonly text: string;
  readonly onChange: (value: number) => void;
}

function Row({ label, min, max, step, value, text, onChange }: RowProps) {
  return (
    <label className="mirror-row">
      <span>{label}</span>
      <input
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        onChange={(event) => onChange(event.currentTarget.valueAsNumber)}
      />
      <b>{text}</b>
    </label>
  );
}
