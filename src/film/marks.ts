/**
 * A point of a picture: px right of and px below its top left corner, rotation of the file applied. Third, where it is known: standard
 * deviation, px.
 */
export type Pixel = readonly [number, number] | readonly [number, number, number];

/** Width and height of the picture, px. */
export interface PictureSize {
  readonly w: number;
  readonly h: number;
}

/** Where the camera stands, as typed: m, each with its standard deviation. From the hands at address; positive sideways: right. */
export interface TypedCamera {
  readonly height?: Typed;
  readonly distance?: Typed;
  readonly sideways?: Typed;
}
export interface Typed {
  readonly value: number;
  readonly sd: number;
}

/** The address frame: what stands still, and what the camera is found from. */
export interface AddressMarks {
  readonly clubHead: Pixel;
  readonly gripEnd: Pixel;
  /** Both ends of a stick on the ground along the target line, of any length. */
  readonly stick?: readonly [Pixel, Pixel];
  readonly trailToe?: Pixel;
  readonly leadToe?: Pixel;
  /** Two points at eye level far away. */
  readonly horizon?: readonly [Pixel, Pixel];
  /** The target itself, far away. */
  readonly target?: Pixel;
  /** The ball, or anything else that stands still and is marked again at the checkpoints. */
  readonly ball?: Pixel;
  /** Two points of an upright edge. */
  readonly upright?: readonly [Pixel, Pixel];
}

/** Points of the body. Each may be left out. */
export interface BodyMarks {
  readonly trailShoulder?: Pixel;
  readonly trailElbow?: Pixel;
  readonly leadShoulder?: Pixel;
  readonly leadElbow?: Pixel;
  readonly midHip?: Pixel;
  readonly neck?: Pixel;
}

/** One frame at a checkpoint. `hands`: the lead-grip centre. */
export interface FrameMarks extends BodyMarks {
  readonly frame: number;
  readonly hands: Pixel;
  readonly clubHead: Pixel;
  /** Two points on the shaft, found along it. Absent: hands and head stand for them. */
  readonly shaft?: readonly [Pixel, Pixel];
  /** What stands still since address: tells whether the camera moved. */
  readonly ball?: Pixel;
  readonly leadToe?: Pixel;
  /** An end of the stick at address. */
  readonly stickEnd?: Pixel;
  /** The coach's own words: standard deviation of the shoulder and the elbow grows to that of a sleeve. */
  readonly isSleeved?: boolean;
}

/** All that was marked in one film. */
export interface FilmMarks {
  readonly size: PictureSize;
  /** Frames a second, or absent when nobody knows: then the two frames at shaft parallel are next to each other in an unknown time. */
  readonly fps?: number;
  readonly address: AddressMarks;
  readonly camera?: TypedCamera;
  readonly leadArmParallel?: FrameMarks;
  /** Two neighbouring frames, on either side of level; one alone tells less. */
  readonly shaftParallel?: readonly FrameMarks[];
  /** Whether the camera was held in the hand. */
  readonly isHandHeld?: boolean;
  /** Frame of impact, as the coach sees it: the figure is drawn on to it. Tells nothing else. */
  readonly impact?: number;
  /** Single pictures: their numbers say nothing about time. */
  readonly arePictures?: boolean;
}

/** Standard deviations of marks, px, by how they were made (measured on encoded clips). */
export const MARK_SD = { tapped: 3, refined: 2, moving: 6 } as const;

/** How far the body's marks lie from the points they stand for, m, standard deviation: joints are under skin and cloth (our estimate). */
export const LANDMARK_SD = { joint: 0.02, sleeved: 0.045, trunk: 0.03, hands: 0.01, club: 0.005, toe: 0.01 } as const;

/** The same marks in the mirrored picture: a left-handed player's become a right-handed one's. */
export function mirrorMarks(marks: FilmMarks): FilmMarks {
  const { w } = marks.size;
  const flip = (value: unknown): unknown => {
    if (Array.isArray(value)) {
      return typeof value[0] === 'number' ? [w - value[0], ...(value.slice(1) as number[])] : value.map(flip);
    }
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, flip(each)]));
  };
  const { camera, size } = marks;
  const mirrored = flip(marks) as FilmMarks;
  const { sideways } = camera ?? {};
  return {
    ...mirrored,
    size,
    ...(camera && {
      camera: { ...camera, ...(sideways && { sideways: { value: -sideways.value, sd: sideways.sd } }) },
    }),
  };
}
