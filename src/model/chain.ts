import type { Body } from './body';
import type { Club } from './club';
import { J, type JointVector } from './joints';
import { AT, type Pose } from './pose';
import { placeTrailArm } from './trailArm';

export { AT, createPose, type Pose } from './pose';

const PELVIS = AT.pelvisAxes;
const TRUNK = AT.trunkAxes;
const THORAX = AT.thoraxAxes;
const ARM = AT.armAxes;
const HAND = AT.handAxes;

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

// Below, a frame is held in nine numbers: xx, xy, xz its x axis in the world, yx... its y axis, zx... its z axis. A rotation on the
// right mixes two axes: Rx takes y to z, Ry takes z to x, Rz takes x to y. Each part is worked out in local variables and written
// once: going through the buffer for every single rotation takes two and a half times as long.

/** Pelvis: centre, and orientation Rz(side tilt) Rx(bend) Ry(turn). */
function placePelvis(q: JointVector, p: Pose): void {
  const sinTilt = Math.sin(q[J.pelvisSideTilt]);
  const cosTilt = Math.cos(q[J.pelvisSideTilt]);
  const sinBend = Math.sin(q[J.pelvisBend]);
  const cosBend = Math.cos(q[J.pelvisBend]);
  const sinTurn = Math.sin(q[J.pelvisTurn]);
  const cosTurn = Math.cos(q[J.pelvisTurn]);
  const zx = sinTilt * sinBend;
  const zy = -cosTilt * sinBend;
  p[PELVIS] = cosTilt * cosTurn - zx * sinTurn;
  p[PELVIS + 1] = sinTilt * cosTurn - zy * sinTurn;
  p[PELVIS + 2] = -cosBend * sinTurn;
  p[PELVIS + 3] = -sinTilt * cosBend;
  p[PELVIS + 4] = cosTilt * cosBend;
  p[PELVIS + 5] = sinBend;
  p[PELVIS + 6] = cosTilt * sinTurn + zx * cosTurn;
  p[PELVIS + 7] = sinTilt * sinTurn + zy * cosTurn;
  p[PELVIS + 8] = cosBend * cosTurn;
}

/** Trunk and thorax: A = Rz(tilt) Rx(bend), mid-shoulder point at the end of A's y axis, thorax A Ry(turn). */
function placeThorax(rig: Rig, q: JointVector, p: Pose): void {
  const sinTilt = Math.sin(q[J.trunkTilt]);
  const cosTilt = Math.cos(q[J.trunkTilt]);
  const sinBend = Math.sin(q[J.trunkBend]);
  const cosBend = Math.cos(q[J.trunkBend]);
  const sinTurn = Math.sin(q[J.thoraxTurn]);
  const cosTurn = Math.cos(q[J.thoraxTurn]);
  const yx = -sinTilt * cosBend;
  const yy = cosTilt * cosBend;
  const zx = sinTilt * sinBend;
  const zy = -cosTilt * sinBend;
  const sway = q[J.pelvisSway];
  const height = q[J.pelvisHeight];
  const thrust = q[J.pelvisThrust];
  p[AT.pelvis] = sway;
  p[AT.pelvis + 1] = height;
  p[AT.pelvis + 2] = thrust;
  p[AT.midShoulder] = sway + rig.trunk * yx;
  p[AT.midShoulder + 1] = height + rig.trunk * yy;
  p[AT.midShoulder + 2] = thrust + rig.trunk * sinBend;
  p[TRUNK] = cosTilt;
  p[TRUNK + 1] = sinTilt;
  p[TRUNK + 2] = 0;
  p[TRUNK + 3] = p[THORAX + 3] = yx;
  p[TRUNK + 4] = p[THORAX + 4] = yy;
  p[TRUNK + 5] = p[THORAX + 5] = sinBend;
  p[TRUNK + 6] = zx;
  p[TRUNK + 7] = zy;
  p[TRUNK + 8] = cosBend;
  p[THORAX] = cosTilt * cosTurn - zx * sinTurn;
  p[THORAX + 1] = sinTilt * cosTurn - zy * sinTurn;
  p[THORAX + 2] = -cosBend * sinTurn;
  p[THORAX + 6] = cosTilt * sinTurn + zx * cosTurn;
  p[THORAX + 7] = sinTilt * sinTurn + zy * cosTurn;
  p[THORAX + 8] = cosBend * cosTurn;
}

