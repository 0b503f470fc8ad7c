import type { NoShot, Shot } from '../../flight/shot';
import { shapeFor, type Handed, type ShapeId } from '../../flight/shape';
import { rad, toDeg, type Rad } from '../../math/angle';
import type { Delivery, DeliveryRule, NotDelivered } from '../../reading/delivery/delivery';
import { capital } from '../numbers/capital';
import { showDistance } from '../numbers/distances';
import { sayFaceToPath, sayPath, withBand, type DeliveryWords } from './delivery';
import { formatNumber, roundTo, sayNumber, showAngle, showLength, showSpeed } from '../numbers/numbers';
import { COMPUTED, type Units } from '../numbers/units';
import { EXAGGERATED } from './status';

/** What the arms are taken to do between shaft parallel and the ball, to choose from, with what that means. */
export const RULE_WORDS: Readonly<Record<DeliveryRule, { readonly label: string; readonly means: string }>> = {
  'held plane': {
    label: 'Player compensates',
    means: 'Assumed: the arms adapt and bring the head to the ball on that plane.',
  },
  'nothing adapts': {
    label: 'No compensation',
    means: 'Assumed: the joints run on as dialled. The head may miss the ball.',
  },
};

/** A shot's side as everybody on the range sees it: a left-handed player's is mirrored. */
const seen = (value: number, handed: Handed): number => (handed === 'left' ? -value : value);

const words = (label: string, text: string, spoken: string): DeliveryWords => ({
  label,
  text,
  spoken: `${label} ${spoken}`,
  source: COMPUTED,
});

function sayAngle(label: string, angle: Rad, decimals = 0): DeliveryWords {
  const { text, spoken } = showAngle(angle, decimals);
  return words(label, text, spoken);
}

function saySide(
  label: string,
  angle: Rad,
  [positive, negative, zero]: readonly [string, string, string],
): DeliveryWords {
  const { text, spoken, value } = showAngle(Math.abs(angle));
  const way = value === 0 ? zero : angle > 0 ? positive : negative;
  return words(label, value === 0 ? zero : `${text} ${way}`, value === 0 ? zero : `${spoken} ${way}`);
}

/** Angle between the head's way and the face: it makes the spin. Rad. */
export const saySpinLoft = (spinLoft: Rad): DeliveryWords => sayAngle('Spin loft', spinLoft);

/** Slope of the plane the head moves in, rad from the ground. */
export const sayPlaneTilt = (tilt: Rad): DeliveryWords => sayAngle('Plane slope', tilt);

/** Where that plane points along the ground, rad. Positive: in-to-out. */
export const sayPlaneDirection = (direction: Rad): DeliveryWords =>
  saySide('Plane direction', direction, ['in-to-out', 'out-to-in', 'at the target']);

/** Ball speed off the face. */
export function sayBallSpeed({ launch }: Shot, units: Pick<Units, 'speed'>): DeliveryWords {
  const { text, spoken } = showSpeed(launch.ballSpeedMps, units);
  return words('Ball speed', text, spoken);
}

/** Launch above the ground. */
export const sayLaunch = ({ launch }: Shot): DeliveryWords => sayAngle('Launch', rad(launch.launchDeg));

/** Spin in hundreds a minute: finer than that the model does not know. */
export function saySpin({ launch }: Shot): DeliveryWords {
  const number = formatNumber(Math.round(launch.spinRpm / 100) * 100);
  return words('Spin', `${number} rpm`, `${number} turns a minute`);
}

/** Tilt of the spin axis: toward which side the ball curves. */
export const saySpinAxis = ({ launch }: Shot, handed: Handed): DeliveryWords =>
  saySide('Spin axis', rad(seen(launch.spinAxisDeg, handed)), ['tilted right', 'tilted left', 'level']);

