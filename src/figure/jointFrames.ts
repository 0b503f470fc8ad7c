import { vec3, type ReadonlyVec3 } from 'gl-matrix';
import type { Pose } from '../model/chain';
import { MATRIX_SIZE } from './partIds';

/**
 * Points and directions as float64, written in place: placing a figure allocates nothing. The library's own `vec3.create` would make
 * float32 ones.
 */
export type Vec = Float64Array;
/** A fresh zero vector. Not for hot paths. */
export const vec = (x = 0, y = 0, z = 0): Vec => Float64Array.of(x, y, z);

/** Copies three numbers of a pose from offset `at` into `out`. */
export function readPose(pose: Pose, at: number, out: Vec): Vec {
  out[0] = pose[at];
  out[1] = pose[at + 1];
  out[2] = pose[at + 2];
  return out;
}

const x = vec();
const z = vec();
const y = vec();
const X = vec(1, 0, 0);
const Z = vec(0, 0, 1);

/**
 * Writes the matrix of one part: origin `o` (m), +Y along `direction`, +Z as near to `front` as that allows, x completing a
 * right-handed frame. `stretch` lengthens the y axis. A zero direction or a front along it still gives a frame, never NaN.
 */
export function setFrame(
  out: Float64Array,
  part: number,
  o: ReadonlyVec3,
  direction: ReadonlyVec3,
  front: ReadonlyVec3,
  stretch = 1,
): void {
  toUnit(y, direction, 0, 1, 0);
  vec3.scaleAndAdd(z, front, y, -vec3.dot(y, front));
  if (vec3.squaredLength(z) < 1e-12) {
    // The hint lies along the part: take the world axis furthest from it.
    const axis = Math.abs(y[2]) < 0.7 ? Z : X;
    vec3.scaleAndAdd(z, axis, y, -vec3.dot(y, axis));
  }
  toUnit(z, z, 0, 0, 1);
  vec3.cross(x, y, z);
  const at = part * MATRIX_SIZE;
  for (let i = 0; i < 3; i++) {
    out[at + i] = x[i];
    out[at + 3 + i] = y[i] * stretch;
    out[at + 6 + i] = z[i];
    out[at + 9 + i] = o[i];
  }
}

/** As `setFrame`, but +X keeps `hinge` exactly and +Y comes as near to `direction` as that allows: for pinned balls. */
export function setHinge(
  out: Float64Array,
  part: number,
  o: ReadonlyVec3,
  hinge: ReadonlyVec3,
  direction: ReadonlyVec3,
): void {
  setFrame(out, part, o, hinge, direction);
  const at = part * MATRIX_SIZE;
  // The frame came out as (x, hinge, direction); turn it to (hinge, direction, x), a cyclic change that keeps the hand.
  for (let i = 0; i < 3; i++) {
    const side = out[at + i];
    out[at + i] = out[at + 3 + i];
    out[at + 3 + i] = out[at + 6 + i];
    out[at + 6 + i] = side;
  }
}

/** `out` = unit vector of `a`, or the fallback when `a` has no length. */
export function toUnit(out: Vec, a: ReadonlyVec3, fx: number, fy: number, fz: number): Vec {
  const size = vec3.length(a);
  if (size > 1e-9) vec3.scale(out, a, 1 / size);
  else vec3.set(out, fx, fy, fz);
  return out;
}
