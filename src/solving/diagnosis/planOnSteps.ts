import type { Shot, NoShot, Weather } from '../../flight/shot';
import type { Rad } from '../../math/angle';
import { DIALS, type MovementGroup, type MovementId, type Movements } from '../../model/movements';
import { DEFAULT_ARM_ANGLE } from '../../reading/checkpoints';
import type { Delivery, DeliveryRule, NotDelivered } from '../../reading/delivery/delivery';
import { withMovements, type Swing } from '../../reading/swing';
import { DEFAULT_BANDS, type Band, type Bands } from '../../reading/verdicts';
import { playOutSwing, type SwingBase } from '../playOut';
import { createJudge, DIAL_INDEX, toDials, withDials, type Judge, type Judged } from './judged';
import { INSIDE, shortOf, smallerFirst, solvePlans, type Plan, type Plans } from './plan';
import { shareInBand } from './verdictShare';
import { findOnSteps } from './stepSearch';

/** What is to be planned in numbers that can be dialled. */
export interface StepPlanQuestion {
  /** The swing now, nothing adapted. */
  readonly swing: Swing;
  /** The same player, club and top with nothing dialled. */
  readonly base: SwingBase;
  readonly allow: readonly MovementGroup[];
  readonly bands?: Bands;
  readonly armAngle?: Rad;
  /** How far inside a band a plan should end, m. Default: `INSIDE`. */
  readonly inside?: number;
  /** The coach's give or take, m: for `holds`. Default: none. */
  readonly doubt?: Judged;
  readonly faceReturned?: number;
  readonly rule?: DeliveryRule;
  readonly weather?: Weather;
}

/** What a swing does besides the two judged readings. */
export interface Effects {
  /** Path at the ball if the change at shaft parallel carries through, rad, + in-to-out. */
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
  /** The solution between the steps that this one stands nearest to. */
  readonly exact: Plan;
}

export interface StepPlans {
  readonly status: Plans['status'];
  /** Reached plans first, the smallest change first; then the closest. */
  readonly plans: readonly StepPlan[];
  readonly now: Effects;
  readonly readingsNow: Judged;
}

const NO_DOUBT: Judged = { leadArmParallel: 0, shaftParallel: 0 };

/** Halfway from the edge of the narrower band to its middle, m. */
export const insideOf = ({ leadArmParallel: a, shaftParallel: b }: Bands): number =>
  Math.min(a.high - a.low, b.high - b.low) / 4;

/**
 * All plans for a swing, on the steps of the dials. Throws `SetupError` for bands upside down and when everything is locked.
 */
export function planOnSteps(question: StepPlanQuestion): StepPlans {
  const { swing, allow, bands = DEFAULT_BANDS, armAngle = DEFAULT_ARM_ANGLE, inside = INSIDE } = question;
  const solved = solvePlans({ swing, allow, bands, armAngle, inside });
  const reader = createJudge(swing, armAngle);
  const now = new Float64Array(2);
  reader.read(toDials(swing.movements), now);
  const at: StepAims = {
    reader,
    bands,
    aimed: narrowed(bands, inside),
    doubt: question.doubt ?? NO_DOUBT,
    effectsOf: (planned) => effectsOf(question, planned),
  };
  return {
    status: solved.status,
    plans: solved.plans
      .map((plan) => toSteps(plan, swing, at))
      .filter(isWorthShowing)
      .toSorted(smallerFirst),
    now: at.effectsOf(swing),
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

function effectsOf({ base, armAngle, rule, faceReturned, weather }: StepPlanQuestion, swing: Swing): Effects {
  const { impliedPath, delivery, shot } = playOutSwing(base, swing, {
    ...(armAngle !== undefined && { armAngle }),
    ...(rule && { rule }),
    ...(faceReturned !== undefined && { faceReturned }),
    ...(weather && { weather }),
  });
  return { impliedPath, delivery, shot };
}

/** What every plan of one question is brought onto steps by. */
interface StepAims {
  readonly reader: Judge;
  readonly bands: Bands;
  /** The bands less the margin that a plan keeps. */
  readonly aimed: Bands;
  readonly doubt: Judged;
  readonly effectsOf: (swing: Swing) => Effects;
}

function toSteps(plan: Plan, swing: Swing, { reader, bands, aimed, doubt, effectsOf: look }: StepAims): StepPlan {
  const from = toDials(swing.movements);
  const free = DIALS.filter(({ id }) => plan.change[id] !== 0).map(({ id }) => DIAL_INDEX[id]);
  const exact = toDials(plan.movements);
  // What cannot be brought well inside may still reach the band.
  const first = findOnSteps(reader, from, exact, free, aimed);
  const { dials, readings, effort } = first.isInside ? first : findOnSteps(reader, from, exact, free, bands);
  const movements = withDials(swing.movements, dials);
  const short = {
    leadArmParallel: shortOf(readings[0], bands.leadArmParallel),
    shaftParallel: shortOf(readings[1], bands.shaftParallel),
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
    effects: look(withMovements(swing, movements)),
    exact: plan,
  };
}

/** A plan that moves nothing, or two that move the same dials, are one too many. */
function isWorthShowing({ uses, effort }: StepPlan, at: number, all: readonly StepPlan[]): boolean {
  if (effort === 0) return false;
  return all.findIndex((other) => other.uses.join() === uses.join() && other.effort <= effort) === at;
}
