import type { FoundCamera, NoFilm } from '../../film/answerFilm';
import type { JudgedReading } from '../../film/judgeFilm';
import type { MissingMark } from '../../film/sheet/missing';
import type { CheckpointId } from '../../reading/checkpoints';
import type { Units } from '../numbers/units';
import { LENGTHS } from '../numbers/units';
import { minus } from '../numbers/ranges';
import { PLATE_WORDS } from '../swing/checkpoint';

/** Said where a film is opened. */
export const FILM_STAYS = 'The film stays on this device. Only what you keep stays when you close it.';
/** How exactly a film has to be taken; said before one is opened. */
export const FILM_HOW =
  'Film from behind, along the target line, from a tripod. Put a stick on the ground along the line.';
/** The same of pictures. */
export const PICTURES_HOW =
  'One to three pictures from one tripod: address, lead arm parallel, shaft parallel. A film tells more.';
/** The question that only the coach can answer. */
export const GRID_QUESTION = 'Does the grid lie on the ground, and does the post stand upright?';
export const GRID_WRONG = 'If not, a mark has slipped. Look at the stick and the toes first.';
export const UNTESTED = 'Tested on made-up films only: no real player has been measured.';
/** Said beside the fields for the camera's place. */
export const TYPED_PLACE = 'Or type where the camera stood. Left of the hands is negative.';
/** Said in place of a frame in a hole of the film. */
export const FRAME_LOST = 'This frame is damaged; the one before stands. Take another.';
const NOT_ENOUGH = 'Not enough to tell these apart.';
export const NO_LINE = 'No clear line there. Your two points stand.';
export const LINE_FOUND = 'The line was found along the shaft.';

/** Why a file was refused, and what to do. Sentences of at most 15 words. */
export function sayRefused(reason: string, codec?: string): string {
  switch (reason) {
    case 'empty':
      return 'This file is empty. Save the film again and open that.';
    case 'too-large':
      return 'This file is over 4 GB. Cut the film to the swing first.';
    case 'too-long':
      return 'This film is longer than a minute. Cut it to the swing first.';
    case 'too-many-pixels':
      return 'This picture is too large. Save it with a long side below 8,000 pixels.';
    case 'not-film':
      return 'This is no film or picture that can be opened. Use MP4, MOV, WebM, JPEG, PNG or WebP.';
    case 'photo':
      return `Photos in ${codec ?? 'this format'} cannot be opened here. Save the photo as JPEG.`;
    case 'cut':
      return 'This film breaks off: its copy was not finished. Copy it from the phone again.';
    case 'many':
      return 'Open a film, or one to three pictures.';
    case 'mixed':
      return 'Open one film alone, or pictures alone.';
    case 'sizes':
      return 'These pictures differ in size. Take all from one tripod and crop none.';
    case 'no-video':
      return 'This file holds sound only. Open the film itself.';
    case 'codec':
    case 'no-decoder':
      return `This browser cannot play ${codec ?? 'this codec'}. Save the film again as H.264 (on a phone: "most compatible").`;
    default:
      return 'This file is damaged. Copy it from the phone again.';
  }
}

/** What is still missing, in words. */
export function sayMissing({ at, what }: MissingMark): string {
  const where = at === 'address' ? 'At address' : at === 'leadArmParallel' ? 'Lead arm parallel' : 'Shaft parallel';
  const words: Readonly<Record<MissingMark['what'], string>> = {
    clubHead: 'the club head',
    gripEnd: 'the grip end',
    direction: 'a stick on the line, the target, or both toes',
    level: 'both toes, the horizon, or the camera’s height',
    hands: 'the hands',
    trailShoulder: 'the trail shoulder',
    trailElbow: 'the trail elbow',
    second: 'the frame after it',
  };
  return `${where}: ${words[what]}`;
}

/** Why a film gives no answer. */
export function sayNoFilm(answer: NoFilm): string {
  if (answer.missing === 'camera-moved') {
    return `The camera moved after address: the ${answer.moved.mark === 'leadToe' ? 'lead toe' : answer.moved.mark} is ${Math.round(answer.moved.px)} px off.`;
  }
  if (answer.missing === 'hand-held') {
    return 'Held in the hand: mark the ball, lead toe or stick at each checkpoint too.';
  }
  return 'These marks fit no player and no camera. Check them.';
}

