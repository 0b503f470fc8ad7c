import { PART } from '../../figure/partIds';

/** Where a picture is taken from: outside the figure, or through its eyes. */
export type Standpoint = 'outside' | 'eyes';

/** Of the player himself what stands before his eyes: drawn see-through. */
export const NEAR_THE_EYES: readonly number[] = [
  PART.upperArmLead,
  PART.shoulderLead,
  PART.yokeLead,
  PART.upperArmTrail,
  PART.shoulderTrail,
  PART.yokeTrail,
  PART.ribcage,
];

/** The parts that are not drawn solid: his head is not drawn at all. */
export const HIDDEN: Readonly<Record<Standpoint, readonly number[]>> = {
  outside: [],
  eyes: [PART.headEgg, PART.neck, ...NEAR_THE_EYES],
};
