import type { Body } from './body';
import type { Club } from './club';
import { J, type JointVector } from './joints';
import { placeTrailArm } from './trailArm';

/**
 * A pose: every point, direction and orientation of the golfer and the club at one instant, in one flat buffer.
 * World frame: +X toward the target, +Y up, +Z from the golfer toward the ball line; metres; origin on the ground between the ankles.
 * Points and directions take three numbers, orientations nine (the x, y and z axis of the part, one after the other).
 */
export type Pose = Float64Array;

/** Where things stand in a `Pose`. */
export const AT = {
  pelvis: 0,
  midShoulder: 3,
  leadShoulder: 6,
  trailShoulder: 9,
  leadGrip: 12,
  trailGrip: 15,
  trailElbow: 18,
  bicep: 21,
  head: 24,
  /** Unit direction of the lead arm, shoulder to grip. */
  armDirection: 27,
  /** Unit direction of the shaft, grip to head. */
  shaftDirection: 30,
  /** Unit normal of the face. */
  faceNormal: 33,
  /** Unit direction heel to toe. */
  toeDirection: 36,
  pelvisAxes: 39,
  trunkAxes: 48,
  thoraxAxes: 57,
  armAxes: 66,
  handAxes: 75,
  /** Distance trail shoulder to trail grip over the length of the trail arm; above 1 is out of reach. */
  reachRatio: 84,
  /** Metres by which the trail arm is too short; 0 when it reaches. */
  reachShortfall: 85,
} as const;
export const POSE_SIZE = 86;

/** A fresh pose buffer. Not for hot paths. */
export const createPose = (): Pose => new Float64Array(POSE_SIZE);

/** Lengths and constant rotations of one player with one club, worked out once. Metres, and sines and cosines. */
export interface Rig {
  readonly body: Body;
  readonly club: Club;
  readonly trunk: number;
  readonly shoulderHalf: number;
  readonly leadArm: number;
  readonly trailUpper: number;
  readonly trailFore: number;
  readonly handGap: number;
  /** Lead-grip centre to the head's reference point. */
  readonly shaft: number;
  readonly gripAngle: number;
  readonly cosGripTurn: number;
  readonly sinGripTurn: number;
  /** Face normal and heel-to-toe direction in the hand's axes. */
  readonly face: readonly [number, number, number];
  readonly toe: readonly [number, number, number];
}

/** Prepares a player and a club for the chain. */
export function createRig(body: Body, club: Club): Rig {
  const { lie, loft } = club;
  return {
    body,
    club,
    trunk: body.trunk,
    shoulderHalf: body.shoulderHalf,
    leadArm: body.upperArm + body.forearm + body.grip,
    trailUpper: body.upperArm,
    trailFore: body.forearm + body.grip,
    handGap: club.handGap,
    shaft: club.length - club.gripInset,
    gripAngle: club.gripAngle,
    cosGripTurn: Math.cos(club.gripTurn),
    sinGripTurn: Math.sin(club.gripTurn),
    face: [Math.cos(loft), Math.sin(loft) * Math.cos(lie), -Math.sin(loft) * Math.sin(lie)],
    toe: [0, Math.sin(lie), Math.cos(lie)],
  };
}

/** Turns two neighbouring axes of an orientation: a' = a cos - b sin, b' = a sin + b cos. */
function turn(m: Float64Array, a: number, b: number, angle: number): void {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const a0 = m[a];
  const a1 = m[a + 1];
  const a2 = m[a + 2];
  const b0 = m[b];
  const b1 = m[b + 1];
  const b2 = m[b + 2];
  m[a] = a0 * c - b0 * s;
  m[a + 1] = a1 * c - b1 * s;
  m[a + 2] = a2 * c - b2 * s;
  m[b] = a0 * s + b0 * c;
  m[b + 1] = a1 * s + b1 * c;
  m[b + 2] = a2 * s + b2 * c;
}
// A rotation on the right mixes two columns: Rx takes y to z, Ry takes z to x, Rz takes x to y.
const turnX = (m: Float64Array, at: number, angle: number): void => turn(m, at + 3, at + 6, -angle);
const turnY = (m: Float64Array, at: number, angle: number): void => turn(m, at, at + 6, angle);
const turnZ = (m: Float64Array, at: number, angle: number): void => turn(m, at, at + 3, -angle);

function copyAxes(m: Float64Array, to: number, from: number): void {
  for (let i = 0; i < 9; i++) m[to + i] = m[from + i];
}

/** Writes the orientation Rz(tilt) Rx(bend). */
function tiltThenBend(m: Float64Array, at: number, tilt: number, bend: number): void {
  const ct = Math.cos(tilt);
  const st = Math.sin(tilt);
  const cb = Math.cos(bend);
  const sb = Math.sin(bend);
  m[at] = ct;
  m[at + 1] = st;
  m[at + 2] = 0;
  m[at + 3] = -st * cb;
  m[at + 4] = ct * cb;
  m[at + 5] = sb;
  m[at + 6] = st * sb;
  m[at + 7] = -ct * sb;
  m[at + 8] = cb;
}

