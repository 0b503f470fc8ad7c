import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { Rad } from '../../math/angle';
import { DIALS, dialOf, MOVEMENT_GROUPS, STILL } from '../../model/movements';
import type { MovementGroup, MovementId, Movements } from '../../model/movements';
import { DEFAULT_ARM_ANGLE } from '../../reading/checkpoints';
import type { Swing } from '../../reading/swing';
import { DEFAULT_BANDS, type Bands } from '../../reading/verdicts';
import { checkAllow, checkBands } from './checks';
import { checkSightings, findVerdictShares, SPREADS, type VerdictShare, type Sightings } from './verdictShare';
import { createJudge, dialsOf, findLiveDials, HALF_RANGE, toDials, withDials, type Judge, type Judged } from './judged';
import { solveReach, startsFrom, type Aim, type ReachPoint } from '../reference/reach';

/** What a coach saw, and the player it is to be explained for. */
export interface MatchQuestion {
  /** Player, club and reference; its movements do not matter. */
  readonly swing: Swing;
  readonly seen: Sightings;
  /** Where an explanation starts from, and effort is counted from. Default: the reference. */
  readonly from?: Movements;
  /** Movements an explanation may use. Default: all. */
  readonly allow?: readonly MovementGroup[];
  readonly bands?: Bands;
  readonly armAngle?: Rad;
}

/** A setting of the movements that would look like what was seen. Several bodies can look alike from one side. */
export interface Explanation {
  readonly uses: readonly MovementGroup[];
  /** The dials it moves: one, both of a movement, or all that are allowed. */
  readonly dials: readonly MovementId[];
  /** `fits`: every reading lies within the coach's give or take. `closest`: as near as this explanation comes. */
  readonly status: 'fits' | 'closest';
  readonly movements: Movements;
  /** Root of the sum of squares of what is left, each in units of the coach's own give or take. 0: looks the same. */
  readonly misfit: number;
  /** Root of the sum of squares of the changes, each over half of its dial's usual range. */
  readonly effort: number;
  readonly readings: Judged;
  /** With one dial: how far it could be off, model units, when the sightings are as good as the coach says (two standard deviations). */
  readonly plusMinus?: number;
}

export interface Match {
  /** The most likely first: see `score`. Empty when a checkpoint that was seen is never reached. */
  readonly explanations: readonly Explanation[];
  readonly holds: { readonly leadArmParallel?: VerdictShare; readonly shaftParallel?: VerdictShare };
  readonly evaluations: number;
}

/** Effort that a misfit of 1 costs: what was seen comes first, a small effort decides only among equals. */
const STRICTNESS = 1000;
/** Largest weight of a metre, 1/m: keeps the least-distance step exact when the give or take is tiny. */
const HEAVIEST = 1e5;
/** Scores closer than this are equal: then the smaller effort goes first. */
const TIE = 1e-6;

/**
 * Explains what was seen: every dial on its own, every movement with two dials, and all movements together, leaving out dials
 * that neither reading answers to. Each explanation
 * comes as close to the sightings as it can, and does so with the smallest effort. Throws `SetupError` for empty or broken input.
 */
