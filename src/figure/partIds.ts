/** Every solid of the figure and the club, in the order in which they are placed. */
export const PART_IDS = [
  'pelvis',
  'waist',
  'ribcage',
  'yokeLead',
  'yokeTrail',
  'shoulderLead',
  'shoulderTrail',
  'neck',
  'headEgg',
  'upperArmLead',
  'upperArmTrail',
  'elbowLead',
  'elbowTrail',
  'forearmLead',
  'forearmTrail',
  'wristLead',
  'wristTrail',
  'palmLead',
  'palmTrail',
  'fistLead',
  'fistTrail',
  'thumbLead',
  'thumbTrail',
  'hipLead',
  'hipTrail',
  'thighLead',
  'thighTrail',
  'kneeLead',
  'kneeTrail',
  'shankLead',
  'shankTrail',
  'ankleLead',
  'ankleTrail',
  'footLead',
  'footTrail',
  'grip',
  'shaft',
  'sleeve',
  'clubHead',
] as const;
export type PartId = (typeof PART_IDS)[number];

/** Index of each part in `Figure.parts` and, times twelve, of its matrix. */
export const PART = Object.fromEntries(PART_IDS.map((id, i) => [id, i])) as Readonly<Record<PartId, number>>;

/** Numbers a part takes in a placement: x axis, y axis, z axis, origin. */
export const MATRIX_SIZE = 12;

/** Room for the placement of a whole figure. */
export const createPlacement = (): Float64Array => new Float64Array(PART_IDS.length * MATRIX_SIZE);
