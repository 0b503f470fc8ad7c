import { toDeg } from '../../math/angle';
import type { MovementId } from '../../model/movements';
import type { Gain } from '../../solving/rule/gains';
import { formatSigned } from '../numbers/numbers';
import { LENGTHS, type Units } from '../numbers/units';

/** One number that a movement gives every player: its name, and how it is shown and written. */
export interface GainMeasure {
  readonly id: 'leadArmParallel' | 'shaftParallel' | 'path' | 'faceLeft' | 'faceReturned';
  readonly title: string;
  readonly isLength: boolean;
  /** Column of the CSV file, with its unit. */
  readonly column: string;
}

/** The face has a width: left as it comes, and returned. */
export const GAIN_MEASURES: readonly GainMeasure[] = [
  { id: 'leadArmParallel', title: 'Lead arm parallel, line over the bicep', isLength: true, column: 'bicepGapCm' },
  { id: 'shaftParallel', title: 'Shaft parallel, head in front', isLength: true, column: 'headDepthCm' },
  { id: 'path', title: 'Path, + in-to-out', isLength: false, column: 'pathDeg' },
  { id: 'faceLeft', title: 'Face left as it comes, + open', isLength: false, column: 'faceLeftDeg' },
  { id: 'faceReturned', title: 'Face returned, + open', isLength: false, column: 'faceReturnedDeg' },
];

/** What one unit of a movement is in the table. */
export const GAIN_WORDS: Readonly<Record<MovementId, string>> = {
  leadWristFlexion: 'Bowing the wrist 10°',
  rotationRate: 'Turning 10 % more',
  rotationDelay: 'Starting the turn 10 ms later',
  trailSideBend: 'Bending 5° more to the trail side',
  pelvisShift: 'Sliding the hips 5 cm to the target',
};

/** "−1.9", "+4": a gain in the shown unit. */
export function showGain({ id, isLength }: GainMeasure, gain: Gain, { length }: Pick<Units, 'length'>): string {
  if (!isLength) return formatSigned(toDeg(gain[id]), 0);
  const { metres, decimals } = LENGTHS[length];
  return formatSigned(gain[id] / metres, decimals + 1);
}

/** "1.78", "1.8": a height in whole centimetres, m. One typed in feet has more digits than the table has room for. */
export const formatHeight = (stature: number): string => String(Number(stature.toFixed(2)));

/** Symbol of a gain's unit. */
export const gainUnit = ({ isLength }: GainMeasure, { length }: Pick<Units, 'length'>): string =>
  isLength ? LENGTHS[length].symbol : '°';

/** Whom the movement moves most at a place, in one sentence of at most 15 words. */
export function sayGains(movement: MovementId, gains: readonly Gain[]): string {
  const most = (id: 'leadArmParallel' | 'shaftParallel'): Gain | undefined =>
    gains
      .filter((gain) => Number.isFinite(gain[id]))
      .toSorted((a, b) => Math.abs(b[id]) - Math.abs(a[id]))
      .at(0);
  const [arm, shaft] = [most('leadArmParallel'), most('shaftParallel')];
  if (!arm || !shaft) return `${GAIN_WORDS[movement]} …`;
  if (Math.abs(arm.leadArmParallel) < 1e-4 && Math.abs(shaft.shaftParallel) < 1e-4) {
    return `${GAIN_WORDS[movement]} moves neither checkpoint, whoever does it.`;
  }
  return `It moves the head at shaft parallel most for ${formatHeight(shaft.stature)} m with the ${shaft.club}.`;
}

/** The table as a file: one row a height and club, numbers for the amount in its first line. */
export function gainsCsv(movement: MovementId, gains: readonly Gain[]): string {
  const rows = gains.map((gain) => [
    gain.stature,
    gain.club,
    ...GAIN_MEASURES.map(({ id, isLength }) => {
      const value = isLength ? gain[id] * 100 : toDeg(gain[id]);
      return Number.isFinite(value) ? value.toFixed(3) : '';
    }),
  ]);
  const head = ['statureM', 'club', ...GAIN_MEASURES.map(({ column }) => column)];
  return [[`${GAIN_WORDS[movement]}, computed by the model`], head, ...rows].map((row) => row.join(',')).join('\r\n');
}
