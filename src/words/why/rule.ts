import type { WrittenClaim, WrittenCondition, WrittenRule } from '../../edge/rule';
import { DIALS, STILL, type MovementId } from '../../model/movements';
import { toDeg } from '../../math/angle';
import { CHECKPOINTS, type CheckpointId } from '../../reading/checkpointTable';
import { withDials } from '../../solving/diagnosis/judged';
import type { FeatureId } from '../../solving/rule/features';
import type { Shrunk } from '../../solving/rule/shrink';
import type { RuleAnswer, RuleCount } from '../../solving/rule/tally';
import type { Split } from '../../solving/rule/split';
import { featureAtEdge } from '../../edge/features';
import { formatTyped } from '../numbers/numbers';
import { sayMovement } from '../swing/dials';

/** What rules are put together from: name on screen, and the unit its numbers are typed in. */
interface Subject {
  readonly name: string;
  readonly unit: string;
  /** Typed numbers over those of the edge: percent for a factor. */
  readonly scale: number;
}
const subject = (name: string, unit: string, scale = 1): Subject => ({ name, unit, scale });

/** The movements, under the names of their fields at an edge. Positive as at the high end of the slider. */
export const MOVEMENT_SUBJECTS: Readonly<Record<string, Subject>> = {
  leadWristFlexionDeg: subject('lead wrist, + bowed', '°'),
  rotationRate: subject('body turn', '%', 100),
  rotationDelayMs: subject('turn starts, + later', 'ms'),
  trailSideBendDeg: subject('side bend', '°'),
  pelvisShiftCm: subject('hip slide', 'cm'),
};

/** Readings at a checkpoint that rules of the trade speak of. */
export const READING_SUBJECTS: Readonly<Record<string, Subject>> = {
  bicepGapCm: subject('line over the bicep', 'cm'),
  headDepthCm: subject('head in front of the hands', 'cm'),
  shaftPlaneDeg: subject('shaft plane', '°'),
  impliedPathDeg: subject('path it leads to, + in-to-out', '°'),
  faceToVerticalDeg: subject('face, + looks down', '°'),
  thoraxTurnDeg: subject('chest turn, + open', '°'),
  pelvisTurnDeg: subject('pelvis turn, + open', '°'),
  leadArmToShaftDeg: subject('lag', '°'),
  handHeightCm: subject('hand height', 'cm'),
  handDepthCm: subject('hand depth', 'cm'),
};
/** Numbers at the ball. */
export const BALL_SUBJECTS: Readonly<Record<string, Subject>> = {
  pathDeg: subject('path, + in-to-out', '°'),
  faceDeg: subject('face, + open', '°'),
  attackDeg: subject('attack, + up', '°'),
  headSpeedMps: subject('head speed', 'm/s'),
};

/** The ranges a rule may set to players. */
export const WHO_SUBJECTS = {
  statureM: subject('height', 'm'),
  lagDeg: subject('lag', '°'),
  handDepthCm: subject('hand depth at the top', 'cm'),
  handHeightCm: subject('hand height at the top', 'cm'),
  turnDeg: subject('turn at the top', '°'),
  wristSetDeg: subject('wrist set at the top', '°'),
} as const satisfies Record<string, Subject>;

/** Name and unit of a number that a part speaks of. A reading that is not offered on screen goes by its field. */
export function subjectOf({ at, reading, movement }: Partial<WrittenCondition & WrittenClaim>): Subject {
  if (movement !== undefined) return MOVEMENT_SUBJECTS[movement];
  const known = at === 'ball' ? BALL_SUBJECTS[reading!] : READING_SUBJECTS[reading!];
  return known ?? subject(reading ?? '', '');
}

const placeOf = (at: CheckpointId | 'ball' | undefined): string =>
  at === 'ball' ? 'at the ball' : at === undefined ? '' : `at ${CHECKPOINTS[at].inSentence}`;
