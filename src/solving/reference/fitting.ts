import { rad } from '../../math/angle';
import { solveLeastSquares, type LeastSquaresResult } from '../../math/leastSquares';
import { SEGMENT_FRACTIONS, type Body } from '../../model/body';
import { J, JOINT_COUNT, JOINTS, type JointId } from '../../model/joints';
import { K, type KeyId } from '../../model/keys';
import type { Landmark } from './landmarks';

/** One unknown of a fit: a joint at a key, its landmark, how firmly it is held, and its bounds. Radians or metres. */
export interface Unknown {
  /** Offset in `ReferenceSwing.values`. */
  readonly at: number;
  readonly joint: number;
  readonly wanted: number;
  readonly spread: number;
  readonly lower: number;
  readonly upper: number;
}

/** Hard bounds inside a fit, degrees: the ranges of motion, a little inside so that a rounded value never lies outside. */
const BOUNDS_DEG: { readonly [id in JointId]?: readonly [number, number] } = {
  leadWristFlexion: [-60, 70],
  leadWristRadial: [-29.9, 19.9],
  leadArmRoll: [-140, 140],
  leadProtraction: [-29.5, 29.5],
  trailProtraction: [-29.5, 29.5],
  leadArmAdduction: [-20, 88],
};

/** Highest pelvis with both feet on the ground and the stance of the figure, as a fraction of stature. */
const STANDING_TALL = 0.516;

const LEGS = SEGMENT_FRACTIONS.thigh + SEGMENT_FRACTIONS.shank + SEGMENT_FRACTIONS.ankle;
/** The stature to which a player's legs would be usual, m: the pelvis stands as high as the legs let it. */
export const statureOfLegs = ({ thigh, shank, ankle }: Body): number => (thigh + shank + ankle) / LEGS;

/** Highest pelvis of this player with both feet on the ground, m. */
export const standingTall = (body: Body): number => STANDING_TALL * statureOfLegs(body);

/** Turns landmarks into unknowns for a player. */
export function unknownsFrom(landmarks: readonly Landmark[], body: Body): Unknown[] {
  const legs = statureOfLegs(body);
  return landmarks.flatMap(({ joint, spread, at }) => {
    const index = J[joint];
    const scale = JOINTS[index].kind === 'angle' ? rad(1) : joint === 'pelvisHeight' ? legs : body.stature;
    const bounds = BOUNDS_DEG[joint];
    return (Object.keys(at) as KeyId[]).map((key) => ({
      at: K[key] * JOINT_COUNT + index,
      joint: index,
      wanted: at[key]! * scale,
      spread: spread * scale,
      lower: bounds ? rad(bounds[0]) : JOINTS[index].min,
      upper: joint === 'pelvisHeight' ? standingTall(body) : bounds ? rad(bounds[1]) : JOINTS[index].max,
    }));
  });
}

/** Collects weighted residuals one after the other. */
export class Residuals {
  private size = 0;
  private out: Float64Array = new Float64Array(0);

  start(out: Float64Array): void {
    this.out = out;
    this.size = 0;
  }

  /** A difference that should vanish, in units of `spread`. */
  want(difference: number, spread: number): void {
    this.out[this.size++] = difference / spread;
  }

  /** An excess that should not be positive, in units of `spread`. */
  avoid(excess: number, spread: number): void {
    this.out[this.size++] = excess > 0 ? excess / spread : 0;
  }

  get count(): number {
    return this.size;
  }
}

/** Room for the residuals of any fit here. */
const MAX_RESIDUALS = 1000;
/** Step of the finite difference: radians or metres, both of order one. */
const DIFFERENCE = 1e-6;

/**
 * Fits the unknowns: each is drawn to its landmark, `goals` adds what the swing has to achieve. `apply` is told the values before
 * `goals` is asked. `start` holds the first guess and receives the answer.
 */
export function fitUnknowns(
  unknowns: readonly Unknown[],
  start: Float64Array,
  apply: (values: Float64Array) => void,
  goals: (to: Residuals) => void,
  maxSteps: number,
): LeastSquaresResult {
  const to = new Residuals();
  const evaluate = (values: Float64Array, out: Float64Array): void => {
    apply(values);
    to.start(out);
    unknowns.forEach((u, i) => to.want(values[i] - u.wanted, u.spread));
    goals(to);
  };
  evaluate(start, new Float64Array(MAX_RESIDUALS));
  return solveLeastSquares(evaluate, to.count, start, {
    lower: unknowns.map((u) => u.lower),
    upper: unknowns.map((u) => u.upper),
    difference: DIFFERENCE,
    maxSteps,
    tolerance: 5e-4,
  });
}
