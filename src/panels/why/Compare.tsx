import type { ReactNode } from 'react';
import { toDeg } from '../../math/angle';
import { isReached, type CheckpointId, type ReadingId } from '../../reading/checkpoints';
import { useDesk } from '../../store';
import type { Compared, Pair } from '../../store/derive/compare';
import { comparedOf } from '../../store/desk/compared';
import { setWhy } from '../../store/desk/whyActions';
import { COMPUTED, formatNumber, formatSigned, LENGTHS, NO_NUMBER, SPEEDS, type Units } from '../../words';
import { sayApart } from '../../words/why/comparing';
import { Choice } from '../fields/Choice';
import { AsItIs, Lead, Source } from './Lead';
import { SwingPick } from './SwingPick';

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
  { label: 'Lead arm parallel: shaft over the bicep', read: at('leadArmParallel', 'bicepGap'), kind: 'length' },
  { label: 'Lead arm parallel: shaft plane', read: at('leadArmParallel', 'shaftPlane'), kind: 'angle' },
  { label: 'Lead arm parallel: chest turned open', read: at('leadArmParallel', 'thoraxTurn'), kind: 'angle' },
  { label: 'Lead arm parallel: hand height', read: at('leadArmParallel', 'handHeight'), kind: 'length' },
  { label: 'Lead arm parallel: after the top', read: timeOf('leadArmParallel'), kind: 'ms' },
  { label: 'Shaft parallel: head in front of the hands', read: at('shaftParallel', 'headDepth'), kind: 'length' },
  { label: 'Shaft parallel: chest turned open', read: at('shaftParallel', 'thoraxTurn'), kind: 'angle' },
  { label: 'Shaft parallel: after the top', read: timeOf('shaftParallel'), kind: 'ms' },
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

/** The sentence over the pictures, or why there are not two swings yet. */
function Sentence({ solid, ghost }: Pair) {
  const units = useDesk(({ document }) => document.units);
  if ('problem' in solid) return <Lead isPrivate text={solid.problem} />;
  if ('problem' in ghost) return <Lead isPrivate text={ghost.problem} />;
  const apart = (row: Row): number => row.read(solid) - row.read(ghost);
  const { name } = solid.of;
  return (
    <Lead isPrivate {...sayApart({ name, leadArmParallel: apart(ROWS[0]), shaftParallel: apart(ROWS[5]) }, units)} />
  );
}

/** Any two swings, solid and as ghost: laid over each other on the stage, side by side here, and how they differ in numbers. */
export default function Compare({ drawings }: { drawings: ReactNode }) {
  const link = useDesk(({ session }) => session.why.link);
  const pair = useDesk(comparedOf);
  return (
    <div className="compare">
      <AsItIs />
      <Sentence {...pair} />
      <div className="fields compare-choice">
        <SwingPick label="Solid" place="solid" />
        <SwingPick label="As comparison" place="ghost" />
      </div>
      {drawings}
      <Choice
        label="Time together by"
        value={link}
        options={[
          { value: 'checkpoint', text: 'checkpoint' },
          { value: 'clock', text: 'clock' },
        ]}
        onChoose={(next) => setWhy({ link: next })}
      />
      {!('problem' in pair.solid) && !('problem' in pair.ghost) && <Numbers solid={pair.solid} ghost={pair.ghost} />}
      <Source>{COMPUTED.replace('c', 'C')}. Bands: a rule of thumb.</Source>
    </div>
  );
}

interface Both {
  readonly solid: Compared;
  readonly ghost: Compared;
}

function Numbers({ solid, ghost }: Both) {
  const units = useDesk(({ document }) => document.units);
  return (
    <table className="plan-table compare-table">
      <caption className="unseen">Both swings in numbers</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Reading</span>
          </th>
          <th scope="col" data-line="solid">
            {solid.of.name}
          </th>
          <th scope="col" data-line="ghost">
            {ghost.of.name}
          </th>
          <th scope="col">differs by</th>
        </tr>
      </thead>
      <tbody>
        {ROWS.map((row) => (
          <RowOf key={row.label} row={row} pair={{ solid, ghost }} units={units} />
        ))}
      </tbody>
    </table>
  );
}

function RowOf({ row, pair, units }: { row: Row; pair: Both; units: Units }) {
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
