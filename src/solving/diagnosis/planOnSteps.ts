import type { Shot, NoShot, Weather } from '../../flight/shot';
import type { Rad } from '../../math/angle';
import { DIALS, type MovementGroup, type MovementId, type Movements } from '../../model/movements';
import { DEFAULT_ARM_ANGLE } from '../../reading/checkpoints';
import type { Delivery, DeliveryRule, NotDelivered } from '../../reading/delivery/delivery';
import { withMovements, type Swing } from '../../reading/swing';
import { DEFAULT_BANDS, type Band, type Bands } from '../../reading/verdicts';
import { playOutSwing, type SwingBase } from '../playOut';
import { createJudge, DIAL_INDEX, HALF_RANGE, toDials, withDials, type Judge, type Judged } from './judged';
import { INSIDE, shortOf, smallerFirst, solvePlans, type Plan, type Plans } from './plan';
import { shareInBand } from './verdictShare';
import { findOnSteps, type Stepped } from './stepSearch';

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
  /** Share of the coach's margin in which both readings land in their bands. */
  readonly holds: number;
  /** Asked for more margin: these movements cannot land more often than with the smallest change. */
  readonly isMost?: true;
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
const insideOf = ({ leadArmParallel: a, shaftParallel: b }: Bands): number =>
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

/** The dials that a plan may move, as indices. */
const freeOf = (plan: Plan): readonly number[] =>
  DIALS.filter(({ id }) => plan.change[id] !== 0).map(({ id }) => DIAL_INDEX[id]);

function toSteps(plan: Plan, swing: Swing, at: StepAims): StepPlan {
  const from = toDials(swing.movements);
  const [free, exact] = [freeOf(plan), toDials(plan.movements)];
  // What cannot be brought well inside may still reach the band.
  const first = findOnSteps(at.reader, from, exact, free, at.aimed);
  return planAt(plan, swing, first.isInside ? first : findOnSteps(at.reader, from, exact, free, at.bands), at);
}

/** A plan that ends at a setting. */
function planAt(
  plan: Plan,
  swing: Swing,
  { dials, readings, effort }: Pick<Stepped, 'dials' | 'readings' | 'effort'>,
  { bands, doubt, effectsOf: look }: StepAims,
): StepPlan {
  const from = toDials(swing.movements);
  const movements = withDials(swing.movements, dials);
  const short = {
    leadArmParallel: shortOf(readings[0], bands.leadArmParallel),
    shaftParallel: shortOf(readings[1], bands.shaftParallel),
  };
  const moved = DIALS.filter(({ id }, i) => movements[id] !== swing.movements[id] && dials[i] !== from[i]);
  return {
    uses: plan.uses.filter((group) => moved.some((dial) => dial.group === group)),
    status: short.leadArmParallel === 0 && short.shaftParallel === 0 ? 'reached' : 'closest',
    movements,
    change: Object.fromEntries(DIALS.map(({ id }, i) => [id, dials[i] - from[i]])) as Record<MovementId, number>,
    effort,
    readings: { leadArmParallel: readings[0], shaftParallel: readings[1] },
    short,
    holds: landingShare(readings, doubt, bands),
    effects: look(withMovements(swing, movements)),
    exact: plan,
  };
}

/** Share of the coach's margin in which both readings (m) land in their bands. */
const landingShare = (readings: ArrayLike<number>, doubt: Judged, bands: Bands): number =>
  shareInBand({ value: readings[0], plusMinus: doubt.leadArmParallel }, bands.leadArmParallel) *
  shareInBand({ value: readings[1], plusMinus: doubt.shaftParallel }, bands.shaftParallel);

/** A step that lands more often by less than this is not worth its effort (our choice). */
const GAIN = 0.005;
/** Far more steps than lie between any two settings that differ in how often they land. */
const MOST_STEPS = 80;

/**
 * Plans that land more often: each goes on from where it ends step by step, as long as a step brings both readings into their bands in a
 * noticeably larger share of the coach's margin. None lands less often than the smallest change with the same movements; one that cannot land
 * more often is that smallest change, and says so with `isMost`.
 */
export function planWithMargin(question: StepPlanQuestion): StepPlans {
  const { swing, bands = DEFAULT_BANDS, armAngle = DEFAULT_ARM_ANGLE } = question;
  const [edge, inside] = [planOnSteps(question), planOnSteps({ ...question, inside: insideOf(bands) })];
  const reader = createJudge(swing, armAngle);
  const aims: StepAims = {
    reader,
    bands,
    aimed: bands,
    doubt: question.doubt ?? NO_DOUBT,
    effectsOf: (planned) => effectsOf(question, planned),
  };
  const same = (a: StepPlan) => (b: StepPlan) => a.exact.uses.join() === b.exact.uses.join();
  const further = inside.plans.filter((plan) => !edge.plans.some(same(plan)));
  const plans = [...edge.plans, ...further].map((smallest): StepPlan => {
    const other = inside.plans.find(same(smallest));
    const start = other && other.holds > smallest.holds ? other : smallest;
    const climbed = climb(start, swing, aims);
    return climbed.holds > smallest.holds + GAIN ? climbed : { ...smallest, isMost: true };
  });
  return { ...inside, plans: plans.filter(isWorthShowing).toSorted(smallerFirst) };
}

function climb(start: StepPlan, swing: Swing, aims: StepAims): StepPlan {
  const { reader, doubt, bands } = aims;
  const [from, free] = [toDials(swing.movements), freeOf(start.exact)];
  let here: Pick<Stepped, 'dials' | 'readings'> = { dials: toDials(start.movements), readings: new Float64Array(2) };
  let holds = start.holds;
  for (let steps = 0; steps < MOST_STEPS; steps++) {
    let best: typeof here | undefined;
    let most = holds + GAIN;
    for (const i of free) {
      for (const way of [1, -1]) {
        const { step, min, max } = DIALS[i];
        const dials = here.dials.slice();
        dials[i] = Math.min(max, Math.max(min, dials[i] + way * step));
        const readings = new Float64Array(2);
        reader.read(dials, readings);
        const share = landingShare(readings, doubt, bands);
        if (share > most) [best, most] = [{ dials, readings }, share];
      }
    }
    if (!best) break;
    [here, holds] = [best, most];
  }
  if (holds === start.holds) return start;
  const effort = Math.hypot(...free.map((i) => (here.dials[i] - from[i]) / HALF_RANGE[i]));
  return planAt(start.exact, swing, { ...here, effort }, aims);
}

/** A plan that moves nothing, or two that move the same dials, are one too many. */
function isWorthShowing({ uses, effort }: StepPlan, at: number, all: readonly StepPlan[]): boolean {
  if (effort === 0) return false;
  return all.findIndex((other) => other.uses.join() === uses.join() && other.effort <= effort) === at;
}
