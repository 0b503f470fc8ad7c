import { rad } from '../../math/angle';
import type { Place } from '../lines/lineBatch';

/** Where a camera stands: it looks from `distance` (m) at `target`; yaw 0 looks from the ball's side, turning toward the target side. */
export interface View {
  readonly target: Place;
  /** rad; 0 stands on +Z, +90 deg on +X (the target's side). */
  readonly yaw: number;
  /** rad above the horizon. */
  readonly pitch: number;
  readonly distance: number;
  /** Vertical field of view, rad. */
  readonly fov: number;
}

/** The directions of the fixed views. A right-handed player; a left-handed one is the mirror image. */
export const DIRECTIONS = {
  free: { yaw: rad(-48.6), pitch: rad(10.1), fov: rad(29.3) },
  downTheLine: { yaw: rad(-90), pitch: rad(1.8), fov: rad(23) },
  faceOn: { yaw: rad(0), pitch: rad(1.8), fov: rad(24) },
  overhead: { yaw: rad(0), pitch: rad(89), fov: rad(26) },
} as const;
export type Direction = (typeof DIRECTIONS)[keyof typeof DIRECTIONS];

export const PITCH_LIMITS = { min: rad(-4), max: rad(89) } as const;
export const DISTANCE_LIMITS = { min: 0.7, max: 14 } as const;

/** From the target to the eye, unit. */
export function eyeDirection({ yaw, pitch }: Pick<View, 'yaw' | 'pitch'>): Place {
  const flat = Math.cos(pitch);
  return [Math.sin(yaw) * flat, Math.sin(pitch), Math.cos(yaw) * flat];
}

/** Space of the picture's edges that stays free, css px. */
export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Centre of the body: the depth at which a fitted view turns. */
const PIVOT: Place = [0, 0.9, 0.25];

/** What a picture less its insets shows: how far a point may lie off the middle, as a share of its depth. */
interface Sides {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function sidesOf(fov: number, width: number, height: number, insets: Insets): Sides {
  const tan = Math.tan(fov / 2);
  const wide = (tan * width) / height;
  return {
    left: wide * (1 - (2 * insets.left) / width),
    right: wide * (1 - (2 * insets.right) / width),
    top: tan * (1 - (2 * insets.top) / height),
    bottom: tan * (1 - (2 * insets.bottom) / height),
  };
}

/** The picture's own axes: to its right, up, and back toward the eye. Unit. */
function axesOf(direction: Pick<View, 'yaw' | 'pitch'>): { right: Place; up: Place; back: Place } {
  const back = eyeDirection(direction);
  const right: Place = [Math.cos(direction.yaw), 0, -Math.sin(direction.yaw)];
  const up: Place = [
    back[1] * right[2] - back[2] * right[1],
    back[2] * right[0] - back[0] * right[2],
    back[0] * right[1] - back[1] * right[0],
  ];
  return { right, up, back };
}

/** The eye stands at least so far in front of the nearest point, m: points in one line of sight ask for no room at the sides. */
const NEAREST = 0.2;

/**
 * The nearest view along a direction in which every point (three numbers each, m) lies inside the picture less its insets.
 * Exact for a pinhole: each side of the picture gives one bound on where the eye may stand.
 */
export function fitView(
  direction: Direction,
  points: ArrayLike<number>,
  width: number,
  height: number,
  insets: Insets,
): View {
  const { right, up, back } = axesOf(direction);
  const sides = sidesOf(direction.fov, width, height, insets);
  const at = (i: number, axis: Place): number =>
    points[i] * axis[0] + points[i + 1] * axis[1] + points[i + 2] * axis[2];
  let [mostRight, mostLeft, mostUp, mostDown] = [-Infinity, Infinity, -Infinity, Infinity];
  let nearest = Infinity;
  for (let i = 0; i < points.length; i += 3) {
    const depth = -at(i, back);
    mostRight = Math.max(mostRight, at(i, right) - depth * sides.right);
    mostLeft = Math.min(mostLeft, at(i, right) + depth * sides.left);
    mostUp = Math.max(mostUp, at(i, up) - depth * sides.top);
    mostDown = Math.min(mostDown, at(i, up) + depth * sides.bottom);
    nearest = Math.min(nearest, depth);
  }
  const z = Math.min(
    nearest - NEAREST,
    (mostLeft - mostRight) / (sides.left + sides.right),
    (mostDown - mostUp) / (sides.top + sides.bottom),
  );
  const x = (mostRight + z * sides.right + mostLeft - z * sides.left) / 2;
  const y = (mostUp + z * sides.top + mostDown - z * sides.bottom) / 2;
  const pivotDepth = -(PIVOT[0] * back[0] + PIVOT[1] * back[1] + PIVOT[2] * back[2]);
  const distance = pivotDepth - z;
  const target = [0, 1, 2].map((i) => right[i] * x + up[i] * y - back[i] * pivotDepth) as unknown as Place;
  return { target, yaw: direction.yaw, pitch: direction.pitch, distance, fov: direction.fov };
}

/** Whether every point (three numbers each, m) lies inside the picture less its insets. */
export function holdsAll(
  view: View,
  points: ArrayLike<number>,
  width: number,
  height: number,
  insets: Insets,
): boolean {
  const { right, up, back } = axesOf(view);
  const sides = sidesOf(view.fov, width, height, insets);
  const [ex, ey, ez] = [0, 1, 2].map((i) => view.target[i] + back[i] * view.distance);
  const off = (i: number, axis: Place): number =>
    (points[i] - ex) * axis[0] + (points[i + 1] - ey) * axis[1] + (points[i + 2] - ez) * axis[2];
  for (let i = 0; i < points.length; i += 3) {
    const depth = -off(i, back);
    const [x, y] = [off(i, right), off(i, up)];
    // A micrometre: the points that made the view lie on its edges.
    const hair = 1e-6;
    if (depth <= 0 || x > depth * sides.right + hair || -x > depth * sides.left + hair) return false;
    if (y > depth * sides.top + hair || -y > depth * sides.bottom + hair) return false;
  }
  return true;
}

/** How far from the middle of the scene the target may be moved along each axis, m. */
export const REACH = { min: -2.5, max: 2.5 } as const;
