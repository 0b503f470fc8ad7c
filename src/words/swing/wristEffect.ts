import { rad, toDeg, type Rad } from '../../math/angle';
import { wristEffect } from '../../reading/wristEffect';
import type { Swing } from '../../reading/swing';
import { showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** The lag that stands beside the player's own: near a right angle, where the wrist turns little but the face. */
const NEAR_RIGHT_ANGLE = rad(98);

/**
 * How much cupping moves the shaft line at this lag, and at one near a right angle. `lagDeg`: the angle between lead arm and shaft at
 * lead arm parallel, in whole degrees; empty where that is not reached.
 */
export function sayWristEffect(
  swing: Swing,
  armAngle: Rad,
  units: Pick<Units, 'length'>,
): { readonly lagDeg: string; readonly sentence: string } {
  const own = wristEffect(swing, armAngle);
  const other = wristEffect(swing, armAngle, NEAR_RIGHT_ANGLE);
  if (!own || !other) return { lagDeg: '', sentence: 'At a right angle the wrist turns only the face.' };
  const lagDeg = toDeg(own.lag).toFixed(0);
  const here = showLength(own.gapFor10Cupped, units, 1).inSentence;
  const there = showLength(other.gapFor10Cupped, units, 1).inSentence;
  const sentence = `Arm and shaft ${lagDeg}°. 10° of cupping: ${here} at this lag, ${there} at 98°. At a right angle the wrist turns only the face.`;
  return { lagDeg, sentence };
}
