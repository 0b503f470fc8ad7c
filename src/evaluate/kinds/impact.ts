import { numberIn, type FieldsOf } from '../../checking/schemas';
import { impactOf, type StrikeNumbers } from '../../flight/impact';
import { orRefusal } from '../strike';

/** Any number: the impact itself knows what is legal, and says so. */
const any = numberIn(-1e6, 1e6);

/** A centred strike in numbers. */
export const impactFields = {
  headSpeedMps: any,
  dynamicLoftDeg: any,
  faceDeg: any,
  pathDeg: any,
  attackDeg: any,
  headMassKg: any,
} satisfies Record<keyof StrikeNumbers, typeof any>;

/** How the ball leaves the face, or why it does not. */
export const runImpact = (line: FieldsOf<typeof impactFields>): object => {
  const { headSpeedMps, dynamicLoftDeg, faceDeg, pathDeg, attackDeg, headMassKg } = line;
  return orRefusal(impactOf({ headSpeedMps, dynamicLoftDeg, faceDeg, pathDeg, attackDeg, headMassKg }));
};
