import { rad, type Rad } from '../../math/angle';
import type { Club } from '../../model/club';

/**
 * The ends of the rule: a 45 in driver at the middle of the published 4.4 to 6.3 deg (MacKenzie & Sprigings 2009, Sports Eng 12:13,
 * simulated swings with three shafts, mark B), nothing at 35 in, a little under a sand wedge, and never more than was published.
 */
const DRIVER_LENGTH = 1.143;
const STIFF_LENGTH = 0.889;
const DRIVER_BEND = rad(5.35);
const MOST_BEND = rad(6.3);

/**
 * Loft that the bending shaft adds at impact, rad, 0 or more: the head runs ahead of the line of the grip and tips back. The chain is
 * rigid, so this is an addition to the face it delivers. Between its two ends the rule is ours: even with the length of the club. It
 * takes a shaft fitted to the player's speed, so it does not change with the swing.
 */
export const shaftBendLoft = ({ length }: Pick<Club, 'length'>): Rad =>
  Math.max(0, Math.min(MOST_BEND, (DRIVER_BEND * (length - STIFF_LENGTH)) / (DRIVER_LENGTH - STIFF_LENGTH)));
