import { DEFAULT_ARM_ANGLE, findLeadArmParallel, findShaftParallel, readAt } from '../../reading/checkpoints';
import type { CheckpointId, NotReached, ReadingId } from '../../reading/checkpoints';
import { withMovements, type Swing } from '../../reading/swing';
import type { Rad } from '../../math/angle';
import { STILL } from '../../model/movements';
import type { NotDelivered } from '../../reading/delivery/delivery';
import { deliverSwing, readBase, type DeliveryConditions, type SwingBase } from '../playOut';

/** A number read off a swing, or why there is none. `no-number`: the reading is not defined in this pose. */
export type Answer =
  { readonly value: number } | { readonly missing: NotReached['missing'] | NotDelivered['missing'] | 'no-number' };

/** Any question with one number for an answer. The unit is the question's own (radians, metres, m/s ...). */
export type Question = (swing: Swing) => Answer;

/** Asks for one reading at one checkpoint; units and senses as in `Readings`. */
export const askReading =
  (at: CheckpointId, reading: ReadingId, armAngle: Rad = DEFAULT_ARM_ANGLE): Question =>
  (swing) => {
    const arm = findLeadArmParallel(swing, armAngle);
    const event = 'missing' in arm || at === 'leadArmParallel' ? arm : findShaftParallel(swing, arm.t);
    if ('missing' in event) return { missing: event.missing === 'not-finite' ? 'not-finite' : 'never-parallel' };
    const value = readAt(swing, event.t, at === 'shaftParallel').readings[reading];
    return Number.isFinite(value) ? { value } : { missing: 'no-number' };
  };

/**
 * Asks for the implied path, rad: the path at the ball if the change of plane direction against `reference` at this checkpoint
 * carried through. Positive: in-to-out. `referencePath` is the path of the reference swing, rad.
 */
export function askImpliedPath(
  at: CheckpointId,
  reference: Swing,
  referencePath: Rad,
  armAngle: Rad = DEFAULT_ARM_ANGLE,
): Question {
  const ask = askReading(at, 'planeDirection', armAngle);
  const zero = ask(reference);
  return (swing) => {
    const answer = ask(swing);
    if ('missing' in answer) return answer;
    return 'missing' in zero ? zero : { value: referencePath + (answer.value - zero.value) };
  };
}

/** Numbers of the delivery that can be asked for; units and senses as in `Delivery`. */
export const BALL_READINGS = [
  'path',
  'face',
  'faceToPath',
  'attack',
  'dynamicLoft',
  'shaftLean',
  'headSpeed',
  'lowPoint',
] as const;
export type BallReading = (typeof BALL_READINGS)[number];

/**
 * Asks for a number of the delivery. The zero of the implied path is the strike of the same player, club and top with nothing
 * dialled, so a mixture of two set-ups is held against its own reference.
 */
export function askDelivery(reading: BallReading, conditions: DeliveryConditions): Question {
  const bases = new Map<Swing['curves'], SwingBase>();
  const baseOf = (swing: Swing): SwingBase => {
    const known = bases.get(swing.curves) ?? readBase(withMovements(swing, STILL), conditions.armAngle);
    bases.set(swing.curves, known);
    return known;
  };
  return (swing) => {
    const { delivery } = deliverSwing(baseOf(swing), swing, conditions);
    if ('missing' in delivery) return delivery;
    const value = delivery[reading];
    return Number.isFinite(value) ? { value } : { missing: 'no-number' };
  };
}

/** A reading that a difference can be shared out of, and where it is read. */
export interface LedgerQuestion extends DeliveryConditions {
  readonly at: CheckpointId | 'ball';
  readonly reading: ReadingId | 'impliedPath' | BallReading;
  /** The player, club and top at the end of the difference with nothing dialled: the zero of the implied path. */
  readonly base: SwingBase;
  readonly armAngle: Rad;
}

/** The question of a ledger: any reading at a checkpoint, the implied path there, or any number of the delivery. */
export function askLedger({ at, reading, base, ...conditions }: LedgerQuestion): Question {
  const { armAngle } = conditions;
  if (at === 'ball') return askDelivery(reading as BallReading, conditions);
  if (reading !== 'impliedPath') return askReading(at, reading as ReadingId, armAngle);
  return askImpliedPath(at, base.swing, base.strike?.path ?? NaN, armAngle);
}
