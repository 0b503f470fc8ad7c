import { useId } from 'react';
import { type ProgressPoint } from '../../../record';
import { sayDay } from '../../../words/book/days';
import type { BandCm, CheckpointId, Units } from '../../../store';
import { CHECKPOINT_NAMES, formatNumber, LENGTHS } from '../../../words';
import { axisFor } from './plotScale';

const [LEFT, RIGHT, TOP, HEIGHT] = [46, 14, 10, 178];
const BOTTOM = 26;
/** Seen and computed stand side by side, so that neither hides the other, px. */
const APART = 6;

interface Props {
  readonly at: CheckpointId;
  readonly points: readonly ProgressPoint[];
  readonly band: BandCm;
  readonly units: Units;
  readonly width: number;
}

/** Where the lessons stand across the plot, px: evenly, the oldest left. */
export const lessonX = (at: number, count: number, width: number): number =>
  count === 1 ? (LEFT + width - RIGHT) / 2 : LEFT + 22 + (at * (width - LEFT - RIGHT - 44)) / (count - 1);

/** Which lessons get their date written: as many as there is room for, first and last always. */
export function datedLessons(count: number, width: number): number[] {
  const room = Math.max(2, Math.floor((width - LEFT - RIGHT) / 92));
  if (count <= room) return Array.from({ length: count }, (_, at) => at);
  return Array.from({ length: room }, (_, at) => Math.round((at * (count - 1)) / (room - 1)));
}

/** One checkpoint over the lessons: the band, what was seen with its give or take, what was computed, the target. */
export function ProgressPlot({ at, points, band, units, width }: Props) {
  const id = useId();
  const cmPerUnit = LENGTHS[units.length].metres * 100;
  const { symbol } = LENGTHS[units.length];
  const seen = points.flatMap((point) =>
    point.seen ? [point.seen.cm - point.seen.plusMinusCm, point.seen.cm + point.seen.plusMinusCm] : [],
  );
  const others = points.flatMap(({ computedCm, targetCm }) => [computedCm, targetCm]).filter((cm) => cm !== null);
  const axis = axisFor(
    [...seen, ...others, band.lowCm - 2, band.highCm + 2].map((cm) => cm / cmPerUnit),
    6,
  );
  const y = (cm: number): number => TOP + (HEIGHT * (axis.high - cm / cmPerUnit)) / (axis.high - axis.low);
  const x = (index: number): number => lessonX(index, points.length, width);
  const [bandTop, bandBottom] = [y(band.highCm), y(band.lowCm)];
  const { title } = CHECKPOINT_NAMES[at];
  const line = points
    .map(({ computedCm }, index) => (computedCm === null ? null : `${x(index) + APART} ${y(computedCm)}`))
    .filter((place) => place !== null);

  return (
    <svg
      className="progress-plot"
      width={width}
      height={TOP + HEIGHT + BOTTOM}
      role="img"
      aria-labelledby={id}
      viewBox={`0 0 ${width} ${TOP + HEIGHT + BOTTOM}`}
    >
      <title id={id}>
        {title} over {points.length} lessons, in {symbol}. The numbers are in the table below.
      </title>
      <rect className="plot-band" x={LEFT} width={width - LEFT - RIGHT} y={bandTop} height={bandBottom - bandTop} />
      <path
        className="plot-band-edge"
        d={`M${LEFT} ${bandTop}H${width - RIGHT}M${LEFT} ${bandBottom}H${width - RIGHT}`}
      />
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <path className="plot-tick" d={`M${LEFT - 5} ${y(tick * cmPerUnit)}H${LEFT}`} />
          <text className="plot-number" x={LEFT - 9} y={y(tick * cmPerUnit) + 5} textAnchor="end">
            {formatNumber(tick, Number.isInteger(tick) ? 0 : 1)}
          </text>
        </g>
      ))}
      <path className="plot-axis" d={`M${LEFT} ${TOP}V${TOP + HEIGHT}H${width - RIGHT}`} />
      {bandTop - TOP > 20 && (
        <text className="plot-side plot-steep" x={width - RIGHT - 4} y={TOP + 13} textAnchor="end">
          steep
        </text>
      )}
      {TOP + HEIGHT - bandBottom > 20 && (
        <text className="plot-side plot-shallow" x={width - RIGHT - 4} y={TOP + HEIGHT - 6} textAnchor="end">
          over-shallow
        </text>
      )}
      {line.length > 1 && <path className="plot-line" d={`M${line.join('L')}`} />}
      {points.map((point, index) => (
        <Marks key={point.id} point={point} x={x(index)} y={y} />
      ))}
      {datedLessons(points.length, width).map((index) => (
        <text key={index} className="plot-number" x={x(index)} y={TOP + HEIGHT + 20} textAnchor="middle">
          {sayDay(points[index].date).replace(/ (\d\d)(\d\d)$/, ' ’$2')}
        </text>
      ))}
    </svg>
  );
}

/** Ring with bars: seen by the coach. Square: computed by the model. Plum dash: the target. */
function Marks({ point, x, y }: { point: ProgressPoint; x: number; y: (cm: number) => number }) {
  const { seen, computedCm, targetCm } = point;
  const at = x - APART;
  return (
    <>
      {targetCm !== null && <path className="plot-target" d={`M${x - 15} ${y(targetCm)}H${x + 17}`} />}
      {computedCm !== null && (
        <rect className="plot-computed" x={x + APART - 4.5} y={y(computedCm) - 4.5} width={9} height={9} />
      )}
      {seen && (
        <>
          <path
            className="plot-give"
            d={`M${at} ${y(seen.cm + seen.plusMinusCm)}V${y(seen.cm - seen.plusMinusCm)}M${at - 5} ${y(seen.cm + seen.plusMinusCm)}h10M${at - 5} ${y(seen.cm - seen.plusMinusCm)}h10`}
          />
          <circle className="plot-seen" cx={at} cy={y(seen.cm)} r={6} />
        </>
      )}
    </>
  );
}