const say = (value: number, { unit, scale }: Subject): string => {
  const amount = formatTyped(value * scale);
  return unit === '°' ? `${amount}°` : `${amount} ${unit}`.trim();
};
/** What stands before a comma, which tells only the sense. */
const plain = ({ name }: Subject): string => name.split(',')[0];

/** "steep at P5", "head in front of the hands at P6 over 2 cm", "lead wrist under −10°" */
export function sayPart(one: Partial<WrittenCondition & WrittenClaim>): string {
  const { at, is, moreThan, lessThan, movesBy, staysWithin } = one;
  if (is !== undefined) return `the shaft is ${is} ${placeOf(at)}`;
  const of = subjectOf(one);
  const name = [plain(of), placeOf(at)].filter(Boolean).join(' ');
  if (movesBy !== undefined)
    return `${name} ${movesBy < 0 ? 'falls' : 'rises'} by ${say(Math.abs(movesBy), of)} or more`;
  if (staysWithin !== undefined) return `${name} stays within ${say(staysWithin, of)}`;
  const ends = [
    ...(moreThan === undefined ? [] : [`over ${say(moreThan, of)}`]),
    ...(lessThan === undefined ? [] : [`under ${say(lessThan, of)}`]),
  ];
  return `${name} ${ends.join(' and ')}`;
}

const DO_WORDS: Readonly<Record<MovementId, readonly [less: string, more: string]>> = {
  leadWristFlexion: ['cup the wrist', 'bow the wrist'],
  rotationRate: ['turn less by', 'turn more by'],
  rotationDelay: ['start the turn earlier by', 'start the turn later by'],
  trailSideBend: ['less side bend by', 'more side bend by'],
  pelvisShift: ['slide the hips back by', 'slide the hips to the target by'],
};

/** "bow the wrist 10°" */
export function sayChange({ movement, by }: { readonly movement: string; readonly by: number }): string {
  const dial = DIALS.find(({ field }) => field === movement)!;
  return `${DO_WORDS[dial.id][by < 0 ? 0 : 1]} ${say(Math.abs(by), MOVEMENT_SUBJECTS[movement])}`;
}

/** Whom a rule is about: "any player", "1.6 to 1.75 m, driver" */
export function sayWho({ who = {} }: WrittenRule): string {
  const ranges = Object.entries(WHO_SUBJECTS).flatMap(([field, of]) => {
    const range = who[field as keyof typeof WHO_SUBJECTS];
    if (!range) return [];
    const name = field === 'statureM' ? '' : `${of.name} `;
    return [`${name}${formatTyped(range.from)} to ${say(range.to, of)}`];
  });
  const all = [
    ...ranges,
    ...(who.clubs ? [who.clubs.join(' or ')] : []),
    ...(who.handed ? [`${who.handed}-handed`] : []),
  ];
  return all.join(', ') || 'any player';
}

/** A rule as a sentence of its four parts. */
export const sayRule = (rule: WrittenRule): string =>
  [
    `For ${sayWho(rule)}`,
    ...(rule.when?.length ? [`when ${rule.when.map(sayPart).join(' and ')}`] : []),
    ...(rule.do?.length ? [rule.do.map(sayChange).join(' and ')] : []),
    `expect ${rule.expect.map(sayPart).join(' and ') || '…'}`,
  ].join(', ') + '.';

const percent = (share: number): string => {
  const value = 100 * share;
  return formatTyped(
    value > 0 && value < 100 && (value < 1 || value > 99) ? Math.round(value * 10) / 10 : Math.round(value),
  );
};

/** "Holds in 563 of 563 swings." and "99.3 to 100 %" */
export function sayCount({ held, met, interval }: RuleCount): { readonly text: string; readonly interval: string } {
  return {
    text: `Holds in ${held} of ${met} swings.`,
    interval: `${percent(interval.low)} to ${percent(interval.high)} %`,
  };
}

/** Progress while it is tried. */
export const sayProgress = ({ tried, met }: RuleCount, isShrinking: boolean): string =>
  isShrinking
    ? 'Looking for the simplest swing on which it fails …'
    : `${met} of ${tried} swings so far are such swings.`;

