import type { PartId } from '../partIds';

/** Parts along each limb, in the order in which their joints are joined when a body is drawn in lines. */
export const LIMBS: readonly (readonly PartId[])[] = [
  ['hipLead', 'kneeLead', 'ankleLead'],
  ['hipTrail', 'kneeTrail', 'ankleTrail'],
  ['hipLead', 'hipTrail', 'waist', 'hipLead'],
  ['waist', 'neck', 'headEgg'],
  ['shoulderLead', 'neck', 'shoulderTrail'],
  ['shoulderLead', 'elbowLead', 'fistLead'],
  ['shoulderTrail', 'elbowTrail', 'fistTrail'],
];
