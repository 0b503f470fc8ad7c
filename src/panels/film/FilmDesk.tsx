import { useLayoutEffect, useRef } from 'react';
import { closeFilm, openFilm, undoMark } from './filmActions';
import { FilmAnswers } from './FilmAnswers';
import { FilmMarks } from './FilmMarks';
import { FilmPicture } from './FilmPicture';
import { FilmStepper } from './frames/FilmStepper';
import { useFilm } from './filmStore';

/** What the film lies over: still there, and out of reach of keys. The bar above and its menus are not. */
const COVERED = '.board, .drawer';

/** The film in the place of the stage: picture, marks, answers, and the frames below. */
export function FilmDesk() {
  const desk = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const own = desk.current!;
    const covered = [...(own.parentElement?.querySelectorAll<HTMLElement>(COVERED) ?? [])];
    for (const part of covered) part.inert = true;
    // The button that opened the film is under it now.
    own.focus({ preventScroll: true });
    return () => {
      for (const part of covered) part.inert = false;
    };
  }, []);
  const canUndo = useFilm(({ past }) => past.length > 0);
  const isRead = useFilm(
    ({ answer }) => answer && 'camera' in answer && answer.leadArmParallel && answer.shaftParallel,
  );
  return (
    // Dropping is one way of three.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <section
      ref={desk}
      className="film-desk"
      data-read={isRead ? true : undefined}
      aria-label="The player's film"
      tabIndex={-1}
      onDragOver={(event) => {
        event.preventDefault();
        event.stopPropagation();
      }}
      onDrop={(event) => {
        event.preventDefault();
        event.stopPropagation();
        void openFilm([...event.dataTransfer.files]);
      }}
    >
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
