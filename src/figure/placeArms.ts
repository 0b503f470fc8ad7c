import { vec3 } from 'gl-matrix';
import { AT, type Pose } from '../model/chain';
import { TRAIL_POLE } from '../model/trailArm';
import { readPose, setFrame, setHinge, toUnit, vec, type Vec } from './jointFrames';
import type { Measures } from './measures';
import { MATRIX_SIZE, PART } from './partIds';

const leadShoulder = vec();
const trailShoulder = vec();
const leadGrip = vec();
const trailGrip = vec();
const elbow = vec();
const wrist = vec();
const upper = vec();
const fore = vec();
const shaft = vec();
const hinge = vec();
const ay = vec();
const tx = vec();
const o = vec();
const p = vec();
const q = vec();

interface ArmParts {
  readonly shoulder: number;
  readonly upperArm: number;
  readonly elbow: number;
  readonly forearm: number;
  readonly wrist: number;
  readonly palm: number;
  readonly fist: number;
  readonly thumb: number;
  /** The thumb lies on the trail side of the shaft in the lead hand, on the lead side in the trail hand. */
  readonly thumbSide: 1 | -1;
}
const LEAD: ArmParts = {
  shoulder: PART.shoulderLead,
  upperArm: PART.upperArmLead,
  elbow: PART.elbowLead,
  forearm: PART.forearmLead,
  wrist: PART.wristLead,
  palm: PART.palmLead,
  fist: PART.fistLead,
  thumb: PART.thumbLead,
  thumbSide: 1,
};
const TRAIL: ArmParts = {
  shoulder: PART.shoulderTrail,
  upperArm: PART.upperArmTrail,
  elbow: PART.elbowTrail,
  forearm: PART.forearmTrail,
  wrist: PART.wristTrail,
  palm: PART.palmTrail,
  fist: PART.fistTrail,
  thumb: PART.thumbTrail,
  thumbSide: -1,
};

/** Share of the chest's sideways axis in a shoulder's pin: what decides for an arm within some twenty degrees of the trunk's axis. */
const HANGING = 0.35;

/** Both arms with their hands, and the club in them. Writes matrices into `out`. */
export function placeArms(m: Measures, pose: Pose, out: Float64Array): void {
  readPose(pose, AT.trunkAxes + 3, ay);
  readPose(pose, AT.thoraxAxes, tx);
  readPose(pose, AT.leadShoulder, leadShoulder);
  readPose(pose, AT.trailShoulder, trailShoulder);
  readPose(pose, AT.leadGrip, leadGrip);
  readPose(pose, AT.trailGrip, trailGrip);
  readPose(pose, AT.shaftDirection, shaft);

  readPose(pose, AT.leadElbow, elbow);
  readPose(pose, AT.armDirection, fore);
  readPose(pose, AT.armAxes, hinge);
  toUnit(upper, vec3.subtract(upper, elbow, leadShoulder), fore[0], fore[1], fore[2]);
  // Straight until the finish folds it.
  toUnit(fore, vec3.subtract(fore, leadGrip, elbow), upper[0], upper[1], upper[2]);
  placeArm(m, LEAD, leadShoulder, leadGrip, out);

  readPose(pose, AT.trailElbow, elbow);
  toUnit(upper, vec3.subtract(upper, elbow, trailShoulder), 0, -1, 0);
  toUnit(fore, vec3.subtract(fore, trailGrip, elbow), upper[0], upper[1], upper[2]);
  // The elbow bends in the plane of the arm and its pole, whose normal stays defined when the arm is straight.
  for (let i = 0; i < 3; i++) {
    const r = AT.thoraxAxes + i;
    p[i] = TRAIL_POLE[0] * pose[r] + TRAIL_POLE[1] * pose[r + 3] + TRAIL_POLE[2] * pose[r + 6];
  }
  vec3.cross(hinge, p, vec3.subtract(q, trailGrip, trailShoulder));
  toUnit(hinge, hinge, tx[0], tx[1], tx[2]);
  placeArm(m, TRAIL, trailShoulder, trailGrip, out);

  placeClub(m, pose, out);
}

function placeArm(m: Measures, parts: ArmParts, shoulder: Vec, grip: Vec, out: Float64Array): void {
  // The shoulder's pin is the axis about which the arm lifts: across the arm, in the chest's transverse plane. An arm that hangs along the
  // trunk lifts forward about the chest's own: without that share the pin would spin as it hangs past.
  vec3.scaleAndAdd(q, vec3.cross(q, ay, upper), tx, HANGING);
  toUnit(q, q, tx[0], tx[1], tx[2]);
  setHinge(out, parts.shoulder, shoulder, q, ay);
  vec3.cross(q, hinge, upper);
  setFrame(out, parts.upperArm, shoulder, upper, q);
  setHinge(out, parts.elbow, elbow, hinge, upper);
  vec3.cross(q, hinge, fore);
  setFrame(out, parts.forearm, elbow, fore, q);
  vec3.scaleAndAdd(wrist, elbow, fore, m.forearm);
  // The wrist's pin is the axis about which the shaft opens from the forearm.
  toUnit(q, vec3.cross(q, fore, shaft), hinge[0], hinge[1], hinge[2]);
  setHinge(out, parts.wrist, wrist, q, fore);
  placeHand(m, parts, grip, out);
}

/** Beyond this the palm no longer stretches to the grip: an arm out of reach shows its gap. */
const MOST_STRETCH = 1.2;

/** Local places of the thumb in the fist, fractions of stature: start, end (x toward the thumb's side, y of the fist's length). */
const THUMB = { x0: 0.008, y0: 0.02, z0: 0.0145, x1: 0.0115, y1: 0.66, z1: 0.0095 } as const;

function placeHand(m: Measures, parts: ArmParts, grip: Vec, out: Float64Array): void {
  const { k } = m;
  vec3.subtract(p, grip, wrist);
  const span = vec3.length(p);
  setFrame(out, parts.palm, wrist, p, shaft, Math.min(MOST_STRETCH, Math.max(0.5, span / m.palm)));
  vec3.negate(q, p);
  setFrame(out, parts.fist, grip, shaft, q);
  const side = parts.thumbSide;
  inPart(out, parts.fist, side * THUMB.x0 * k, THUMB.y0 * m.fistLength, THUMB.z0 * k, o);
  inPart(out, parts.fist, side * THUMB.x1 * k, THUMB.y1 * m.fistLength, THUMB.z1 * k, p);
  vec3.subtract(p, p, o);
  setFrame(out, parts.thumb, o, p, q);
}

/** A point given in a placed part's axes, in the world, m. */
function inPart(out: Float64Array, part: number, x: number, y: number, z: number, to: Vec): void {
  const at = part * MATRIX_SIZE;
  for (let i = 0; i < 3; i++) to[i] = out[at + 9 + i] + x * out[at + i] + y * out[at + 3 + i] + z * out[at + 6 + i];
}

function placeClub(m: Measures, pose: Pose, out: Float64Array): void {
  readPose(pose, AT.toeDirection, q);
  vec3.scaleAndAdd(o, leadGrip, shaft, -m.gripInset);
  setFrame(out, PART.grip, o, shaft, q);
  setFrame(out, PART.shaft, o, shaft, q);
  setFrame(out, PART.sleeve, o, shaft, q);
  readPose(pose, AT.head, o);
  readPose(pose, AT.faceNormal, p);
  vec3.cross(q, q, p);
  setFrame(out, PART.clubHead, o, p, q);
}
