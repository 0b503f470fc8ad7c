import { useId } from 'react';
import { CHECKPOINT_IDS } from '../../../reading/checkpointTable';
import type { ProgressRow } from '../../../record';
import type { BandCm, CheckpointId, Units } from '../../../store';
import { CHECKPOINT_NAMES, formatNumber, LENGTHS } from '../../../words';
import { sayShortDay } from '../../../words/book/days';
import { sayProgressPlot } from '../../../words/book/progress';
import { PractisedDays } from './PractisedDays';
import { axisFor, type Axis } from './plotScale';
import { rowsAt } from './rowsAt';

const [TOP, BOTTOM] = [66, 14];
/** Half of a bar's height, px. */
const HALF = 11;
/** Below the last lesson, where practice follows it, px. */
const AFTER_LAST = 24;
/** Wider than this each bar has its number beside it. */
const WIDE = 700;

interface Props {
  readonly rows: readonly ProgressRow[];
  readonly bands: Readonly<Record<CheckpointId, BandCm>>;
  readonly units: Units;
  readonly width: number;
}

/**
 * Both checkpoints over a player's lessons: time runs down, steep lies right. Each lesson is a bar: what was seen with its margin, hatched
 * where it is steep, bare where it is on plane, dotted where it is over-shallow. A flag marks each new plan, strokes the days practised between two lessons.
 */
export function ProgressBoard({ rows, bands, units, width }: Props) {
  const id = useId();
  const isWide = width >= WIDE;
  const numbers = isWide ? 64 : 0;
  // Room for the dates, for the flags of plans, and between two columns, px.
  const isPractised = rows.some(({ practised }) => practised > 0);
  const DAYS = isWide && isPractised ? 120 : 0;
  const [DATE, PLAN, GAP] = isWide ? [74, 130 + DAYS, 22] : [50, 92, 22];
  const column = (width - DATE - PLAN - 2 * (GAP + numbers)) / 2;
  const ys = rowsAt(
    rows.map(({ date }) => date),
    TOP + 26,
  );
  const height = (ys.at(-1) ?? TOP) + 26 + (rows.at(-1)?.practised ? AFTER_LAST : 0) + BOTTOM;
  const cmPerUnit = LENGTHS[units.length].metres * 100;
  return (
    <svg className="progress-plot" width={width} height={height} role="img" aria-labelledby={id}>
      <title id={id}>{sayProgressPlot(rows.length)}</title>
      <defs>
        <pattern id={`${id}steep`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="plot-hatch" d="M0 0V7" />
        </pattern>
        <pattern id={`${id}shallow`} width="7" height="7" patternUnits="userSpaceOnUse">
          <circle className="plot-dot" cx="2" cy="2" r="1.5" />
          <circle className="plot-dot" cx="5.5" cy="5.5" r="1.5" />
        </pattern>
      </defs>
      {rows.map(({ id: lesson, date }, at) => (
        <g key={lesson}>
          <path className="plot-row" d={`M${DATE - 6} ${ys[at]}H${width - PLAN}`} />
          <text className="plot-number" x={0} y={ys[at] + 5}>
            {sayShortDay(date)}
          </text>
        </g>
      ))}
      {CHECKPOINT_IDS.map((at, place) => {
        const left = DATE + place * (column + GAP + numbers);
        const axis = axisOf(rows, at, bands[at], cmPerUnit, isWide ? 6 : 3);
        const x = (cm: number): number => left + (column * (cm / cmPerUnit - axis.low)) / (axis.high - axis.low);
        return (
          <g key={at} data-checkpoint={at}>
            <Heading at={at} left={left} unit={LENGTHS[units.length].symbol} />
            {isWide && (
              <text className="plot-side plot-steep" x={left + column} y={36} textAnchor="end">
                steeper
              </text>
            )}
            <Scale axis={axis} x={(value) => x(value * cmPerUnit)} left={left} right={left + column} />
            <Band band={bands[at]} x={x} bottom={height - BOTTOM} />
            <Bars rows={rows} at={at} band={bands[at]} x={x} ys={ys} patterns={id} />
            {isWide &&
              rows.map(({ id: lesson, seen }, row) => {
                const mark = seen[at];
                return (
                  mark && (
                    <text key={lesson} className="plot-number" x={x(mark.cm + mark.plusMinusCm) + 8} y={ys[row] + 5}>
                      {formatNumber(mark.cm / cmPerUnit)} ± {formatNumber(mark.plusMinusCm / cmPerUnit)}
                    </text>
                  )
                );
              })}
          </g>
        );
      })}
      <text className="plot-head" x={width - PLAN + 12} y={18}>
        {isPractised && !isWide ? 'Plan, days' : 'Plan'}
      </text>
      {DAYS > 0 && (
        <text className="plot-head" x={width - DAYS + 8} y={18}>
          Practised
        </text>
      )}
      {rows.map(({ id: lesson, practised }, at) => (
        <PractisedDays
          key={lesson}
          days={practised}
          x={DAYS > 0 ? width - DAYS + 8 : width - PLAN + 18}
          y={(ys[at] + (ys[at + 1] ?? ys[at] + 2 * AFTER_LAST)) / 2}
          isWide={isWide}
        />
      ))}
      {rows.map(({ id: lesson, newPlan }, at) =>
        newPlan === null ? null : (
          <Flag key={lesson} text={newPlan} x={width - PLAN + 12} y={ys[at]} width={PLAN - DAYS - 14} />
        ),
      )}
    </svg>
  );
}

function axisOf(rows: readonly ProgressRow[], at: CheckpointId, band: BandCm, cmPerUnit: number, most: number): Axis {
  const seen = rows.flatMap(({ seen: { [at]: mark } }) =>
    mark ? [mark.cm - mark.plusMinusCm, mark.cm + mark.plusMinusCm] : [],
  );
  return axisFor(
    [...seen, band.lowCm - 2, band.highCm + 4].map((cm) => cm / cmPerUnit),
    most,
  );
}

function Heading({ at, left, unit }: { at: CheckpointId; left: number; unit: string }) {
  // "Lead arm parallel" and "Shaft parallel" in two lines: there is no room for more beside each other.
  const [, first, second] = /^(.*) (\S+)$/.exec(CHECKPOINT_NAMES[at].title)!;
  return (
    <>
      <text className="plot-head" x={left} y={18}>
        {first}
      </text>
      <text className="plot-side" x={left} y={36}>
        {second}, {unit}
      </text>
    </>
  );
}

function Scale({ axis, x, left, right }: { axis: Axis; x: (value: number) => number; left: number; right: number }) {
  return (
    <>
      <path className="plot-axis" d={`M${left} ${TOP}H${right}`} />
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <path className="plot-tick" d={`M${x(tick)} ${TOP - 6}V${TOP}`} />
          <text className="plot-number" x={x(tick)} y={TOP - 9} textAnchor="middle">
            {formatNumber(tick, Number.isInteger(tick) ? 0 : 1)}
          </text>
        </g>
      ))}
    </>
  );
}

