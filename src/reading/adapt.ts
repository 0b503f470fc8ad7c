import { rad } from '../math/angle';
import { solveCholesky, solveLeastSquares } from '../math/leastSquares';
import { ADAPTATION_FADE, ADAPTING, type Adaptation } from '../model/adaptation';
import { AT, createPose, placeClub, placeLeadShoulder } from '../model/chain';
import { createJointVector, J } from '../model/joints';
import { K } from '../model/keys';
import { swingJoints, type Swing } from './swing';

/**
 * How the arms must adapt for the head to meet the ball on a given path.
 * `held`: head on the ball, path as asked. `closest`: a joint ran into its range; what is left is told as a miss.
 */
export interface AdaptationResult {
  readonly status: 'held' | 'closest';
  readonly adaptation: Adaptation;
  /** Head to ball at impact, m, world frame. */
  readonly miss: readonly [number, number, number];
  /** Joints held back at the end of their range. */
  readonly limited: readonly number[];
}

const COUNT = ADAPTING.length;
const SIZE = 2 * COUNT;
/** One unit of effort of each offset, rad: the forearm rolls more readily than the shoulder moves. A modelling choice. */
const EFFORT: readonly number[] = [rad(8), rad(8), rad(20), rad(6)];
/** Ranges inside which the arms may adapt, rad. Deviation: Boone & Azen (1979); the others: the joints' own. */
const RANGES: readonly (readonly [number, number])[] = [
  [rad(-60), rad(110)],
  [rad(-90), rad(60)],
  [rad(-150), rad(150)],
  [rad(-36), rad(22)],
];
const MAX_STEPS = 25;
/** Done when the head is within a micrometre and the path within a millionth of a radian. */
const CLOSE = 1e-6;
const NUDGE = 1e-6;
/** Largest change of effort in one step: keeps the first steps inside the region where the chain is nearly linear. */
const LONGEST = 3;

const base = createJointVector();
const speed = createJointVector();
const q = createJointVector();
const velocity = new Float64Array(3);
const effort = new Float64Array(SIZE);
const scale = new Float64Array(SIZE);
const misfit = new Float64Array(4);
const shifted = new Float64Array(4);
const jacobian = new Float64Array(4 * SIZE);
const normal = new Float64Array(16);
const right = new Float64Array(4);
const multipliers = new Float64Array(4);

/**
 * The smallest weighted change of the adapting joints (offset and rate at impact) that puts the head on the ball and sends it along
 * `path` (rad, + right of the target line), starting at `from` (s, shaft parallel). Minimum-norm Gauss-Newton, 8 unknowns, 4
 * conditions. A modelling assumption, not a measurement.
 */
export function solveAdaptation(swing: Swing, from: number, path: number): AdaptationResult {
  const impact = swing.reference.times[K.impact];
  const span = impact - from;
  swingJoints(swing, impact + HALF, speed);
  swingJoints(swing, impact - HALF, base);
  for (let j = 0; j < base.length; j++) speed[j] = (speed[j] - base[j]) / (2 * HALF);
  swingJoints(swing, impact, base);
  for (let i = 0; i < COUNT; i++) {
    scale[i] = EFFORT[i];
    scale[COUNT + i] = (2 * EFFORT[i]) / span;
  }
  placeBodies(swing);
  effort.fill(0);
  let status: AdaptationResult['status'] = iterate(swing, path) && isInside() ? 'held' : 'closest';
  // The least change lies outside a range, or there is none: look for the best one inside.
  if (status === 'closest' && searchInside(swing, path)) status = 'held';
  evaluate(swing, path, effort, misfit);
  return {
    status,
    adaptation: {
      from,
      impact,
      fade: ADAPTATION_FADE,
      offsets: Float64Array.from({ length: COUNT }, (_, i) => effort[i] * scale[i]),
      rates: Float64Array.from({ length: COUNT }, (_, i) => effort[COUNT + i] * scale[COUNT + i]),
    },
    miss: [misfit[0], misfit[1], misfit[2]],
    limited: status === 'held' ? [] : ADAPTING.filter((_, i) => isAtEnd(i)),
  };
}

const valueOf = (i: number): number => base[ADAPTING[i]] + effort[i] * scale[i];
const isInside = (): boolean => RANGES.every(([low, high], i) => valueOf(i) >= low && valueOf(i) <= high);
const isAtEnd = (i: number): boolean => Math.min(valueOf(i) - RANGES[i][0], RANGES[i][1] - valueOf(i)) < rad(0.1);

/** Weights of the bounded search: head within a millimetre, path within a tenth of a degree, a little for the effort. */
const TIGHT = { head: 0.001, path: rad(0.1), effort: 30 };

/**
 * Damped least squares inside the ranges, from no change at all: meets the conditions where it can and comes as close as it can
 * where not. True when the head is within half a millimetre and the path within a twentieth of a degree.
 */
