import { useMemo } from 'react';
import type { CheckpointId } from '../../reading/checkpoints';
import { drawCloud } from '../../solving/diagnosis/verdictShare';
import { useDesk } from '../../store';
import { showLength } from '../../words';
import { GUESSED_LINE } from '../../words/why/guess';
import { along, type Point } from '../plate/frame';
import type { LivePlate } from '../plate/livePlate';
import { linePath } from '../figure/paths';
import './marks.css';

/** Lines of the cloud, and the seed that draws the same cloud every time. */
const CLOUD = 40;
const SEED = 5;
const TICK = 6;
/** From a line to its name, px. */
const BESIDE = 12;

interface Props {
  readonly id: CheckpointId;
  readonly live: LivePlate;
}

/** What the coach saw, with the cloud of the give or take, and what the player drew before the movement was shown. */
export function Marks({ id, live }: Props) {
  const sighting = useDesk(({ document }) => document.seen[id]);
  const isShown = useDesk(({ session }) => session.drawer === 'seen');
  const drawn = useDesk(({ session }) => session.guess?.drawn[id]);
  const isGap = useDesk(({ session }) => session.guess?.stage === 'shown');
  const units = useDesk(({ document }) => document.units);
  // Without marks there is no subscription, so the plate is not rendered at every step.
  const isMarked = (sighting !== undefined && isShown) || drawn !== undefined;
  const shown = useDesk((state) => (isMarked ? live.shown(state) : undefined));
  const cloud = useMemo(() => {
    if (!sighting) return [];
    const seen = { value: sighting.cm / 100, plusMinus: sighting.plusMinusCm / 100 };
    return Array.from(drawCloud(seen, CLOUD, SEED));
  }, [sighting]);
  if (!shown?.drawing || shown.value === undefined) return null;
  const { value, drawing } = shown;
  const { handle, axis } = drawing.annotation;
  const perMetre = drawing.frame.scale;
  const shifted = (reading: number): string => {
    const by = (reading - value) * perMetre;
    return linePath({ from: along(axis.from, handle.direction, by), to: along(axis.to, handle.direction, by) });
  };
  const gap = drawn === undefined ? 0 : (drawn - value) * perMetre;
  // At the far end of the line from the ring, where nothing else is written.
  const low = { x: 0.85 * axis.from.x + 0.15 * axis.to.x, y: 0.85 * axis.from.y + 0.15 * axis.to.y };
  // Beside its own line, on the side away from the line that is there.
  const middle = { x: (axis.from.x + axis.to.x) / 2, y: (axis.from.y + axis.to.y) / 2 };
  const onLine = along(middle, handle.direction, gap);
  const isRight = onLine.x >= middle.x;
  const named = { x: onLine.x + (isRight ? BESIDE : -BESIDE), y: onLine.y };
  return (
    <>
      {sighting && isShown && (
        <>
          <path className="plate-cloud" d={cloud.map(shifted).join('')} />
          <path className="plate-seen" d={shifted(sighting.cm / 100)} />
        </>
      )}
      {drawn !== undefined && (
        <>
          <path className="plate-guess" d={shifted(drawn)} />
          <text
            className="plate-guess-name"
            x={named.x}
            y={named.y}
            fontSize={live.letters.caption}
            textAnchor={isRight ? 'start' : 'end'}
          >
            {GUESSED_LINE}
          </text>
          {isGap && Math.abs(gap) > 1 && (
            <Gap from={low} to={along(low, handle.direction, gap)} size={live.letters.caption}>
              {showLength(Math.abs(drawn - value), units).text}
            </Gap>
          )}
        </>
      )}
    </>
  );
}

/** The gap between what was drawn and what came, as a dimension. */
function Gap({ from, to, size, children }: { from: Point; to: Point; size: number; children: string }) {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const ticks = [from, to].map((p) => `M${p.x - TICK} ${p.y + TICK}L${p.x + TICK} ${p.y - TICK}`).join('');
  return (
    <g className="plate-gap">
      <path d={linePath({ from, to }) + ticks} />
      <text x={middle.x} y={middle.y - 8} fontSize={size * 1.2} textAnchor="middle">
        {children}
      </text>
    </g>
  );
}