/** Too little to say anything from. */
export const sayTooFew = ({ met, tried }: RuleCount): string =>
  met === 0
    ? `None of ${tried} swings meets it. Widen the conditions.`
    : `Met by ${met} of ${tried} swings: too few to say.`;

const FEATURE_NAMES: Readonly<Record<FeatureId, readonly [name: string, unit: string, scale?: number]>> = {
  leadWristFlexion: ['the lead wrist', '° bowed'],
  rotationRate: ['body turn', ' %', 100],
  rotationDelay: ['the start of the turn', ' ms late'],
  trailSideBend: ['side bend', '°'],
  pelvisShift: ['hip slide', ' cm'],
  lag: ['lag', '°'],
  stature: ['height', ' m'],
  clubLength: ['the club', ' m long'],
  handDepth: ['hand depth at the top', ' cm'],
  handHeight: ['hand height at the top', ' cm'],
  turn: ['turn at the top', '°'],
  wristSet: ['wrist set at the top', '°'],
  bicepGap: ['the line at lead arm parallel', ' cm over the bicep'],
  headDepth: ['the head at shaft parallel', ' cm in front'],
  chestTurn: ['the chest at lead arm parallel', '° open'],
  pelvisTurn: ['the hips at lead arm parallel', '° open'],
};

/** "Fails mostly when lag is under 95°: 80 of 100. Otherwise 3 of 900." */
export function saySplit({ id, threshold, side, here, elsewhere }: Split<FeatureId>): string {
  const [name, unit, scale = 1] = FEATURE_NAMES[id];
  const value = formatTyped(Math.round((threshold / featureAtEdge(id).unit) * scale * 1e6) / 1e6);
  const word = side === 'below' ? 'under' : 'at least';
  return `Fails mostly when ${name} is ${word} ${value}${unit}: ${here.n} of ${here.of}. Otherwise ${elsewhere.n} of ${elsewhere.of}.`;
}

/** "1.78 m, 7-iron, cupped 11°" */
export function sayCase({ tried: { player, top, dials } }: Shrunk): string {
  const movements = withDials(
    STILL,
    Array.from({ length: DIALS.length }, (_, i) => dials[i]),
  );
  const moved = DIALS.filter(({ id, neutral, step }) => Math.abs(movements[id] - neutral) > step / 2);
  const tops = [
    ['hands deeper', top.handDepth * 100, ' cm'],
    ['hands higher', top.handHeight * 100, ' cm'],
    ['turned farther', toDeg(top.turn), '°'],
    ['more set', toDeg(top.wristSet), '°'],
  ] as const;
  return [
    `${formatTyped(player.stature)} m`,
    player.club,
    ...(player.lag === undefined ? [] : [`lag ${formatTyped(toDeg(player.lag))}°`]),
    ...tops
      .filter(([, value]) => Math.abs(value) > 1e-6)
      .map(([name, value, unit]) => `${name} ${formatTyped(value)}${unit}`),
    ...moved.map(({ id }) => sayMovement(id, movements).phrase),
  ].join(', ');
}

/** What the answer as a whole says in one sentence of at most 15 words. */
export function sayAnswer(answer: RuleAnswer): string {
  if (answer.status !== 'tried') return sayTooFew(answer);
  const { held, met, counterexample } = answer;
  if (held === met)
    return counterexample ? 'It held in all, yet one swing breaks it.' : 'It held in every swing tried.';
  const share = held / met;
  if (share > 0.95) return 'It holds nearly always.';
  if (share > 0.75) return 'It holds mostly.';
  if (share > 0.25) return 'It holds sometimes.';
  return held === 0 ? 'It never held.' : 'It seldom holds.';
}

export const TRIED_ON = 'Tried on the model’s players and swings, drawn at random by a fixed seed. Not on people.';

export const STOPPED_EARLY = 'Stopped before the answer was steady.';

export const TRIED_BEFORE = 'With the usual bands, tried before.';
export const LINK_COPIED = 'The link is copied.';
export const RULE_KEPT = 'Kept in this browser.';
