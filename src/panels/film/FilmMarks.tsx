import { filmStore, useFilm } from './filmStore';
import { clearMark, clearMarks, setMark, setNotes } from './filmActions';
import { MARKS } from './filmMarks';
import { Earlier } from './kept/Earlier';
import { LevelLine } from './level/LevelLine';
import { Loupe } from './Loupe';
import { TRIPOD_KEPT } from '../../words/film/kept';
import { NumberField } from '../fields/NumberField';
import { ALL_MARKED, ENTER_FRAMES, ENTER_PIXELS, TYPED_PLACE } from '../../words/film/film';
import { minus } from '../../words/numbers/ranges';

const ARROWS = [
  ['←', 'left', -1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
  ['→', 'right', 1, 0],
] as const;

/** Where the camera stands, as it can be typed. */
const TYPED = [
  { id: 'heightM', label: 'Height, to 10 cm', from: 0.05, to: 5 },
  { id: 'distanceM', label: 'Behind the hands, to 10 %', from: 1, to: 50 },
  { id: 'sidewaysM', label: 'Right of the hands, to 10 cm', from: -10, to: 10 },
] as const;

/** The loupe, small steps for the chosen mark, and the list of marks of this frame. */
export function FilmMarks() {
  const place = useFilm((film) => film.place);
  const active = useFilm((film) => film.active);
  const marked = useFilm((film) => film.sheet[film.place]);
  const lineNote = useFilm((film) => film.lineNote);
  const notes = useFilm((film) => film.notes);
  const frame = useFilm((film) => film.frame);
  const isHere = marked?.frame === frame || (place === 'address' && notes.isTripodKept);
  const specs = MARKS[place];
  const chosen = specs.find(({ id }) => id === active);
  const mark = active === undefined || !isHere ? undefined : marked?.points[active];
  const type = (axis: 0 | 1) => (typed: number | undefined) => {
    if (typed === undefined || !mark) return ENTER_PIXELS;
    setMark(axis === 0 ? [typed, mark.at[1]] : [mark.at[0], typed], 'typed');
    return undefined;
  };
  return (
    <div className="film-marks">
      <Loupe />
      <Earlier />
      <p className="film-now">{chosen ? `${chosen.label}.` : ALL_MARKED}</p>
      <fieldset className="film-nudge" aria-label="Move the mark by a pixel">
        {ARROWS.map(([text, name, dx, dy]) => (
          <button
            key={name}
            type="button"
            className="plain"
            aria-label={`One pixel ${name}`}
            aria-disabled={!mark}
            onClick={({ shiftKey }) => {
              const by = shiftKey ? 10 : 1;
              if (mark) setMark([mark.at[0] + by * dx, mark.at[1] + by * dy]);
            }}
          >
            {text}
          </button>
        ))}
      </fieldset>
      {place === 'arm' && lineNote !== undefined && <output className="fine">{lineNote}</output>}
      <LevelLine />
      {notes.isTripodKept && <p className="fine">{TRIPOD_KEPT}</p>}
      <ul className="film-list">
        {specs.map(({ id, label, isCore }) => (
          <li key={id}>
            <button
              type="button"
              aria-pressed={active === id}
              data-made={(isHere && marked?.points[id] !== undefined) || undefined}
              onClick={() => filmStore.setState({ active: id })}
            >
              <i aria-hidden="true" /> {label}
              {!isCore && <small> if seen</small>}
            </button>
            {isHere && marked?.points[id] && (
              <button type="button" className="text-button" onClick={() => clearMark(id)}>
                Clear<span className="unseen">: {label}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      <details>
        <summary>Numbers and notes</summary>
        {mark && (
          <div className="fields film-typed">
            <NumberField label="x" unit="px" decimals={1} value={mark.at[0]} onTake={type(0)} />
            <NumberField label="y" unit="px" decimals={1} value={mark.at[1]} onTake={type(1)} />
          </div>
        )}
        <label className="check">
          <input
            type="checkbox"
            checked={notes.isHandHeld}
            onChange={({ currentTarget }) => setNotes({ isHandHeld: currentTarget.checked })}
          />
          Held in the hand
        </label>
        <label className="check">
          <input
            type="checkbox"
            checked={notes.isSleeved}
            onChange={({ currentTarget }) => setNotes({ isSleeved: currentTarget.checked })}
          />
          A sleeve hides the trail arm
        </label>
        <NumberField
          label="Frames a second, as filmed"
          unit="/s"
          decimals={0}
          optional
          placeholder="not known"
          value={notes.fps}
          onTake={(typed) => {
            if (typed !== undefined && !(typed >= 1 && typed <= 2000)) return ENTER_FRAMES;
            setNotes({ fps: typed });
            return undefined;
          }}
        />
        <p className="fine">{TYPED_PLACE}</p>
        {TYPED.map(({ id, label, from, to }) => (
          <NumberField
            key={id}
            label={label}
            unit="m"
            decimals={2}
            optional
            placeholder="not measured"
            value={notes[id]}
            onTake={(typed) => {
              if (typed !== undefined && !(typed >= from && typed <= to)) {
                return `Enter ${minus(from)} to ${to} m, or leave it empty.`;
              }
              setNotes({ [id]: typed });
              return undefined;
            }}
          />
        ))}
        <button type="button" className="plain" onClick={clearMarks}>
          Clear all marks
        </button>
      </details>
    </div>
  );
}
