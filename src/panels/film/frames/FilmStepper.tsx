import { goTo, setPlace } from '../filmActions';
import { MARKS, type PlaceId } from '../filmMarks';
import { useFilm } from '../filmStore';
import { PicturePicker } from './PicturePicker';

/** Frames beside the shown one on the fine scale. */
const FINE = 12;
const PLACES: readonly { readonly id: PlaceId; readonly text: string }[] = [
  { id: 'address', text: 'Address' },
  { id: 'arm', text: 'Lead arm parallel' },
  { id: 'shaft', text: 'Shaft parallel' },
  { id: 'next', text: 'Frame after' },
];

/** From frame to frame: coarse over the whole film, fine around the shown one, one at a time. */
export function FilmStepper() {
  const video = useFilm((film) => film.video);
  const frame = useFilm((film) => film.frame);
  const place = useFilm((film) => film.place);
  const sheet = useFilm((film) => film.sheet);
  const fps = useFilm(({ notes }) => notes.fps);
  const problem = useFilm((film) => film.problem);
  if (!video) return null;
  const { frames, kind } = video.info;
  const isFilm = kind === 'video';
  const places = isFilm ? PLACES : PLACES.filter(({ id }) => id !== 'next');
  const fine = Array.from({ length: 2 * FINE + 1 }, (_, i) => frame - FINE + i);
  return (
    <div className="film-stepper">
      {!isFilm && frames > 1 && <PicturePicker count={frames} />}
      {isFilm && frames > 1 && (
        <>
          <div className="film-steps">
            <button type="button" className="plain" aria-label="One frame back" onClick={() => void goTo(frame - 1)}>
              ‹
            </button>
            <button type="button" className="plain" aria-label="One frame on" onClick={() => void goTo(frame + 1)}>
              ›
            </button>
          </div>
          <div className="film-scales">
            <input
              type="range"
              aria-label="Frame"
              min={0}
              max={frames - 1}
              value={frame}
              aria-valuetext={`Frame ${frame + 1} of ${frames}`}
              onChange={({ currentTarget }) => void goTo(Number(currentTarget.value))}
            />
            <div className="film-fine" aria-hidden="true">
              {fine.map((at) => (
                <button
                  key={at}
                  type="button"
                  tabIndex={-1}
                  disabled={at < 0 || at >= frames}
                  data-now={at === frame || undefined}
                  data-marked={PLACES.some(({ id }) => sheet[id]?.frame === at) || undefined}
                  onClick={() => void goTo(at)}
                >
                  {at >= 0 && at < frames && (at === frame || ((at + 1) % 5 === 0 && Math.abs(at - frame) > 2))
                    ? at + 1
                    : ''}
                </button>
              ))}
            </div>
          </div>
        </>
      )}
      <div className="film-place">
        <p>
          {isFilm && frames > 1 ? (
            <>
              Frame <b>{frame + 1}</b> of {frames}
              {fps !== undefined && `, ${Math.round(fps)} a second`}. It is
            </>
          ) : (
            'This picture is'
          )}
        </p>
        {problem !== undefined && <output className="film-problem">{problem}</output>}
        <fieldset className="film-places" aria-label="What the frame is">
          {places.map(({ id, text }) => (
            <button
              key={id}
              type="button"
              aria-pressed={place === id}
              data-done={MARKS[id].every(({ id: mark, isCore }) => !isCore || sheet[id]?.points[mark]) || undefined}
              onClick={() => setPlace(id)}
            >
              {text}
            </button>
          ))}
        </fieldset>
      </div>
    </div>
  );
}