function searchInside(swing: Swing, path: number): boolean {
  effort.fill(0);
  const lower = Float64Array.from({ length: SIZE }, (_, k) => (k < COUNT ? edge(k, 0) : -LONGEST_RATE));
  const upper = Float64Array.from({ length: SIZE }, (_, k) => (k < COUNT ? edge(k, 1) : LONGEST_RATE));
  const residuals = (x: Float64Array, out: Float64Array): void => {
    evaluate(swing, path, x, misfit);
    for (let i = 0; i < 3; i++) out[i] = misfit[i] / TIGHT.head;
    out[3] = misfit[3] / TIGHT.path;
    for (let k = 0; k < SIZE; k++) out[4 + k] = x[k] / TIGHT.effort;
  };
  solveLeastSquares(residuals, 4 + SIZE, effort, { lower, upper, difference: NUDGE, maxSteps: 40, tolerance: 1e-6 });
  evaluate(swing, path, effort, misfit);
  const away = Math.max(Math.abs(misfit[0]), Math.abs(misfit[1]), Math.abs(misfit[2]));
  return away < TIGHT.head / 2 && Math.abs(misfit[3]) < TIGHT.path / 2;
}

/** Largest change of a rate in the bounded search, units of effort. */
const LONGEST_RATE = 6;
/** Lower (0) or upper (1) end of an offset, in units of effort. */
const edge = (i: number, end: 0 | 1): number => (RANGES[i][end] - base[ADAPTING[i]]) / scale[i];

/** Minimum-norm Gauss-Newton from the efforts as they are. True when the conditions are met. */
function iterate(swing: Swing, path: number): boolean {
  for (let step = 0; step < MAX_STEPS; step++) {
    evaluate(swing, path, effort, misfit);
    if (isMet()) return true;
    const [vx, , vz] = velocity;
    const level = vx * vx + vz * vz;
    for (let k = 0; k < COUNT; k++) {
      const kept = effort[k];
      effort[k] = kept + NUDGE;
      evaluate(swing, path, effort, shifted);
      effort[k] = kept;
      for (let r = 0; r < 4; r++) jacobian[r * SIZE + k] = (shifted[r] - misfit[r]) / NUDGE;
      // A rate leaves the head where it is, and moves it as the joint's angle would: no second difference is needed.
      const perRate = scale[COUNT + k] / scale[k];
      const dx = jacobian[k] * perRate;
      const dz = jacobian[2 * SIZE + k] * perRate;
      for (let r = 0; r < 3; r++) jacobian[r * SIZE + COUNT + k] = 0;
      jacobian[3 * SIZE + COUNT + k] = (vx * dz - vz * dx) / level;
    }
    if (!moveOn()) return false;
  }
  return false;
}

function isMet(): boolean {
  for (let r = 0; r < 4; r++) if (!(Math.abs(misfit[r]) < CLOSE)) return false;
  return true;
}

/** One step to the least effort that meets the linearised conditions. False when they contradict each other. */
function moveOn(): boolean {
  for (let a = 0; a < 4; a++) {
    let sum = -misfit[a];
    for (let k = 0; k < SIZE; k++) sum += jacobian[a * SIZE + k] * effort[k];
    right[a] = sum;
    for (let b = 0; b < 4; b++) {
      let dot = a === b ? 1e-12 : 0;
      for (let k = 0; k < SIZE; k++) dot += jacobian[a * SIZE + k] * jacobian[b * SIZE + k];
      normal[a * 4 + b] = dot;
    }
  }
  if (!solveCholesky(normal, right, multipliers, 4)) return false;
  let longest = 0;
  for (let k = 0; k < SIZE; k++) longest = Math.max(longest, Math.abs(goalFor(k) - effort[k]));
  const share = longest > LONGEST ? LONGEST / longest : 1;
  for (let k = 0; k < SIZE; k++) effort[k] += share * (goalFor(k) - effort[k]);
  return Number.isFinite(longest);
}

function goalFor(k: number): number {
  let goal = 0;
  for (let a = 0; a < 4; a++) goal += jacobian[a * SIZE + k] * multipliers[a];
  return goal;
}

/** Half the span of the central difference of the head's velocity, s. */
const HALF = 1e-5;
/** The moments at which the head is looked at, s from impact, each with a body of its own. */
const MOMENTS = [0, HALF, -HALF] as const;
const bodies = MOMENTS.map(createPose);

/** Places what does not adapt, at impact and just before and after it: once for a whole search. */
function placeBodies(swing: Swing): void {
  MOMENTS.forEach((dt, m) => {
    for (let j = 0; j < q.length; j++) q[j] = base[j] + speed[j] * dt;
    placeLeadShoulder(swing.rig, q, bodies[m]);
  });
}

/** Head to ball (m) and path to the path asked for (rad) at impact, for the given efforts. */
function evaluate(swing: Swing, path: number, efforts: Float64Array, out: Float64Array): void {
  const { ballPoint } = swing.reference;
  for (let m = 0; m < MOMENTS.length; m++) placeClubWith(swing, efforts, m);
  const [at, after, before] = bodies;
  for (let i = 0; i < 3; i++) {
    out[i] = at[AT.head + i] - ballPoint[i];
    velocity[i] = (after[AT.head + i] - before[AT.head + i]) / (2 * HALF);
  }
  out[3] = Math.atan2(velocity[2], velocity[0]) - path;
}

/** Places arm and club at one of the moments, moving at the joints' speeds there. */
function placeClubWith(swing: Swing, efforts: Float64Array, moment: number): void {
  const dt = MOMENTS[moment];
  // Only the arm's own joints count from here on: the body stands already.
  for (let j = J.leadArmAdduction; j <= J.leadWristRadial; j++) q[j] = base[j] + speed[j] * dt;
  for (let i = 0; i < COUNT; i++) {
    q[ADAPTING[i]] += efforts[i] * scale[i] + efforts[COUNT + i] * scale[COUNT + i] * dt;
  }
  placeClub(swing.rig, q, bodies[moment]);
}
