import { exactOptional, pipe, type InferOutput } from 'valibot';
import { eachOf, fields, listUpTo, numberIn, oneOf, whole, type Fault } from '../checking/schemas';
import { deg, rad, toDeg, toRad } from '../math/angle';
import { CLUB_IDS } from '../model/club';
import { DIALS, type MovementDial } from '../model/movements';
import { CHECKPOINT_IDS, CHECKPOINTS, type CheckpointId } from '../reading/checkpointTable';
import type { Verdict } from '../reading/verdicts';
import { BALL_READINGS, type BallReading } from '../solving/diagnosis/question';
import type { Claim, Condition, Quantity, Rule, Span } from '../solving/rule/rule';
import { READING_FIELDS, readingBehind, toCm } from './units';

/** Names of the ball's numbers at an edge, and how to get there. */
const BALL_FIELDS: Readonly<Record<BallReading, readonly [field: string, toEdge: (value: number) => number]>> = {
  path: ['pathDeg', toDeg],
  face: ['faceDeg', toDeg],
  faceToPath: ['faceToPathDeg', toDeg],
  attack: ['attackDeg', toDeg],
  dynamicLoft: ['dynamicLoftDeg', toDeg],
  shaftLean: ['shaftLeanDeg', toDeg],
  headSpeed: ['headSpeedMps', (value) => value],
  lowPoint: ['lowPointCm', toCm],
};
const IMPLIED_PATH = 'impliedPathDeg';
const AT_CHECKPOINT = [...READING_FIELDS, IMPLIED_PATH];
const AT_BALL = BALL_READINGS.map((id) => BALL_FIELDS[id][0]);

/** Wide: the model itself says what its ranges are. */
const any = numberIn(-1000, 1000);
const range = exactOptional(fields({ from: any, to: any }));
const MOVEMENT_FIELDS = DIALS.map(({ field }) => field);

/** Verdicts at an edge, in the trade's terms: those of both checkpoints. */
const VERDICTS = ['steep', 'onPlane', 'shallow'] as const satisfies readonly Verdict[];
const verdictWordsAt = (at: CheckpointId): string[] => VERDICTS.map((verdict) => CHECKPOINTS[at].verdicts[verdict]);
const VERDICT_WORDS = [...new Set(CHECKPOINT_IDS.flatMap(verdictWordsAt))];

/** Top of the backswing: names as in the set-up. */
const TOP = [
  ['handDepth', 'handDepthCm'],
  ['handHeight', 'handHeightCm'],
  ['turn', 'turnDeg'],
  ['wristSet', 'wristSetDeg'],
] as const;

const who = fields({
  statureM: range,
  clubs: exactOptional(listUpTo(oneOf(CLUB_IDS), CLUB_IDS.length)),
  handed: exactOptional(oneOf(['right', 'left'])),
  lagDeg: range,
  ...eachOf(
    TOP.map(([, field]) => field),
    () => range,
  ),
});

const said = {
  at: exactOptional(oneOf([...CHECKPOINT_IDS, 'ball'])),
  is: exactOptional(oneOf(VERDICT_WORDS)),
  reading: exactOptional(oneOf([...AT_CHECKPOINT, ...AT_BALL])),
  moreThan: exactOptional(any),
  lessThan: exactOptional(any),
};
const conditionFields = fields({ ...said, movement: exactOptional(oneOf(MOVEMENT_FIELDS)) });
const claimFields = fields({ ...said, movesBy: exactOptional(any), staysWithin: exactOptional(any) });
export type WrittenCondition = InferOutput<typeof conditionFields>;
export type WrittenClaim = InferOutput<typeof claimFields>;
type Written = Partial<WrittenCondition & WrittenClaim>;

const condition = pipe(
  conditionFields,
  whole((one: WrittenCondition) =>
    one.movement === undefined ? faultIn(one, ['is', 'moreThan', 'lessThan']) : faultInMovement(one),
  ),
);
const claim = pipe(
  claimFields,
  whole((one: WrittenClaim) => faultIn(one, ['is', 'moreThan', 'lessThan', 'movesBy', 'staysWithin'])),
);
const MOST_PARTS = 12;

/** The four parts of a rule as they are written: the same on a line of `evaluate`, in a link and in what is kept. */
export const ruleFields = {
  who: exactOptional(who),
  when: exactOptional(listUpTo(condition, MOST_PARTS)),
  do: exactOptional(listUpTo(fields({ movement: oneOf(MOVEMENT_FIELDS), by: any }), MOST_PARTS)),
  expect: listUpTo(claim, MOST_PARTS),
};
/** A rule as it is written, as a whole. */
export const ruleSchema = fields(ruleFields);
export type WrittenRule = InferOutput<typeof ruleSchema>;
type WrittenWho = InferOutput<typeof who>;

function faultInMovement(one: Written): Fault | undefined {
  if (one.at !== undefined || one.reading !== undefined || one.is !== undefined) {
    return { path: 'movement', message: 'A movement is no reading. Leave out at, reading and is.' };
  }
  return one.moreThan === undefined && one.lessThan === undefined
    ? { path: 'moreThan', message: 'Missing. Enter moreThan, lessThan or both.' }
    : undefined;
}

