import { deskLink } from '../../../record';
import { desk } from '../../../store';
import type { Sheet } from '../filmMarks';
import type { Tripod } from '../filmStore';

/** Whose films these are: another player stands elsewhere and otherwise, though the tripod be the same. */
export const findWhose = (): Pick<Tripod, 'body' | 'lessonId'> => ({
  body: JSON.stringify(desk.getState().document.player),
  lessonId: deskLink.openLesson()?.id,
});

/** Where the tripod stands, as soon as the address is marked. `clubM`: length of the club, m. */
export const tripodOf = ({ address }: Sheet, { w, h }: { w: number; h: number }, clubM: number): Tripod | undefined =>
  address && { w, h, clubM, address, ...findWhose() };
