import { SetupError, STATURE_LIMITS_M } from '../../model/body';
import { toDeg } from '../../math/angle';
import { CLUB_LIMITS } from '../../model/club';
import { DIALS, dialOf } from '../../model/movements';
import { checkBands } from '../diagnosis/checks';
import type { Bands } from '../../reading/verdicts';
import { dialRange, TOP_FIELDS, TOP_LIMITS, topRange } from './drawRange';
import {
  judgedQuantity,
  spanOfVerdict,
  type Claim,
  type Condition,
  type Quantity,
  type Range,
  type Rule,
  type Span,
} from './rule';

const isSame = (a: Quantity, b: Quantity): boolean => a.at === b.at && a.reading === b.reading;

/** What is never there: at shaft parallel the shaft is seen end on down the line. */
const UNREAD: readonly Quantity[] = [
  { at: 'shaftParallel', reading: 'bicepGap' },
  { at: 'shaftParallel', reading: 'bicepCrossing' },
];

/**
 * Says in words what keeps a rule from being tried, before anything runs. Throws `SetupError`: its field is the place in the rule,
 * "expect[1]" the second claim. What only swings can tell (a condition that none meets) is not among them.
 */
export function checkRule(rule: Rule, bands: Bands): void {
  checkBands(bands);
  checkWho(rule);
  checkChange(rule);
  if (rule.expect.length === 0) throw new SetupError('expect', 'Nothing is claimed. Say what comes of it.');
  rule.when.forEach((one, i) => checkCondition(one, `when[${i}]`));
  rule.expect.forEach((one, i) => checkClaim(rule, one, `expect[${i}]`));
  checkAgreement(rule.when, 'when', bands);
  checkAgreement(rule.expect, 'expect', bands);
  checkRanges(rule);
}

function checkWho({ who }: Rule): void {
  const { stature, clubs, lag, top } = who;
  const { min, max } = STATURE_LIMITS_M;
  if (stature) checkInside(stature, min, max, 'who.statureM', 'm');
  if (clubs?.length === 0) throw new SetupError('who.clubs', 'No club is left. Name one, or leave clubs out.');
  const { lagDeg } = CLUB_LIMITS;
  if (lag) checkInside(inDeg(lag), lagDeg.min, lagDeg.max, 'who.lagDeg', 'deg');
  for (const field of TOP_FIELDS) {
    const span = top?.[field];
    if (!span) continue;
    const isAngle = field === 'turn' || field === 'wristSet';
    const limit = isAngle ? toDeg(TOP_LIMITS[field]) : TOP_LIMITS[field] * 100;
    const typed = isAngle ? inDeg(span) : { low: span.low * 100, high: span.high * 100 };
    checkInside(typed, -limit, limit, `who.${field}${isAngle ? 'Deg' : 'Cm'}`, isAngle ? 'deg' : 'cm');
  }
}

const inDeg = ({ low, high }: Range): Range => ({ low: toDeg(low), high: toDeg(high) });
const rounded = (value: number): number => Math.round(value * 100) / 100;

const ROUNDING = 1e-9;

function checkInside({ low, high }: Range, min: number, max: number, field: string, unit: string): void {
  if (!(low <= high)) throw new SetupError(field, 'The first number is the larger one. Swap the two.');
  if (low >= min - ROUNDING && high <= max + ROUNDING) return;
  throw new SetupError(
    field,
    `${rounded(low)} to ${rounded(high)} ${unit} goes beyond what the model covers. Enter ${rounded(min)} to ${rounded(max)} ${unit}.`,
  );
}

function checkSpan({ low, high }: Span, field: string): void {
  if (low < high) return;
  throw new SetupError(field, 'No number lies between the two ends. Make the first the smaller one.');
}

function checkChange({ change }: Rule): void {
  change.forEach(({ id, by }, i) => {
    const { min, max, edgeUnit, field } = dialOf(id);
    const span = max - min;
    if (!Number.isFinite(by) || by === 0) {
      throw new SetupError(`do[${i}].by`, 'A change of nothing changes nothing. Enter how much.');
    }
    if (Math.abs(by) >= span + 1e-9) {
      const most = rounded(span / edgeUnit);
      throw new SetupError(`do[${i}].by`, `No slider goes so far: ${field} spans ${most}. Enter less.`);
    }
    if (change.findIndex((other) => other.id === id) < i) {
      throw new SetupError(`do[${i}].movement`, 'This movement is changed twice. Put both changes into one.');
    }
  });
}

