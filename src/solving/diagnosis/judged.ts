import type { Rad } from '../../math/angle';
import { createPose } from '../../model/chain';
import { DIALS, type MovementGroup, type Movements, type MovementId } from '../../model/movements';
import { findLeadArmParallel, findShaftParallel } from '../../reading/checkpoints';
import { bicepGap, headDepth } from '../../reading/readings';
import { swingPose, type Swing } from '../../reading/swing';

/** The two numbers that the verdicts hang on, metres. NaN: that checkpoint is never reached. */
export interface Judged {
  readonly leadArmParallel: number;
  readonly shaftParallel: number;
}

/** Number of dials. */
export const DIAL_COUNT = DIALS.length;
/** Index of each dial in a vector of dial values, which follows the order of `DIALS`. */
export const DIAL_INDEX = Object.fromEntries(DIALS.map(({ id }, i) => [id, i])) as Readonly<Record<MovementId, number>>;
/** Half of a dial's usual range, in the dial's own unit: the step that counts as an effort of 1. */
export const HALF_RANGE = DIALS.map(({ usualMin, usualMax }) => (usualMax - usualMin) / 2);

/** Reads the judged numbers of one player at any setting of the dials. */
export interface Judge {
  /** `dials`: values in model units, in the order of `DIALS`. Writes bicep gap and head depth (m, or NaN) into `out`. */
  read(dials: Float64Array, out: Float64Array): void;
  /** How often it was asked. */
  readonly evaluations: number;
}

/**
 * A judge of `swing` at the reading angle `armAngle` (rad). It asks the same events and readings as `readCheckpoints` and leaves
 * out the rest. A pelvis that turns on its own stays as it is set.
 */
export function createJudge(swing: Swing, armAngle: Rad): Judge {
  const movements: { -readonly [id in keyof Movements]: Movements[id] } = { ...swing.movements };
  const asked: Swing = { ...swing, movements };
  const pose = createPose();
  let evaluations = 0;
  return {
    read(dials, out) {
      evaluations++;
      for (let i = 0; i < DIAL_COUNT; i++) movements[DIALS[i].id] = dials[i];
      out[0] = out[1] = NaN;
      const arm = findLeadArmParallel(asked, armAngle);
      if ('missing' in arm) return;
      swingPose(asked, arm.t, pose);
      out[0] = bicepGap(pose);
      const shaft = findShaftParallel(asked, arm.t);
      if ('missing' in shaft) return;
      swingPose(asked, shaft.t, pose);
      out[1] = headDepth(pose);
    },
    get evaluations() {
      return evaluations;
    },
  };
}

/** The dials of a set of movements as a vector in the order of `DIALS`, model units. */
export const toDials = (movements: Movements): Float64Array => Float64Array.from(DIALS, ({ id }) => movements[id]);

/** Movements with the dials of a vector; a pelvis that turns on its own stays as it is in `movements`. */
export function withDials(movements: Movements, dials: ArrayLike<number>): Movements {
  return { ...movements, ...Object.fromEntries(DIALS.map(({ id }, i) => [id, dials[i]])) };
}

/** Indices of the dials of some movements. */
export const dialsOf = (groups: readonly MovementGroup[]): number[] =>
  DIALS.filter(({ group }) => groups.includes(group)).map(({ id }) => DIAL_INDEX[id]);

/** A dial that moves both readings by less than this, m, over its usual range is deaf: a tenth of what a plate can show. */
const DEAF = 1e-5;

/**
 * Those of the dials to which a judged reading answers, around the dial values `from`. A change of a deaf dial (one that only
 * carries the whole golfer along) cures nothing and explains nothing.
 */
export function findLiveDials(judge: Judge, from: Float64Array, dials: readonly number[]): number[] {
  const here = new Float64Array(2);
  const there = new Float64Array(2);
  const asked = from.slice();
  judge.read(from, here);
  return dials.filter((i) =>
    [HALF_RANGE[i], -HALF_RANGE[i]].some((step) => {
      asked[i] = from[i] + step;
      judge.read(asked, there);
      asked[i] = from[i];
      return here.some((value, k) => !(Math.abs(there[k] - value) <= DEAF));
    }),
  );
}
