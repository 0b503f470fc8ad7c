import type { Moved } from '../../words/book/progress';
import type { CheckpointId } from '../../reading/checkpoints';
import type { BandCm } from '../../store/document/document';
import type { Sighting } from '../../store/document/sighting';
import type { LessonRecord } from './recordTypes';

/** One lesson on the plot. */
export interface ProgressPoint {
  readonly id: string;
  readonly date: string;
  readonly seen: Sighting | null;
  readonly computedCm: number | null;
  readonly targetCm: number | null;
}

/** The lessons of one player at one checkpoint, oldest first. */
export const progressOf = (lessons: readonly LessonRecord[], at: CheckpointId): ProgressPoint[] =>
  lessons
    .toSorted((a, b) => a.date.localeCompare(b.date) || a.createdMs - b.createdMs)
    .map(({ id, date, now, computedCm }) => ({
      id,
      date,
      seen: now.seen[at],
      computedCm: computedCm[at],
      targetCm: now.plan?.targetCm[at] ?? null,
    }));

/** How far a reading lies outside a band, cm; 0 inside. */
export const outsideCm = (cm: number, { lowCm, highCm }: BandCm): number => Math.max(0, lowCm - cm, cm - highCm);

/** How much closer to the band the last sighting is than the first, cm; positive: closer. */
export function movedToward(points: readonly ProgressPoint[], band: BandCm): Moved {
  const seen = points.map((point) => point.seen).filter((one) => one !== null);
  if (seen.length < 2) return { missing: seen.length === 0 ? 'nothing seen' : 'seen once' };
  const [first, last] = [seen[0], seen.at(-1)!];
  const [before, now] = [outsideCm(first.cm, band), outsideCm(last.cm, band)];
  return {
    towardCm: before - now,
    doubtCm: Math.hypot(first.plusMinusCm, last.plusMinusCm),
    inside: before === 0 ? (now === 0 ? 'both' : 'before') : now === 0 ? 'now' : 'neither',
  };
}
