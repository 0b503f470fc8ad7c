import { CLUBS } from '../../model/club';
import { ILLUSTRATION, sayStatus } from '../../words';
import { SaveStatus } from '../lessons/device/SaveStatus';
import { MY_CLUB, useDesk, type Document } from '../../store';
import { useWrittenText } from '../fields/useWrittenText';

const INCHES_PER_FOOT = 12;
const M_PER_INCH = 0.0254;

/** "1.78 m" or "5 ft 10 in". */
function sayStature(statureM: number, { length }: Document['units']): string {
  if (length === 'cm') return `${statureM.toFixed(2)} m`;
  const inches = Math.round(statureM / M_PER_INCH);
  return `${Math.floor(inches / INCHES_PER_FOOT)} ft ${inches % INCHES_PER_FOOT} in`;
}

/** "7-iron, 1.78 m". */
export const sayWho = ({ player, club, units }: Document): string =>
  [
    club.id === MY_CLUB ? club.my?.name || MY_CLUB : CLUBS[club.id].name,
    sayStature(player.statureM, units),
    ...(player.handed === 'left' ? ['left-handed'] : []),
  ].join(', ');

/** One sentence about the swing, who swings what, and what the picture is. */
export function Status() {
  const sentence = useWrittenText<HTMLParagraphElement>(sayStatus);
  const who = useDesk(({ document }) => sayWho(document));
  return (
    <footer className="status">
      <p className="status-sentence" ref={sentence} />
      <p className="status-who">{who}</p>
      <SaveStatus />
      <p className="status-illustration">{ILLUSTRATION}</p>
    </footer>
  );
}
