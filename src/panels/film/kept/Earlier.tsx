import { useDerived } from '../../../store';
import { EARLIER } from '../../../words/film/kept';
import { useBook } from '../../lessons/navigation';
import { keepTripod, layMarks } from '../filmActions';
import { EMPTY_SHEET } from '../filmMarks';
import { useFilm, type Tripod } from '../filmStore';
import { toNotes, toSheet } from './toKept';
import { findWhose } from './tripod';

/** As long as nothing is marked: what earlier films spare the coach. */
export function Earlier() {
  const isEmpty = useFilm(({ sheet }) => Object.values(sheet).every((marked) => marked === EMPTY_SHEET.address));
  const info = useFilm(({ video }) => video?.info);
  const last = useFilm(({ tripod }) => tripod);
  const clubM = useDerived(({ referenceSwing }) => referenceSwing.rig.club.length);
  const lesson = useBook(({ records, meta }) => records.get(meta.openLessonId ?? ''));
  if (!info || !isEmpty) return null;
  const kept = lesson?.kind === 'lesson' ? lesson.film : undefined;
  const { address } = kept ? toSheet(kept) : EMPTY_SHEET;
  const whose = findWhose();
  const earlier = kept && address && { w: kept.w, h: kept.h, clubM: kept.clubM, address, ...whose };
  // A lesson may have been opened after the first film.
  const isHis = last?.body === whose.body && (last.lessonId === undefined || last.lessonId === whose.lessonId);
  const tripod = isHis ? last : earlier;
  const isSame = kept && kept.w === info.w && kept.h === info.h && kept.frames === info.frames;
  const fits = ({ w, h, clubM: before }: Tripod): boolean =>
    w === info.w && h === info.h && Math.abs(before - clubM) < 1e-3;
  if (!isSame && !(tripod && fits(tripod))) return null;
  return (
    <div className="film-earlier">
      {tripod && fits(tripod) && (
        <button type="button" className="plain" onClick={() => keepTripod(tripod)}>
          {EARLIER.tripod}
        </button>
      )}
      {isSame && (
        <button type="button" className="plain" onClick={() => layMarks(toSheet(kept), toNotes(kept))}>
          {EARLIER.marks}
        </button>
      )}
    </div>
  );
}
