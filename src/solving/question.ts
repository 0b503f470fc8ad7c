import { DEFAULT_ARM_ANGLE, findLeadArmParallel, findShaftParallel, readAt } from '../reading/checkpoints';
import type { CheckpointId, NotReached, ReadingId } from '../reading/checkpoints';
import type { Swing } from '../reading/swing';
import type { Rad } from '../math/angle';

/** A number read off a swing, or why there is none. `no-number`: the reading is not defined in this pose. */
export type Answer = { readonly value: number } | { readonly missing: NotReached['missing'] | 'no-number' };

/** Any question with one number for an answer. The unit is the question's own (radians, metres, m/s ...). */
export type Question = (swing: Swing) => Answer;

/** Asks for one reading at one checkpoint; units and senses as in `Readings`. */
export const askReading =
  (at: CheckpointId, reading: ReadingId, armAngle: Rad = DEFAULT_ARM_ANGLE): Question =>
  (swing) => {
    const arm = findLeadArmParallel(swing, armAngle);
    const event = 'missing' in arm || at === 'leadArmParallel' ? arm : findShaftParallel(swing, arm.t);
    if ('missing' in event) return { missing: event.missing === 'not-finite' ? 'not-finite' : 'never-parallel' };
    const value = readAt(swing, event.t).readings[reading];
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
