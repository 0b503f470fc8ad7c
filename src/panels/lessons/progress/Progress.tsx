import { CHECKPOINT_IDS } from '../../../reading/checkpointTable';
import { useEffect, useMemo, useRef, useState } from 'react';
import { lessonsOf, movedToward, progressOf, type LessonRecord } from '../../../record';
import { sayDay } from '../../../words/book/days';
import { sayMoved } from '../../../words/book/progress';
import { SOME_EARLIER } from '../../../words/book/newModel';
import { saySighting, sayCm } from '../../../words/book/readings';
import { useDesk, type CheckpointId } from '../../../store';
import { CHECKPOINT_NAMES, ILLUSTRATION } from '../../../words';
import { groupsOf } from '../../../store/plan/draftPlan';
import { GROUP_NAMES } from '../../dials/Movements';
import { PlanStrip } from '../PlanStrip';
import { useBook } from '../navigation';
import { ProgressPlot } from './ProgressPlot';

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
function Numbers({ lessons }: { lessons: readonly LessonRecord[] }) {
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
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Both checkpoints over a player's lessons. */
export function Progress({ id }: { id: string }) {
  const records = useBook((state) => state.records);
  const player = records.get(id);
  const units = useDesk(({ document }) => document.units);
  const { place, width } = useWidth();
  const lessons = useMemo(() => lessonsOf(records, id).toReversed(), [records, id]);
  const bands = lessons.at(-1)?.now.bands;
  if (player?.kind !== 'player') return null;
  return (
    <div className="progress-sheet" ref={place}>
      <h2 className="progress-title">{player.name}</h2>
      {player.example && <p className="lesson-note">An example of our own invention.</p>}
      {!bands && <p>No lesson yet: nothing to draw.</p>}
      {bands &&
        CHECKPOINT_IDS.map((at) => {
          const points = progressOf(lessons, at);
          return (
            <section key={at} aria-label={CHECKPOINT_NAMES[at].title}>
              <h3>{CHECKPOINT_NAMES[at].title}</h3>
              <p className="progress-sentence">{sayMoved(movedToward(points, bands[at]), units)}</p>
              <ProgressPlot at={at} points={points} band={bands[at]} units={units} width={width} />
            </section>
          );
        })}
      {bands && (
        <>
          <PlanStrip lessons={lessons} width={width} />
          <Legend />
          <Numbers lessons={lessons} />
          <p className="fine">
            The reading error is the give or take of the first and the last reading together. The band is a rule of
            thumb. {lessons.some(({ computedBy }) => computedBy !== undefined) && SOME_EARLIER} {ILLUSTRATION}.
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

const Legend = () => (
  <ul className="progress-legend">
    <li>
      <svg width="20" height="24" aria-hidden="true">
        <path className="plot-give" d="M10 2V22M5 2h10M5 22h10" />
        <circle className="plot-seen" cx="10" cy="12" r="6" />
      </svg>
      on video, with margin
    </li>
    <li>
      <svg width="20" height="24" aria-hidden="true">
        <rect className="plot-computed" x="5.5" y="7.5" width="9" height="9" />
      </svg>
      computed by the model
    </li>
    <li>
      <svg width="32" height="24" aria-hidden="true">
        <path className="plot-target" d="M0 12H32" />
      </svg>
      target
    </li>
    <li>
      <svg width="20" height="24" aria-hidden="true">
        <rect className="plot-worked" x="0" y="8" width="20" height="8" />
      </svg>
      worked on
    </li>
  </ul>
);