/** What a part about a reading lacks, or has too much of. `ways`: the fields of which it needs one. */
function faultIn(one: Written, ways: readonly (keyof Written)[]): Fault | undefined {
  const { at, reading, is } = one;
  const given = ways.filter((way) => one[way] !== undefined);
  if (at === undefined) return { path: 'at', message: `Missing. Use one of: ${CHECKPOINT_IDS.join(', ')}, ball.` };
  if (given.length === 0) return { path: ways[0], message: `Missing. Enter one of: ${ways.join(', ')}.` };
  if (is !== undefined) {
    if (given.length > 1 || reading !== undefined)
      return { path: 'is', message: 'A verdict stands alone. Leave the reading and its numbers out.' };
    if (at === 'ball') return { path: 'at', message: 'No verdict is given at the ball. Name a checkpoint.' };
    const words = verdictWordsAt(at);
    return words.includes(is)
      ? undefined
      : { path: 'is', message: `"${is}" is not said at ${at}. Use one of: ${words.join(', ')}.` };
  }
  const fieldsThere = at === 'ball' ? AT_BALL : AT_CHECKPOINT;
  if (reading === undefined || !fieldsThere.includes(reading)) {
    const found = reading === undefined ? 'Missing.' : `"${reading}" is not read at ${at}.`;
    return { path: 'reading', message: `${found} Use one of: ${fieldsThere.join(', ')}.` };
  }
  const kinds = new Set(given.map((way) => (way === 'lessThan' ? 'moreThan' : way)));
  return kinds.size > 1
    ? { path: given[1], message: `This and ${given[0]} are two claims. Write two entries.` }
    : undefined;
}

/** A rule in the model's units from the one as it is written. */
export function toRule(written: WrittenRule): Rule {
  return {
    who: toWho(written.who ?? {}),
    when: (written.when ?? []).map(toCondition),
    change: (written.do ?? []).map(({ movement, by }) => {
      const { id, edgeUnit } = dialBehind(movement);
      return { id, by: by * edgeUnit };
    }),
    expect: written.expect.map(toClaim),
  };
}

const dialBehind = (name: string): MovementDial => DIALS.find(({ field }) => field === name)!;

function toWho({ statureM, clubs, handed, lagDeg, ...written }: WrittenWho): Rule['who'] {
  const inRad = ({ from, to }: { from: number; to: number }): Span => ({ low: rad(from), high: rad(to) });
  const inM = ({ from, to }: { from: number; to: number }): Span => ({ low: from / 100, high: to / 100 });
  const { handDepthCm, handHeightCm, turnDeg, wristSetDeg } = written;
  return {
    ...(statureM && { stature: { low: statureM.from, high: statureM.to } }),
    ...(clubs && { clubs }),
    ...(handed && { handed }),
    ...(lagDeg && { lag: inRad(lagDeg) }),
    top: {
      ...(handDepthCm && { handDepth: inM(handDepthCm) }),
      ...(handHeightCm && { handHeight: inM(handHeightCm) }),
      ...(turnDeg && { turn: inRad(turnDeg) }),
      ...(wristSetDeg && { wristSet: inRad(wristSetDeg) }),
    },
  };
}

/** A number as the model has it, and the way to its unit at an edge: a plain factor. */
function quantityOf({ at, reading }: Written): { readonly of: Quantity; readonly unit: number } {
  if (at === 'ball') {
    const id = BALL_READINGS.find((one) => BALL_FIELDS[one][0] === reading)!;
    return { of: { at, reading: id }, unit: 1 / BALL_FIELDS[id][1](1) };
  }
  const behind = readingBehind(reading!);
  if (!behind) return { of: { at: at!, reading: 'impliedPath' }, unit: toRad(deg(1)) };
  return { of: { at: at!, reading: behind.id }, unit: 1 / behind.toEdge(1) };
}

const verdictOf = (at: CheckpointId, words: string) =>
  VERDICTS.find((verdict) => CHECKPOINTS[at].verdicts[verdict] === words)!;

const spanOf = ({ moreThan, lessThan }: Written, unit: number): Span => ({
  low: moreThan === undefined ? -Infinity : moreThan * unit,
  high: lessThan === undefined ? Infinity : lessThan * unit,
});

function toCondition(one: WrittenCondition): Condition {
  if (one.movement !== undefined) {
    const { id, edgeUnit } = dialBehind(one.movement);
    return { kind: 'movement', id, between: spanOf(one, edgeUnit) };
  }
  return toValue(one);
}

function toValue(one: Written): Extract<Condition, Claim> {
  const { at, is } = one;
  if (is !== undefined && at !== undefined && at !== 'ball') return { kind: 'verdict', at, verdict: verdictOf(at, is) };
  const { of, unit } = quantityOf(one);
  return { kind: 'reading', of, between: spanOf(one, unit) };
}

function toClaim(one: WrittenClaim): Claim {
  const { movesBy, staysWithin } = one;
  if (movesBy === undefined && staysWithin === undefined) return toValue(one);
  const { of, unit } = quantityOf(one);
  return movesBy === undefined
    ? { kind: 'stays', of, within: staysWithin! * unit }
    : { kind: 'moves', of, by: movesBy * unit };
}
