import type { DraftFrame, DraftMarks } from '../../film/sheet/draft';
import type { PlaceId } from '../../film/sheet/markNames';
import { MARK_SD, type Pixel, type PictureSize, type TypedCamera } from '../../film/marks';

export type { PlaceId } from '../../film/sheet/markNames';

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
  spec('leadToe', 'Lead toe'),
  spec('stickA', 'Stick, near end'),
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
  /** The address is an earlier film's: the coach says that the tripod has not moved. */
  readonly isTripodKept: boolean;
  /** Frame of impact, counted from 0. */
  readonly impact: number | undefined;
  /** Where the camera stands, m: above the ground, behind the hands, and to the right of them (negative: left). */
  readonly heightM: number | undefined;
  readonly distanceM: number | undefined;
  readonly sidewaysM: number | undefined;
}

/** Standard deviation of a place that was typed, m (to 10 cm), and of a distance, as a share of it (to 10 %). */
const TYPED_SD = { place: 0.05, distance: 0.05 };

/** The camera's place as far as it was typed. */
function toTyped({ heightM, distanceM, sidewaysM }: FilmNotes): TypedCamera {
  return {
    ...(heightM !== undefined && { height: { value: heightM, sd: TYPED_SD.place } }),
    ...(distanceM !== undefined && { distance: { value: distanceM, sd: TYPED_SD.distance * distanceM } }),
    ...(sidewaysM !== undefined && { sideways: { value: sidewaysM, sd: TYPED_SD.place } }),
  };
}

/** What is marked: one film, or pictures. */
type Film = PictureSize & { readonly kind: 'video' | 'picture' };

/** The marks as they are worked with. A left-handed player's picture is the mirror image, taken care of by who reads it. */
export function toDraft(sheet: Sheet, notes: FilmNotes, { kind, w, h }: Film): DraftMarks {
  const points = (place: PlaceId): Readonly<Record<string, Pixel>> =>
    Object.fromEntries(Object.entries(sheet[place]?.points ?? {}).map(([id, { at }]) => [id, at]));
  const { stickA, stickB, horizonA, horizonB, uprightA, uprightB, ...address } = points('address');
  const frame = (place: PlaceId): DraftFrame | undefined => {
    const marked = sheet[place];
    if (!marked) return undefined;
    const { stickA: stickEnd, ...others } = points(place);
    return {
      frame: marked.frame,
      ...others,
      ...(stickEnd && { stickEnd }),
      ...(marked.line && { shaft: marked.line.map(([u, v]) => [u, v, MARK_SD.refined]) as unknown as [Pixel, Pixel] }),
      ...(notes.isSleeved && { isSleeved: true }),
    };
  };
  const arm = frame('arm');
  const shaft = frame('shaft');
  const next = frame('next');
  return {
    size: { w, h },
    ...(kind === 'picture' && { arePictures: true }),
    ...(notes.fps !== undefined && { fps: notes.fps }),
    ...(notes.isHandHeld && { isHandHeld: true }),
    ...(notes.impact !== undefined && { impact: notes.impact }),
    camera: toTyped(notes),
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

/** What stands still at address, best first: marked once more, it shows whether the tripod has moved. */
const STANDS_STILL = ['stickA', 'ball', 'leadToe'] as const;
const CHECKED: readonly PlaceId[] = ['arm', 'shaft', 'next'];

/** The mark that is to show that a kept tripod still stands; undefined when one shows it already. */
function tripodCheck(sheet: Sheet, notes: Pick<FilmNotes, 'isTripodKept'>): string | undefined {
  if (!notes.isTripodKept) return undefined;
  const known = STANDS_STILL.filter((id) => sheet.address?.points[id]);
  return CHECKED.some((place) => known.some((id) => sheet[place]?.points[id])) ? undefined : known[0];
}

/** The first mark of a place that is still to be made: of the smallest set, or undefined. */
export function nextMark(place: PlaceId, sheet: Sheet, notes: Pick<FilmNotes, 'isTripodKept'>): string | undefined {
  const check = place === 'address' ? undefined : tripodCheck(sheet, notes);
  return check ?? MARKS[place].find(({ id, isCore }) => isCore && !sheet[place]?.points[id])?.id;
}
