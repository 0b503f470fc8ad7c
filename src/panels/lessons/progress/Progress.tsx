import { CHECKPOINT_IDS } from '../../../reading/checkpointTable';
import { useEffect, useMemo, useRef, useState } from 'react';
import { lessonsOf, movedToward, rowsOf, type LessonRecord, type ProgressRow } from '../../../record';
import { sayDay } from '../../../words/book/days';
import { sayDays } from '../../../words/book/practice';
import {
  BAR_MEANS,
  NOTHING_TO_DRAW,
  READING_ERROR,
  sayMoved,
  STRIP_MEANS,
  STROKES_MEAN,
} from '../../../words/book/progress';
import { EXAMPLE } from '../../../words/book/book';
import { SOME_EARLIER } from '../../../words/book/newModel';
import { lowered } from '../../../words/numbers/capital';
import { saySighting, sayCm } from '../../../words/book/readings';
import { useDesk, type CheckpointId } from '../../../store';
import { createHonestSeen, type HonestSeen } from '../../../store/derive/honestSeen';
import type { References } from '../../../store/derive/references';
import { deskBases } from '../../../store/desk/desk';
import { toArmAngle } from '../../../store/document/convert';
import { CHECKPOINT_NAMES, ILLUSTRATION } from '../../../words';
import { groupsOf } from '../../../store/plan/draftPlan';
import { GROUP_NAMES } from '../../dials/Movements';
import { useBook } from '../navigation';
import { ProgressBoard } from './ProgressBoard';

/** Width of an element in CSS px, so that lettering keeps its size. */
function useWidth() {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(360);
  useEffect(() => {
    const element = place.current;
    if (!element) return undefined;
    const observer = new ResizeObserver(([entry]) => setWidth(Math.max(260, Math.round(entry.contentRect.width))));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { place, width };
}

/** Prints this sheet alone. */
function print(): void {
  const root = document.documentElement;
  root.dataset['print'] = 'progress';
  window.addEventListener('afterprint', () => delete root.dataset['print'], { once: true });
  window.print();
}

/** The same in numbers: for reading aloud, and for whoever wants to check the drawing. */
function Numbers({ lessons, rows }: { lessons: readonly LessonRecord[]; rows: readonly ProgressRow[] }) {
  const units = useDesk(({ document }) => document.units);
  const cell = ({ now: { seen }, computedCm }: LessonRecord, at: CheckpointId): string => {
    const [saw, computed] = [seen[at], computedCm[at]];
    const parts = [
      ...(saw ? [`seen ${saySighting(at, saw, units)}`] : []),
      computed === null ? 'not reached' : `computed ${sayCm(at, computed, units)}`,
    ];
    return parts.join('; ');
  };
  return (
    <table className="progress-numbers">
      <caption className="unseen">Readings of every lesson</caption>
      <thead>
        <tr>
          <th scope="col">Lesson</th>
          <th scope="col">Lead arm parallel, from the trail bicep</th>
          <th scope="col">Shaft parallel, from the hands</th>
          <th scope="col">Plan</th>
          <th scope="col">Practised until the next</th>
        </tr>
      </thead>
      <tbody>
        {lessons.map((lesson) => (
          <tr key={lesson.id}>
            <th scope="row">{sayDay(lesson.date)}</th>
            <td>{cell(lesson, 'leadArmParallel')}</td>
            <td>{cell(lesson, 'shaftParallel')}</td>
            <td>
              {(lesson.now.plan &&
                groupsOf(lesson.now.plan)
                  .map((id) => GROUP_NAMES[id])
                  .join(', ')) ||
                'none'}
            </td>
            <td>{sayDays(rows.find(({ id }) => id === lesson.id)?.practised ?? 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What was seen in a lesson, with the camera of that lesson reckoned in; as it was seen while the player's swing is being found. */
function honestOf({ now }: LessonRecord, references: References): HonestSeen {
  const { player, club, setUp, seen, camera } = now;
  const base = deskBases.baseOf({ player, club, setUp }, references);
  const plain = (at: CheckpointId) => seen[at] && { ...seen[at], isCorrected: false };
  if ('problem' in base) return { leadArmParallel: plain('leadArmParallel'), shaftParallel: plain('shaftParallel') };
  return createHonestSeen()(seen, camera.downTheLine, player, base.swing, toArmAngle(now));
}

/** Both checkpoints over a player's lessons: did it move? */
export function Progress({ id }: { id: string }) {
  const records = useBook((state) => state.records);
  const player = records.get(id);
  const units = useDesk(({ document }) => document.units);
  const { place, width } = useWidth();
  const lessons = useMemo(() => lessonsOf(records, id).toReversed(), [records, id]);
  const bands = lessons.at(-1)?.now.bands;
  const references = useDesk((state) => state.references);
  const rows = useMemo(() => rowsOf(lessons, (lesson) => honestOf(lesson, references)), [lessons, references]);
  if (player?.kind !== 'player') return null;
  return (
    <div className="progress-sheet" ref={place}>
      <h2 className="progress-title">{player.name}</h2>
      {player.example && <p className="lesson-note">{EXAMPLE}</p>}
      {!bands && <p>{NOTHING_TO_DRAW}</p>}
      {bands && (
        <>
          {CHECKPOINT_IDS.map((at) => (
            <p key={at} className="progress-sentence">
              {CHECKPOINT_NAMES[at].title}:{' '}
              {lowered(
                sayMoved(
                  movedToward(
                    rows.map(({ seen }) => seen[at]),
                    bands[at],
                  ),
                  units,
                ),
              )}
            </p>
          ))}
          <ProgressBoard rows={rows} bands={bands} units={units} width={width} />
          <p className="fine">
            {BAR_MEANS} {STRIP_MEANS}
            {rows.some(({ practised }) => practised > 0) && ` ${STROKES_MEAN}`}
          </p>
          <Numbers lessons={lessons} rows={rows} />
          <p className="fine">
            {READING_ERROR} {lessons.some(({ computedBy }) => computedBy !== undefined) && SOME_EARLIER} {ILLUSTRATION}.
          </p>
          <div className="lesson-actions no-print">
            <button type="button" className="plain" onClick={print}>
              Print
            </button>
          </div>
        </>
      )}
    </div>
  );
}
