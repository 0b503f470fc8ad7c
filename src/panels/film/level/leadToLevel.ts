import type { LevelFrame } from '../../../film/level';
import type { MarkedFrame, PlaceId, Sheet } from '../filmMarks';

/** Where the next marks at shaft parallel are to be made. */
export interface Lead {
  readonly sheet: Sheet;
  readonly place: PlaceId;
  readonly frame: number;
  /** Frames from the one that was marked to the first of the two. */
  readonly by: number;
}

/** How far outside the two frames level may be found before they are not the right ones: a camera is found to about a quarter of a frame. */
const SLACK = 0.5;

/** Whether two frames at shaft parallel are marked that do not stand on either side of level. */
export const isBesideLevel = ({ shaft, next }: Sheet, level: LevelFrame | undefined): boolean =>
  level?.isMarked === true &&
  shaft !== undefined &&
  next !== undefined &&
  (level.frame < shaft.frame - SLACK || level.frame > next.frame + SLACK);

/**
 * From a frame that is marked at shaft parallel to the two on either side of level; without knowing where that is, to the one after it. Marks that
 * are already on one of the two stay. `frames`: how many the film has.
 */
export function leadToLevel(sheet: Sheet, level: LevelFrame | undefined, frames: number): Lead | undefined {
  const { shaft, next } = sheet;
  if (!shaft || frames < 2) return undefined;
  const first = Math.max(0, Math.min(frames - 2, level ? Math.floor(level.frame) : shaft.frame));
  const known = (frame: number): MarkedFrame | undefined => [shaft, next].find((one) => one?.frame === frame);
  const [low, high] = [known(first), known(first + 1)];
  const by = first - shaft.frame;
  if (low) return { sheet: { ...sheet, shaft: low, next: high }, place: 'next', frame: first + 1, by };
  // Marks on frames farther away stay until the first new one is made.
  const marked = high ? { ...sheet, shaft: undefined, next: high } : sheet;
  return { sheet: marked, place: 'shaft', frame: first, by };
}
