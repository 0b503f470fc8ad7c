import { read } from '../../checking/read';
import { filmSchema, isJpeg } from './filmSchema';
import type { Records } from '../file/importPlan';
import { bornNow, touched, type Birth, type Edit } from '../book/edits';
import type { KeptFilm } from './keptFilm';
import { stillsOf } from '../book/lists';
import type { LessonRecord, StillRecord } from '../book/recordTypes';

/** A still as it comes from a film. */
type NewStill = Pick<StillRecord, 'of' | 'w' | 'h' | 'jpeg'>;

/**
 * Keeps what was marked on a film with a lesson. An earlier film of the lesson makes way, its stills too. Undefined where a number in it could
 * not be read back: it would cost the lesson.
 */
export function keepFilmWith(
  book: Records,
  lesson: LessonRecord,
  births: () => Birth,
  film: KeptFilm,
  stills: readonly NewStill[],
): Edit | undefined {
  if (!('value' in read(filmSchema, film)) || !stills.every(({ jpeg }) => isJpeg(jpeg))) return undefined;
  const { id: lessonId, playerId } = lesson;
  const kept = touched<LessonRecord>(lesson, births().nowMs, { film });
  const records = stills.map((still): StillRecord => ({
    kind: 'still',
    ...bornNow(births()),
    playerId,
    lessonId,
    ...still,
  }));
  return { label: 'Film', put: [kept, ...records], remove: stillsOf(book, lessonId).map(({ id }) => id) };
}

/** Removes a lesson's film and its stills. */
export function removeFilm(book: Records, { film: _film, ...lesson }: LessonRecord, nowMs: number): Edit {
  return {
    label: 'Remove film',
    put: [touched<LessonRecord>(lesson, nowMs, {})],
    remove: stillsOf(book, lesson.id).map(({ id }) => id),
  };
}
