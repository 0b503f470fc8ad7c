import { CHECKPOINTS } from '../../../reading/checkpointTable';
import { DIALS } from '../../../model/movements';
import { judge } from '../../../reading/verdicts';
import type { Contributions, Part } from '../../../solving/diagnosis/contributions';
import { desk, useDerived, useDesk, type CheckpointId } from '../../../store';
import type { Ledger as Shared } from '../../../store/derive/ledger';
import { ledgerOf } from '../../../store/desk/ledger';
import type { SwingOf } from '../../../store/desk/whyState';
import { playPart } from '../../../store/effects/contributionPlayback';
import { setWhy } from '../../../store/desk/whyActions';
import { splitReading } from '../../../store/desk/whyState';
import { COMPUTED, formatNumber, sayMovement } from '../../../words';
import {
  measureOf,
  numberLedger,
  sayBar,
  sayCause,
  sayLedger,
  sayLedgerNote,
  type LedgerOf,
  MISSING_MIXTURE,
  NO_SUCH_NUMBER,
  SHARES_ADD_UP,
} from '../../../words/why/why';
import { AsItIs, Lead, Source } from '../Lead';
import { JUDGED, READING_GROUPS } from './ledgerReadings';
import { waterfall } from './ledgerScale';
import { Pick } from '../Pick';
import { NextStep } from '../../lessons/NextStep';
import { SwingPick } from '../SwingPick';
import { capital } from '../../../words/numbers/capital';

const PART_NAMES: Readonly<Record<Part, string>> = {
  leadWrist: 'Lead wrist',
  rotation: 'Body turn',
  sideTilt: 'Trail-side tilt',
  setUp: 'Set-up',
};

/** What differs between two set-ups: "another player, another club, top of the backswing, tempo". */
function phraseOfSetUp(a: SwingOf, b: SwingOf): string {
  const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);
  const { downswingMs: tempo, ...top } = a.setUp;
  const { downswingMs: otherTempo, ...otherTop } = b.setUp;
  return [
    ...(same({ ...a.player, handed: '' }, { ...b.player, handed: '' }) ? [] : ['the body']),
    ...(same(a.club, b.club) ? [] : ['the club']),
    ...(same(top, otherTop) ? [] : ['top of the backswing']),
    ...(tempo === otherTempo ? [] : ['the tempo']),
  ].join(', ');
}

/** What a movement does in a swing: "cupped 16°", "8 % more turn, 12 ms early". Only what differs between the two. */
function phraseOf(part: Part, { from, to, names }: Shared, units: { readonly length: 'cm' | 'in' }): string {
  if (part === 'setUp') return phraseOfSetUp(names.from, names.to);
  return DIALS.filter(({ group, id }) => group === part && from.movements[id] !== to.movements[id])
    .map(({ id }) => sayMovement(id, to.movements, units).phrase)
    .join(', ');
}

/** Why a reading is what it is: how much each movement brings, from one swing to another. */
export default function Ledger() {
  const reading = useDesk(({ session }) => session.why.reading);
  const ledger = useDesk(ledgerOf);
  return (
    <div className="ledger">
      <AsItIs />
      {'problem' in ledger ? <Lead text={ledger.problem} /> : <LedgerBody ledger={ledger} />}
      <div className="fields ledger-choice">
        <Pick label="Reading" groups={READING_GROUPS} value={reading} onPick={(next) => setWhy({ reading: next })} />
        <SwingPick label="From" place="from" />
        <SwingPick label="To" place="to" />
      </div>
      <NextStep from="ledger" />
    </div>
  );
}

function LedgerBody({ ledger }: { ledger: Shared }) {
  const why = useDesk(({ session }) => session.why);
  const units = useDesk(({ document }) => document.units);
  const bands = useDerived(({ exactBands }) => exactBands);
  const { shared, parts, from, to } = ledger;
  if ('missing' in shared) return <Lead text={shared.missing === 'no-number' ? NO_SUCH_NUMBER : MISSING_MIXTURE} />;
  const [at, reading] = splitReading(why.reading);
  const band = JUDGED.includes(why.reading) ? bands[at as CheckpointId] : undefined;
  const verdict = band && judge(shared.to, band);
  const of: LedgerOf = {
    reading,
    shared,
    parts,
    units,
    from: from.movements,
    to: to.movements,
    isFromReference: why.from === 'reference',
    isTooFar: verdict === (shared.to > shared.from ? 'steep' : 'shallow'),
  };
  const numbers = numberLedger(of);
  return (
    <>
      <Lead {...sayLedger(of)} />
      <div className="waterfall" data-judged={band !== undefined || undefined}>
        <Rows of={of} ledger={ledger} numbers={numbers} band={band} />
      </div>
      <details className="waterfall-also">
        <summary>Each one alone, each one last</summary>
        <dl aria-hidden="true">
          {of.parts.map((part) => (
            <div key={part}>
              <dt>{PART_NAMES[part]}</dt>
              <dd>
                alone {numbers.parts[part]!.alone}, last {numbers.parts[part]!.last}
              </dd>
            </div>
          ))}
        </dl>
      </details>
      <Source>
        {sayLedgerNote(at, reading)} {SHARES_ADD_UP} {numbers.together} {capital(COMPUTED)}.
      </Source>
    </>
  );
}

