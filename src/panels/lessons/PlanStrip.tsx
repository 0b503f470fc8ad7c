import { useId } from 'react';
import { MOVEMENT_GROUPS, type MovementGroup } from '../../model/movements';
import type { LessonRecord } from '../../record';
import { groupsOf } from '../../store/plan/draftPlan';
import { GROUP_NAMES } from '../dials/Movements';
import { lessonX } from './progress/ProgressPlot';

const ROW = 24;

const worksOn = ({ now: { plan } }: LessonRecord, group: MovementGroup): boolean =>
  plan !== null && groupsOf(plan).includes(group);

/** Which movement was worked on in which lesson: a bar for each, under the plots and on the same lessons. */
export function PlanStrip({ lessons, width }: { lessons: readonly LessonRecord[]; width: number }) {
  const id = useId();
  const rows = MOVEMENT_GROUPS.filter((group) => lessons.some((lesson) => worksOn(lesson, group)));
  if (rows.length === 0) return null;
  return (
    <svg className="progress-plot" width={width} height={rows.length * ROW * 2} role="img" aria-labelledby={id}>
      <title id={id}>The plan that was followed: {rows.map((group) => GROUP_NAMES[group]).join(', ')}</title>
      {rows.map((group, row) => (
        <g key={group}>
          <text className="plot-plan" x={46} y={row * ROW * 2 + 16}>
            {GROUP_NAMES[group]}
          </text>
          {lessons.map((lesson, at) =>
            worksOn(lesson, group) ? (
              <rect
                key={lesson.id}
                className="plot-worked"
                x={lessonX(at, lessons.length, width) - 14}
                y={row * ROW * 2 + 24}
                width={28}
                height={8}
              />
            ) : null,
          )}
        </g>
      ))}
    </svg>
  );
}
