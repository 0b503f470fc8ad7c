import { J, type JointVector } from './joints';

/** The joints that give so that the head meets the ball: those of the lead arm from the shoulder down, in the order of the chain. */
export const ADAPTING: readonly number[] = [
  J.leadArmAdduction,
  J.leadArmElevation,
  J.leadArmRoll,
  J.leadWristFlexion,
  J.leadWristRadial,
];

/**
 * How the arms adapt between shaft parallel and impact: an offset (rad) and a rate (rad/s) at impact for each adapting joint,
 * reached along a cubic Hermite curve from nothing at `from` (s) and let go again over `fade` (s) after `impact` (s): the moment at which
 * the head is at the ball, seldom quite the reference's.
 */
export interface Adaptation {
  readonly from: number;
  readonly impact: number;
  readonly fade: number;
  readonly offsets: Float64Array;
  readonly rates: Float64Array;
}

/** Time over which the arms let go of an adaptation after impact, s. For the eye only: the ball is gone. */
export const ADAPTATION_FADE = 0.15;

/** Adds the adaptation at time `t` (s) to the joints. */
export function addAdaptation({ from, impact, fade, offsets, rates }: Adaptation, t: number, out: JointVector): void {
  if (t <= from || t >= impact + fade) return;
  let ofOffset: number;
  let ofRate: number;
  if (t <= impact) {
    const h = impact - from;
    const u = (t - from) / h;
    ofOffset = u * u * (3 - 2 * u);
    ofRate = h * u * u * (u - 1);
  } else {
    const u = (t - impact) / fade;
    ofOffset = 1 - u * u * (3 - 2 * u);
    ofRate = fade * u * (1 - u) * (1 - u);
  }
  for (let i = 0; i < ADAPTING.length; i++) out[ADAPTING[i]] += offsets[i] * ofOffset + rates[i] * ofRate;
}