interface RowsProps {
  readonly of: LedgerOf;
  readonly ledger: Shared;
  readonly numbers: ReturnType<typeof numberLedger>;
  readonly band: { readonly low: number; readonly high: number } | undefined;
}

/** The rows of the waterfall: the first swing, a bar for each part, the second swing. */
function Rows({ of, ledger, numbers, band }: RowsProps) {
  const { names } = ledger;
  const isPlaying = useDesk(({ session }) => session.trial?.label);
  const shared: Contributions = of.shared;
  const { toShown } = measureOf(of.reading, of.units);
  const steps = of.parts.map((part) => ({ part, value: toShown(shared.parts[part]) }));
  const edges = band ? [toShown(band.low), toShown(band.high)] : [];
  const { toPercent, bars, ticks } = waterfall(toShown(shared.from), steps, band ? [0, ...edges] : []);
  const zero = band ? toPercent(0) : undefined;
  const isSteepUp = of.reading === 'bicepGap' || of.reading === 'headDepth';
  return (
    <>
      {band && (
        <div className="waterfall-band" aria-hidden="true">
          <i style={{ left: `${toPercent(edges[0])}%`, right: `${100 - toPercent(edges[1])}%` }}>
            <span>on plane</span>
          </i>
        </div>
      )}
      <End name={names.from.name} value={numbers.from} zero={zero} at={toPercent(toShown(shared.from))} />
      {bars.map(({ part, left, width, start, isUp }) => {
        const number = numbers.parts[part]!;
        const phrase = phraseOf(part, ledger, of.units);
        const label = `${PART_NAMES[part]}: ${phrase}`;
        return (
          <div key={part} className="waterfall-row" data-part={part}>
            <p className="waterfall-name">
              <span className="unseen">
                {sayBar(PART_NAMES[part], phrase, number, measureOf(of.reading, of.units))}
              </span>
              <b aria-hidden="true">{PART_NAMES[part]}</b>
              <span aria-hidden="true">{phrase}</span>
            </p>
            <p className="waterfall-value" aria-hidden="true">
              {number.share}
            </p>
            <button
              type="button"
              className="play-bar"
              aria-label={`Play only ${sayCause(part, of)}`}
              aria-pressed={isPlaying === label}
              onClick={() => play(part, label)}
            >
              <svg viewBox="0 0 26 26" aria-hidden="true">
                <circle cx="13" cy="13" r="12" />
                <path d="M10 7.5v11l9-5.5z" />
              </svg>
            </button>
            <div className="waterfall-track" aria-hidden="true">
              <i className="waterfall-step" style={{ left: `${start}%` }} />
              <i
                className="waterfall-bar"
                data-way={isSteepUp ? (isUp ? 'steep' : 'shallow') : isUp ? 'up' : 'down'}
                style={{ left: `${left}%`, width: `${Math.max(width, 0.4)}%` }}
              />
            </div>
          </div>
        );
      })}
      <End name={names.to.name} value={numbers.to} zero={zero} at={toPercent(toShown(shared.to))} isLast />
      <div className="waterfall-axis" aria-hidden="true">
        {ticks.map(({ value, at, isNamed }) => (
          <i key={value} style={{ left: `${at}%` }} data-named={isNamed || undefined}>
            {isNamed && <span>{formatNumber(value)}</span>}
          </i>
        ))}
      </div>
    </>
  );
}

function play(part: Part, label: string): void {
  const state = desk.getState();
  const ledger = ledgerOf(state);
  if ('problem' in ledger) return;
  const [at] = splitReading(state.session.why.reading);
  playPart(ledger.from, ledger.to, part, at === 'ball' ? 'P7' : CHECKPOINTS[at].position, label);
}

interface EndProps {
  readonly name: string;
  readonly value: string;
  readonly zero: number | undefined;
  readonly at: number;
  readonly isLast?: boolean;
}

/** One of the two swings as a dimension line from zero to its reading. */
const End = ({ name, value, zero = 0, at, isLast = false }: EndProps) => (
  <div className="waterfall-row waterfall-end" data-last={isLast || undefined}>
    <p className="waterfall-name">
      <b>{name}</b>
    </p>
    <p className="waterfall-value">{value}</p>
    <div className="waterfall-track" aria-hidden="true">
      <i className="waterfall-dimension" style={{ left: `${Math.min(zero, at)}%`, width: `${Math.abs(at - zero)}%` }} />
    </div>
  </div>
);
