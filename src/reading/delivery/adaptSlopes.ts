import { AT, type Pose } from '../../model/chain';
import {
  bodies,
  CONDITIONS,
  COUNT,
  EFFORT,
  FACE,
  HALF,
  measure,
  MIDDLE,
  MOMENT,
  MOMENT_EFFORT,
  momentOf,
  normal,
  PATH,
  rateScale,
  SIZE,
  standAt,
  velocity,
  type Goal,
} from './adaptArm';
import type { Swing } from '../swing';

/**
 * How the misfit at impact answers to every effort, to first and second order. A joint carries the head round its axis: axis x
 * (head - joint); a joint before it in the chain carries that answer round its own. Both are exact; only to the moment they are central
 * differences. Source: geometric Jacobian and Hessian of a chain of revolute joints, Siciliano et al., Robotics (2009), section 3.1.
 */

const early = new Float64Array(CONDITIONS);
const late = new Float64Array(CONDITIONS);
const slopesEarly = new Float64Array(CONDITIONS * SIZE);
const slopesLate = new Float64Array(CONDITIONS * SIZE);
/** Numbers of one body moment: a vector for each joint. */
const BLOCK = 3 * COUNT;
/** The axis of each adapting joint, and how the head answers to a turn about it, m/rad: just before, at and just after the moment. */
const axes = new Float64Array(3 * BLOCK);
const turns = new Float64Array(3 * BLOCK);
/** The same for the head's level velocity and the face's level normal: their x and z for each unknown. */
const moves = new Float64Array(2 * SIZE);
const tilts = new Float64Array(2 * SIZE);
/** How much longer those grow, of their length, and how far they turn, rad. */
const growth = new Float64Array(SIZE);
const turned = new Float64Array(SIZE);
const reach = new Float64Array(3);
const second = new Float64Array(3);
const before = new Float64Array(3);
const after = new Float64Array(3);

/**
 * The misfit and how it answers to every effort, a row of `SIZE` for each condition. `bends`, where given, receives how that answer
 * changes with every effort: a square of `SIZE` for each condition, its lower half.
 */
export function findSlopes(
  swing: Swing,
  goal: Goal,
  efforts: Float64Array,
  misfit: Float64Array,
  out: Float64Array,
  bends?: Float64Array,
): void {
  standAt(swing, momentOf(efforts));
  measure(swing, goal, efforts, MIDDLE - 1, early);
  if (bends) writeSlopes(MIDDLE - 1, slopesEarly);
  measure(swing, goal, efforts, MIDDLE + 1, late);
  if (bends) writeSlopes(MIDDLE + 1, slopesLate);
  measure(swing, goal, efforts, MIDDLE, misfit);
  writeSlopes(MIDDLE, out);
  for (let r = 0; r < CONDITIONS; r++) {
    out[r * SIZE + MOMENT] = ((late[r] - early[r]) / (2 * HALF)) * MOMENT_EFFORT;
  }
  if (bends) writeBends(misfit, bends);
}

/** Answers to the joints and their rates, the moment held, for an impact at the body moment `at`, just measured. */
function writeSlopes(at: number, out: Float64Array): void {
  for (let m = 0; m < 3; m++) {
    const p = bodies[at - 1 + m];
    for (let i = 0; i < COUNT; i++) {
      const k = m * BLOCK + 3 * i;
      findAxis(p, i, k);
      const joint = i < FROM_GRIP ? AT.leadShoulder : AT.leadGrip;
      for (let c = 0; c < 3; c++) reach[c] = p[AT.head + c] - p[joint + c];
      cross(axes, k, reach, 0, turns, k);
    }
  }
  const ahead = 2 * BLOCK;
  for (let i = 0; i < COUNT; i++) {
    const at3 = 3 * i;
    for (let c = 0; c < 3; c++) {
      out[c * SIZE + i] = turns[BLOCK + at3 + c] * EFFORT[i];
      // A rate leaves head and face where they are.
      out[c * SIZE + COUNT + i] = 0;
    }
    for (let c = 0; c < 2; c++) {
      const early3 = turns[at3 + 2 * c];
      const late3 = turns[ahead + at3 + 2 * c];
      moves[2 * i + c] = ((late3 - early3) / (2 * HALF)) * EFFORT[i];
      moves[2 * (COUNT + i) + c] = ((late3 + early3) / 2) * rateScale[i];
    }
    cross(axes, BLOCK + at3, normal, 0, second, 0);
    for (let c = 0; c < 2; c++) {
      tilts[2 * i + c] = second[2 * c] * EFFORT[i];
      tilts[2 * (COUNT + i) + c] = 0;
    }
  }
  for (let k = 0; k < MOMENT; k++) {
    out[PATH * SIZE + k] = turnOf(velocity, moves[2 * k], moves[2 * k + 1]);
    out[FACE * SIZE + k] = turnOf(normal, tilts[2 * k], tilts[2 * k + 1]);
  }
}

