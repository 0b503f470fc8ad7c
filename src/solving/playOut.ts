import { findShot, type NoShot, type Shot, type Weather } from '../flight/shot';
import { DEFAULT_ARM_ANGLE, readCheckpoints, type Checkpoints } from '../reading/checkpoints';
import {
  deliver,
  impliedPath,
  strikeOf,
  type Delivery,
  type DeliveryRule,
  type NotDelivered,
  type ReferenceStrike,
} from '../reading/delivery/delivery';
import { withMovements, type Swing } from '../reading/swing';
import type { Rad } from '../math/angle';
import type { Movements } from '../model/movements';

/** A player, club, top and tempo with nothing dialled, read once: what every dialled swing of theirs is held against. */
export interface SwingBase {
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
  /** Absent when the base itself never reaches shaft parallel: then nothing on it is delivered. */
  readonly strike: ReferenceStrike | undefined;
}

/** How a swing is read, and how it goes on to the ball. */
export interface DeliveryConditions {
  /** Where the lead arm counts as parallel, rad. Default: `DEFAULT_ARM_ANGLE`. */
  readonly armAngle?: Rad;
  /** Default: the model's own. */
  readonly rule?: DeliveryRule;
  /** How far the face is returned, 0 (left as it comes) to 1 (square). Default: `DEFAULT_FACE_RETURNED`. */
  readonly faceReturned?: number;
}
export interface Conditions extends DeliveryConditions {
  /** Default: a still day at sea level. */
  readonly weather?: Weather;
  /** Points of the ball's track, evenly in time; 0, the default, for none. */
  readonly trackPoints?: number;
}

/** A swing as far as the ball. */
export interface DeliveredSwing {
  /** As dialled, nothing adapted: what solvers and the ledger mix. */
  readonly dialled: Swing;
  /** What is drawn: from shaft parallel on the arms adapt so that the head meets the ball. */
  readonly swing: Swing;
  readonly checkpoints: Checkpoints;
  readonly delivery: Delivery | NotDelivered;
  /** Path at the ball if the change at shaft parallel carries through, rad, + in-to-out; null when it is not reached. */
  readonly impliedPath: number | null;
}
/** A swing from the dials to where the ball lands. */
export interface PlayedOut extends DeliveredSwing {
  /** In the player's own frame, see `Shot`. */
  readonly shot: Shot | NoShot;
}

/** Reads a swing with nothing dialled as the base of others. `armAngle` in rad. */
export function readBase(swing: Swing, armAngle: Rad = DEFAULT_ARM_ANGLE): SwingBase {
  const checkpoints = readCheckpoints(swing, armAngle);
  return { swing, checkpoints, strike: strikeOf(swing, checkpoints) };
}

/**
 * The first part of `playOut`, for those who ask for no ball flight: checkpoints, delivery and the swing with its arms adapted.
 * `dialled` has nothing adapted; it may stand on another rig than the base, which then is only the zero of the implied path.
 */
export function deliverSwing({ strike }: SwingBase, dialled: Swing, conditions: DeliveryConditions): DeliveredSwing {
  const { armAngle = DEFAULT_ARM_ANGLE, rule, faceReturned } = conditions;
  const checkpoints = readCheckpoints(dialled, armAngle);
  if (!strike) {
    return { dialled, swing: dialled, checkpoints, delivery: { missing: 'no-shaft-parallel' }, impliedPath: null };
  }
  const { swing, delivery } = deliver(dialled, checkpoints, strike, rule, faceReturned);
  return { dialled, swing, checkpoints, delivery, impliedPath: impliedPath(checkpoints, strike) ?? null };
}

/** The second part: what a delivered swing makes of the ball. */
const strikeBall = (
  { delivery, dialled }: DeliveredSwing,
  { weather, trackPoints }: Pick<Conditions, 'weather' | 'trackPoints'>,
): Shot | NoShot => findShot(delivery, dialled.rig.club, weather, trackPoints);

/** Plays a swing out that is already dialled, with nothing adapted. */
export function playOutSwing(base: SwingBase, dialled: Swing, conditions: Conditions): PlayedOut {
  const delivered = deliverSwing(base, dialled, conditions);
  return { ...delivered, shot: strikeBall(delivered, conditions) };
}

/**
 * One swing, played out once: movements (model units) on a base, checkpoints, delivery and shot. Every screen, file and line of
 * `evaluate` gets its numbers here.
 */
export const playOut = (base: SwingBase, movements: Movements, conditions: Conditions): PlayedOut =>
  playOutSwing(base, withMovements(base.swing, movements), conditions);
