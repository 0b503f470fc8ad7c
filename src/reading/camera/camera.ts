import { vec3 } from 'gl-matrix';
import { rad, type Rad } from '../../math/angle';
import { AT, type Pose } from '../../model/pose';

/** The two views the trade films from. Both also exist without a camera: orthographic, as every reading is defined. */
export type CameraView = 'downTheLine' | 'faceOn';

/**
 * A camera as a coach sets up a tripod, in the model's frame: a left-handed player's is the mirror image (offset, aim and roll change
 * sign). Right means right as seen from behind the camera: toward the ball line down the line, toward the target face on.
 */
export interface Tripod {
  /** m from what the camera faces, along the ground. Down the line: behind the hands at address. Face on: in front of the ball line. */
  readonly distance: number;
  /** m above the ground. */
  readonly height: number;
  /**
   * m off the correct line (common practice). Zero: down the line on the line of the hands at address, face on opposite the middle of
   * the stance. Positive: right.
   */
  readonly offset: number;
  /** rad about the vertical. Zero: aimed at the hands at address. Positive: right of them. */
  readonly aim: Rad;
  /** rad about the line of sight. Zero: level. Positive: clockwise as seen from behind the camera. */
  readonly roll: Rad;
  /** Vertical field of view, rad. Decides what the picture holds; no reading depends on it. */
  readonly field: Rad;
}

/** Where a player stands at address: what a camera is set up by. World points, m. */
export interface Address {
  readonly hands: Place;
  readonly ball: Place;
}
type Place = readonly [number, number, number];

/** A pinhole in the world: where it is, its own unit axes, and the tangent of half its vertical field of view. */
export interface Lens {
  readonly eye: Place;
  readonly right: Place;
  readonly up: Place;
  readonly forward: Place;
  readonly halfField: number;
}

/** Width over height of the picture: a phone held upright. */
export const PICTURE_ASPECT = 9 / 16;

/** A point nearer than this in front of the pinhole, or behind it, has no image, m. */
const NEAREST = 0.05;
/** Directions shorter than this have no direction. */
const NOTHING = 1e-9;

/** Three numbers in double precision to write a vector into. */
type Writable = [number, number, number];
const cross = (a: Place, b: Place): Place => vec3.cross([0, 0, 0], a, b) as Writable;
/** `p` times `a` plus `q` times `b`. */
const mix = (a: Place, p: number, b: Place, q: number): Place => {
  const out: Writable = [0, 0, 0];
  return vec3.scaleAndAdd(out, vec3.scale(out, a, p), b, q) as Writable;
};
const UP: Place = [0, 1, 0];
/** Along the ground, from the camera to the player, and to the camera's right. */
const FACING: Readonly<Record<CameraView, { readonly ahead: Place; readonly right: Place }>> = {
  downTheLine: { ahead: [1, 0, 0], right: [0, 0, 1] },
  faceOn: { ahead: [0, 0, -1], right: [1, 0, 0] },
};

/** Where the pinhole of a view's tripod is, world, m. */
function eyeOf(view: CameraView, { distance, height, offset }: Tripod, { hands, ball }: Address): Place {
  const { ahead, right } = FACING[view];
  // The correct line runs through the hands, or, face on, opposite the middle of the stance (the origin) from the ball line on.
  const foot: Place = view === 'downTheLine' ? [hands[0], 0, hands[2]] : [0, 0, ball[2]];
  const at = mix(ahead, -distance, right, offset);
  return [foot[0] + at[0], height, foot[2] + at[2]];
}

/**
 * The pinhole of a tripod: aimed at the hands at address, turned by its aim and roll. A camera that stands in the hands themselves, or
 * right above them, looks along its view.
 */
export function standCamera(view: CameraView, tripod: Tripod, address: Address): Lens {
  const eye = eyeOf(view, tripod, address);
  const to = vec3.subtract([0, 0, 0], address.hands, eye);
  const flat = Math.hypot(to[0], to[2]);
  const { ahead } = FACING[view];
  const level: Place = flat < NOTHING ? ahead : [to[0] / flat, 0, to[2] / flat];
  // Turned right about the vertical: from +X toward +Z.
  const [sin, cos] = [Math.sin(tripod.aim), Math.cos(tripod.aim)];
  const aimed: Place = [level[0] * cos - level[2] * sin, 0, level[2] * cos + level[0] * sin];
  const reach = flat < NOTHING ? 1 : Math.hypot(flat, to[1]);
  const [fall, run] = flat < NOTHING ? [0, 1] : [to[1] / reach, flat / reach];
  const forward = mix(aimed, run, UP, fall);
  const levelRight = cross(aimed, UP);
  const levelUp = cross(levelRight, forward);
  const [turn, hold] = [Math.sin(tripod.roll), Math.cos(tripod.roll)];
  return {
    eye,
    forward,
    right: mix(levelRight, hold, levelUp, -turn),
    up: mix(levelUp, hold, levelRight, turn),
    halfField: Math.tan(tripod.field / 2),
  };
}

/** A point's image: right and up of the middle of the picture as shares of its depth, and that depth along the line of sight, m. */
export interface Image {
  readonly right: number;
  readonly up: number;
  readonly depth: number;
}

/** Image of the point that stands at `at` in a pose; undefined behind the camera or closer than `NEAREST`. */
export function findImage({ eye, right, up, forward }: Lens, pose: Pose, at: number): Image | undefined {
  const x = pose[at] - eye[0];
  const y = pose[at + 1] - eye[1];
  const z = pose[at + 2] - eye[2];
  const depth = x * forward[0] + y * forward[1] + z * forward[2];
  // Not a number fails as well.
  if (!(depth >= NEAREST)) return undefined;
  return {
    right: (x * right[0] + y * right[1] + z * right[2]) / depth,
    up: (x * up[0] + y * up[1] + z * up[2]) / depth,
    depth,
  };
}

/** Points that have to be in a picture to be read on it. */
const READ_POINTS = [AT.leadGrip, AT.head, AT.bicep, AT.pelvis, AT.midShoulder, AT.leadShoulder] as const;

/** Whether the picture of this lens holds all that is read on a pose. */
export function holdsPose(lens: Lens, pose: Pose): boolean {
  return READ_POINTS.every((at) => {
    const image = findImage(lens, pose, at);
    return (
      image !== undefined &&
      Math.abs(image.up) <= lens.halfField &&
      Math.abs(image.right) <= lens.halfField * PICTURE_ASPECT
    );
  });
}

/** Common practice, no published source: hand height and four metres back down the line, chest height face on. */
export const USUAL_TRIPODS: Readonly<Record<CameraView, Tripod>> = {
  downTheLine: { distance: 4, height: 0.8, offset: 0, aim: 0, roll: 0, field: rad(60) },
  faceOn: { distance: 4, height: 1, offset: 0, aim: 0, roll: 0, field: rad(60) },
};