/** A shoulder: the end of a half-breadth of the thorax, swung forward by its protraction (radians). */
function placeShoulder(p: Pose, to: number, half: number, side: 1 | -1, protraction: number): void {
  const x = side * half * Math.cos(protraction);
  const z = half * Math.sin(protraction);
  p[to] = p[AT.midShoulder] + p[THORAX] * x + p[THORAX + 6] * z;
  p[to + 1] = p[AT.midShoulder + 1] + p[THORAX + 1] * x + p[THORAX + 7] * z;
  p[to + 2] = p[AT.midShoulder + 2] + p[THORAX + 2] * x + p[THORAX + 8] * z;
}

/** Lead arm: thorax Ry(-adduction) Rx(-elevation), and the lead-grip centre at the end of its z axis. */
function placeArm(rig: Rig, q: JointVector, p: Pose): void {
  const sinAcross = Math.sin(q[J.leadArmAdduction]);
  const cosAcross = Math.cos(q[J.leadArmAdduction]);
  const sinLift = Math.sin(q[J.leadArmElevation]);
  const cosLift = Math.cos(q[J.leadArmElevation]);
  for (let i = 0; i < 3; i++) {
    const x = p[THORAX + i];
    const y = p[THORAX + 3 + i];
    const z = p[THORAX + 6 + i];
    const zAcross = z * cosAcross - x * sinAcross;
    const along = y * sinLift + zAcross * cosLift;
    p[ARM + i] = x * cosAcross + z * sinAcross;
    p[ARM + 3 + i] = y * cosLift - zAcross * sinLift;
    p[ARM + 6 + i] = along;
    p[AT.armDirection + i] = along;
    p[AT.leadGrip + i] = p[AT.leadShoulder + i] + rig.leadArm * along;
  }
}

/** Hand, shaft and head: arm Rz(roll) Ry(-flexion) Rx(-(grip angle + radial)), before the turn of the grip. */
function placeHand(rig: Rig, q: JointVector, p: Pose): void {
  const sinRoll = Math.sin(q[J.leadArmRoll]);
  const cosRoll = Math.cos(q[J.leadArmRoll]);
  const sinFlex = Math.sin(q[J.leadWristFlexion]);
  const cosFlex = Math.cos(q[J.leadWristFlexion]);
  const cocked = rig.gripAngle + q[J.leadWristRadial];
  const sinCock = Math.sin(cocked);
  const cosCock = Math.cos(cocked);
  for (let i = 0; i < 3; i++) {
    const x = p[ARM + i];
    const y = p[ARM + 3 + i];
    const z = p[ARM + 6 + i];
    const xRoll = x * cosRoll + y * sinRoll;
    const yRoll = y * cosRoll - x * sinRoll;
    const zFlex = z * cosFlex - xRoll * sinFlex;
    const along = yRoll * sinCock + zFlex * cosCock;
    p[HAND + i] = xRoll * cosFlex + z * sinFlex;
    p[HAND + 3 + i] = yRoll * cosCock - zFlex * sinCock;
    p[HAND + 6 + i] = along;
    p[AT.shaftDirection + i] = along;
    p[AT.head + i] = p[AT.leadGrip + i] + rig.shaft * along;
  }
}

/**
 * Sine of the lead arm's angle to the ground, dimensionless: zero parallel, negative when the hands are below the shoulder.
 * The height alone of the chain's arm direction: what the search of the checkpoint asks for again and again.
 */
export function armHeightSine(q: JointVector): number {
  const cosTilt = Math.cos(q[J.trunkTilt]);
  const across = q[J.thoraxTurn] - q[J.leadArmAdduction];
  const y = cosTilt * Math.cos(q[J.trunkBend]);
  const z = Math.sin(q[J.trunkTilt]) * Math.sin(across) - cosTilt * Math.sin(q[J.trunkBend]) * Math.cos(across);
  return y * Math.sin(q[J.leadArmElevation]) + z * Math.cos(q[J.leadArmElevation]);
}

