import { rad } from '../../math/angle';
import { ADAPTING } from '../../model/adaptation';
import { AT, createPose, placeClub, placeLeadShoulder, type Pose } from '../../model/chain';
import { createJointVector, J } from '../../model/joints';
import { K } from '../../model/keys';
import { swingJoints, type Swing } from '../swing';

/** The arm at impact with its adapting joints changed: where the head is, where it goes, and how both answer to a change. */

export const COUNT = ADAPTING.length;
/** An offset and a rate for each adapting joint. */
export const SIZE = 2 * COUNT;
/** Conditions: the head on the ball, three numbers, and its path. */
export const CONDITIONS = 4;

/** One unit of effort of each offset, rad: the forearm rolls more readily than the shoulder moves. A modelling choice. */
const EFFORT: readonly number[] = [rad(8), rad(8), rad(20), rad(6)];
/** Half the span of the central difference of the head's velocity, s. */
const HALF = 1e-5;
/** The moments at which the head is looked at, s from impact, each with a body of its own. */
const MOMENTS = [0, HALF, -HALF] as const;

const bodies: readonly Pose[] = MOMENTS.map(createPose);
const speed = createJointVector();
const q = createJointVector();
const velocity = new Float64Array(3);
/** The axis of each adapting joint, and how the head answers to a turn about it, m/rad, at each of the moments. */
const axes = new Float64Array(MOMENTS.length * COUNT * 3);
const turns = new Float64Array(MOMENTS.length * COUNT * 3);
const bent = new Float64Array(MOMENTS.length * 3);
/** How the velocity of the head, seen from above, answers to each effort: x, then z, m/s. */
const drift = new Float64Array(2 * SIZE);

/** Joints at impact with nothing adapted, rad and m. */
export const base = createJointVector();
/** One unit of effort of every offset (rad) and of every rate (rad/s). */
export const scale = new Float64Array(SIZE);

/** Stands everything that does not adapt at impact and just before and after it: once for a whole search. `span` in s. */
export function standAtImpact(swing: Swing, span: number): void {
  const impact = swing.reference.times[K.impact];
  swingJoints(swing, impact + HALF, speed);
  swingJoints(swing, impact - HALF, base);
  for (let j = 0; j < base.length; j++) speed[j] = (speed[j] - base[j]) / (2 * HALF);
  swingJoints(swing, impact, base);
  for (let i = 0; i < COUNT; i++) {
    scale[i] = EFFORT[i];
    scale[COUNT + i] = (2 * EFFORT[i]) / span;
  }
  for (let m = 0; m < MOMENTS.length; m++) {
    for (let j = 0; j < q.length; j++) q[j] = base[j] + speed[j] * MOMENTS[m];
    placeLeadShoulder(swing.rig, q, bodies[m]);
  }
}

/** Head to ball (m, world frame) and path to the path asked for (rad) at impact, for the given efforts. */
export function findMisfit(swing: Swing, path: number, efforts: Float64Array, out: Float64Array): void {
  const { ballPoint } = swing.reference;
  for (let m = 0; m < MOMENTS.length; m++) placeArmWith(swing, efforts, m);
  const at = bodies[0];
  const after = bodies[1];
  const before = bodies[2];
  for (let i = 0; i < 3; i++) {
    out[i] = at[AT.head + i] - ballPoint[i];
    velocity[i] = (after[AT.head + i] - before[AT.head + i]) / (2 * HALF);
  }
  out[3] = Math.atan2(velocity[2], velocity[0]) - path;
}

/** Places arm and club at one of the moments, moving at the joints' speeds there. */
function placeArmWith(swing: Swing, efforts: Float64Array, moment: number): void {
  const dt = MOMENTS[moment];
  // Only the arm's own joints count from here on: the body stands already.
  for (let j = J.leadArmAdduction; j <= J.leadWristRadial; j++) q[j] = base[j] + speed[j] * dt;
  for (let i = 0; i < COUNT; i++) {
    q[ADAPTING[i]] += efforts[i] * scale[i] + efforts[COUNT + i] * scale[COUNT + i] * dt;
  }
  placeClub(swing.rig, q, bodies[moment]);
}

/**
 * How the misfit that was found last answers to every effort: a row of `SIZE` for each condition, exact derivatives. A joint carries
 * the head round its axis: axis x (head - joint).
 */
