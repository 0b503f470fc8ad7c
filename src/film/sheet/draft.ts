import type { AddressMarks, FilmMarks, FrameMarks } from '../marks';
import { findMissingForCamera, findMissingInFrame, type MissingMark } from './missing';

/** Marks as far as they were made. */
export type DraftMarks = Omit<FilmMarks, 'address' | 'leadArmParallel' | 'shaftParallel'> & {
  readonly address: Partial<AddressMarks>;
  readonly leadArmParallel?: DraftFrame;
  readonly shaftParallel?: readonly DraftFrame[];
};
export type DraftFrame = Partial<FrameMarks> & { readonly frame: number };

/** All that is missing for both readings, in the order in which it is best marked. */
export function findMissing({
  address,
  camera,
  leadArmParallel,
  shaftParallel = [],
  arePictures = false,
}: DraftMarks): readonly MissingMark[] {
  const [first, second] = shaftParallel;
  const next = first && !arePictures ? findMissingInFrame('shaftParallel', second) : [];
  return [
    ...findMissingForCamera(address, camera),
    ...findMissingInFrame('leadArmParallel', leadArmParallel),
    ...findMissingInFrame('shaftParallel', first),
    ...(next.length > 0 ? [{ at: 'shaftParallel', what: 'second' } as const] : []),
  ];
}

const isWhole = (at: 'leadArmParallel' | 'shaftParallel', frame: DraftFrame | undefined): frame is FrameMarks =>
  frame !== undefined && findMissingInFrame(at, frame).length === 0;

/** The marks that are complete enough to work with; undefined as long as the camera cannot be found. */
export function toWholeMarks(draft: DraftMarks): FilmMarks | undefined {
  const { address, leadArmParallel, shaftParallel = [], ...rest } = draft;
  if (findMissingForCamera(address, draft.camera).length > 0) return undefined;
  const frames = shaftParallel.filter((frame) => isWhole('shaftParallel', frame)) as readonly FrameMarks[];
  return {
    ...rest,
    address: address as AddressMarks,
    ...(isWhole('leadArmParallel', leadArmParallel) && { leadArmParallel }),
    ...(frames.length > 0 && { shaftParallel: frames }),
  };
}
