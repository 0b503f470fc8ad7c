import type { DraftFrame, DraftMarks } from '../../film/draft';
import { MARK_SD, type Pixel, type PictureSize } from '../../film/marks';

/** What a frame is marked as. `next`: the frame after shaft parallel. */
export type PlaceId = 'address' | 'arm' | 'shaft' | 'next';

/** One mark to be made: its name in the list, and whether it belongs to the smallest useful set. */
export interface MarkSpec {
  readonly id: string;
  readonly label: string;
  readonly isCore: boolean;
}

const spec = (id: string, label: string, isCore = false): MarkSpec => ({ id, label, isCore });
const BODY = [
  spec('leadShoulder', 'Lead shoulder'),
  spec('leadElbow', 'Lead elbow'),
  spec('midHip', 'Middle of the hips'),
  spec('neck', 'Root of the neck'),
  spec('ball', 'Ball'),
];
const CLUB = [spec('hands', 'Hands', true), spec('clubHead', 'Club head', true)];
const TRAIL_ARM = [spec('trailShoulder', 'Trail shoulder'), spec('trailElbow', 'Trail elbow')];

/** Marks of each place, in the order in which they are best made. */
export const MARKS: Readonly<Record<PlaceId, readonly MarkSpec[]>> = {
  address: [
    spec('clubHead', 'Club head', true),
    spec('gripEnd', 'Grip end', true),
    spec('stickA', 'Stick, near end', true),
    spec('stickB', 'Stick, far end', true),
    spec('trailToe', 'Trail toe', true),
    spec('leadToe', 'Lead toe', true),
    spec('horizonA', 'Horizon, left'),
    spec('horizonB', 'Horizon, right'),
    spec('target', 'Target'),
    spec('uprightA', 'Upright edge, foot'),
    spec('uprightB', 'Upright edge, top'),
    spec('ball', 'Ball'),
  ],
  arm: [
    spec('hands', 'Hands', true),
    spec('clubHead', 'Shaft, head end', true),
    spec('trailShoulder', 'Trail shoulder', true),
    spec('trailElbow', 'Trail elbow', true),
    ...BODY,
  ],
  shaft: [...CLUB, ...TRAIL_ARM, ...BODY],
  next: [...CLUB, ...TRAIL_ARM, ...BODY],
};

/** A mark, and how it was made. */
export interface MadeMark {
  readonly at: Pixel;
  readonly how: 'tapped' | 'typed';
}
/** A frame with its marks, by their names. */
export interface MarkedFrame {
  readonly frame: number;
  readonly points: Readonly<Record<string, MadeMark>>;
  /** The shaft as it was found between hands and head. */
  readonly line?: readonly [Pixel, Pixel];
}
export type Sheet = Readonly<Record<PlaceId, MarkedFrame | undefined>>;
export const EMPTY_SHEET: Sheet = { address: undefined, arm: undefined, shaft: undefined, next: undefined };

/** What is said of the film as a whole. */
export interface FilmNotes {
  /** Undefined: nobody knows. */
  readonly fps: number | undefined;
  readonly isHandHeld: boolean;
  readonly isSleeved: boolean;
  /** m. */
  readonly heightM: number | undefined;
}

/** Standard deviation of a camera height that was typed, m: to 10 cm. */
const HEIGHT_SD = 0.05;

/** The marks as they are worked with. A left-handed player's picture is the mirror image, taken care of by who reads it. */
export function toDraft(sheet: Sheet, notes: FilmNotes, size: PictureSize): DraftMarks {
  const points = (place: PlaceId): Readonly<Record<string, Pixel>> =>
    Object.fromEntries(Object.entries(sheet[place]?.points ?? {}).map(([id, { at }]) => [id, at]));
  const { stickA, stickB, horizonA, horizonB, uprightA, uprightB, ...address } = points('address');
  const frame = (place: PlaceId): DraftFrame | undefined => {
    const marked = sheet[place];
    if (!marked) return undefined;
    return {
      frame: marked.frame,
      ...points(place),
      ...(marked.line && { shaft: marked.line.map(([u, v]) => [u, v, MARK_SD.refined]) as unknown as [Pixel, Pixel] }),
      ...(notes.isSleeved && { isSleeved: true }),
    };
  };
  const arm = frame('arm');
  const shaft = frame('shaft');
  const next = frame('next');
  return {
    size,
    ...(notes.fps !== undefined && { fps: notes.fps }),
    ...(notes.isHandHeld && { isHandHeld: true }),
    ...(notes.heightM !== undefined && { camera: { height: { value: notes.heightM, sd: HEIGHT_SD } } }),
    address: {
      ...address,
      ...(stickA && stickB && { stick: [stickA, stickB] as const }),
      ...(horizonA && horizonB && { horizon: [horizonA, horizonB] as const }),
      ...(uprightA && uprightB && { upright: [uprightA, uprightB] as const }),
    },
    ...(arm && { leadArmParallel: arm }),
    ...(shaft && { shaftParallel: next ? [shaft, next] : [shaft] }),
  };
}

/** The first mark of a place that is still to be made: of the smallest set, or undefined. */
export const nextMark = (place: PlaceId, marked: MarkedFrame | undefined): string | undefined =>
  MARKS[place].find(({ id, isCore }) => isCore && !marked?.points[id])?.id;
