import { toDeg } from '../../math/angle';
import { dialOf, type MovementId } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpointTable';
import { CHECKPOINT_NAMES, type CheckpointWords } from '../swing/checkpoint';
import { capital, lowered } from '../numbers/capital';
import { formatTyped, showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';
import type { DialChange } from '../why/planText';

const WHAT: Readonly<Record<CheckpointId, string>> = { leadArmParallel: 'Shaft', shaftParallel: 'Clubhead' };

/** Under the word at a checkpoint: "Shaft above the trail bicep". Without its number: that stands on the body. */
export const sayWhere = (id: CheckpointId, { where, why }: CheckpointWords): string =>
  where === '' ? why : `${WHAT[id]} ${where}`;

/** Under the word of the second swing: "Was 7 cm above". */
export const sayWas = ({ verdict, shortWhy }: CheckpointWords): string =>
  verdict === 'missing' ? 'Was not reached' : verdict === 'onPlane' ? 'Was on plane' : `Was ${shortWhy}`;

/** Over the second of two runs: "2 of 2: after the change". */
export const sayRun = (run: 1 | 2, label: string): string => `${run} of 2: ${lowered(label)}`;

/** Smaller changes than a tenth of a dial's step are none. */
const isChange = ({ id, change }: DialChange): boolean => Math.abs(change) > dialOf(id).step / 10;

/** "a later, smaller turn": both dials of the turn in one. */
function sayTurn(delay: number, rate: number): string[] {
  const when = delay === 0 ? '' : delay > 0 ? 'later' : 'earlier';
  const much = rate === 0 ? '' : rate > 0 ? 'bigger' : 'smaller';
  const how = [when, much].filter(Boolean);
  return how.length === 0 ? [] : [`${how[0] === 'earlier' ? 'an' : 'a'} ${how.join(', ')} turn`];
}

/**
 * A plan as a whole, its wrist first: "11° less cup", and "with a later, smaller turn and 2° more side bend". Changes in model units; `from`
 * the wrist's start, for its word.
 */
export function sayWholeChange(
  changes: readonly DialChange[],
  from: Readonly<Record<MovementId, number>>,
  units: Pick<Units, 'length'>,
): { readonly head: string; readonly rest: string } {
  const by = new Map(changes.filter(isChange).map(({ id, change }) => [id, change]));
  const of = (id: MovementId): number => by.get(id) ?? 0;
  const parts: string[] = [];
  const wrist = of('leadWristFlexion');
  if (wrist !== 0) {
    const start = from.leadWristFlexion;
    const word = wrist > 0 ? (start < -1e-9 ? 'less cup' : 'more bow') : start > 1e-9 ? 'less bow' : 'more cup';
    parts.push(`${formatTyped(Math.round(Math.abs(toDeg(wrist))))}° ${word}`);
  }
  parts.push(...sayTurn(of('rotationDelay'), of('rotationRate')));
  const bend = of('trailSideBend');
  if (bend !== 0)
    parts.push(`${formatTyped(Math.round(Math.abs(toDeg(bend))))}° ${bend > 0 ? 'more' : 'less'} side bend`);
  const shift = of('pelvisShift');
  if (shift !== 0) parts.push(`${showLength(Math.abs(shift), units).text} ${shift > 0 ? 'more' : 'less'} hip slide`);
  const [first, ...others] = parts;
  if (first === undefined) return { head: 'No change', rest: '' };
  const rest = others.length > 1 ? `${others.slice(0, -1).join(', ')} and ${others.at(-1)!}` : (others[0] ?? '');
  return { head: capital(first), rest: rest === '' ? '' : `with ${rest}` };
}

/** What to feel, without the word that stands over it already: "The belt buckle stays over the trail foot". */
export const sayFeel = (feel: string): string => capital(feel.trim().replace(/^Feel (?=\w)/, ''));

/** Said over what a swing does at both checkpoints, on a still: "Steep coming down: too much cup, turning too soon." */
export function sayFault(
  words: Readonly<Record<CheckpointId, CheckpointWords>>,
  changes: readonly DialChange[],
): string {
  const [arm, shaft] = [words.leadArmParallel, words.shaftParallel];
  const where =
    arm.verdict === shaft.verdict
      ? arm.verdict === 'missing'
        ? 'Neither checkpoint is reached'
        : `${arm.word} coming down`
      : arm.verdict === 'onPlane' || arm.verdict === 'missing'
        ? `${shaft.word} at ${CHECKPOINT_NAMES.shaftParallel.inSentence}`
        : `${arm.word} at ${CHECKPOINT_NAMES.leadArmParallel.inSentence}`;
  const causes = changes.filter(isChange).map(({ id, change }) => FAULTS[id][change > 0 ? 0 : 1]);
  const isFaulty = [arm, shaft].some(({ verdict }) => verdict === 'steep' || verdict === 'shallow');
  return isFaulty && causes.length > 0 ? `${where}: ${causes.slice(0, 2).join(', ')}.` : `${where}.`;
}

/** What a change mends: one that goes up, one that goes down. */
const FAULTS: Readonly<Record<MovementId, readonly [string, string]>> = {
  leadWristFlexion: ['too much cup', 'too much bow'],
  rotationRate: ['turning too little', 'turning too fast'],
  rotationDelay: ['turning too soon', 'turning too late'],
  trailSideBend: ['too little side bend', 'too much side bend'],
  pelvisShift: ['too little hip slide', 'too much hip slide'],
};

/** One sentence on a still: "At lead arm parallel the shaft is above the trail bicep." */
export const sayAtCheckpoint = (id: CheckpointId, { where, why }: CheckpointWords): string =>
  where === '' ? why : `At ${CHECKPOINT_NAMES[id].inSentence} the ${WHAT[id].toLowerCase()} is ${where}.`;

/** Under a still of the stage: "Lead arm parallel: steep, 4 cm above." */
export const sayNumbers = (id: CheckpointId, { word, shortWhy, verdict }: CheckpointWords): string =>
  `${CHECKPOINT_NAMES[id].title}: ${word.toLowerCase()}${verdict === 'missing' ? '' : `, ${shortWhy}`}.`;

/** Over a whole swing, and over the changes between two. */
export const YOUR_SWING = 'Your swing now';
export const THE_CHANGE = 'The change';
export const THE_DIFFERENCE = 'The difference';
export const FEEL_THIS = 'Feel this';
export const SCAN_PRACTICE = 'Scan to open your practice';
export const SHORT_CAUTION = 'Warm up first. Never force a joint to its limit. Stop if it hurts.';
