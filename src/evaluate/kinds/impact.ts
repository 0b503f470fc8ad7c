import { numberIn, type FieldsOf } from '../../checking/schemas';
import { impactOf, type StrikeNumbers } from '../../flight/impact';
import { headOfClub } from '../../flight/shot';
import { exactOptional } from 'valibot';
import { clubSchema, toClub } from '../golfer';
import { orRefusal } from '../strike';

/** Any number: the impact itself knows what is legal, and says so. */
const any = numberIn(-1e6, 1e6);

/** A centred strike in numbers, and with which club. */
export const impactFields = {
  headSpeedMps: any,
  dynamicLoftDeg: any,
  faceDeg: any,
  pathDeg: any,
  attackDeg: any,
  headMassKg: any,
  club: exactOptional(clubSchema),
} satisfies Record<keyof StrikeNumbers, typeof any> & { club: unknown };

/**
 * How the ball leaves the face, or why it does not: by the published formula alone, or, with a club, by the face of that club as
 * shots on the desk are struck.
 */
export function runImpact(line: FieldsOf<typeof impactFields>): object {
  const { club, headSpeedMps, dynamicLoftDeg, faceDeg, pathDeg, attackDeg, headMassKg } = line;
  const numbers = { headSpeedMps, dynamicLoftDeg, faceDeg, pathDeg, attackDeg, headMassKg };
  if (club === undefined) return orRefusal(impactOf(numbers));
  const { restitution, tangential } = headOfClub(toClub(club));
  return orRefusal(impactOf(numbers, restitution, tangential));
}