function checkQuantity(of: Quantity, field: string): void {
  if (!UNREAD.some((other) => isSame(of, other))) return;
  throw new SetupError(
    field,
    'This is not read at shaft parallel, where the shaft is seen end on. Read it at lead arm parallel.',
  );
}

function checkCondition(one: Condition, field: string): void {
  if (one.kind === 'verdict') return;
  if (one.kind === 'reading') checkQuantity(one.of, field);
  checkSpan(one.between, field);
}

function checkClaim({ change }: Rule, one: Claim, field: string): void {
  if (one.kind === 'verdict') return;
  checkQuantity(one.of, field);
  if (one.kind === 'reading') return checkSpan(one.between, field);
  if (change.length === 0) {
    throw new SetupError(field, 'Nothing is changed, so nothing moves or stays. Say what to do, or claim a value.');
  }
  if (one.kind === 'moves' && !(Number.isFinite(one.by) && one.by !== 0)) {
    throw new SetupError(field, 'A move of nothing is no claim. Enter how much, with its sign.');
  }
  if (one.kind === 'stays' && !(Number.isFinite(one.within) && one.within > 0)) {
    throw new SetupError(field, 'Nothing stays to the last digit. Enter how much it may move.');
  }
}

/** No two parts of a list may exclude each other: on one number, values with nothing in common, or a move that is no staying. */
function checkAgreement(parts: readonly (Condition | Claim)[], name: string, bands: Bands): void {
  parts.forEach((one, i) => {
    const j = parts.findIndex((other, k) => k < i && excludes(one, other, bands));
    if (j < 0) return;
    throw new SetupError(
      `${name}[${i}]`,
      `This and ${name}[${j}] exclude each other: no swing meets both. Take one of them out.`,
    );
  });
}

function excludes(one: Condition | Claim, other: Condition | Claim, bands: Bands): boolean {
  const [a, b] = [valuesOf(one, bands), valuesOf(other, bands)];
  if (a && b) return a.of === b.of && !(Math.max(a.span.low, b.span.low) < Math.min(a.span.high, b.span.high));
  const [c, d] = [moveOf(one), moveOf(other)];
  return c !== undefined && d !== undefined && c.of === d.of && !(Math.max(c.low, d.low) <= Math.min(c.high, d.high));
}

const nameOf = ({ at, reading }: Quantity): string => `${at} ${reading}`;

/** The values that a part lets a number have. */
function valuesOf(one: Condition | Claim, bands: Bands): { readonly of: string; readonly span: Span } | undefined {
  if (one.kind === 'verdict') return { of: nameOf(judgedQuantity(one.at)), span: spanOfVerdict(one, bands) };
  if (one.kind === 'movement') return { of: one.id, span: one.between };
  return one.kind === 'reading' ? { of: nameOf(one.of), span: one.between } : undefined;
}

/** How far a claim lets a number move. */
function moveOf(one: Condition | Claim): (Span & { readonly of: string }) | undefined {
  if (one.kind === 'stays') return { of: nameOf(one.of), low: -one.within, high: one.within };
  if (one.kind !== 'moves') return undefined;
  return { of: nameOf(one.of), low: one.by > 0 ? one.by : -Infinity, high: one.by > 0 ? Infinity : one.by };
}

/** Every number that is drawn must have a value to draw. */
function checkRanges(rule: Rule): void {
  for (const dial of DIALS) {
    const { first, last } = dialRange(rule, dial);
    if (first <= last) continue;
    throw new SetupError(
      'when',
      `No swing meets this: with the change, ${dial.field} would leave its slider. Ask for less of either.`,
    );
  }
  for (const field of TOP_FIELDS) {
    const { first, last } = topRange(rule, field);
    if (first <= last) continue;
    throw new SetupError('who', `No whole step of ${field} lies in its range. Widen it.`);
  }
}