function Band({ band, x, bottom }: { band: BandCm; x: (cm: number) => number; bottom: number }) {
  const [low, high] = [x(band.lowCm), x(band.highCm)];
  return (
    <>
      <rect className="plot-band" x={low} y={TOP} width={high - low} height={bottom - TOP} />
      <path className="plot-band-edge" d={`M${low} ${TOP}V${bottom}M${high} ${TOP}V${bottom}`} />
    </>
  );
}

interface BarsProps {
  readonly rows: readonly ProgressRow[];
  readonly at: CheckpointId;
  readonly band: BandCm;
  readonly x: (cm: number) => number;
  readonly ys: readonly number[];
  readonly patterns: string;
}

function Bars({ rows, at, band, x, ys, patterns }: BarsProps) {
  const places = rows.flatMap(({ seen: { [at]: mark } }, row) => (mark ? [`${x(mark.cm)} ${ys[row]}`] : []));
  return (
    <>
      {places.length > 1 && <path className="plot-line" d={`M${places.join('L')}`} />}
      {rows.map(({ id, seen, fittedCm }, row) => {
        const mark = seen[at];
        if (!mark) return null;
        const [low, high] = [mark.cm - mark.plusMinusCm, mark.cm + mark.plusMinusCm];
        const y = ys[row] - HALF;
        const part = (from: number, to: number, fill: string) =>
          to > from && <rect x={x(from)} y={y} width={x(to) - x(from)} height={2 * HALF} fill={fill} />;
        const fitted = fittedCm[at];
        return (
          <g key={id} className="plot-bar">
            <rect className="plot-bare" x={x(low)} y={y} width={x(high) - x(low)} height={2 * HALF} />
            {part(Math.max(low, band.highCm), high, `url(#${patterns}steep)`)}
            {part(low, Math.min(high, band.lowCm), `url(#${patterns}shallow)`)}
            <rect className="plot-give" x={x(low)} y={y} width={x(high) - x(low)} height={2 * HALF} />
            <path className="plot-seen" d={`M${x(mark.cm)} ${y - 4}v${2 * HALF + 8}`} />
            {fitted !== null && (
              <rect className="plot-computed" x={x(fitted) - 4} y={ys[row] - 4} width={8} height={8} />
            )}
          </g>
        );
      })}
    </>
  );
}

/** A new plan, from this lesson on. */
function Flag({ text, x, y, width: w }: { text: string; x: number; y: number; width: number }) {
  const h = 26;
  return (
    <g>
      <path className="plot-flag" d={`M${x} ${y + 20}V${y - h / 2}H${x + w}l-9 ${h / 2}l9 ${h / 2}H${x}`} />
      <text className="plot-number" x={x + 5} y={y + 5}>
        {text}
      </text>
    </g>
  );
}
