import type { Rad } from '../../math/angle';
import { DIALS, type MovementGroup, type MovementId, type Movements } from '../../model/movements';
import { DEFAULT_ARM_ANGLE } from '../../reading/checkpoints';
import { withMovements, type Swing } from '../../reading/swing';
import { DEFAULT_BANDS, judge, type Band, type Bands } from '../../reading/verdicts';
import { checkAllow, checkBands } from './checks';
import { shareInBand } from './verdictShare';
import { createJudge, dialsOf, findLiveDials, toDials, withDials, type Judged } from './judged';
import { reachPointAt, solveReach, startsFrom, type Aim, type ReachPoint, type ReachProblem } from '../reference/reach';

/** What is to be planned. */
export interface PlanQuestion<Effects = undefined> {
  /** The swing now: player, club, reference and movements. */
  readonly swing: Swing;
  /** Movements that may change; the others are locked. */
  readonly allow: readonly MovementGroup[];
  readonly bands?: Bands;
  readonly armAngle?: Rad;
  /** How far inside a band a plan should end, m. Default: `INSIDE`. */
  readonly inside?: number;
  /** The coach's give or take, m (two standard deviations), at the checkpoints where he has one: for `holds`. */
  readonly doubt?: Partial<Judged>;
  /** What else the planned swing does. */
  readonly sideEffects?: (swing: Swing) => Effects;
}

/** One way to bring both checkpoints into their bands. */
export interface Plan<Effects = undefined> {
  /** The movements that change. */
  readonly uses: readonly MovementGroup[];
  /** `closest`: as near as the range of motion allows; `short` says how far off it stays. */
  readonly status: 'reached' | 'closest';
  readonly movements: Movements;
  /** New value minus old value of every dial, model units. Exactly 0 for what is locked. */
  readonly change: Readonly<Record<MovementId, number>>;
  /** Root of the sum of squares of the changes, each over half of its dial's usual range. */
  readonly effort: number;
  /** The judged readings after the change, m. */
  readonly readings: Judged;
  /** How far each reading stays outside its band, m. Positive: above it, still steep. 0: inside. */
  readonly short: Judged;
  /** Share, 0 to 1, of the coach's give or take in which both readings land in their bands. */
  readonly holds?: number;
  readonly sideEffects?: Effects;
}

/** All plans for one swing. `already`: both readings are in their bands. `missing`: a checkpoint is never reached, near or far. */
export interface Plans<Effects = undefined> {
  readonly status: 'planned' | 'already' | 'missing';
  /** Reached plans first, the smallest change first; then the closest. */
  readonly plans: readonly Plan<Effects>[];
  readonly evaluations: number;
}

/** A plan ends this far inside a band, m: it shows as inside at every number of digits on screen. */
export const INSIDE = 0.0002;
/** One metre outside a band costs this much effort: a hundredth of a millimetre weighs as much as half of a dial's usual range. */
const WEIGHT = 1e5;

/**
 * The smallest changes that bring both checkpoints into their bands: each allowed movement on its own, and all of them together.
 * Effort counts every dial by half of its usual range. A plan never passes a dial's limits and never moves what is locked; when
 * the bands cannot be reached it makes the root of the sum of squares of the metres left outside as small as can be.
 * Throws `SetupError` for bands upside down and for an empty list.
 */
export function solvePlans<Effects = undefined>(question: PlanQuestion<Effects>): Plans<Effects> {
  const { swing, bands = DEFAULT_BANDS, armAngle = DEFAULT_ARM_ANGLE, inside = INSIDE } = question;
  checkBands(bands);
  const allow = checkAllow(question.allow);
  const judgeOf = createJudge(swing, armAngle);
  const from = toDials(swing.movements);
  const aims: readonly [Aim, Aim] = [aimAt(bands.leadArmParallel, inside), aimAt(bands.shaftParallel, inside)];
  const live = findLiveDials(judgeOf, from, dialsOf(allow));
  const problem = (groups: readonly MovementGroup[]): ReachProblem => ({
    judge: judgeOf,
    from,
    free: dialsOf(groups).filter((dial) => live.includes(dial)),
    aims,
  });

  const now = reachPointAt(problem([]), from);
  if (now && isInside(now, bands)) return { status: 'already', plans: [], evaluations: judgeOf.evaluations };
  const starts = startsFrom(from);
  const points: { groups: readonly MovementGroup[]; point: ReachPoint }[] = [];
  for (const group of allow) {
    const point = solveReach(problem([group]), starts);
    if (point) points.push({ groups: [group], point });
  }
  if (allow.length > 1) {
    // Every movement on its own is also a blend: starting there, the blend is never worse than the best of them.
    const point = solveReach(problem(allow), [...starts, ...points.map((single) => single.point.dials)]);
    if (point) points.push({ groups: allow, point });
  }
  return {
    status: points.length > 0 ? 'planned' : 'missing',
    plans: points.map(({ groups, point }) => toPlan(question, bands, from, groups, point)).toSorted(smallerFirst),
    evaluations: judgeOf.evaluations,
  };
}

/** The inner band to aim at; a band too narrow for the margin is aimed at in its middle. */
function aimAt({ low, high }: Band, inside: number): Aim {
  const margin = Math.min(inside, (high - low) / 2);
  return { low: low + margin, high: Math.max(low + margin, high - margin), weight: WEIGHT };
}

const isInside = ({ readings }: ReachPoint, bands: Bands): boolean =>
  judge(readings[0], bands.leadArmParallel) === 'onPlane' && judge(readings[1], bands.shaftParallel) === 'onPlane';

/** How far a reading stays outside its band, m: positive above it, 0 inside. */
export const shortOf = (value: number, { low, high }: Band): number =>
  value > high ? value - high : value < low ? value - low : 0;

function toPlan<Effects>(
  { swing, doubt, sideEffects }: PlanQuestion<Effects>,
  bands: Bands,
  from: Float64Array,
  uses: readonly MovementGroup[],
  point: ReachPoint,
): Plan<Effects> {
  const movements = withDials(swing.movements, point.dials);
  const [gap, depth] = point.readings;
  const landing = (id: keyof Judged, value: number): number =>
    doubt ? shareInBand({ value, plusMinus: doubt[id] ?? 0 }, bands[id]) : 1;
  return {
    uses,
    status: isInside(point, bands) ? 'reached' : 'closest',
    movements,
    change: Object.fromEntries(DIALS.map(({ id }, i) => [id, point.dials[i] - from[i]])) as Record<MovementId, number>,
    effort: point.effort,
    readings: { leadArmParallel: gap, shaftParallel: depth },
    short: {
      leadArmParallel: shortOf(gap, bands.leadArmParallel),
      shaftParallel: shortOf(depth, bands.shaftParallel),
    },
    ...(doubt && { holds: landing('leadArmParallel', gap) * landing('shaftParallel', depth) }),
    ...(sideEffects && { sideEffects: sideEffects(withMovements(swing, movements)) }),
  };
}

type Ranked = Pick<Plan<unknown>, 'status' | 'effort' | 'short'>;
const distance = ({ short }: Ranked): number => Math.hypot(short.leadArmParallel, short.shaftParallel);

/** Reached before closest; then the smaller change; among the closest, the closer. */
export function smallerFirst(a: Ranked, b: Ranked): number {
  if (a.status !== b.status) return a.status === 'reached' ? -1 : 1;
  return a.status === 'reached' ? a.effort - b.effort : distance(a) - distance(b);
}
