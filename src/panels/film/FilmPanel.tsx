import { useEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { FILM_HOW, FILM_STAYS, PICTURES_HOW, UNTESTED } from '../../words/film/film';
import { closeFilm, openFilm } from './filmActions';
import { FilmDesk } from './FilmDesk';
import { useFilm } from './filmStore';
import { KeptFilm } from './kept/KeptFilm';
import { useBook } from '../lessons/navigation';
import './film.css';

const FILMS = 'video/mp4,video/quicktime,video/webm,.mp4,.mov,.webm';
/** Asked for by name, a phone's stills arrive as JPEG. */
const PICTURES = 'image/jpeg,image/png,image/webp';

/** The way to a player's own film: button, drop and paste. Once one is open it takes the place of the stage. */
export default function FilmPanel({ kind }: { kind: 'video' | 'photo' }) {
  const status = useFilm((film) => film.status);
  const problem = useFilm((film) => film.problem);
  const [isOver, setOver] = useState(false);
  const chooser = useRef<HTMLInputElement>(null);
  const wasOpen = useRef(false);
  useEffect(() => {
    // Back to where the film was opened from.
    if (wasOpen.current) chooser.current?.focus({ preventScroll: true });
    wasOpen.current = status === 'open';
  }, [status]);
  useEffect(() => {
    const paste = ({ clipboardData }: ClipboardEvent): void => {
      void openFilm([...(clipboardData?.files ?? [])]);
    };
    window.addEventListener('paste', paste);
    return () => {
      window.removeEventListener('paste', paste);
      closeFilm();
    };
  }, []);
  const lesson = useBook(({ records, meta }) =>
    meta.openLessonId === null ? undefined : records.get(meta.openLessonId),
  );
  // Over the whole desk but its bar: in the drawer it would stand below what lies on the stage.
  if (status === 'open') return createPortal(<FilmDesk />, document.querySelector('.desk') ?? document.body);
  return (
    // Dropping is one way of three.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <section
      className="film-open"
      data-over={isOver || undefined}
      aria-label={kind === 'video' ? 'Video' : 'Photo'}
      onDragOver={(event) => {
        event.preventDefault();
        event.stopPropagation();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        event.stopPropagation();
        setOver(false);
        void openFilm([...event.dataTransfer.files]);
      }}
    >
      <p>{kind === 'video' ? FILM_HOW : PICTURES_HOW}</p>
      <label className="plain film-choose">
        {status === 'opening' ? 'Opening …' : kind === 'video' ? 'Open a video' : 'Open one to three photos'}
        <input
          ref={chooser}
          type="file"
          multiple={kind === 'photo'}
          accept={kind === 'photo' ? PICTURES : `${FILMS},${PICTURES}`}
          onChange={({ currentTarget }) => {
            // The same file can be chosen again.
            void openFilm([...(currentTarget.files ?? [])]).finally(() => (currentTarget.value = ''));
          }}
        />
      </label>
      {problem !== undefined && (
        <p className="film-problem" role="alert">
          {problem}
        </p>
      )}
      {lesson?.kind === 'lesson' && <KeptFilm lesson={lesson} />}
      <p className="fine">{FILM_STAYS}</p>
      <p className="fine">{UNTESTED}</p>
    </section>
  );
}