export function solveMatch(question: MatchQuestion): Match {
  const { swing, seen, from = STILL, allow = MOVEMENT_GROUPS, bands = DEFAULT_BANDS } = question;
  checkBands(bands);
  checkSightings(seen);
  const groups = checkAllow(allow);
  const judge = createJudge(swing, question.armAngle ?? DEFAULT_ARM_ANGLE);
  const start = toDials(from);
  const aims = aimsAt(seen);
  const solved: Explanation[] = [];
  const found: Float64Array[] = [];
  const explain = (
    uses: readonly MovementGroup[],
    free: readonly number[],
    more: readonly Float64Array[] = [],
  ): void => {
    const point = solveReach({ judge, from: start, free, aims }, [...startsFrom(start), ...more]);
    if (!point) return;
    found.push(point.dials);
    solved.push(toExplanation(seen, from, uses, free, point, judge));
  };
  const live = findLiveDials(judge, start, dialsOf(groups));
  const own = groups.map((group) => ({ group, dials: dialsOf([group]).filter((dial) => live.includes(dial)) }));
  for (const { group, dials } of own) for (const dial of dials) explain([group], [dial]);
  const singles = found.slice();
  for (const { group, dials } of own) if (dials.length > 1) explain([group], dials);
  const blend = own.filter(({ dials }) => dials.length > 0);
  if (blend.length > 1) {
    explain(
      blend.map(({ group }) => group),
      live,
      singles,
    );
  }
  return {
    explanations: solved.toSorted((a, b) => rank(a) - rank(b) || a.effort - b.effort),
    holds: findVerdictShares(seen, bands),
    evaluations: judge.evaluations,
  };
}

function aimsAt(seen: Sightings): readonly [Aim, Aim] {
  const finest = Math.min(...CHECKPOINT_IDS.map((id) => seen[id]?.plusMinus ?? Infinity));
  const strictness = Math.min(STRICTNESS, HEAVIEST * finest);
  const [arm, shaft] = CHECKPOINT_IDS.map((id) => {
    const sighting = seen[id];
    return sighting
      ? { low: sighting.value, high: sighting.value, weight: strictness / sighting.plusMinus }
      : { low: 0, high: 0, weight: 0 };
  });
  return [arm, shaft];
}

/**
 * Akaike's criterion: squared misfit in standard deviations plus two for every dial that moves. One more dial has to explain
 * more than chance would. Lower is more likely.
 * Source: H. Akaike, A New Look at the Statistical Model Identification, IEEE Trans. Automatic Control 19 (1974).
 */
export const score = ({ misfit, dials }: Pick<Explanation, 'misfit' | 'dials'>): number =>
  (misfit * SPREADS) ** 2 + 2 * dials.length;

const rank = (explanation: Explanation): number => Math.round(score(explanation) / TIE);

function toExplanation(
  seen: Sightings,
  from: Movements,
  uses: readonly MovementGroup[],
  free: readonly number[],
  point: ReachPoint,
  judge: Judge,
): Explanation {
  const left = CHECKPOINT_IDS.map((id, k) => {
    const sighting = seen[id];
    return sighting ? (point.readings[k] - sighting.value) / sighting.plusMinus : 0;
  });
  const plusMinus = free.length === 1 ? doubtOf(seen, free[0], point, judge) : undefined;
  return {
    uses,
    dials: free.map((i) => DIALS[i].id),
    status: left.every((each) => Math.abs(each) <= 1) ? 'fits' : 'closest',
    movements: withDials(from, point.dials),
    misfit: Math.hypot(...left),
    effort: point.effort,
    readings: { leadArmParallel: point.readings[0], shaftParallel: point.readings[1] },
    ...(plusMinus !== undefined && { plusMinus }),
  };
}

/** Step of the central difference, in half ranges. */
const DIFFERENCE = 0.01;

/** Give or take of a single dial, from the give or take of the sightings and the slopes of the readings. None where nothing answers. */
function doubtOf(seen: Sightings, dial: number, point: ReachPoint, judge: Judge): number | undefined {
  const step = DIFFERENCE * HALF_RANGE[dial];
  const above = new Float64Array(2);
  const below = new Float64Array(2);
  const dials = point.dials.slice();
  dials[dial] = point.dials[dial] + step;
  judge.read(dials, above);
  dials[dial] = point.dials[dial] - step;
  judge.read(dials, below);
  let information = 0;
  CHECKPOINT_IDS.forEach((id, k) => {
    const sighting = seen[id];
    if (sighting) information += ((above[k] - below[k]) / (2 * step * sighting.plusMinus)) ** 2;
  });
  const doubt = 1 / Math.sqrt(information);
  const { min, max } = dialOf(DIALS[dial].id);
  return doubt < max - min ? doubt : undefined;
}
