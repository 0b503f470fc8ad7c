import { rad } from '../../math/angle';
import type { CameraView } from '../../reading/camera/camera';
import type { BendCause, Bent } from '../../reading/camera/cameraCause';
import type { CameraReadingId, Unseen } from '../../reading/camera/cameraReadings';
import type { CheckpointId, NotReached } from '../../reading/checkpoints';
import { CHECKPOINT_NAMES } from './checkpoint';
import { capital } from '../numbers/capital';
import { formatTyped, showAngle, showLength } from '../numbers/numbers';
import { LENGTHS, type Units } from '../numbers/units';

type LengthUnits = Pick<Units, 'length'>;
type Read = Bent | Unseen | NotReached;

/** A tripod as its coach describes it: right is his own right, whichever hand the player plays with. */
export interface PlacedTripod {
  readonly distanceM: number;
  readonly heightM: number;
  readonly rightCm: number;
  readonly aimRightDeg: number;
  readonly clockwiseDeg: number;
}

/** A bend below this is not worth a coach's walk (our choice): a centimetre, a degree. */
const INTEREST = { m: 0.01, rad: rad(1) } as const;

/** True when a reading down the line is bent by more than is worth a walk, or cannot be read from where the camera is. */
export const isWorthMoving = (read: Read): boolean =>
  'bend' in read
    ? Math.abs(read.bend) >= INTEREST.m
    : read.missing === 'behind-the-camera' || read.missing === 'end-on';

const M_PER_FOOT = 0.3048;
/** How far and how high tripods stand: metres, or feet with those who measure in inches. */
export const TRIPOD_UNITS = {
  cm: { symbol: 'm', metres: 1, word: 'm', decimals: 2 },
  in: { symbol: 'ft', metres: M_PER_FOOT, word: 'feet', decimals: 1 },
} as const;

/** "4 m", "5.2 feet". */
function sayTripodLength(metres: number, { length }: LengthUnits): string {
  const { metres: size, word, decimals } = TRIPOD_UNITS[length];
  return `${formatTyped(Number((metres / size).toFixed(decimals)))} ${word}`;
}

const side = (value: number): 'right' | 'left' => (value < 0 ? 'left' : 'right');
const cm = (value: number, units: LengthUnits): string => showLength(Math.abs(value) / 100, units).inSentence;
const degrees = (value: number): string => `${formatTyped(Math.abs(value))}°`;

/** "Standing 40 cm right of the line": what about the tripod bends a reading. */
function sayCause(cause: BendCause, view: CameraView, at: PlacedTripod, units: LengthUnits): string {
  switch (cause) {
    case 'offset': {
      const line = view === 'downTheLine' ? 'the line' : 'centre';
      return `Standing ${cm(at.rightCm, units)} ${side(at.rightCm)} of ${line}`;
    }
    case 'height':
      return `Standing ${sayTripodLength(at.heightM, units)} high`;
    case 'aim':
      return `Aimed ${degrees(at.aimRightDeg)} ${side(at.aimRightDeg)} of the hands`;
    case 'roll':
      return `Tilted ${degrees(at.clockwiseDeg)} ${at.clockwiseDeg < 0 ? 'anticlockwise' : 'clockwise'}`;
    case 'distance':
      return `From ${sayTripodLength(at.distanceM, units)} away`;
  }
}

/** "2 cm steeper", "true": a bend down the line, m. Positive: read steeper than it is. */
export function sayBend(bend: number, units: LengthUnits): string {
  const shown = showLength(Math.abs(bend), units);
  return shown.value === 0 ? 'true' : `${shown.inSentence} ${bend > 0 ? 'steeper' : 'shallower'}`;
}

/** What is read face on: its name, and what too much and too little of it are called. */
const FACE_ON: Readonly<Partial<Record<CameraReadingId, readonly [name: string, over: string, under: string]>>> = {
  armAngle: ['lead arm', 'too high', 'too low'],
  shaftAngle: ['shaft', 'too high', 'too low'],
  trunkLean: ['trunk lean', 'too large', 'too small'],
};

/** "3° too high", "true": a bend face on, rad. */
export function sayTurn(id: CameraReadingId, bend: number): string {
  const shown = showAngle(Math.abs(bend));
  const [, over, under] = FACE_ON[id]!;
  return shown.value === 0 ? 'true' : `${shown.inSentence} ${bend > 0 ? over : under}`;
}

/** "Lead arm at lead arm parallel" */
export function nameFaceOn(id: CameraReadingId, at: CheckpointId): string {
  const [name] = FACE_ON[id]!;
  return `${capital(name)} at ${CHECKPOINT_NAMES[at].inSentence}`;
}

/** "10° below level", "14° from the target": an angle read face on, rad. */
export function sayFaceOn(id: CameraReadingId, angle: number): string {
  const shown = showAngle(Math.abs(angle));
  const [zero, over, under] =
    id === 'trunkLean'
      ? (['upright', 'from the target', 'to the target'] as const)
      : (['level', 'above level', 'below level'] as const);
  return shown.value === 0 ? zero : `${shown.inSentence} ${angle > 0 ? over : under}`;
}

