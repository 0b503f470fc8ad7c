import { useMemo, useRef, useState } from 'react';
import { deg, toRad } from '../math/angle';
import { heelLiftAt } from '../figure/stance';
import { isReached, readCheckpoints, type CheckpointId } from '../reading/checkpoints';
import { judgedReading } from '../reading/verdicts';
import { selectPlate, useDerived, useDesk } from '../store';
import { CHECKPOINT_NAMES, EXAGGERATED, sayCheckpoint, saySight } from '../words';
import { createDrawn, plateFigureOf } from './body';
import { Drawing } from './Drawing';
import type { Box, Point } from './frame';
import { fitPicture, plateDrawing, type PlateDrawing } from './plateDrawing';
import { Marks } from './Marks';
import { Sight } from './Sight';
import { useSettled } from './useSettled';
import { useSize, type Size } from './useSize';
import './plates.css';

interface Props {
  readonly id: CheckpointId;
  /** What the coach saw in the real player, as the reading of this checkpoint, m. Without it the ring is only drawn. */
  readonly onSight?: (value: number) => void;
}

/** A checkpoint plate: the pose there seen down the line, what is measured on it, and the verdict. Tapping it moves time there. */
export function Plate({ id, onSight }: Props) {
  const derived = useDerived((all) => all);
  const units = useDesk(({ document }) => document.units);
  const armAngle = useDesk(({ document }) => toRad(deg(document.checkpointArmDeg)));
  const isBusy = useDesk(({ gesture }) => gesture !== null);
  const isSelected = useDesk(({ session }) => session.selectedPlate === id);
  const picture = useRef<HTMLDivElement>(null);
  const size = useSize(picture);
  const [seen, setSeen] = useState<number>();

  const { body, club, swing, ghostSwing, bands, player } = derived;
  const checkpoint = derived.checkpoints[id];
  const reference = derived.referenceCheckpoints[id];
  const plate = useMemo(() => plateFigureOf(body, club), [body, club]);
  const ghost = useMemo(() => ghostSwing && readCheckpoints(ghostSwing, armAngle)[id], [ghostSwing, armAngle, id]);
  const words = useMemo(() => sayCheckpoint(id, checkpoint, bands, units), [id, checkpoint, bands, units]);
  const engraving = useSettled(checkpoint, isBusy);
  const { view, pxPerUnit, letters } = useMemo(() => fitPicture(id, size), [id, size]);
  const [drawn] = useState(createDrawn);
  const drawing = useMemo(() => {
    if (!isReached(checkpoint)) return undefined;
    const stance = { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, checkpoint.t) };
    const { handed } = player;
    const of = {
      id,
      plate,
      checkpoint,
      stance,
      bands,
      units,
      handed,
      reference,
      ghost: ghost ?? undefined,
      letters,
      engraving,
      drawn,
    };
    return plateDrawing(of, words);
  }, [id, plate, checkpoint, swing, bands, units, player, reference, ghost, letters, engraving, drawn, words]);

  const { title, plate: number } = CHECKPOINT_NAMES[id];
  const value = isReached(checkpoint) ? judgedReading(id, checkpoint) : undefined;
  const sight = seen === undefined ? undefined : saySight(id, seen, units);
  const isSeenHere = onSight !== undefined && drawing !== undefined && size !== undefined && value !== undefined;
  return (
    <article className="plate" data-verdict={words.verdict} data-selected={isSelected || undefined}>
      <div className="plate-card">
        <header className="plate-header">
          <h2>
            <button type="button" aria-pressed={isSelected} onClick={() => selectPlate(id)}>
              {title}
            </button>
          </h2>
          <span className="plate-number">{number}</span>
        </header>
        <div className="plate-picture" ref={picture}>
          {drawing ? (
            <Drawing
              live
              drawing={drawing}
              letters={letters}
              label={`${title}, seen down the line. ${words.spoken}`}
              pulled={seen === undefined || value === undefined ? undefined : (seen - value) * drawing.frame.scale}
            >
              {value !== undefined && seen === undefined && (
                <Marks id={id} value={value} drawing={drawing} letters={letters} />
              )}
            </Drawing>
          ) : (
            <p className="plate-reason">{words.sentence}</p>
          )}
          {isSeenHere && (
            <Sight
              {...handleOnScreen(drawing, seen === undefined ? 0 : seen - value, size, view, pxPerUnit)}
              value={seen ?? value}
              label={`${title}: what you saw`}
              valueText={sight?.spoken ?? words.spoken}
              onMove={setSeen}
              onSight={(metres) => {
                setSeen(undefined);
                onSight(metres);
              }}
            />
          )}
        </div>
        <div className="plate-verdict">
          <i className="plate-swatch" aria-hidden="true" />
          <strong className="plate-word">{words.word}</strong>
          {drawing && (
            <>
              <span className="plate-why">{sight?.short ?? words.why}</span>
              <span className="plate-why is-short">{sight?.short ?? words.shortWhy}</span>
            </>
          )}
          {drawing && (
            <span className="plate-source">
              {sight?.source ?? words.source}
              {derived.exaggerated && <>, {EXAGGERATED}</>}
            </span>
          )}
          {words.reach && <span className="plate-reach">{words.reach}</span>}
        </div>
      </div>
    </article>
  );
}

/** Half a finger: the touch area stays inside the picture, off the title above it. */
const HALF_TARGET = 24;
const within = (at: number, size: number): number =>
  Math.max(HALF_TARGET, Math.min(Math.max(HALF_TARGET, size - HALF_TARGET), at));

/** Where the ring stands in the picture and how a metre of the reading moves it, css px. `pulled` in m. */
function handleOnScreen(
  { annotation: { handle } }: PlateDrawing,
  pulled: number,
  size: Size,
  view: Box,
  pxPerUnit: number,
): { at: Point; perMetre: Point } {
  const { at, direction, perMetre } = handle;
  const x = at.x + pulled * perMetre * direction.x - (view.left + view.right) / 2;
  const y = at.y + pulled * perMetre * direction.y - (view.top + view.bottom) / 2;
  return {
    at: {
      x: within(size.width / 2 + x * pxPerUnit, size.width),
      y: within(size.height / 2 + y * pxPerUnit, size.height),
    },
    perMetre: { x: direction.x * perMetre * pxPerUnit, y: direction.y * perMetre * pxPerUnit },
  };
}
