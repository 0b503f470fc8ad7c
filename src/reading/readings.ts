import { AT, type Pose } from '../model/chain';

// All readings are in the world frame of the chain, radians and metres. "Down the line" is the view along +X, orthographic.
const X = 0;
const Y = 1;
const Z = 2;
const C = AT.shaftDirection;
const H = AT.leadGrip;

/** Pitch of the shaft, rad. Zero: parallel to the ground. Positive: head above the hands. */
export const shaftPitch = (p: Pose): number => Math.asin(Math.max(-1, Math.min(1, p[C + Y])));

/** A shaft that rises or falls by less counts as level: an event found to the last digit may lie on either side. */
const LEVEL = 1e-7;

/**
 * Angle of the shaft seen down the line, rad. A quarter turn: upright. Less: lies behind the player. More: tips out over the ball; level
 * and in front is half a turn, never minus half a turn.
 */
export function shaftPlane(p: Pose): number {
  const up = p[C + Y];
  return Math.atan2(Math.abs(up) < LEVEL ? 0 : up, -p[C + Z]);
}

/**
 * Distance down the line from the infinite shaft line to the centre of the trail upper arm, m.
 * Positive: the line passes above or in front of the bicep (steep). Negative: below or behind it. Continuous through an upright shaft.
 * NaN when the shaft points straight at the viewer: seen so it is no line.
 */
export function bicepGap(p: Pose): number {
  const dy = p[AT.bicep + Y] - p[H + Y];
  const dz = p[AT.bicep + Z] - p[H + Z];
  const cy = p[C + Y];
  const cz = p[C + Z];
  const seen = Math.sqrt(cy * cy + cz * cz);
  return seen < 1e-12 ? NaN : (dy * cz - dz * cy) / seen;
}

/**
 * Where the shaft line crosses the trail upper arm down the line, dimensionless. 0: shoulder. 0.5: bicep centre. 1: elbow.
 * May lie outside 0..1. NaN when the line runs along the upper arm.
 */
export function bicepCrossing(p: Pose): number {
  const s = AT.trailShoulder;
  const e = AT.trailElbow;
  const across = (p[e + Y] - p[s + Y]) * p[C + Z] - (p[e + Z] - p[s + Z]) * p[C + Y];
  const start = (p[s + Y] - p[H + Y]) * p[C + Z] - (p[s + Z] - p[H + Z]) * p[C + Y];
  return Math.abs(across) < 1e-12 ? NaN : -start / across;
}

/** How far the head lies in front of the hands, down the line, m. Zero: covers them. Positive: toward the ball, the steep side. */
export const headDepth = (p: Pose): number => p[AT.head + Z] - p[H + Z];

/** Horizontal aim of the shaft, butt to target, rad. Positive: right of the target. Meant for a head that trails the hands. */
export const shaftAim = (p: Pose): number => Math.atan2(-p[C + Z], -p[C + X]);

/** Tilt of the face normal against the horizontal, rad. Positive: looks below it (closed). */
export const faceToVertical = (p: Pose): number => -Math.asin(Math.max(-1, Math.min(1, p[AT.faceNormal + Y])));

/** Angle between lead arm and shaft, rad. Half a turn: one straight line. */
export function armToShaft(p: Pose): number {
  const a = AT.armDirection;
  const cosine = p[a] * p[C] + p[a + 1] * p[C + 1] + p[a + 2] * p[C + 2];
  return Math.PI - Math.acos(Math.max(-1, Math.min(1, cosine)));
}

/** Height of the lead-grip centre above the ground, m. */
export const handHeight = (p: Pose): number => p[H + Y];

/** How far the lead-grip centre lies in front of the ankles, toward the ball, m. */
export const handDepth = (p: Pose): number => p[H + Z];

/**
 * Where the shaft line, carried on past the grip end, meets the ground, measured from the ball, m (common practice, no verdict).
 * Zero: on the ball line. Positive: beyond the ball. NaN when the shaft does not point down.
 */
export function gripEndLine(p: Pose, ballZ: number): number {
  const cy = p[C + Y];
  return cy > 1e-6 ? p[H + Z] - (p[C + Z] * p[H + Y]) / cy - ballZ : NaN;
}

/**
 * Direction of the instantaneous plane of the club on the ground, rad: n = shaft x head velocity, trace = n x up,
 * turned to point at the target. Positive: right of the target line. `v` is the velocity of the head, m/s.
 */
export function planeDirection(p: Pose, v: ArrayLike<number>): number {
  const nx = p[C + Y] * v[2] - p[C + Z] * v[1];
  const nz = p[C + X] * v[1] - p[C + Y] * v[0];
  return nz > 0 ? Math.atan2(-nx, nz) : Math.atan2(nx, -nz);
}

/** Inclination of the instantaneous plane of the club to the ground, rad. Zero: flat. A quarter turn: vertical. */
export function planeTilt(p: Pose, v: ArrayLike<number>): number {
  const nx = p[C + Y] * v[2] - p[C + Z] * v[1];
  const ny = p[C + Z] * v[0] - p[C + X] * v[2];
  const nz = p[C + X] * v[1] - p[C + Y] * v[0];
  return Math.atan2(Math.hypot(nx, nz), Math.abs(ny));
}
