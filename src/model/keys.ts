import { JOINT_COUNT } from './joints';

/** The key instants of a swing, in order. */
export const KEY_IDS = [
  'address',
  'takeaway',
  'midBackswing',
  'top',
  'leadArmParallel',
  'shaftParallel',
  'impact',
  'exit',
  'followThrough',
  'finish',
] as const;
export type KeyId = (typeof KEY_IDS)[number];
export const KEY_COUNT = KEY_IDS.length;
export const K = Object.fromEntries(KEY_IDS.map((id, i) => [id, i])) as Readonly<Record<KeyId, number>>;

/**
 * A reference swing: joint values (metres, radians) at the key instants, found for one body and one club.
 * Times in seconds, zero at the top of the backswing. Rows of `values` follow `KEY_IDS`, columns `JOINT_IDS`.
 */
export interface ReferenceSwing {
  readonly times: Float64Array;
  readonly values: Float64Array;
  /** How far the face is turned in the hands so that it meets the ball square, radians. Added to the club's own. */
  readonly gripTurn: number;
  /** Change of the angle between hand and shaft that gives the lag asked for, radians; 0 where none is asked for. Added to the club's own. */
  readonly gripAngle: number;
  /** Change of the lie that fits the club to the player, radians, + more upright; 0 for a club off the rack. Added to the club's own. */
  readonly lie: number;
  /** Where the head's reference point meets the ball, world frame, metres. */
  readonly ballPoint: readonly [number, number, number];
}

/** Offset of one value in `ReferenceSwing.values`. */
export const keyAt = (key: KeyId, joint: number): number => K[key] * JOINT_COUNT + joint;

/** Downswing of the reference, top to impact, seconds. A skilled man's is 0.31 +- 0.04, a recreational man's 0.25 +- 0.02 (Bourgain et al. 2022). */
export const DOWNSWING = 0.25;
/** A backswing takes about three times as long as a downswing (common practice). */
export const BACKSWING_RATIO = 3;
