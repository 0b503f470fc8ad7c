import { Components, createPlugin, useInputContext } from 'leva/plugin';
import { toDeg, toRad, deg } from '../../math/angle';
import { J, JOINTS, type Joint, type JointId } from '../../model/joints';
import { bendJoint, jointsOf, useDesk } from '../../store';
import { formatNumber } from '../../words';

const { Row } = Components;

/** One unit on the bench: a degree, a centimetre. */
const toBench = ({ kind }: Joint, value: number): number => (kind === 'angle' ? toDeg(value) : value * 100);
const fromBench = ({ kind }: Joint, value: number): number => (kind === 'angle' ? toRad(deg(value)) : value / 100);

interface JointInput {
  readonly joint: JointId;
}
interface JointSettings {
  readonly joint: JointId;
}

/** One joint as a row of the bench: native slider and native number, both of the pose at the playhead. */
function JointRow() {
  const { settings } = useInputContext<{ settings: JointSettings; value: number; label: string }>();
  const id = settings.joint;
  const row = JOINTS[J[id]];
  const value = useDesk((state) => Math.round(toBench(row, jointsOf(state)[J[id]])));
  const bent = useDesk(({ session }) => session.bench?.[id] !== undefined);
  const unit = row.kind === 'angle' ? '°' : 'cm';
  const [min, max] = [Math.ceil(toBench(row, row.min)), Math.floor(toBench(row, row.max))];
  const bend = (typed: number): void => {
    if (Number.isFinite(typed)) bendJoint(id, fromBench(row, Math.min(max, Math.max(min, typed))));
  };
  const spoken = `${formatNumber(value)} ${row.kind === 'angle' ? 'degrees' : 'centimetres'}; plus: ${row.positive}`;
  return (
    <Row>
      <div className="bench-row" data-bent={bent}>
        <span className="bench-label">{row.label}</span>
        <input
          type="range"
          min={min}
          max={max}
          step={1}
          value={value}
          aria-label={row.label}
          aria-valuetext={spoken}
          onChange={(event) => bend(event.currentTarget.valueAsNumber)}
        />
        <span className="bench-number">
          <input
            type="number"
            min={min}
            max={max}
            step={1}
            value={value}
            aria-label={`${row.label}, ${row.kind === 'angle' ? 'degrees' : 'centimetres'}`}
            onChange={(event) => bend(event.currentTarget.valueAsNumber)}
          />
          <span aria-hidden="true">{unit}</span>
        </span>
        <span className="bench-sense">Plus: {row.positive}</span>
      </div>
    </Row>
  );
}

/** The bench's input for leva. Its key must not be `value`, which leva keeps for itself. */
export const joint = createPlugin<JointInput, number, JointSettings>({
  normalize: ({ joint: id }) => ({ value: 0, settings: { joint: id } }),
  component: JointRow,
});

/** Leva in the colours of the board. */
export const benchTheme = {
  colors: {
    elevation1: 'transparent',
    elevation2: 'transparent',
    elevation3: 'transparent',
    highlight1: 'var(--ink-2)',
    highlight2: 'var(--ink)',
    highlight3: 'var(--ink)',
  },
  fonts: { mono: 'var(--draft)', sans: 'var(--draft)' },
  fontSizes: { root: '15px' },
  sizes: { rowHeight: '56px', rootWidth: '100%' },
  space: { rowGap: '0px', md: '0px', sm: '0px' },
};
