import { useState } from 'react';
import { ANOTHER_TAB, KEEP_WITH_LESSON, KEEP_WITHOUT_LESSON, WITH_STILLS } from '../../../words/film/kept';
import { useBook, useMayWrite } from '../../lessons/navigation';
import { useFilm } from '../filmStore';
import { keepFilm } from './keepFilm';

/** One button that takes the readings as seen, and the marks into the open lesson. */
export function KeepFilm() {
  const isOpen = useBook(({ meta }) => meta.openLessonId !== null);
  const mayWrite = useMayWrite();
  const kept = useFilm((film) => film.kept);
  const [withStills, setWithStills] = useState(false);
  const isKeeping = isOpen && mayWrite;
  return (
    <section className="film-keep" aria-label="Keep">
      <button type="button" className="plain" onClick={() => void keepFilm(isKeeping && withStills)}>
        Keep as seen
      </button>
      {isKeeping && (
        <label className="check">
          <input
            type="checkbox"
            checked={withStills}
            onChange={({ currentTarget }) => setWithStills(currentTarget.checked)}
          />
          {WITH_STILLS}
        </label>
      )}
      {kept === undefined ? (
        <p className="fine">{isKeeping ? KEEP_WITH_LESSON : isOpen ? ANOTHER_TAB : KEEP_WITHOUT_LESSON}</p>
      ) : (
        <output className="fine">{kept}</output>
      )}
    </section>
  );
}
