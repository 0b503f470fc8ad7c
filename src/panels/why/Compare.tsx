import { toDeg } from '../../math/angle';
import { isReached, type CheckpointId, type ReadingId } from '../../reading/checkpoints';
import { useDesk } from '../../store';
import { comparedOf, type Compared, type Pair } from '../../store/compare';
import { setWhy } from '../../store/whyActions';
import { COMPUTED, formatNumber, formatSigned, LENGTHS, NO_NUMBER, SPEEDS, type Units } from '../../words';
import { Choice } from '../Choice';
import { Lead, Source } from './Lead';
import { Pick } from './Pick';
import { SWING_NAMES, swingOptions } from './swingNames';

/** A number that both swings have: how it is read (model units) and shown. */
interface Row {
  readonly label: string;
  readonly read: (swing: Compared) => number;
  readonly kind: 'length' | 'angle' | 'speed' | 'ms';
}

const at =
  (id: CheckpointId, reading: ReadingId) =>
  ({ checkpoints }: Compared): number => {
    const checkpoint = checkpoints[id];
    return isReached(checkpoint) ? checkpoint.readings[reading] : NaN;
  };
const timeOf =
  (id: CheckpointId) =>
  ({ checkpoints, swing }: Compared): number => {
    const checkpoint = checkpoints[id];
    return isReached(checkpoint) ? checkpoint.t * swing.tempo : NaN;
  };
const brings =
  (part: 'path' | 'face' | 'attack' | 'headSpeed') =>
  ({ delivery }: Compared): number =>
    'missing' in delivery ? NaN : delivery[part];

const ROWS: readonly Row[] = [
  { label: 'P5, shaft line over the bicep', read: at('leadArmParallel', 'bicepGap'), kind: 'length' },
  { label: 'P5, shaft plane', read: at('leadArmParallel', 'shaftPlane'), kind: 'angle' },
  { label: 'P5, chest turned open', read: at('leadArmParallel', 'thoraxTurn'), kind: 'angle' },
  { label: 'P5, hand height', read: at('leadArmParallel', 'handHeight'), kind: 'length' },
  { label: 'P5, after the top', read: timeOf('leadArmParallel'), kind: 'ms' },
  { label: 'P6, head in front of the hands', read: at('shaftParallel', 'headDepth'), kind: 'length' },
  { label: 'P6, chest turned open', read: at('shaftParallel', 'thoraxTurn'), kind: 'angle' },
  { label: 'P6, after the top', read: timeOf('shaftParallel'), kind: 'ms' },
  { label: 'Path, in-to-out', read: brings('path'), kind: 'angle' },
  { label: 'Face, open', read: brings('face'), kind: 'angle' },
  { label: 'Attack, up', read: brings('attack'), kind: 'angle' },
  { label: 'Head speed', read: brings('headSpeed'), kind: 'speed' },
];

function shownIn(
  kind: Row['kind'],
  units: Units,
): { readonly scale: (value: number) => number; readonly unit: string; readonly decimals: number } {
  if (kind === 'angle') return { scale: toDeg, unit: '°', decimals: 0 };
  if (kind === 'ms') return { scale: (s) => s * 1000, unit: ' ms', decimals: 0 };
  if (kind === 'speed') {
    return { scale: (v) => v / SPEEDS[units.speed].metresPerSecond, unit: ` ${units.speed}`, decimals: 0 };
  }
  const { metres, symbol, decimals } = LENGTHS[units.length];
  return { scale: (m) => m / metres, unit: ` ${symbol}`, decimals };
}

/** The sentence over the table: by how much the two judged readings differ. */
function sayPairOf({ solid, ghost }: Pair, units: Units): string {
  const { scale, unit, decimals } = shownIn('length', units);
  const difference = (row: Row): number => scale(row.read(solid)) - scale(row.read(ghost));
  const [arm, shaft] = [difference(ROWS[0]), difference(ROWS[5])];
  if (!Number.isFinite(arm) || !Number.isFinite(shaft)) return 'One of the two swings does not reach a checkpoint.';
  const size = (value: number): string => `${formatNumber(Math.abs(value), decimals)}${unit}`;
  const p5 = Math.abs(arm) < 0.05 ? 'as steep' : `${size(arm)} ${arm > 0 ? 'steeper' : 'shallower'}`;
  const p6 = Math.abs(shaft) < 0.05 ? 'level' : `${size(shaft)} ${shaft > 0 ? 'farther in front' : 'farther behind'}`;
  return `${SWING_NAMES[solid.name]}: ${p5} at P5, ${p6} at P6.`;
}

/** Any two swings, solid and as ghost, and how they differ in numbers. */
export default function Compare() {
  const { solid, ghost, link } = useDesk(({ session }) => session.why);
  const hasGhost = useDesk(({ session }) => session.ghost !== null);
  const units = useDesk(({ document }) => document.units);
  const pair = useDesk(comparedOf);
  const options = swingOptions(hasGhost);
  return (
    <div className="compare">
      <Lead text={sayPairOf(pair, units)} />
      <div className="fields compare-choice">
        <Pick label="Solid" options={options} value={solid} onPick={(name) => setWhy({ solid: name })} />
        <Pick label="As ghost" options={options} value={ghost} onPick={(name) => setWhy({ ghost: name })} />
        <Choice
          label="Time together by"
          value={link}
          options={[
            { value: 'checkpoint', text: 'checkpoint' },
            { value: 'clock', text: 'clock' },
          ]}
          onChoose={(next) => setWhy({ link: next })}
        />
      </div>
      <table className="plan-table compare-table">
        <caption className="unseen">Both swings in numbers</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Reading</span>
            </th>
            <th scope="col">{SWING_NAMES[solid]}</th>
            <th scope="col">{SWING_NAMES[ghost]}</th>
            <th scope="col">differs by</th>
          </tr>
        </thead>
        <tbody>
          {ROWS.map((row) => (
            <RowOf key={row.label} row={row} pair={pair} units={units} />
          ))}
        </tbody>
      </table>
      <Source>{COMPUTED.replace('c', 'C')}. To compare with an earlier setting, hold it as ghost first.</Source>
    </div>
  );
}

function RowOf({ row, pair, units }: { row: Row; pair: Pair; units: Units }) {
  const { scale, unit, decimals } = shownIn(row.kind, units);
  const [a, b] = [scale(row.read(pair.solid)), scale(row.read(pair.ghost))];
  const show = (value: number): string =>
    Number.isFinite(value) ? `${formatNumber(value, decimals)}${unit}` : NO_NUMBER;
  return (
    <tr>
      <th scope="row">{row.label}</th>
      <td>{show(a)}</td>
      <td>{show(b)}</td>
      <td>{Number.isFinite(a - b) ? `${formatSigned(a - b, decimals)}${unit}` : NO_NUMBER}</td>
    </tr>
  );
}