/** Start line against the target line. */
export function sayStart({ flight, ends }: Shot, handed: Handed): DeliveryWords {
  const say = (startDeg: number): DeliveryWords =>
    saySide('Start', rad(seen(startDeg, handed)), ['right', 'left', 'on line']);
  return banded(say, flight.startDeg, ends && [ends.left.startDeg, ends.returned.startDeg], handed);
}

/**
 * A value of the shot with its band: from what everybody sees farthest left to farthest right. Between the two ends of the face the drawn
 * arms need not lie between theirs, nor need the curve: the band holds all three.
 */
function banded(
  say: (value: number) => DeliveryWords,
  value: number,
  ends: readonly [number, number] | null,
  handed: Handed,
): DeliveryWords {
  if (!ends) return say(value);
  const [low, , high] = [value, ...ends].toSorted((a, b) => seen(a, handed) - seen(b, handed));
  return withBand(say(value), say(low), say(high));
}

/** Carry with its honest width. */
export function sayCarry({ flight, width }: Shot, units: Pick<Units, 'length'>): DeliveryWords {
  const { number, unit, spoken } = showDistance(flight.carryM, units);
  const half = showDistance(width / 2, units);
  return words('Carry', `${number} ± ${half.number} ${unit}`, `${spoken}, give or take ${sayNumber(half.number)}`);
}

/** Highest point of the flight. */
export function sayApex({ flight }: Shot, units: Pick<Units, 'length'>): DeliveryWords {
  const { text, spoken } = showDistance(flight.apexM, units, 'up');
  return words('Apex', text, spoken);
}

function sayAway(label: string, metres: number, units: Pick<Units, 'length'>, zero: string): DeliveryWords {
  const { text, spoken, value } = showDistance(Math.abs(metres), units);
  const way = metres > 0 ? 'right' : 'left';
  return words(label, value === 0 ? zero : `${text} ${way}`, value === 0 ? zero : `${spoken} ${way}`);
}

/** How far the ball lands from its start line. */
export function sayCurve({ flight, ends }: Shot, handed: Handed, units: Pick<Units, 'length'>): DeliveryWords {
  const say = (curveM: number): DeliveryWords => sayAway('Curve', seen(curveM, handed), units, 'none');
  return banded(say, flight.curveM, ends && [ends.left.curveM, ends.returned.curveM], handed);
}

/** How far the ball lands from the target line. */
export const sayOffline = ({ flight }: Shot, handed: Handed, units: Pick<Units, 'length'>): DeliveryWords =>
  sayAway('From target line', seen(flight.offlineM, handed), units, 'on it');

/**
 * The strike and the flight in three sentences: what the club does, where the ball starts, where it goes from there. At most
 * 15 words each.
 */
export function sayStrikeAndFlight(
  { path, faceToPath }: Delivery,
  shot: Shot,
  handed: Handed,
  units: Pick<Units, 'length'>,
): readonly { readonly label: string; readonly text: string }[] {
  const face = roundTo(Math.abs(toDeg(faceToPath)), 0) === 0 ? 'square' : sayFaceToPath(faceToPath).text;
  const start =
    roundTo(shot.flight.startDeg, 0) === 0
      ? 'on the target line'
      : `${bare(sayStart, shot, handed)} of the target line`;
  const curve = sayAway('Curve', seen(shot.flight.curveM, handed), units, 'none').text;
  // In a sentence a number stays with its unit.
  const carry = sayCarry(shot, units).text.replaceAll(' ', '\u00a0');
  return [
    { label: 'Club', text: `It comes ${sayPath(path).text}, with the face ${face} to that.` },
    { label: 'Start', text: `The ball starts ${start}.` },
    {
      label: 'Curve',
      text: curve === 'none' ? `It flies straight and carries ${carry}.` : `It curves ${curve} and carries ${carry}.`,
    },
  ];
}

/** "2° right": the drawn value of a reading, without its band. */
const bare = (say: typeof sayStart, shot: Shot, handed: Handed): string => say({ ...shot, ends: null }, handed).text;

