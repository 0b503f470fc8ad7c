import { vec3 } from 'gl-matrix';
import { AT, type Pose } from '../model/chain';
import type { Figure } from './figure';
import { readPose, setFrame, toUnit, vec, type Vec } from './jointFrames';
import { placeArms } from './placeArms';
import { placeLegs } from './placeLegs';
import { MATRIX_SIZE, PART } from './partIds';
import { placeGaze } from './stance';

/** What a pose leaves open: where the ball lies (m, world) and how far the trail heel is up (0 flat, 1 at the finish). */
export interface Stance {
  readonly ballPoint: readonly [number, number, number] | Float64Array;
  readonly heelLift: number;
}

const pelvis = vec();
const shoulders = vec();
const px = vec();
const py = vec();
const pz = vec();
const ay = vec();
const tx = vec();
const tz = vec();
const o = vec();
const p = vec();
const q = vec();
const up = vec();
const look = vec();
const side = vec();

/**
 * Places every part of a figure for a pose: twelve numbers a part into `out` (x axis, y axis, z axis, origin; world frame, m).
 * Axes are unit length but for parts that span a changing gap, whose y axis is stretched. Never NaN; allocates nothing.
 */
export function placeFigure(figure: Figure, pose: Pose, stance: Stance, out: Float64Array): void {
  const m = figure.measures;
  const k = m.k;
  readPose(pose, AT.pelvis, pelvis);
  readPose(pose, AT.midShoulder, shoulders);
  readPose(pose, AT.pelvisAxes, px);
  readPose(pose, AT.pelvisAxes + 3, py);
  readPose(pose, AT.pelvisAxes + 6, pz);
  readPose(pose, AT.trunkAxes + 3, ay);
  readPose(pose, AT.thoraxAxes, tx);
  readPose(pose, AT.thoraxAxes + 6, tz);

  vec3.scaleAndAdd(o, vec3.scaleAndAdd(o, pelvis, py, -0.052 * k), pz, -0.004 * k);
  setFrame(out, PART.pelvis, o, py, pz);
  vec3.scaleAndAdd(o, vec3.scaleAndAdd(o, pelvis, py, 0.088 * k * m.trunkScale), ay, 0.012 * k * m.trunkScale);
  vec3.scaleAndAdd(o, o, pz, -0.004 * k);
  setFrame(out, PART.waist, o, vec3.lerp(p, py, ay, 0.5), vec3.lerp(q, pz, tz, 0.5));
  vec3.scaleAndAdd(o, vec3.scaleAndAdd(o, shoulders, ay, -0.178 * k * m.trunkScale), tz, 0.004 * k);
  setFrame(out, PART.ribcage, o, ay, tz);
  placeYoke(pose, out, PART.yokeLead, AT.leadShoulder, m.yokeRoot, m.yokeLength, k);
  placeYoke(pose, out, PART.yokeTrail, AT.trailShoulder, -m.yokeRoot, m.yokeLength, k);
  placeHead(stance, k, out);
  placeArms(m, pose, out);
  placeLegs(m, pose, stance.heelLift, out);
}

/** From the rib cage to just short of a shoulder; stretched as the shoulder moves forward and back. */
function placeYoke(
  pose: Pose,
  out: Float64Array,
  part: number,
  at: number,
  root: number,
  rest: number,
  k: number,
): void {
  readPose(pose, at, p);
  vec3.scaleAndAdd(o, vec3.scaleAndAdd(o, shoulders, tx, root), ay, -0.014 * k);
  vec3.subtract(q, p, o);
  const length = vec3.length(q);
  setFrame(out, part, o, q, tz, length / rest);
}

/** Height of the neck and where the egg sits on it, fractions of stature. */
const NECK = 0.064;

/**
 * Neck and head: upright as far as the trunk allows, the face turned to the ball, and after it down the target line
 * as the heel comes up.
 */
function placeHead(stance: Stance, k: number, out: Float64Array): void {
  vec3.scaleAndAdd(o, shoulders, ay, 0.12 * k);
  vec3.subtract(q, placeGaze(stance.ballPoint, stance.heelLift, o, q), o);
  toUnit(look, q, 0, -1, 0);

  up[0] = ay[0] * 0.78;
  up[1] = ay[1] * 0.78 + 0.22;
  up[2] = ay[2] * 0.78;
  toUnit(up, up, 0, 1, 0);
  vec3.scaleAndAdd(p, shoulders, ay, 0.004 * k);
  setFrame(out, PART.neck, p, up, tz);

  vec3.scaleAndAdd(o, p, up, NECK * k);
  // The head nods a little further than the neck, toward what it looks at.
  up[0] += 0.12 * look[0];
  up[1] += 0.1;
  up[2] += 0.12 * look[2];
  toUnit(up, up, 0, 1, 0);
  toUnit(side, vec3.cross(side, up, look), 1, 0, 0);
  vec3.cross(q, side, up);
  vec3.scaleAndAdd(o, vec3.scaleAndAdd(o, o, up, -0.006 * k), q, 0.01 * k);
  setFrame(out, PART.headEgg, o, up, q);
}

/** A point given in a placed part's own axes (m), in the world, m. Written into `out`. */
export function pointOfPart(placement: Float64Array, part: number, x: number, y: number, z: number, out: Vec): Vec {
  const at = part * MATRIX_SIZE;
  for (let i = 0; i < 3; i++) {
    out[i] = placement[at + 9 + i] + x * placement[at + i] + y * placement[at + 3 + i] + z * placement[at + 6 + i];
  }
  return out;
}
