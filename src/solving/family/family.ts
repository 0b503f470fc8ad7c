import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { SetupError } from '../../model/body';
import { DIALS, MOVEMENT_GROUPS, STILL } from '../../model/movements';
import { DEFAULT_ARM_ANGLE } from '../../reading/checkpoints';
import { checkAllow } from '../diagnosis/checks';
import { createJudge, dialsOf, findLiveDials, HALF_RANGE, toDials, withDials, type Judged } from '../diagnosis/judged';
import { checkSightings, type Sightings } from '../diagnosis/verdictShare';
import { solveReach, startsFrom, type Aim, type DialLimits, type ReachPoint } from '../reference/reach';
import type { DialRange, EndName, Family, FamilyQuestion, Member, NoFamily } from './question';
import { alongOf, findWidest, isInside, solveAlong, type Room, type Widest } from './widest';

/** Effort that one metre outside the margins costs, 1/m: a hundredth of a millimetre weighs as much as half of a dial's usual range. */
const WEIGHT = 1e5;
/** How far inside a margin the search stays, m: what it finds lies inside for everybody who reads it again. */
const INSIDE = 0.0002;
/** Effort that a half usual range beside its place costs a member: it stands there to a millionth. */
const STRICT = 1000;
/** Ends nearer to each other than this, in half usual ranges, are one body: a hundredth of a step of the wrist. */
const ONE_BODY = 3e-4;
const COUNTS = { min: 2, max: 99 } as const;

/**
 * The bodies that give one picture: every setting of the dials with which both readings stay inside their margins, laid out along the
 * direction in which they lie farthest apart. Five dials less two readings leave room; a dial that neither reading answers to stays where
 * it is. Throws `SetupError` for empty or broken input.
 */
export function solveFamily(question: FamilyQuestion): Family | NoFamily {
  const { swing, seen, allow = MOVEMENT_GROUPS, armAngle = DEFAULT_ARM_ANGLE, range = 'usual' } = question;
  checkSightings(seen);
  checkCount(question.count);
  const judge = createJudge(swing, armAngle);
  const from = toDials(question.from ?? STILL);
  const asked = dialsOf(checkAllow(allow));
  const free = findLiveDials(judge, from, asked);
  const room = roomFor(seen, { judge, from, free, limits: LIMITS[range] });
  const smallest = solveReach({ ...room, aims: room.margins }, startsFrom(from));
  if (!smallest) return { status: 'missing', evaluations: judge.evaluations };
  if (!isInside(room, smallest)) {
    if (range === 'usual') return solveFamily({ ...question, range: 'limits' });
    return { status: 'out-of-reach', readings: judgedOf(smallest), evaluations: judge.evaluations };
  }
  const widest = findWidest(room, smallest);
  const { points, at } = layOut(room, widest, smallest, question.count);
  const placeOf = placesBetween(widest, from);
  return {
    status: 'found',
    range,
    members: points.map((point) => toMember(question, point, placeOf(point))),
    smallest: at,
    ends: [nameEnd(from, points[0]), nameEnd(from, points[points.length - 1])],
    direction: [...widest.direction],
    width: widest.width,
    deaf: asked.filter((i) => !free.includes(i)).map((i) => DIALS[i].id),
    evaluations: judge.evaluations,
  };
}

const LIMITS: Readonly<Record<DialRange, readonly DialLimits[]>> = {
  usual: DIALS.map(({ usualMin, usualMax }) => ({ min: usualMin, max: usualMax })),
  limits: DIALS,
};

function checkCount(count: number): void {
  const { min, max } = COUNTS;
  if (Number.isInteger(count) && count >= min && count <= max) return;
  throw new SetupError('count', `A family of ${count} cannot be laid out. Enter a whole number from ${min} to ${max}.`);
}

function roomFor(seen: Sightings, of: Omit<Room, 'margins' | 'slack'>): Room {
  const narrowed = CHECKPOINT_IDS.map((id): readonly [Aim, number] => {
    const sighting = seen[id];
    if (!sighting) return [{ low: 0, high: 0, weight: 0 }, Infinity];
    const { value, plusMinus } = sighting;
    const by = Math.min(INSIDE, plusMinus / 2);
    return [{ low: value - plusMinus + by, high: value + plusMinus - by, weight: WEIGHT }, by / 2];
  });
  return { ...of, margins: [narrowed[0][0], narrowed[1][0]], slack: [narrowed[0][1], narrowed[1][1]] };
}

const judgedOf = ({ readings }: ReachPoint): Judged => ({ leadArmParallel: readings[0], shaftParallel: readings[1] });

function placesBetween({ direction, ends }: Widest, from: Float64Array): (point: ReachPoint) => number {
  const [low, high] = ends.map(({ dials }) => alongOf(direction, from, dials));
  return ({ dials }) => (high > low ? (alongOf(direction, from, dials) - low) / (high - low) : 0);
}

/** The smallest change at each of `count` even places, the nearest of them moved onto the smallest of all. `at`: which one. */
function layOut(
  room: Room,
  { direction, ends, width }: Widest,
  smallest: ReachPoint,
  count: number,
): { readonly points: readonly ReachPoint[]; readonly at: number } {
  if (width < ONE_BODY) return { points: [smallest], at: 0 };
  const [low, middle, high] = [ends[0], smallest, ends[1]].map(({ dials }) => alongOf(direction, room.from, dials));
  const step = (high - low) / (count - 1);
  const at = Math.min(count - 1, Math.max(0, Math.round((middle - low) / step)));
  const points: ReachPoint[] = [];
  points[at] = smallest;
  const find = (i: number, from: ReachPoint): ReachPoint => {
    const end = i === 0 ? ends[0] : i === count - 1 ? ends[1] : undefined;
    const along = low + i * step;
    const place: Aim = { low: along, high: along, weight: STRICT };
    const found = solveAlong(room, direction, place, [from.dials, ...(end ? [end.dials] : [])]);
    return found && isInside(room, found) ? found : (end ?? from);
  };
  for (let i = at - 1; i >= 0; i--) points[i] = find(i, points[i + 1]);
  for (let i = at + 1; i < count; i++) points[i] = find(i, points[i - 1]);
  return { points, at };
}

/** Rounding of a dial at the end of its range. */
const EDGE = 1e-9;

function toMember({ from = STILL }: FamilyQuestion, point: ReachPoint, place: number): Member {
  const movements = withDials(from, point.dials);
  return {
    movements,
    readings: judgedOf(point),
    place,
    effort: point.effort,
    isUsual: DIALS.every(
      ({ id, usualMin, usualMax }) => movements[id] >= usualMin - EDGE && movements[id] <= usualMax + EDGE,
    ),
  };
}

/** The movement with the largest share of the change, and its dial that has moved farthest. */
function nameEnd(from: Float64Array, { dials }: ReachPoint): EndName {
  const change = DIALS.map((_, i) => (dials[i] - from[i]) / HALF_RANGE[i]);
  const groups = MOVEMENT_GROUPS.map((group) => ({
    group,
    size: Math.hypot(...change.filter((_, i) => DIALS[i].group === group)),
  }));
  const { group } = groups.reduce((most, one) => (one.size > most.size ? one : most));
  const own = dialsOf([group]);
  const lead = own.reduce((most, i) => (Math.abs(change[i]) > Math.abs(change[most]) ? i : most));
  return { group, dial: DIALS[lead].id, sign: change[lead] < 0 ? -1 : 1 };
}
