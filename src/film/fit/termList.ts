import { MARK_SD, type Pixel } from '../marks';

/** Writes what a mark asks of the unknowns `x`, each in its own standard deviations, from `at` on. Allocates nothing. */
type Write = (x: Float64Array, out: Float64Array, at: number) => void;

/** One mark, by its name, with as many numbers as it asks for. */
interface Term {
  readonly name: string;
  readonly size: number;
  readonly write: Write;
}

/** Everything that is asked of the unknowns, in the order in which it was added. */
export interface TermList {
  readonly terms: readonly Term[];
  /** Where the last point was seen, px: what `point` compares with its mark. */
  readonly image: Float64Array;
  add(name: string, size: number, write: Write): void;
  /** A mark of a point. `place` writes its image; `physical`: how far the mark may lie from it on the player, m, standard deviation. */
  point(name: string, mark: Pixel, physical: number, place: (x: Float64Array) => void, usualPx?: number): void;
  /** Standard deviation of a mark, px, its own and what lies on the player together. */
  sdOf(mark: Pixel, physical: number, usualPx?: number): number;
}

/** An empty list. `pxPerM`: about how large a metre is at the player. */
export function createTermList(pxPerM: number): TermList {
  const terms: Term[] = [];
  const image = new Float64Array(2);
  const add = (name: string, size: number, write: Write): void => void terms.push({ name, size, write });
  const sdOf = (mark: Pixel, physical: number, usualPx: number = MARK_SD.tapped): number =>
    Math.hypot(mark[2] ?? usualPx, physical * pxPerM);
  return {
    terms,
    image,
    add,
    sdOf,
    point(name, mark, physical, place, usualPx) {
      const sd = sdOf(mark, physical, usualPx);
      const [u, v] = mark;
      add(name, 2, (x, out, at) => {
        place(x);
        out[at] = (image[0] - u) / sd;
        out[at + 1] = (image[1] - v) / sd;
      });
    },
  };
}
