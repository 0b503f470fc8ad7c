import { sayStatus } from '../words';
import type { Derived, DeskState } from '../store';

const WHERE: Record<string, string> = {
  P1: 'at address',
  P2: 'with the shaft parallel in the backswing',
  P3: 'with the lead arm parallel in the backswing',
  P4: 'at the top of the backswing',
  P5: 'at lead arm parallel',
  P6: 'at shaft parallel',
  P7: 'at impact',
  P10: 'at the finish',
};

/** The picture in words, for those who do not see it. */
export function sayPicture(derived: Derived, { session }: DeskState): string {
  const { player, club, checkpoints, bands, status, problem, exaggerated } = derived;
  const where = (session.held && WHERE[session.held]) ?? 'during the swing';
  const hand = player.handed === 'left' ? 'left-handed' : 'right-handed';
  const about = sayStatus({ status, checkpoints, bands, exaggerated, ...(problem === undefined ? {} : { problem }) });
  return `A wooden figure, ${hand}, with a ${club.name}, ${where}. ${about}`;
}