/** A shoulder: the end of a half-breadth of the thorax, swung forward by its protraction (radians). */
function placeShoulder(p: Pose, to: number, half: number, side: 1 | -1, protraction: number): void {
  const x = side * half * Math.cos(protraction);
  const z = half * Math.sin(protraction);
  for (let i = 0; i < 3; i++) {
    p[to + i] = p[AT.midShoulder + i] + p[AT.thoraxAxes + i] * x + p[AT.thoraxAxes + 6 + i] * z;
  }
}

/** Trunk, shoulders and lead arm: everything the arm-parallel event needs. */
function placeArm(rig: Rig, q: JointVector, p: Pose): void {
  p[AT.pelvis] = q[J.pelvisSway];
  p[AT.pelvis + 1] = q[J.pelvisHeight];
  p[AT.pelvis + 2] = q[J.pelvisThrust];
  tiltThenBend(p, AT.trunkAxes, q[J.trunkTilt], q[J.trunkBend]);
  for (let i = 0; i < 3; i++) p[AT.midShoulder + i] = p[AT.pelvis + i] + rig.trunk * p[AT.trunkAxes + 3 + i];
  copyAxes(p, AT.thoraxAxes, AT.trunkAxes);
  turnY(p, AT.thoraxAxes, q[J.thoraxTurn]);
  copyAxes(p, AT.armAxes, AT.thoraxAxes);
  turnY(p, AT.armAxes, -q[J.leadArmAdduction]);
  turnX(p, AT.armAxes, -q[J.leadArmElevation]);
  for (let i = 0; i < 3; i++) p[AT.armDirection + i] = p[AT.armAxes + 6 + i];
}

/** The hand and the shaft, once the arm is placed. */
function placeHand(rig: Rig, q: JointVector, p: Pose): void {
  copyAxes(p, AT.handAxes, AT.armAxes);
  turnZ(p, AT.handAxes, q[J.leadArmRoll]);
  turnY(p, AT.handAxes, -q[J.leadWristFlexion]);
  turnX(p, AT.handAxes, -(rig.gripAngle + q[J.leadWristRadial]));
  for (let i = 0; i < 3; i++) p[AT.shaftDirection + i] = p[AT.handAxes + 6 + i];
}

/**
 * Sine of the lead arm's angle to the ground, dimensionless: zero parallel, negative when the hands are below the shoulder.
 * Leaves `p` half filled: only for the search of the checkpoint.
 */
export function armHeightSine(rig: Rig, q: JointVector, p: Pose): number {
  placeArm(rig, q, p);
  return p[AT.armDirection + 1];
}

/** Sine of the shaft's pitch, dimensionless: zero parallel, positive with the head above the hands. Leaves `p` half filled. */
export function shaftHeightSine(rig: Rig, q: JointVector, p: Pose): number {
  placeArm(rig, q, p);
  placeHand(rig, q, p);
  return p[AT.shaftDirection + 1];
}

/** Only what the head's trace needs: fills the lead grip, the shaft and the head. */
export function placeHead(rig: Rig, q: JointVector, p: Pose): void {
  placeArm(rig, q, p);
  placeShoulder(p, AT.leadShoulder, rig.shoulderHalf, 1, q[J.leadProtraction]);
  placeHand(rig, q, p);
  for (let i = 0; i < 3; i++) {
    const grip = p[AT.leadShoulder + i] + rig.leadArm * p[AT.armDirection + i];
    p[AT.leadGrip + i] = grip;
    p[AT.head + i] = grip + rig.shaft * p[AT.shaftDirection + i];
  }
}

/**
 * Forward kinematics: joint values `q` (metres, radians) to every point of the golfer and the club, written into `p`.
 * Order of rotations: pelvis Rz Rx Ry; trunk Rz(tilt) Rx(bend), thorax Ry(turn); lead arm Ry(-adduction) Rx(-elevation);
 * hand Rz(roll) Ry(-flexion) Rx(-(grip angle + radial)) Rz(-grip turn). Allocates nothing.
 */
export function placePose(rig: Rig, q: JointVector, p: Pose): void {
  placeHead(rig, q, p);
  tiltThenBend(p, AT.pelvisAxes, q[J.pelvisSideTilt], q[J.pelvisBend]);
  turnY(p, AT.pelvisAxes, q[J.pelvisTurn]);
  placeShoulder(p, AT.trailShoulder, rig.shoulderHalf, -1, q[J.trailProtraction]);
  const { face, toe, cosGripTurn: c, sinGripTurn: s } = rig;
  const h = AT.handAxes;
  for (let i = 0; i < 3; i++) {
    // Rz(-grip turn) on the right.
    const x = p[h + i] * c - p[h + 3 + i] * s;
    const y = p[h + i] * s + p[h + 3 + i] * c;
    const z = p[h + 6 + i];
    p[h + i] = x;
    p[h + 3 + i] = y;
    p[AT.faceNormal + i] = x * face[0] + y * face[1] + z * face[2];
    p[AT.toeDirection + i] = y * toe[1] + z * toe[2];
    p[AT.trailGrip + i] = p[AT.leadGrip + i] + rig.handGap * z;
  }
  placeTrailArm(rig.trailUpper, rig.trailFore, p);
}
