import { LEVEL, sayBesideLevel } from '../../../words/film/level';
import { goToLevel } from '../filmActions';
import { useFilm } from '../filmStore';
import { isBesideLevel } from './leadToLevel';

/** Whether the marked frames stand on either side of level, and the way to those that do. */
export function LevelLine() {
  const note = useFilm((film) => film.levelNote);
  const sheet = useFilm((film) => film.sheet);
  const answer = useFilm((film) => film.answer);
  const isShaft = useFilm(({ place }) => place === 'shaft' || place === 'next');
  const level = answer && 'camera' in answer ? answer.level : undefined;
  if (!isShaft) return null;
  if (level && isBesideLevel(sheet, level)) {
    return (
      <div className="film-level">
        <output className="fine">{sayBesideLevel(level.frame)}</output>
        <button type="button" className="plain" onClick={goToLevel}>
          {LEVEL.go}
        </button>
      </div>
    );
  }
  return note === undefined ? null : <output className="fine">{note}</output>;
}
