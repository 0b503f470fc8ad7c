import type { PositionId } from '../../reading/positions';
import { sayStatus, type StatusOf } from './status';

/** What is drawn: who swings what, and how the swing is judged. */
interface Drawn extends StatusOf {
  readonly player: { readonly handed: 'left' | 'right' };
  readonly club: { readonly name: string };
}

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
export function sayPicture(
  drawn: Drawn,
  { session }: { readonly session: { readonly held: PositionId | null } },
): string {
  const where = (session.held && WHERE[session.held]) ?? 'during the swing';
  const hand = drawn.player.handed === 'left' ? 'left-handed' : 'right-handed';
  return `A wooden figure, ${hand}, with a ${drawn.club.name}, ${where}. ${sayStatus(drawn)}`;
}

/** Said beside the stick figure that stands in for the picture. */
export const NO_PICTURE = {
  refused: 'This browser draws no 3D picture. The stick figure shows the same swing.',
  lost: 'The 3D picture is away for a moment. The stick figure shows the same swing.',
} as const;
export const PICTURE_KEYS = 'Swing in 3D. Arrow keys turn it, plus and minus zoom.';
