import { useEffect, useState } from 'react';
import { createPortal } from 'react-dom';
import { FILM_HOW, FILM_STAYS, UNTESTED } from '../../words/film/film';
import { closeFilm, openFilm } from './filmActions';
import { FilmDesk } from './FilmDesk';
import { useFilm } from './filmStore';
import { KeptFilm } from './kept/KeptFilm';
import { useBook } from '../lessons/navigation';
import './film.css';

const TYPES = 'video/mp4,video/quicktime,video/webm,.mp4,.mov,.webm,image/jpeg,image/png,image/webp';

/** The way to a player's own film: button, drop and paste. Once one is open it takes the place of the stage. */
export default function FilmPanel({ kind }: { kind: 'video' | 'photo' }) {
  const status = useFilm((film) => film.status);
  const problem = useFilm((film) => film.problem);
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const paste = ({ clipboardData }: ClipboardEvent): void => {
      const [file] = clipboardData?.files ?? [];
      if (file) void openFilm(file);
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
        const [file] = event.dataTransfer.files;
        if (file) void openFilm(file);
      }}
    >
      <p>{FILM_HOW}</p>
      <label className="plain film-choose">
        {status === 'opening' ? 'Opening …' : kind === 'video' ? 'Open a video' : 'Open a photo'}
        <input
          type="file"
          accept={TYPES}
          onChange={({ currentTarget }) => {
            const [file] = currentTarget.files ?? [];
            // The same file can be chosen again.
            if (file) void openFilm(file).finally(() => (currentTarget.value = ''));
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
