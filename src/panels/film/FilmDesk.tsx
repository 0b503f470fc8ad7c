import { closeFilm, undoMark } from './filmActions';
import { FilmAnswers } from './FilmAnswers';
import { FilmMarks } from './FilmMarks';
import { FilmPicture } from './FilmPicture';
import { FilmStepper } from './frames/FilmStepper';
import { useFilm } from './filmStore';

/** The film in the place of the stage: picture, marks, answers, and the frames below. */
export function FilmDesk() {
  const canUndo = useFilm(({ past }) => past.length > 0);
  const isRead = useFilm(
    ({ answer }) => answer && 'camera' in answer && answer.leadArmParallel && answer.shaftParallel,
  );
  return (
    <section className="film-desk" data-read={isRead ? true : undefined} aria-label="The player's film">
      <div className="film-bar">
        <button type="button" className="plain" onClick={closeFilm}>
          Close film
        </button>
        <button type="button" className="plain" aria-disabled={!canUndo} onClick={undoMark}>
          Undo mark
        </button>
      </div>
      <FilmPicture />
      <FilmMarks />
      <FilmAnswers />
      <FilmStepper />
    </section>
  );
}
