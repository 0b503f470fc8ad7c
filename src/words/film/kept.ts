import type { CheckpointId } from '../../reading/checkpointTable';
import type { Verdict } from '../../reading/verdicts';
import { minus } from '../numbers/ranges';
import { LENGTHS, type Units } from '../numbers/units';
import { CHECKPOINT_NAMES, PLATE_WORDS } from '../swing/checkpoint';

/** What keeping does; said beside the button. */
export const KEEP_WITH_LESSON = 'Marks, camera and readings go into the open lesson. The film does not.';
export const KEEP_WITHOUT_LESSON = 'No lesson is open: only the readings stay.';
export const ANOTHER_TAB = 'Another tab writes the lesson book: only the readings stay.';
export const WITH_STILLS = 'With two stills';
/** Once it is done. */
export const KEPT = {
  readings: 'Kept as seen.',
  lesson: 'Kept with the lesson: marks, camera and readings.',
  stills: 'Kept with the lesson: marks, camera, readings and stills.',
  noStills: 'Kept with the lesson. The stills could not be made.',
} as const;

export const FILM_REMOVED = 'The film’s marks and stills are removed. Undo brings them back.';
export const NO_STILL = 'No still was kept. These are the marks alone.';

/** "Stills too (4): they show your players." */
export const sayWithStills = (count: number): string => `Stills too (${count}): they show your players.`;
/** A backup of so many pictures would not open again. */
export const TOO_MANY_STILLS = 'Too many stills for one file. It was saved without them.';

/** "Steep 7 ± 4 cm" */
export function sayKeptReading(
  { cm, plusMinusCm, verdict }: { cm: number; plusMinusCm: number; verdict: Exclude<Verdict, 'missing'> | null },
  { length }: Pick<Units, 'length'>,
): string {
  const { metres, symbol } = LENGTHS[length];
  const show = (value: number): string => minus(Number((value / 100 / metres).toFixed(length === 'cm' ? 0 : 1)));
  return `${verdict ? PLATE_WORDS[verdict] : 'Too close to call'} ${show(cm)} ± ${show(plusMinusCm)} ${symbol}`;
}

/** "Lead arm parallel, frame 813 of 2400" */
export const sayKeptFrame = (id: CheckpointId, frame: number, kind: 'video' | 'picture', frames: number): string =>
  `${CHECKPOINT_NAMES[id].title}, ${kind === 'video' ? 'frame' : 'picture'} ${frame + 1} of ${frames}`;

/** What an earlier film spares the coach. */
export const EARLIER = { tripod: 'The tripod has not moved', marks: 'Put the kept marks on' } as const;
/** Said while the camera is an earlier film's. */
export const TRIPOD_KEPT = 'The camera is the earlier film’s: you say the tripod has not moved.';