/** Why there is no reading, in a few words, for its place in a table. */
export function sayUnseen({ missing }: Unseen | NotReached): string {
  if (missing === 'behind-the-camera') return 'out of its sight';
  return missing === 'end-on' ? 'end-on to it' : 'not reached';
}

/** The largest of several bends, and why the first that cannot be read cannot. */
function worstOf<T extends { readonly read: Read }>(all: readonly T[]) {
  const bent = all.flatMap((one) => ('bend' in one.read ? [{ ...one, read: one.read }] : []));
  const [worst] = bent.toSorted((a, b) => Math.abs(b.read.bend) - Math.abs(a.read.bend));
  const unseen = all.find(
    ({ read }) => 'missing' in read && (read.missing === 'behind-the-camera' || read.missing === 'end-on'),
  );
  return { worst, unseen };
}

const sayBlind = (at: CheckpointId, read: Read): string =>
  'missing' in read && read.missing === 'end-on'
    ? `The shaft points straight at this camera at ${CHECKPOINT_NAMES[at].inSentence}. Move it aside.`
    : `The club swings past this camera at ${CHECKPOINT_NAMES[at].inSentence}. Move it back.`;

const NOTHING_TO_FILM = 'No checkpoint is reached, so there is nothing to read.';

/** The answer down the line in one sentence of at most 15 words. */
export function sayLine(
  reads: readonly { at: CheckpointId; read: Read }[],
  tripod: PlacedTripod,
  units: LengthUnits,
): string {
  const { worst, unseen } = worstOf(reads);
  if (unseen) return sayBlind(unseen.at, unseen.read);
  if (!worst) return NOTHING_TO_FILM;
  if (Math.abs(worst.read.bend) < INTEREST.m)
    return `Your camera reads this swing true to ${sayAtMost(INTEREST.m, units)}.`;
  const cause = sayCause(worst.read.cause, 'downTheLine', tripod, units);
  return `${cause}, it reads ${sayBend(worst.read.bend, units)} at ${CHECKPOINT_NAMES[worst.at].inSentence}.`;
}

/** The answer face on in one sentence of at most 15 words. */
export function sayFront(
  reads: readonly { at: CheckpointId; id: CameraReadingId; read: Read }[],
  tripod: PlacedTripod,
  units: LengthUnits,
): string {
  const { worst, unseen } = worstOf(reads);
  if (unseen) return sayBlind(unseen.at, unseen.read);
  if (!worst) return NOTHING_TO_FILM;
  if (Math.abs(worst.read.bend) < INTEREST.rad) return 'Your camera reads arm, shaft and trunk true to 1°.';
  const cause = sayCause(worst.read.cause, 'faceOn', tripod, units);
  return `${cause}, it reads the ${FACE_ON[worst.id]![0]} ${sayTurn(worst.id, worst.read.bend)}.`;
}

/** A length a little above `metres`, on the grain that is shown. */
function sayAtMost(metres: number, units: LengthUnits): string {
  const { metres: size, grain: shown } = LENGTHS[units.length];
  const grain = size * shown;
  return showLength(Math.max(1, Math.ceil(metres / grain - 1e-9)) * grain, units).inSentence;
}

/** How the camera down the line is mended: "Move it 25 cm left and 10 cm up." and what it reads there. `worst` in m. */
export function sayMove(
  tripod: PlacedTripod,
  better: { readonly rightCm: number; readonly heightM: number; readonly worst: number } | null,
  units: LengthUnits,
): readonly string[] {
  if (!better) return ['Farther back it bends less: twice as far, about half as much.'];
  const [aside, up] = [better.rightCm - tripod.rightCm, (better.heightM - tripod.heightM) * 100];
  const moves = [
    ...(Math.abs(aside) >= 1 ? [`${cm(aside, units)} ${side(aside)}`] : []),
    ...(Math.abs(up) >= 1 ? [`${cm(up, units)} ${up < 0 ? 'down' : 'up'}`] : []),
  ];
  return [`Move it ${moves.join(' and ')}.`, `There it reads this swing true to ${sayAtMost(better.worst, units)}.`];
}

/** How a camera face on is mended. */
export function sayMoveFront(tripod: PlacedTripod, units: LengthUnits): readonly string[] {
  const back = 'Farther back it bends less: twice as far, about half as much.';
  if (Math.abs(tripod.rightCm) < 1) return [back];
  return [`Move it ${cm(tripod.rightCm, units)} ${side(-tripod.rightCm)}, opposite the middle of the stance.`, back];
}

/** "At lead arm parallel you would call it steep. It is on plane." Nothing while both words agree. */
export function sayMisjudged(at: CheckpointId, seen: string, own: string): string | undefined {
  if (seen === own) return undefined;
  return `At ${CHECKPOINT_NAMES[at].inSentence} you would call it ${seen.toLowerCase()}. It is ${own.toLowerCase()}.`;
}

/** Said when the picture does not hold all that is read on it. */
export const TOO_NARROW = 'The picture does not hold all of it. Move back or widen it.';