/** A reading on screen: its word, its number with the give or take, and what withholds a word. */
export function sayFilmReading(
  id: CheckpointId,
  reading: JudgedReading,
  { length }: Pick<Units, 'length'>,
): { readonly word: string; readonly number: string; readonly margin: string; readonly why?: string } {
  const { metres, symbol } = LENGTHS[length];
  const show = (value: number): string => minus(Number((value / metres).toFixed(length === 'cm' ? 0 : 1)));
  const why = reading.because && WHY_NO_WORD[reading.because];
  return {
    word: reading.verdict ? PLATE_WORDS[reading.verdict] : 'Too close to call',
    number: show(reading.value),
    margin: `± ${show(reading.plusMinus)} ${symbol}`,
    ...(why !== undefined && { why: id === 'leadArmParallel' && reading.because === 'close' ? NARROW_BAND : why }),
  };
}

/** The band at lead arm parallel is narrower than what a film can tell. */
const NARROW_BAND = 'The band is narrower than a film can tell. Only clear cases get a word.';
const WHY_NO_WORD: Readonly<Record<NonNullable<JudgedReading['because']>, string>> = {
  'poor-fit': 'The marks do not fit together. Check the one that stands out.',
  'slow-film': 'Below 50 frames a second the frames lie too far apart here.',
  'single-frame': 'One frame is not enough here. Mark the next one too.',
  'single-picture': 'A single picture is not enough for a word here. A film is.',
  close: 'The margin reaches across the edge of the band.',
};

/** What the camera's place does to the reading by eye. Undefined when it does little. */
export function sayByEye(
  id: CheckpointId,
  byEye: number | undefined,
  reading: JudgedReading | undefined,
): string | undefined {
  if (byEye === undefined || !reading || Math.abs(byEye - reading.value) < 0.02) return undefined;
  const say = (value: number): string => {
    const cm = Math.round(Math.abs(value) * 100);
    const [over, under] = id === 'leadArmParallel' ? ['above', 'below'] : ['in front', 'behind'];
    return `${cm} cm ${value >= 0 ? over : under}`;
  };
  const where = id === 'leadArmParallel' ? 'seen true it is' : 'at true level it is';
  return `The picture shows ${say(byEye)}; ${where} ${say(reading.value)}.`;
}

/** Where the camera was found to stand, each with two standard deviations. */
export const sayCamera = ({ eye, sd }: FoundCamera): string => sayEye(eye, sd.eye);

type Eye = readonly [number, number, number];
/** The same of an eye and its standard deviations, m. */
export function sayEye(eye: Eye, sd: Eye): string {
  const say = (value: number, spread: number): string =>
    `${value.toFixed(1)} m (± ${Math.max(0.1, 2 * spread).toFixed(1)})`;
  return `The camera stood ${say(eye[1], sd[1])} high, ${say(-eye[0], sd[0])} behind the feet.`;
}

/** Names of marks, for the one that stands out. */
const MARK_NAMES: Readonly<Record<string, string>> = {
  clubHead: 'club head',
  gripEnd: 'grip end',
  stick: 'stick',
  trailToe: 'trail toe',
  leadToe: 'lead toe',
  horizon: 'horizon',
  target: 'target',
  upright: 'upright',
  hands: 'hands',
  shaft: 'shaft',
  trailShoulder: 'trail shoulder',
  trailElbow: 'trail elbow',
  leadShoulder: 'lead shoulder',
  leadElbow: 'lead elbow',
  midHip: 'middle of the hips',
  neck: 'neck',
  heightM: 'typed height',
};
/** Spreads from which a mark is pointed out. */
const STANDS_OUT = 3;

/** The mark that fits the rest worst, where it stands out. */
export const sayWorst = ({ name, spreads }: { readonly name: string; readonly spreads: number }): string | undefined =>
  spreads > STANDS_OUT && MARK_NAMES[name]
    ? `The ${MARK_NAMES[name]} fits the other marks worst. Look at it again.`
    : undefined;

/** Share between the first two explanations below which they are not told apart. */
const CLEARLY = 1.5;

/** Whether the first explanation stands out, and what to mark next when it does not. */
export function sayToldApart(shares: readonly number[], hasBody: boolean): string | undefined {
  if (shares.length < 2 || shares[0] > CLEARLY * shares[1]) return undefined;
  return hasBody
    ? `${NOT_ENOUGH} A second film, from the front, would help.`
    : `${NOT_ENOUGH} Mark shoulders, elbows and hips too.`;
}

/** Said of fields of a mark that were left without what they want. */
export const ENTER_PIXELS = 'Enter a number in px.';
export const ENTER_FRAMES = 'Enter 1 to 2000, or leave it empty.';
export const ALL_MARKED = 'All core marks are there.';
