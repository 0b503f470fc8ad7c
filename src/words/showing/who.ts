import type { Player } from '../../model/body';
import { CLUBS, type ClubId } from '../../model/club';
import type { Units } from '../numbers/units';

const INCHES_PER_FOOT = 12;
const M_PER_INCH = 0.0254;

/** "1.78 m" or "5 ft 10 in". */
function sayStature(statureM: number, { length }: Pick<Units, 'length'>): string {
  if (length === 'cm') return `${statureM.toFixed(2)} m`;
  const inches = Math.round(statureM / M_PER_INCH);
  return `${Math.floor(inches / INCHES_PER_FOOT)} ft ${inches % INCHES_PER_FOOT} in`;
}

/** As much of a document as says who swings what. `my`: the player's own club. */
interface Who {
  readonly player: Pick<Player, 'statureM' | 'handed'>;
  readonly club: { readonly id: ClubId | typeof MY_CLUB; readonly my: { readonly name: string } | null };
  readonly units: Pick<Units, 'length'>;
}
const MY_CLUB = 'my club';

/** "7-iron", or the name of the player's own club. */
export const sayClub = ({ id, my }: Who['club']): string => (id === MY_CLUB ? my?.name || MY_CLUB : CLUBS[id].name);

/** "7-iron, 1.78 m". */
export const sayWho = ({ player, club, units }: Who): string =>
  [sayClub(club), sayStature(player.statureM, units), ...(player.handed === 'left' ? ['left-handed'] : [])].join(', ');
