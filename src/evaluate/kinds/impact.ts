import { impactOf, type StrikeNumbers } from '../../flight/impact';
import { headOfClub } from '../../flight/shot';
import { clubSchema, toClub } from '../golfer';
import { number, record, type Typed } from '../schema';
import { orRefusal } from '../strike';

/** Any number: the impact itself knows what is legal, and says so. */
const any = number(-1e6, 1e6);

/** A centred strike in numbers, and with which club. */
export const impactSchema = record(
  {
    headSpeedMps: any,
    dynamicLoftDeg: any,
    faceDeg: any,
    pathDeg: any,
    attackDeg: any,
    headMassKg: any,
  } satisfies Record<keyof StrikeNumbers, typeof any>,
  { club: clubSchema },
);

/**
 * How the ball leaves the face, or why it does not: by the published formula alone, or, with a club, by the face of that club as
 * shots on the desk are struck.
 */
export function runImpact(line: Typed<typeof impactSchema>): object {
  const { club, headSpeedMps, dynamicLoftDeg, faceDeg, pathDeg, attackDeg, headMassKg } = line;
  const numbers = { headSpeedMps, dynamicLoftDeg, faceDeg, pathDeg, attackDeg, headMassKg };
  if (club === undefined) return orRefusal(impactOf(numbers));
  const { restitution, tangential } = headOfClub(toClub(club));
  return orRefusal(impactOf(numbers, restitution, tangential));
}