export function findSlopes(out: Float64Array): void {
  for (let m = 0; m < MOMENTS.length; m++) {
    const p = bodies[m];
    // The joints in the order of `ADAPTING`, each about the axis and in the sense in which the chain turns it.
    writeTurn(p, AT.thoraxAxes + 3, AT.leadShoulder, -1, m * COUNT);
    writeTurn(p, AT.armAxes, AT.leadShoulder, -1, m * COUNT + 1);
    writeTurn(p, AT.armAxes + 6, AT.leadGrip, 1, m * COUNT + 2);
    writeTurn(p, AT.handAxes, AT.leadGrip, -1, m * COUNT + 3);
  }
  const vx = velocity[0];
  const vz = velocity[2];
  const level = vx * vx + vz * vz;
  for (let k = 0; k < COUNT; k++) {
    const at = 3 * k;
    const after = 3 * (COUNT + k);
    const before = 3 * (2 * COUNT + k);
    for (let r = 0; r < 3; r++) {
      out[r * SIZE + k] = turns[at + r] * scale[k];
      // A rate leaves the head where it is.
      out[r * SIZE + COUNT + k] = 0;
    }
    for (let i = 0; i < 2; i++) {
      drift[i * SIZE + k] = ((turns[after + 2 * i] - turns[before + 2 * i]) / (2 * HALF)) * scale[k];
      drift[i * SIZE + COUNT + k] = ((turns[after + 2 * i] + turns[before + 2 * i]) / 2) * scale[COUNT + k];
    }
  }
  for (let k = 0; k < SIZE; k++) out[3 * SIZE + k] = (vx * drift[SIZE + k] - vz * drift[k]) / level;
}

/**
 * Adds the second derivatives of the misfit to `out` (`SIZE` by `SIZE`), each condition's by its weight. Wants `findSlopes` to have been
 * asked at the same efforts. A joint turns the axes of those after it: axis x (axis x (head - joint)).
 */
export function addBends(weights: Float64Array, out: Float64Array): void {
  const vx = velocity[0];
  const vz = velocity[2];
  const level = vx * vx + vz * vz;
  for (let j = 0; j < COUNT; j++) {
    for (let k = j; k < COUNT; k++) {
      for (let m = 0; m < MOMENTS.length; m++)
        cross(axes, 3 * (m * COUNT + j), turns, 3 * (m * COUNT + k), bent, 3 * m);
      let place = 0;
      for (let r = 0; r < 3; r++) place += weights[r] * bent[r];
      const ofOffsets = (vx * (bent[5] - bent[8]) - vz * (bent[3] - bent[6])) / (2 * HALF * level);
      const ofRates = (vx * (bent[5] + bent[8]) - vz * (bent[3] + bent[6])) / (2 * level);
      addBoth(out, j, k, (place + weights[3] * ofOffsets) * scale[j] * scale[k]);
      addBoth(out, j, COUNT + k, weights[3] * ofRates * scale[j] * scale[COUNT + k]);
      if (j < k) addBoth(out, k, COUNT + j, weights[3] * ofRates * scale[k] * scale[COUNT + j]);
    }
  }
  // The direction of a velocity bends with the velocity itself.
  for (let a = 0; a < SIZE; a++) {
    for (let b = a; b < SIZE; b++) {
      const ax = drift[a];
      const az = drift[SIZE + a];
      const bx = drift[b];
      const bz = drift[SIZE + b];
      const turn = 2 * vx * vz * (ax * bx - az * bz) + (vz * vz - vx * vx) * (ax * bz + az * bx);
      addBoth(out, a, b, (weights[3] * turn) / (level * level));
    }
  }
}

function addBoth(out: Float64Array, a: number, b: number, value: number): void {
  out[a * SIZE + b] += value;
  if (a !== b) out[b * SIZE + a] += value;
}

/** The head's answer to a turn about the axis that stands at `axis`, through the point at `joint`. */
function writeTurn(p: Pose, axis: number, joint: number, sense: 1 | -1, row: number): void {
  for (let i = 0; i < 3; i++) {
    axes[3 * row + i] = sense * p[axis + i];
    reach[i] = p[AT.head + i] - p[joint + i];
  }
  cross(axes, 3 * row, reach, 0, turns, 3 * row);
}
const reach = new Float64Array(3);

function cross(a: Float64Array, i: number, b: Float64Array, j: number, out: Float64Array, k: number): void {
  out[k] = a[i + 1] * b[j + 2] - a[i + 2] * b[j + 1];
  out[k + 1] = a[i + 2] * b[j] - a[i] * b[j + 2];
  out[k + 2] = a[i] * b[j + 1] - a[i + 1] * b[j];
}