export interface ShapeWords {
  readonly id: ShapeId;
  /** "Push-draw" */
  readonly name: string;
  /** "starts a little right, curves left" */
  readonly how: string;
  /** "Push-draw: starts a little right, curves left." */
  readonly sentence: string;
}

/** The trade's word for the shot and how it flies, for the player's hand. */
export function sayShape({ flight }: Shot, handed: Handed): ShapeWords {
  const { carryM } = flight;
  const shot = { startDeg: seen(flight.startDeg, handed), curveM: seen(flight.curveM, handed), carryM, handed };
  const { id, words: how } = shapeFor(shot);
  const name = capital(id);
  return { id, name, how, sentence: `${name}: ${how}.` };
}

const NO_SHOT: Readonly<Record<NoShot['missing'], string>> = {
  'no-shaft-parallel': 'The shaft never comes to parallel: nothing is delivered.',
  'too-late': 'Shaft parallel comes too late for the arms to adapt.',
  'never-at-the-ball': 'The head does not come past the ball.',
  misses: 'The head misses the ball.',
  'bad-input': 'The model finds no numbers for this strike. Undo the last change.',
  'no-contact': 'The face moves away from the ball: no strike.',
  'never-rises': 'The ball starts along the ground and does not fly.',
  'never-lands': 'The ball is still up after 30 seconds: beyond the model.',
};
/** Why there is no shot, in a sentence. */
export const sayNoShot = ({ missing }: NoShot | NotDelivered): string => NO_SHOT[missing];

/** How far off the head passes: toe or heel, high or low, before or after, each in the coach's length. */
export function sayMiss({ miss, headSpeed }: Delivery, units: Pick<Units, 'length'>): DeliveryWords[] {
  const side = (label: string, metres: number, [more, less, none]: readonly [string, string, string], also = '') => {
    const { text, spoken, value } = showLength(Math.abs(metres), units);
    const way = metres > 0 ? more : less;
    return value === 0
      ? words(label, none, none)
      : words(label, `${text} ${way}${also}`, `${spoken} ${way}${also.replace('ms', 'milliseconds')}`);
  };
  const ms = roundTo(Math.abs(miss.late) * 1000, 0);
  return [
    side('Ball on the face', miss.toe, ['toward the toe', 'toward the heel', 'centred']),
    side('Height of the head', miss.high, ['high', 'low', 'as meant']),
    side('Head at the ball', miss.late * headSpeed, ['late', 'early', 'in time'], ` (${ms} ms)`),
  ];
}

/** What a delivery does not do as asked: sentences, none when all is well. */
export function sayShortcomings(delivery: Delivery, units: Pick<Units, 'length'>): string[] {
  const out: string[] = [];
  if (delivery.status === 'closest') {
    const { toe, high } = delivery.miss;
    const away = showLength(Math.hypot(toe, high), units);
    out.push(`Out of the arms' range: this is the closest, ${away.inSentence} off the ball.`);
  }
  if (delivery.reachShortfall > SHORT) {
    out.push(`Trail arm ${showLength(delivery.reachShortfall, units).inSentence} short of the grip at impact.`);
  }
  return out;
}
/** A trail arm short by less than this is within what a shoulder gives, m (our choice, as on the plates). */
const SHORT = 0.005;

export const EXTRAPOLATED = 'Outside the measured range of the air coefficients: extrapolated.';
export const CARRY_WIDTH = 'Published flight models differ by about this much.';

/** A drawing from above in words: its name, and what it shows, one after the other. */
export const speakDrawing = (of: 'strike' | 'shot', ...said: readonly string[]): string =>
  `The ${of} from above. ${said.join(' ')}`;

/** Where all numbers of the ball come from. */
export const sayEveryNumber = (isExaggerated: boolean): string =>
  `Every number here: ${COMPUTED}${isExaggerated ? `, ${EXAGGERATED}` : ''}.`;
