import type { Rad } from '../../math/angle';
import type { ReturnTakes } from '../../reading/delivery/delivery';
import { showAngle } from '../numbers/numbers';

/** What is said wherever the face is placed between its two ends. */
export const FACE_RETURN_ASSUMED = 'Assumed: nothing measured says how far players bring the face back.';

/** "as it comes", "30 % of the way", "square": how far the face is returned, 0 to 1. */
export function sayFaceReturned(share: number): string {
  const percent = Math.round(share * 100);
  if (percent <= 0) return 'as it comes';
  if (percent >= 100) return 'square';
  return percent === 50 ? 'half way' : `${percent} % of the way`;
}

/** "The face is drawn half way back to square." */
export function sayFaceDrawn(share: number): string {
  const said = sayFaceReturned(share);
  if (said === 'square') return 'The face is drawn square, or as near as it gets.';
  return said === 'as it comes' ? 'The face is drawn as it comes.' : `The face is drawn ${said} back to square.`;
}

/**
 * What bringing the face back takes, and whether the joints allow it: two sentences. Roll in rad, + opens the face; flexion in rad,
 * + bowed. "Square takes 9° of closing roll and 4° of bow." "That is within the range of motion."
 */
export function sayReturnTakes({ roll, flexion, isInRange }: ReturnTakes): readonly string[] {
  const say = (angle: Rad, positive: string, negative: string, none: string): string => {
    const { text, value } = showAngle(Math.abs(angle));
    return value === 0 ? `no ${none}` : `${text} of ${angle > 0 ? positive : negative}`;
  };
  const takes = `${say(roll, 'opening roll', 'closing roll', 'roll')} and ${say(flexion, 'bow', 'cup', 'bow')}`;
  return isInRange
    ? [`Square takes ${takes}.`, 'That is within the range of motion.']
    : [`The nearest to square takes ${takes}.`, 'The range of motion allows no more.'];
}
