import type { Moved } from '../../words/book/progress';
import { sayFlag } from '../../words/why/planText';
import type { CheckpointId } from '../../reading/checkpoints';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { BandCm } from '../../store/document/document';
import { changesBetween } from '../../store/plan/draftPlan';
import { toMovements } from '../../store/document/convert';
import { practiceDaysOf } from './practice';
import type { LessonRecord } from './recordTypes';

/** What was seen with its margin, cm; with the coach's camera reckoned in where it was placed. */
interface Mark {
  readonly cm: number;
  readonly plusMinusCm: number;
}

/** One lesson in the drawing of progress. */
export interface ProgressRow {
  readonly id: string;
  readonly date: string;
  readonly seen: { readonly [id in CheckpointId]: Mark | null };
  /** What the model computed for the desk, cm, where that desk was fitted to what was seen: it lies within the margin. Null otherwise. */
  readonly fittedCm: { readonly [id in CheckpointId]: number | null };
  /** A few words for the plan that began here; null where the one before went on. */
  readonly newPlan: string | null;
  /** Days on which the player practised from this lesson's day until the next one's; before the first lesson counts there. */
  readonly practised: number;
}

/** The lessons of one player, oldest first. `honest`: what was seen in a lesson, as it counts. */
export function rowsOf(
  lessons: readonly LessonRecord[],
  honest: (lesson: LessonRecord) => ProgressRow['seen'],
): readonly ProgressRow[] {
  const sorted = lessons.toSorted((a, b) => a.date.localeCompare(b.date) || a.createdMs - b.createdMs);
  const days = practiceDaysOf(lessons);
  return sorted.map((lesson, at): ProgressRow => {
    const { id, date, computedCm, computedBy } = lesson;
    const { plan } = lesson.now;
    const seen = honest(lesson);
    const fitted = (where: CheckpointId): number | null => {
      const [mark, cm] = [seen[where], computedCm[where]];
      const fits = computedBy === undefined && mark && cm !== null && Math.abs(cm - mark.cm) <= mark.plusMinusCm;
      return fits ? cm : null;
    };
    const [arm, shaft] = CHECKPOINT_IDS.map(fitted);
    const isNew = plan !== null && plan.id !== sorted[at - 1]?.now.plan?.id;
    const newPlan = isNew ? sayFlag(changesBetween(plan.from, plan.movements), toMovements(plan.from)) : null;
    const [from, until] = [at === 0 ? '' : date, sorted[at + 1]?.date];
    const practised = days.filter((day) => day >= from && (until === undefined || day < until)).length;
    return { id, date, seen, fittedCm: { leadArmParallel: arm, shaftParallel: shaft }, newPlan, practised };
  });
}

/** How far a reading lies outside a band, cm; 0 inside. */
export const outsideCm = (cm: number, { lowCm, highCm }: BandCm): number => Math.max(0, lowCm - cm, cm - highCm);

/** How much closer to the band the last mark is than the first, cm; positive: closer. Oldest first; null where nothing was seen. */
export function movedToward(marks: readonly (Mark | null)[], band: BandCm): Moved {
  const seen = marks.filter((one) => one !== null);
  if (seen.length < 2) return { missing: seen.length === 0 ? 'nothing seen' : 'seen once' };
  const [first, last] = [seen[0], seen.at(-1)!];
  const [before, now] = [outsideCm(first.cm, band), outsideCm(last.cm, band)];
  return {
    towardCm: before - now,
    doubtCm: Math.hypot(first.plusMinusCm, last.plusMinusCm),
    inside: before === 0 ? (now === 0 ? 'both' : 'before') : now === 0 ? 'now' : 'neither',
  };
}
