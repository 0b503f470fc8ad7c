import type { Pose } from '../model/chain';
import { MATRIX_SIZE } from './partIds';

/** Points and directions as float64, written in place: placing a figure allocates nothing. */
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

/** `out` = `a` + `b` times `share`. Any units. */
export function along(out: Vec, a: Vec, b: Vec, share: number): Vec {
  for (let i = 0; i < 3; i++) out[i] = a[i] + b[i] * share;
  return out;
}

const x = vec();
const z = vec();
const y = vec();

/**
 * Writes the matrix of one part: origin `o` (m), +Y along `direction`, +Z as near to `front` as that allows, x completing a
 * right-handed frame. `stretch` lengthens the y axis. A zero direction or a front along it still gives a frame, never NaN.
 */
export function setFrame(out: Float64Array, part: number, o: Vec, direction: Vec, front: Vec, stretch = 1): void {
  toUnit(y, direction, 0, 1, 0);
  const dot = y[0] * front[0] + y[1] * front[1] + y[2] * front[2];
  for (let i = 0; i < 3; i++) z[i] = front[i] - y[i] * dot;
  if (z[0] * z[0] + z[1] * z[1] + z[2] * z[2] < 1e-12) {
    // The hint lies along the part: take the world axis furthest from it.
    const pick = Math.abs(y[2]) < 0.7 ? 2 : 0;
    for (let i = 0; i < 3; i++) z[i] = (i === pick ? 1 : 0) - y[i] * y[pick];
  }
  toUnit(z, z, 0, 0, 1);
  cross(x, y, z);
  const at = part * MATRIX_SIZE;
  for (let i = 0; i < 3; i++) {
    out[at + i] = x[i];
    out[at + 3 + i] = y[i] * stretch;
    out[at + 6 + i] = z[i];
    out[at + 9 + i] = o[i];
  }
}

/** As `setFrame`, but +X keeps `hinge` exactly and +Y comes as near to `direction` as that allows: for pinned balls. */
export function setHinge(out: Float64Array, part: number, o: Vec, hinge: Vec, direction: Vec): void {
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
export function toUnit(out: Vec, a: Vec, fx: number, fy: number, fz: number): Vec {
  const size = Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
  if (size > 1e-9) {
    for (let i = 0; i < 3; i++) out[i] = a[i] / size;
  } else {
    out[0] = fx;
    out[1] = fy;
    out[2] = fz;
  }
  return out;
}

/** `out` = `a` cross `b`. */
export function cross(out: Vec, a: Vec, b: Vec): Vec {
  const c0 = a[1] * b[2] - a[2] * b[1];
  const c1 = a[2] * b[0] - a[0] * b[2];
  const c2 = a[0] * b[1] - a[1] * b[0];
  out[0] = c0;
  out[1] = c1;
  out[2] = c2;
  return out;
}

/** Dot product. */
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** `out` = `a` minus `b`. */
export function minus(out: Vec, a: Vec, b: Vec): Vec {
  for (let i = 0; i < 3; i++) out[i] = a[i] - b[i];
  return out;
}

/** `out` between `a` (share 0) and `b` (share 1). */
export function mix(out: Vec, a: Vec, b: Vec, share: number): Vec {
  for (let i = 0; i < 3; i++) out[i] = a[i] + (b[i] - a[i]) * share;
  return out;
}
