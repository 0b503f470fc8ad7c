import { sayDay } from '../../words/book/days';
import { sayClub } from '../../words/showing/who';
import { desk, setDrawer, useDesk } from '../../store';
import { goTo, useBook } from './navigation';

/** Whose lesson lies on the desk, with which club, of which day; one tap opens it. Nothing while no lesson is open. */
export function LessonMark() {
  const lesson = useBook(({ records, meta }) => records.get(meta.openLessonId ?? ''));
  const playerId = lesson?.kind === 'lesson' ? lesson.playerId : undefined;
  const player = useBook(({ records }) => (playerId === undefined ? undefined : records.get(playerId)));
  const club = useDesk(({ document }) => sayClub(document.club));
  if (lesson?.kind !== 'lesson' || player?.kind !== 'player') return null;
  const open = (): void => {
    goTo({ page: 'lesson', id: lesson.id });
    if (desk.getState().session.drawer !== 'lessons') setDrawer('lessons');
  };
  return (
    <button type="button" className="lesson-mark" onClick={open}>
      <b>{player.name}</b>
      <span>
        {club}, {sayDay(lesson.date)}
      </span>
      <span className="unseen">: open the lesson</span>
    </button>
  );
}
