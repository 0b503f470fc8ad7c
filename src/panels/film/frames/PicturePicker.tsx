import { useFilm } from '../filmStore';
import { goToPicture } from './goToPicture';

/** From picture to picture, where pictures are read instead of a film. */
export function PicturePicker({ count }: { count: number }) {
  const frame = useFilm((film) => film.frame);
  return (
    <fieldset className="film-pictures" aria-label="Picture">
      {Array.from({ length: count }, (_, i) => (
        <button key={i} type="button" className="plain" aria-pressed={frame === i} onClick={() => goToPicture(i)}>
          Picture {i + 1}
        </button>
      ))}
    </fieldset>
  );
}
