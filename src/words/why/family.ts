import { dialOf, DIALS, type MovementId, type Movements } from '../../model/movements';
import type { EndName, Family, NoFamily } from '../../solving/family/question';
import type { Difference } from '../../solving/family/signs';
import { CHECKPOINT_NAMES } from '../swing/checkpoint';
import { sayMovement } from '../swing/dials';
import { showAngle, showLength } from '../numbers/numbers';
import type { Units } from '../numbers/units';

/** What an end of a family is mostly made of: less and more of a dial. */
const SENSES: Readonly<Record<MovementId, readonly [less: string, more: string]>> = {
  leadWristFlexion: ['a cupped wrist', 'a bowed wrist'],
  rotationRate: ['less turn', 'more turn'],
  rotationDelay: ['an earlier turn', 'a later turn'],
  trailSideBend: ['less side bend', 'more side bend'],
  pelvisShift: ['less hip slide', 'more hip slide'],
};

/** "mostly less turn" */
export const sayEnd = ({ dial, sign }: EndName): string => `mostly ${SENSES[dial][sign < 0 ? 0 : 1]}`;

/** The sentence over a family, at most 15 words. `isMarked`: the coach marked the picture; otherwise it is the swing's own. */
export function sayFamily(found: Family | NoFamily, isMarked: boolean): string {
  if (found.status === 'missing') return 'No movement of the model reaches this checkpoint. Mark the other one.';
  if (found.status !== 'found') return 'No body of the model gives this picture. Check both marks.';
  const picture = isMarked ? 'what you saw' : 'this swing’s picture';
  if (found.members.length === 1) return `Only one body gives ${picture}.`;
  const [low, high] = found.ends.map(({ dial, sign }) => SENSES[dial][sign < 0 ? 0 : 1]);
  return `Many bodies give ${picture}: from ${low} to ${high}.`;
}

/** Said where the usual ranges hold no such body. */
export const BEYOND_USUAL = 'No body inside the usual ranges gives this picture. These go beyond them.';
export const FAN = 'On the stage: this body see-through, the others in thin lines.';
export const NOTHING_READ = 'Neither checkpoint is reached, so there is no picture to hold.';
export const LOOKING = 'Looking for bodies that give this picture …';

/** "cupped 8°, 12 % less turn": all that a body moves; a change smaller than half a step of its dial is not said. */
export function sayBody(movements: Movements, units: Pick<Units, 'length'>): string {
  const moved = DIALS.filter(({ id, neutral, step }) => Math.abs(movements[id] - neutral) >= step / 2);
  const list = moved.map(({ id }) => {
    const { step } = dialOf(id);
    return sayMovement(id, { ...movements, [id]: Math.round(movements[id] / step) * step }, units).phrase;
  });
  return list.join(', ') || 'as the reference';
}

/** What the picture does not tell at all. */
export const sayFree = (deaf: readonly MovementId[]): string | undefined =>
  deaf.includes('pelvisShift') ? 'Hip slide never shows in this picture; it is left alone.' : undefined;

const VIEWS = {
  downTheLine: 'Down the line',
  faceOn: 'Face on',
  fromAbove: 'From above',
  ballFlight: 'At the ball',
} as const satisfies Record<Difference['sign']['view'], string>;

type Says = (amount: string, isMore: boolean) => string;
const SIGNS: Readonly<Record<Difference['sign']['id'], Says>> = {
  chestTurn: (amount, isMore) => `the chest is ${amount} more ${isMore ? 'open' : 'closed'}`,
  pelvisTurn: (amount, isMore) => `the hips are ${amount} more ${isMore ? 'open' : 'closed'}`,
  trunkLean: (amount, isMore) => `the trunk leans ${amount} more ${isMore ? 'away from' : 'toward'} the target`,
  trunkBend: (amount, isMore) => `the trunk is bent ${amount} ${isMore ? 'more' : 'less'}`,
  pelvisShift: (amount, isMore) => `the hips are ${amount} ${isMore ? 'nearer to' : 'farther from'} the target`,
  handHeight: (amount, isMore) => `the hands are ${amount} ${isMore ? 'higher' : 'lower'}`,
  handsToTarget: (amount, isMore) => `the hands are ${amount} ${isMore ? 'nearer to' : 'farther from'} the target`,
  armToShaft: (amount, isMore) => `arm and shaft stand ${amount} ${isMore ? 'wider' : 'closer'}`,
  wristFlexion: (amount, isMore) => `the lead wrist is ${amount} more ${isMore ? 'bowed' : 'cupped'}`,
  faceToVertical: (amount, isMore) => `the face looks ${amount} more ${isMore ? 'down' : 'up'}`,
  trailElbowDepth: (amount, isMore) => `the trail elbow is ${amount} farther ${isMore ? 'forward' : 'back'}`,
  handDepth: (amount, isMore) => `the hands are ${amount} farther ${isMore ? 'forward' : 'back'}`,
  path: (amount, isMore) => `the path is ${amount} more ${isMore ? 'in-to-out' : 'out-to-in'}`,
  face: (amount, isMore) => `the face is ${amount} more ${isMore ? 'open' : 'closed'}`,
};

/** "Face on, shaft parallel: the chest is 12° more open" */
export function sayWhatTells(
  { sign, at, change }: Difference,
  units: Pick<Units, 'length'>,
): { readonly text: string; readonly spoken: string } {
  const shown = sign.kind === 'angle' ? showAngle(Math.abs(change)) : showLength(Math.abs(change), units);
  const where = at === 'ball' ? VIEWS.ballFlight : `${VIEWS[sign.view]}, ${CHECKPOINT_NAMES[at].inSentence}`;
  const say = (amount: string): string => `${where}: ${SIGNS[sign.id](amount, change > 0)}`;
  return { text: say(shown.inSentence), spoken: say(shown.spoken) };
}

/** Two bodies that differ by less than a coach can see. */
export const SAME_BODY = 'Both bodies look the same from every side. Choose another.';

/** Where families come from. `isMarked`: they give what the coach marked. */
export const sayFamilySource = (isMarked: boolean): string =>
  `${isMarked ? 'Marks: measured by you.' : 'Held: the readings of this swing, ± 3 cm.'} Bodies: computed by the model. What shows is ranked by a rule of thumb.`;
