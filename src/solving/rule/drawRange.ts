import { rad } from '../../math/angle';
import { DIALS, type MovementDial, type MovementId } from '../../model/movements';
import type { TopSetUp } from '../../model/setUp';
import type { Rule, Span } from './rule';

/** How far the top of the backswing may be set up either way, m and rad: what the set-up takes. */
export const TOP_LIMITS: Readonly<Record<keyof TopSetUp, number>> = {
  handDepth: 0.12,
  handHeight: 0.12,
  turn: rad(20),
  wristSet: rad(20),
};
/** One step of each, m and rad: a centimetre and a degree. */
const TOP_STEPS: Readonly<Record<keyof TopSetUp, number>> = {
  handDepth: 0.01,
  handHeight: 0.01,
  turn: rad(1),
  wristSet: rad(1),
};
export const TOP_FIELDS = Object.keys(TOP_LIMITS) as (keyof TopSetUp)[];
/** Of a player nothing is said about, the top lies inside this share of its limits. */
const USUAL_SHARE = 0.5;

/** Values in even steps from zero: `first` to `last` times `step`. Empty where `last` is below `first`. */
export interface Steps {
  readonly first: number;
  readonly last: number;
  readonly step: number;
}

/** Rounding that does not count as lying on an edge. */
const EDGE = 1e-6;

/** The steps from `min` to `max`, both included, that lie inside every span. */
function stepsIn(min: number, max: number, step: number, spans: readonly Span[]): Steps {
  let first = Math.ceil(min / step - EDGE);
  let last = Math.floor(max / step + EDGE);
  for (const { low, high } of spans) {
    if (Number.isFinite(low)) first = Math.max(first, Math.floor(low / step + EDGE) + 1);
    if (Number.isFinite(high)) last = Math.min(last, Math.ceil(high / step - EDGE) - 1);
  }
  return { first, last, step };
}

/** Spans that the rule's conditions set to one movement. */
const spansOf = ({ when }: Rule, id: MovementId): Span[] =>
  when.flatMap((one) => (one.kind === 'movement' && one.id === id ? [one.between] : []));

/**
 * Values of a dial that a rule is tried with: its usual range, or as far as it goes where a condition is set to it; always so that
 * the rule's own change stays inside its limits.
 */
export function dialRange(rule: Rule, { id, min, max, usualMin, usualMax, step }: MovementDial): Steps {
  const spans = spansOf(rule, id);
  const by = rule.change.find((change) => change.id === id)?.by ?? 0;
  const [low, high] = spans.length > 0 ? [min, max] : [usualMin, usualMax];
  return stepsIn(Math.max(low, min - by), Math.min(high, max - by), step, spans);
}

/** The ranges of all dials, in the order of `DIALS`. */
export const dialRanges = (rule: Rule): Steps[] => DIALS.map((dial) => dialRange(rule, dial));

/** Values of the top of the backswing that a rule is tried with. */
export function topRange({ who }: Rule, field: keyof TopSetUp): Steps {
  const usual = TOP_LIMITS[field] * USUAL_SHARE;
  const { low, high } = who.top?.[field] ?? { low: -usual, high: usual };
  return stepsIn(low, high, TOP_STEPS[field], []);
}

/** The step nearest to `value`. */
export const nearestStep = ({ first, last, step }: Steps, value: number): number =>
  Math.min(last, Math.max(first, Math.round(value / step))) * step;
