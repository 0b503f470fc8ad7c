import { useId, useLayoutEffect, useRef, useState } from 'react';
import type { CheckpointId } from '../../reading/checkpoints';
import { desk, selectPlate, subscribe, turnPlate, useDerived, useDesk } from '../../store';
import { CHECKPOINT_NAMES, EXAGGERATED, saySight } from '../../words';
import { LivePlate } from './livePlate';
import { Marks } from '../annotation/Marks';
import { Patterns } from '../figure/Patterns';
import { DragHandle } from '../annotation/DragHandle';
import { useSize } from '../useSize';
import '../plates.css';

interface Props {
  readonly id: CheckpointId;
  /** What the coach saw in the real player, as the reading of this checkpoint, m. Without it the ring is only drawn. */
  readonly onSight?: (value: number) => void;
}

/**
 * A checkpoint plate: the pose there seen down the line, what is measured on it, and the verdict. Tapping it moves time there. What
 * changes seldom is rendered here; drawing, numbers and the ring's place are written by `LivePlate`.
 */
export function Plate({ id, onSight }: Props) {
  const hatch = useId();
  const dots = useId();
  const [live] = useState(() => new LivePlate(id, { hatch, dots }));
  const source = useDesk((state) => live.words(state).source);
  const missing = useDesk((state) => {
    const words = live.words(state);
    return words.verdict === 'missing' ? words.sentence : undefined;
  });
  const isExaggerated = useDerived(({ exaggerated }) => exaggerated);
  const isSelected = useDesk(({ session }) => session.selectedPlate === id);
  const units = useDesk(({ document }) => document.units);
  const picture = useRef<HTMLDivElement>(null);
  // The verdict's words are what an opening page shows first: they wait for no drawing.
  const size = useSize(picture, false);
  const [seen, setSeen] = useState<number>();
  useLayoutEffect(() => live.dress(size, seen));
  useLayoutEffect(() => {
    const end = subscribe(() => live.draw());
    return () => {
      end();
      live.dispose();
    };
  }, [live]);

  const { title } = CHECKPOINT_NAMES[id];
  const choose = (): void => {
    const { turned, selectedPlate } = desk.getState().session;
    const isFolded = picture.current?.clientHeight === 0;
    selectPlate(id);
    // A second tap on a plate that is folded to its verdict turns it over to its drawing, the next one back.
    if (selectedPlate === id && isFolded && !turned) turnPlate(true);
  };
  const sight = seen === undefined ? undefined : saySight(id, seen, units);
  return (
    <article className="plate" ref={live.hold('plate')} data-selected={isSelected || undefined}>
      <div className="plate-card">
        <header className="plate-header">
          <h2>
            <button type="button" aria-pressed={isSelected} onClick={choose}>
              {title}
            </button>
          </h2>
          {missing === undefined && (
            <span className="plate-source">
              {sight?.source ?? source}
              {isExaggerated && <>, {EXAGGERATED}</>}
            </span>
          )}
          <span className="plate-scale" aria-hidden="true" ref={live.hold('scale')} />
        </header>
        <div className="plate-picture" ref={picture}>
          {missing === undefined ? (
            <svg className="plate-drawing" role="img" aria-label={title} ref={live.hold('picture')}>
              <Patterns hatch={hatch} dots={dots} />
              <g ref={live.hold('under')} />
              {seen === undefined && <Marks id={id} live={live} />}
              <g ref={live.hold('over')} />
            </svg>
          ) : (
            <p className="plate-reason">{missing}</p>
          )}
          {onSight !== undefined && missing === undefined && size !== undefined && (
            <DragHandle
              hold={live.hold('ring')}
              grip={() => live.grip(desk.getState())}
              label={`${title}: what you saw`}
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
          <strong className="plate-word" ref={live.hold('word')} />
          <b className="plate-amount" ref={live.hold('number')} />
          <span className="plate-where" ref={live.hold('where')} />
          <span className="plate-reach" ref={live.hold('reach')} />
        </div>
      </div>
    </article>
  );
}
