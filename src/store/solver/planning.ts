import { findShot, type NoShot, type Shot, type Weather } from '../../flight/shot';
import { DIALS, type MovementGroup, type MovementId, type Movements } from '../../model/movements';
import { readCheckpoints } from '../../reading/checkpoints';
import {
  deliver,
  impliedPath,
  strikeOf,
  type Delivery,
  type DeliveryRule,
  type NotDelivered,
} from '../../reading/delivery/delivery';
import { withMovements, type Swing } from '../../reading/swing';
import type { Band, Bands } from '../../reading/verdicts';
import { shareInBand } from '../../solving/diagnosis/sightingHold';
import { createJudge, DIAL_INDEX, toDials, withDials, type Judged } from '../../solving/diagnosis/judged';
import { findOnSteps } from '../../solving/diagnosis/stepSearch';
import { INSIDE, solvePlans, type Plan } from '../../solving/diagnosis/plan';

/** What is planned, as it goes to the worker. The swings have nothing adapted. */
export interface PlanJob {
  readonly kind: 'plan';
  readonly swing: Swing;
  readonly reference: Swing;
  readonly allow: readonly MovementGroup[];
  readonly bands: Bands;
  readonly armAngle: number;
  readonly aim: 'edge' | 'inside';
  /** The coach's give or take, m. */
  readonly doubt: Judged;
  readonly rule: DeliveryRule;
  readonly weather: Weather;
}

/** What a swing does besides the two judged readings. */
export interface Effects {
  readonly impliedPath: number | null;
  readonly delivery: Delivery | NotDelivered;
  readonly shot: Shot | NoShot;
}

/** A plan that can be dialled: every number belongs to the dialled swing. */
export interface StepPlan {
  readonly uses: readonly MovementGroup[];
  readonly status: 'reached' | 'closest';
  readonly movements: Movements;
  /** New less old, model units; exactly 0 for what does not move. */
  readonly change: Readonly<Record<MovementId, number>>;
  readonly effort: number;
  readonly readings: Judged;
  /** How far each reading stays outside its band, m: positive above it. */
  readonly short: Judged;
  /** Share of the coach's give or take in which both readings land in their bands. */
  readonly holds: number;
  readonly effects: Effects;
}

export interface PlanAnswer {
  readonly kind: 'plan';
  /** What was asked for: while a newer answer is on its way, the words still belong to these plans. */
  readonly aim: PlanJob['aim'];
  readonly status: 'planned' | 'already' | 'missing';
  readonly plans: readonly StepPlan[];
  readonly now: Effects;
  readonly readingsNow: Judged;
}

/** Halfway from the edge of the narrower band to its middle, m. */
const insideOf = ({ leadArmParallel: a, shaftParallel: b }: Bands): number =>
  Math.min(a.high - a.low, b.high - b.low) / 4;

/** All plans of a job, on the steps of the dials. Throws `SetupError` for bands upside down and when everything is locked. */
export function planFor(job: PlanJob): PlanAnswer {
  const { swing, allow, bands, armAngle, aim } = job;
  const inside = aim === 'inside' ? insideOf(bands) : undefined;
  const solved = solvePlans({ swing, allow, bands, armAngle, ...(inside === undefined ? {} : { inside }) });
  const effectsOf = createEffects(job);
  const reader = createJudge(swing, armAngle);
  const now = new Float64Array(2);
  reader.read(toDials(swing.movements), now);
  const aimed = narrowed(bands, inside ?? INSIDE);
  const plans = solved.plans.map((plan) => step(plan, job, reader, aimed, effectsOf)).filter(isWorthShowing);
  return {
    kind: 'plan',
    aim,
    status: solved.status,
    plans: plans.toSorted(smallerFirst),
    now: effectsOf(swing),
    readingsNow: { leadArmParallel: now[0], shaftParallel: now[1] },
  };
}

/** A band too narrow for the margin keeps its middle. */
function narrow({ low, high }: Band, by: number): Band {
  const margin = Math.min(by, (high - low) / 2);
  return { low: low + margin, high: high - margin };
}
const narrowed = ({ leadArmParallel, shaftParallel }: Bands, by: number): Bands => ({
  leadArmParallel: narrow(leadArmParallel, by),
  shaftParallel: narrow(shaftParallel, by),
});

function createEffects({ reference, armAngle, rule, weather }: PlanJob): (swing: Swing) => Effects {
  const strike = strikeOf(reference, readCheckpoints(reference, armAngle));
  return (swing) => {
    const checkpoints = readCheckpoints(swing, armAngle);
    const { delivery } = strike
      ? deliver(swing, checkpoints, strike, rule)
      : { delivery: { missing: 'no-shaft-parallel' } as const };
    const shot = findShot(delivery, swing.rig.club, weather);
    return { impliedPath: (strike && impliedPath(checkpoints, strike)) ?? null, delivery, shot };
  };
}

function step(
  plan: Plan,
  { swing, bands, doubt }: PlanJob,
  reader: ReturnType<typeof createJudge>,
  aimed: Bands,
  effectsOf: (swing: Swing) => Effects,
): StepPlan {
  const from = toDials(swing.movements);
  const free = DIALS.filter(({ id }) => plan.change[id] !== 0).map(({ id }) => DIAL_INDEX[id]);
  const exact = toDials(plan.movements);
  // What cannot be brought well inside may still reach the band.
  const first = findOnSteps(reader, from, exact, free, aimed);
  const { dials, readings, effort } = first.isInside ? first : findOnSteps(reader, from, exact, free, bands);
  const movements = withDials(swing.movements, dials);
  const short = {
    leadArmParallel: pastBand(readings[0], bands.leadArmParallel),
    shaftParallel: pastBand(readings[1], bands.shaftParallel),
  };
  const landing = (value: number, plusMinus: number, band: Band): number => shareInBand({ value, plusMinus }, band);
  const moved = DIALS.filter(({ id }, i) => movements[id] !== swing.movements[id] && dials[i] !== from[i]);
  return {
    uses: plan.uses.filter((group) => moved.some((dial) => dial.group === group)),
    status: short.leadArmParallel === 0 && short.shaftParallel === 0 ? 'reached' : 'closest',
    movements,
    change: Object.fromEntries(DIALS.map(({ id }, i) => [id, dials[i] - from[i]])) as Record<MovementId, number>,
    effort,
    readings: { leadArmParallel: readings[0], shaftParallel: readings[1] },
    short,
    holds:
      landing(readings[0], doubt.leadArmParallel, bands.leadArmParallel) *
      landing(readings[1], doubt.shaftParallel, bands.shaftParallel),
    effects: effectsOf(withMovements(swing, movements)),
  };
}

const pastBand = (value: number, { low, high }: Band): number =>
  value > high ? value - high : value < low ? value - low : 0;

/** A plan that moves nothing, or two that move the same dials, are one too many. */
function isWorthShowing({ uses, effort }: StepPlan, at: number, all: readonly StepPlan[]): boolean {
  if (effort === 0) return false;
  return all.findIndex((other) => other.uses.join() === uses.join() && other.effort <= effort) === at;
}

function smallerFirst(a: StepPlan, b: StepPlan): number {
  if (a.status !== b.status) return a.status === 'reached' ? -1 : 1;
  if (a.status === 'reached') return a.effort - b.effort;
  const left = ({ short }: StepPlan): number => Math.hypot(short.leadArmParallel, short.shaftParallel);
  return left(a) - left(b);
}
