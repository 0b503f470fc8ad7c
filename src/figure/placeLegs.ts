import { vec3 } from 'gl-matrix';
import { AT, type Pose } from '../model/chain';
import { readPose, setFrame, setHinge, toUnit, vec } from './jointFrames';
import type { Measures } from './measures';
import { PART } from './partIds';
import { FLARE, HEEL_TIP, HEEL_TURN } from './stance';

const pelvis = vec();
const px = vec();
const py = vec();
const pz = vec();
const hip = vec();
const ankle = vec();
const knee = vec();
const pole = vec();
const leg = vec();
const toes = vec();
const sole = vec();
const footX = vec();
const q = vec();
const o = vec();

interface LegParts {
  readonly hip: number;
  readonly thigh: number;
  readonly knee: number;
  readonly shank: number;
  readonly ankle: number;
  readonly foot: number;
}
const LEAD: LegParts = {
  hip: PART.hipLead,
  thigh: PART.thighLead,
  knee: PART.kneeLead,
  shank: PART.shankLead,
  ankle: PART.ankleLead,
  foot: PART.footLead,
};
const TRAIL: LegParts = {
  hip: PART.hipTrail,
  thigh: PART.thighTrail,
  knee: PART.kneeTrail,
  shank: PART.shankTrail,
  ankle: PART.ankleTrail,
  foot: PART.footTrail,
};

/** Both legs, by two-bone chains to feet fixed on the ground. Illustrative. Writes matrices into `out`. */
export function placeLegs(m: Measures, pose: Pose, heelLift: number, out: Float64Array): void {
  readPose(pose, AT.pelvis, pelvis);
  readPose(pose, AT.pelvisAxes, px);
  readPose(pose, AT.pelvisAxes + 3, py);
  readPose(pose, AT.pelvisAxes + 6, pz);
  placeLeg(m, 1, 0, LEAD, out);
  placeLeg(m, -1, Math.max(0, Math.min(1, heelLift)), TRAIL, out);
}

/** Ankle to the ball of the foot and to the tip of the toes, fractions of stature: where a rising foot rolls. */
const BALL_OF_FOOT = 0.066;
const TOE_TIP = 0.106;

function placeFoot(m: Measures, side: 1 | -1, lift: number, foot: number, out: Float64Array): void {
  const size = m.k * m.footScale;
  const flare = side === 1 ? FLARE.lead : FLARE.trail;
  const tip = lift * HEEL_TIP;
  const yaw = flare + lift * HEEL_TURN;
  const roll = (BALL_OF_FOOT + (TOE_TIP - BALL_OF_FOOT) * lift) * size;
  const c = Math.cos(tip);
  const s = Math.sin(tip);
  // The point of the sole that stays where it was on the ground.
  const stayX = side * m.stance + Math.sin(flare) * roll;
  const stayZ = -0.011 * m.k + Math.cos(flare) * roll;
  const ahead = -roll * c + m.ankle * s;
  ankle[0] = stayX + Math.sin(yaw) * ahead;
  ankle[1] = roll * s + m.ankle * c + 0.8 * (TOE_TIP * size - roll) * s;
  ankle[2] = stayZ + Math.cos(yaw) * ahead;
  toes[0] = Math.sin(yaw) * c;
  toes[1] = -s;
  toes[2] = Math.cos(yaw) * c;
  sole[0] = Math.sin(yaw) * s;
  sole[1] = c;
  sole[2] = Math.cos(yaw) * s;
  vec3.scaleAndAdd(o, ankle, sole, -m.ankle);
  setFrame(out, foot, o, toes, sole);
  vec3.cross(footX, toes, sole);
}

function placeLeg(m: Measures, side: 1 | -1, lift: number, parts: LegParts, out: Float64Array): void {
  const { k, thigh, shank } = m;
  placeFoot(m, side, lift, parts.foot, out);
  vec3.scaleAndAdd(hip, vec3.scaleAndAdd(hip, pelvis, px, side * m.hipX), py, -0.012 * k);

  vec3.subtract(leg, ankle, hip);
  const distance = vec3.length(leg);
  toUnit(leg, leg, 0, -1, 0);
  // The knee points between the way the pelvis faces and the way the foot does; the trail knee drives in as its heel rises.
  for (let i = 0; i < 3; i++) pole[i] = pz[i] * 0.45 + toes[i] * 0.55;
  pole[0] += side === -1 ? 0.35 * Math.min(1, 2 * lift) : 0;
  pole[1] += 0.05;
  vec3.scaleAndAdd(pole, pole, leg, -vec3.dot(pole, leg));
  toUnit(pole, pole, 0, 0, 1);
  vec3.scaleAndAdd(pole, pole, leg, -vec3.dot(pole, leg));
  toUnit(pole, pole, 1, 0, 0);

  // Too long a leg bends, too short a leg is drawn straight and stretched the little that is missing.
  const reach = thigh + shank;
  const stretch = Math.max(1, distance / reach);
  const span = Math.min(reach, Math.max(Math.abs(thigh - shank) + 1e-3 * k, distance));
  const down = stretch > 1 ? thigh * stretch : (thigh * thigh - shank * shank + span * span) / (2 * span);
  const out0 = stretch > 1 ? 0 : Math.sqrt(Math.max(0, thigh * thigh - down * down));
  vec3.scaleAndAdd(knee, vec3.scaleAndAdd(knee, hip, leg, down), pole, out0);

  setHinge(out, parts.hip, hip, px, py);
  setFrame(out, parts.thigh, hip, vec3.subtract(q, knee, hip), pole, stretch);
  vec3.cross(q, leg, pole);
  setHinge(out, parts.knee, knee, q, leg);
  setFrame(out, parts.shank, knee, vec3.subtract(q, ankle, knee), pole, stretch);
  setHinge(out, parts.ankle, ankle, footX, sole);
}
