import { rad } from '../../math/angle';
import { solveCholesky } from '../../math/leastSquares';
import { ADAPTATION_FADE, ADAPTING, type Adaptation } from '../../model/adaptation';
import { K } from '../../model/keys';
import { base, CONDITIONS, COUNT, findMisfit, findSlopes, scale, SIZE, standAtImpact } from './adaptArm';
import { RANGES, searchInside } from './adaptInside';
import type { Swing } from '../swing';

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

const MAX_STEPS = 25;
/** Done when the head is within a micrometre and the path within a millionth of a radian. */
const CLOSE = 1e-6;
/** Largest change of effort in one step: keeps the first steps inside the region where the chain is nearly linear. */
const LONGEST = 3;

const effort = new Float64Array(SIZE);
const misfit = new Float64Array(CONDITIONS);
const slopes = new Float64Array(CONDITIONS * SIZE);
const normal = new Float64Array(CONDITIONS * CONDITIONS);
const right = new Float64Array(CONDITIONS);
const multipliers = new Float64Array(CONDITIONS);
const step = new Float64Array(SIZE);

/**
 * The smallest weighted change of the adapting joints (offset and rate at impact) that puts the head on the ball and sends it along
 * `path` (rad, + right of the target line), starting at `from` (s, shaft parallel). Minimum-norm Gauss-Newton, 8 unknowns, 4
 * conditions. A modelling assumption, not a measurement.
 */
export function solveAdaptation(swing: Swing, from: number, path: number): AdaptationResult {
  const impact = swing.reference.times[K.impact];
  standAtImpact(swing, impact - from);
  effort.fill(0);
  let status: AdaptationResult['status'] = iterate(swing, path) && isInside() ? 'held' : 'closest';
  // The least change lies outside a range, or there is none: look for the best one inside.
  if (status === 'closest' && searchInside(swing, path, effort)) status = 'held';
  findMisfit(swing, path, effort, misfit);
  const offsets = new Float64Array(COUNT);
  const rates = new Float64Array(COUNT);
  for (let i = 0; i < COUNT; i++) {
    offsets[i] = effort[i] * scale[i];
    rates[i] = effort[COUNT + i] * scale[COUNT + i];
  }
  return {
    status,
    adaptation: { from, impact, fade: ADAPTATION_FADE, offsets, rates },
    miss: [misfit[0], misfit[1], misfit[2]],
    limited: status === 'held' ? [] : ADAPTING.filter((_, i) => isAtEnd(i)),
  };
}

const valueOf = (i: number): number => base[ADAPTING[i]] + effort[i] * scale[i];
const isAtEnd = (i: number): boolean => Math.min(valueOf(i) - RANGES[i][0], RANGES[i][1] - valueOf(i)) < rad(0.1);
function isInside(): boolean {
  for (let i = 0; i < COUNT; i++) if (valueOf(i) < RANGES[i][0] || valueOf(i) > RANGES[i][1]) return false;
  return true;
}

/** Minimum-norm Gauss-Newton from the efforts as they are. True when the conditions are met. */
function iterate(swing: Swing, path: number): boolean {
  for (let steps = 0; steps < MAX_STEPS; steps++) {
    findMisfit(swing, path, effort, misfit);
    if (isMet()) return true;
    findSlopes(slopes);
    if (!moveOn()) return false;
  }
  return false;
}

function isMet(): boolean {
  for (let r = 0; r < CONDITIONS; r++) if (!(Math.abs(misfit[r]) < CLOSE)) return false;
  return true;
}

/** One step to the least effort that meets the linearised conditions. False when they contradict each other. */
function moveOn(): boolean {
  for (let a = 0; a < CONDITIONS; a++) {
    let sum = -misfit[a];
    for (let k = 0; k < SIZE; k++) sum += slopes[a * SIZE + k] * effort[k];
    right[a] = sum;
    for (let b = 0; b < CONDITIONS; b++) {
      let dot = a === b ? 1e-12 : 0;
      for (let k = 0; k < SIZE; k++) dot += slopes[a * SIZE + k] * slopes[b * SIZE + k];
      normal[a * CONDITIONS + b] = dot;
    }
  }
  if (!solveCholesky(normal, right, multipliers, CONDITIONS)) return false;
  let longest = 0;
  for (let k = 0; k < SIZE; k++) {
    let goal = 0;
    for (let a = 0; a < CONDITIONS; a++) goal += slopes[a * SIZE + k] * multipliers[a];
    step[k] = goal - effort[k];
    longest = Math.max(longest, Math.abs(step[k]));
  }
  const share = longest > LONGEST ? LONGEST / longest : 1;
  for (let k = 0; k < SIZE; k++) effort[k] += share * step[k];
  return Number.isFinite(longest);
}
