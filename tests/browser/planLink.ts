import { toText } from '../../src/export/link/link';
import { DEFAULT_DOCUMENT, STILL_DIALLED, type Document } from '../../src/store/document/document';
import type { ChosenPlan } from '../../src/store/document/chosenPlan';

/** A plan of our own for a cupped wrist. */
export const PLAN: ChosenPlan = {
  id: 'k3v9x2m7q4ab',
  from: { ...STILL_DIALLED, leadWristFlexionDeg: -16 },
  movements: { ...STILL_DIALLED, leadWristFlexionDeg: -3, trailSideBendDeg: 2 },
  targetCm: { leadArmParallel: 1.2, shaftParallel: 0.6 },
  feel: 'Feel the lead knuckles look at the ground long before the arm is parallel.',
  drills: [
    {
      name: 'Ruler on the wrist',
      how: 'Tuck a ruler under the watch strap, over the back of the hand. From the top, press it against the hand.',
      often: '10 slow rehearsals, 5 balls, twice',
    },
    {
      name: 'Pause at the top',
      how: 'Hold the top for a full second. Let the arms start.',
      often: '10 balls at half speed',
    },
    { name: 'Shoulder under', how: '', often: '' },
  ],
  cautions: ['Stop short of the end of the wrist’s range.'],
  words: 'Good work today. Slow first, then a little faster.',
  nextDate: '2027-03-12',
  names: { player: 'Juniper', coach: 'Rowan' },
};

/** What follows # in the address of a document with a plan. */
export const planText = (plan: Partial<ChosenPlan> = {}, other: Partial<Document> = {}): string =>
  toText({ ...DEFAULT_DOCUMENT, ...other, plan: { ...PLAN, ...plan } });
