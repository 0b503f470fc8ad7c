import { backUp, deskLink, saveEverything, standingOf } from '../../../record';
import { sayBook } from '../../../words/book/book';
import { setDrawer, useDesk } from '../../../store';
import { goTo, useBook } from '../navigation';
import { UpdateOffer } from './UpdateOffer';
import { useNow } from '../useNow';
import './saveStatus.css';

/** How the lesson book stands, in words, with what to do about it. */
export function SaveStatus() {
  const now = useNow();
  const state = useBook((one) => one);
  const nowMs = Math.max(now, state.savedMs ?? 0);
  const { text, offer, alarm } = sayBook(standingOf(state, nowMs), nowMs);
  const drawer = useDesk(({ session }) => session.drawer);
  const open = deskLink.openLesson();
  const toLesson = (): void => {
    if (open) goTo({ page: 'lesson', id: open.id });
    if (drawer !== 'lessons') setDrawer('lessons');
  };
  return (
    <div className="save-status" data-alarm={alarm}>
      <output aria-live={alarm ? 'assertive' : 'polite'}>{text}</output>
      {offer === 'copy' && (
        <button type="button" className="text-button" onClick={() => void saveEverything()}>
          Save a copy
        </button>
      )}
      {offer === 'take over' && (
        <button type="button" className="text-button" onClick={() => void deskLink.takeOver()}>
          Write here
        </button>
      )}
      {offer === 'back up' && (
        <button type="button" className="text-button" onClick={() => backUp()}>
          Back up now
        </button>
      )}
      {offer === null && open && (
        <button type="button" className="text-button" onClick={toLesson}>
          Lesson open
        </button>
      )}
      <UpdateOffer lessonOpen={open !== undefined} />
    </div>
  );
}
