import { useId } from 'react';
import { MOVEMENT_GROUPS } from '../../model/movements';
import type { LessonRecord } from '../../record';
import { GROUP_NAMES } from '../dials/Movements';
import { lessonX } from './progress/ProgressPlot';

const ROW = 24;

/** Which movement was worked on in which lesson: a bar for each, under the plots and on the same lessons. */
export function PlanStrip({ lessons, width }: { lessons: readonly LessonRecord[]; width: number }) {
  const id = useId();
  const rows = MOVEMENT_GROUPS.filter((group) => lessons.some(({ plan }) => plan.includes(group)));
  if (rows.length === 0) return null;
  return (
    <svg className="progress-plot" width={width} height={rows.length * ROW * 2} role="img" aria-labelledby={id}>
      <title id={id}>The plan that was followed: {rows.map((group) => GROUP_NAMES[group]).join(', ')}</title>
      {rows.map((group, row) => (
        <g key={group}>
          <text className="plot-plan" x={46} y={row * ROW * 2 + 16}>
            {GROUP_NAMES[group]}
          </text>
          {lessons.map(({ plan, id: lesson }, at) =>
            plan.includes(group) ? (
              <rect
                key={lesson}
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