/** Sine of the shaft's pitch, dimensionless: zero parallel, positive with the head above the hands. The height alone of the shaft's direction. */
export function shaftHeightSine(rig: Rig, q: JointVector): number {
  const sinTilt = Math.sin(q[J.trunkTilt]);
  const cosTilt = Math.cos(q[J.trunkTilt]);
  const zTrunk = -cosTilt * Math.sin(q[J.trunkBend]);
  const yTrunk = cosTilt * Math.cos(q[J.trunkBend]);
  const across = q[J.thoraxTurn] - q[J.leadArmAdduction];
  const sinAcross = Math.sin(across);
  const cosAcross = Math.cos(across);
  const sinLift = Math.sin(q[J.leadArmElevation]);
  const cosLift = Math.cos(q[J.leadArmElevation]);
  const sinRoll = Math.sin(q[J.leadArmRoll]);
  const cosRoll = Math.cos(q[J.leadArmRoll]);
  const cocked = rig.gripAngle + q[J.leadWristRadial];
  // Heights of the x, y and z axes, from the thorax turned by the arm's adduction down to the hand.
  const x = sinTilt * cosAcross - zTrunk * sinAcross;
  const z = sinTilt * sinAcross + zTrunk * cosAcross;
  const yArm = yTrunk * cosLift - z * sinLift;
  const zArm = yTrunk * sinLift + z * cosLift;
  const xRoll = x * cosRoll + yArm * sinRoll;
  const yRoll = yArm * cosRoll - x * sinRoll;
  const zFlex = zArm * Math.cos(q[J.leadWristFlexion]) - xRoll * Math.sin(q[J.leadWristFlexion]);
  return yRoll * Math.sin(cocked) + zFlex * Math.cos(cocked);
}

/** Trunk and lead shoulder: what carries the lead arm. Then `placeClub` may be asked again and again for other arms. */
export function placeLeadShoulder(rig: Rig, q: JointVector, p: Pose): void {
  placeThorax(rig, q, p);
  placeShoulder(p, AT.leadShoulder, rig.shoulderHalf, 1, q[J.leadProtraction]);
}

/** Lead arm, hand, shaft and head on a lead shoulder that is placed already. */
export function placeClub(rig: Rig, q: JointVector, p: Pose): void {
  placeArm(rig, q, p);
  placeHand(rig, q, p);
}

/** Only what the head's trace needs: fills the lead grip, the shaft and the head. */
export function placeHead(rig: Rig, q: JointVector, p: Pose): void {
  placeLeadShoulder(rig, q, p);
  placeClub(rig, q, p);
}

/**
 * Forward kinematics: joint values `q` (metres, radians) to every point of the golfer and the club, written into `p`.
 * Order of rotations: pelvis Rz Rx Ry; trunk Rz(tilt) Rx(bend), thorax Ry(turn); lead arm Ry(-adduction) Rx(-elevation);
 * hand Rz(roll) Ry(-flexion) Rx(-(grip angle + radial)) Rz(-grip turn). Allocates nothing.
 */
export function placePose(rig: Rig, q: JointVector, p: Pose): void {
  placeHead(rig, q, p);
  placePelvis(q, p);
  placeShoulder(p, AT.trailShoulder, rig.shoulderHalf, -1, q[J.trailProtraction]);
  const { face, toe, cosGripTurn: c, sinGripTurn: s } = rig;
  for (let i = 0; i < 3; i++) {
    // Rz(-grip turn) on the right.
    const x = p[HAND + i] * c - p[HAND + 3 + i] * s;
    const y = p[HAND + i] * s + p[HAND + 3 + i] * c;
    const z = p[HAND + 6 + i];
    p[HAND + i] = x;
    p[HAND + 3 + i] = y;
    p[AT.faceNormal + i] = x * face[0] + y * face[1] + z * face[2];
    p[AT.toeDirection + i] = y * toe[1] + z * toe[2];
    p[AT.trailGrip + i] = p[AT.leadGrip + i] + rig.handGap * z;
    p[AT.leadElbow + i] = p[AT.leadShoulder + i] + rig.body.upperArm * p[AT.armDirection + i];
  }
  placeTrailArm(rig.trailUpper, rig.trailFore, p);
}