/** Second derivatives, from what `writeSlopes` left of the middle moment. */
function writeBends(misfit: Float64Array, bends: Float64Array): void {
  bends.fill(0);
  for (let i = 0; i < COUNT; i++) {
    for (let j = 0; j <= i; j++) writeJointBends(i, j, bends);
  }
  addTurning(velocity, moves, PATH, bends);
  addTurning(normal, tilts, FACE, bends);
  for (let r = 0; r < CONDITIONS; r++) {
    const row = (r * SIZE + MOMENT) * SIZE;
    for (let k = 0; k < MOMENT; k++) {
      bends[row + k] = ((slopesLate[r * SIZE + k] - slopesEarly[r * SIZE + k]) / (2 * HALF)) * MOMENT_EFFORT;
    }
    bends[row + MOMENT] = ((late[r] - 2 * misfit[r] + early[r]) / HALF ** 2) * MOMENT_EFFORT ** 2;
  }
}

/** What two joints and their rates do together, `j` no later in the chain than `i`; what stays zero is not written. */
function writeJointBends(i: number, j: number, bends: Float64Array): void {
  const onI = 3 * i;
  const onJ = 3 * j;
  const both = EFFORT[i] * EFFORT[j];
  cross(axes, BLOCK + onJ, turns, BLOCK + onI, second, 0);
  for (let c = 0; c < 3; c++) put(bends, c, i, j, second[c] * both);
  cross(axes, onJ, turns, onI, before, 0);
  cross(axes, 2 * BLOCK + onJ, turns, 2 * BLOCK + onI, after, 0);
  const dx = (after[0] - before[0]) / (2 * HALF);
  const dz = (after[2] - before[2]) / (2 * HALF);
  put(bends, PATH, i, j, turnOf(velocity, dx, dz) * both);
  const mean = turnOf(velocity, (after[0] + before[0]) / 2, (after[2] + before[2]) / 2);
  put(bends, PATH, COUNT + i, j, mean * rateScale[i] * EFFORT[j]);
  put(bends, PATH, COUNT + j, i, mean * rateScale[j] * EFFORT[i]);
  cross(axes, BLOCK + onI, normal, 0, before, 0);
  cross(axes, BLOCK + onJ, before, 0, second, 0);
  put(bends, FACE, i, j, turnOf(normal, second[0], second[2]) * both);
}

/** Writes into the lower half, whichever of the two unknowns comes first. */
function put(bends: Float64Array, r: number, a: number, b: number, value: number): void {
  bends[(r * SIZE + (a < b ? b : a)) * SIZE + (a < b ? a : b)] = value;
}

/** How far a direction seen from above turns, rad, when its x and z grow by this little. */
function turnOf(direction: Float64Array, dx: number, dz: number): number {
  const x = direction[0];
  const z = direction[2];
  return (x * dz - z * dx) / (x * x + z * z);
}

/** The part of an angle's second derivative that comes of the first ones: a direction that grew longer turns less. */
function addTurning(direction: Float64Array, changes: Float64Array, r: number, bends: Float64Array): void {
  const x = direction[0];
  const z = direction[2];
  for (let k = 0; k < MOMENT; k++) {
    const dx = changes[2 * k];
    const dz = changes[2 * k + 1];
    growth[k] = (x * dx + z * dz) / (x * x + z * z);
    turned[k] = turnOf(direction, dx, dz);
  }
  for (let a = 0; a < MOMENT; a++) {
    for (let b = 0; b <= a; b++) bends[(r * SIZE + a) * SIZE + b] -= growth[a] * turned[b] + growth[b] * turned[a];
  }
}

/** Joints from this one on turn about the grip, those before it about the shoulder. */
const FROM_GRIP = 2;

/** The axis about which a joint turns, in its positive sense and in the order and the sense in which the chain turns it, into `axes`. */
function findAxis(p: Pose, i: number, k: number): void {
  if (i === 3) {
    // Flexion turns about the forearm's axis after the roll: square to the forearm and to the hand's own x axis.
    cross(p, AT.handAxes, p, AT.armAxes + 6, axes, k);
    const length = Math.hypot(axes[k], axes[k + 1], axes[k + 2]);
    for (let c = 0; c < 3; c++) axes[k + c] /= length;
    return;
  }
  const at = AXES[i];
  for (let c = 0; c < 3; c++) axes[k + c] = SENSES[i] * p[at + c];
}
const AXES = [AT.thoraxAxes + 3, AT.armAxes, AT.armAxes + 6, NaN, AT.handAxes];
const SENSES = [-1, -1, 1, -1, -1];

/** Cross product of the vectors that start at `i` and `j`, to `k`. */
function cross(a: Float64Array, i: number, b: Float64Array, j: number, out: Float64Array, k: number): void {
  out[k] = a[i + 1] * b[j + 2] - a[i + 2] * b[j + 1];
  out[k + 1] = a[i + 2] * b[j] - a[i] * b[j + 2];
  out[k + 2] = a[i] * b[j + 1] - a[i + 1] * b[j];
}
