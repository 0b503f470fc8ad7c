/** What the air does to a spinning ball, measured: coefficients without unit, and where they were measured. */
export interface AirFit {
  /** Drag coefficient at spin ratio S (surface speed over air speed, omega r / v) and Reynolds number (2 r v / nu). */
  readonly dragAt: (spinRatio: number, reynolds: number) => number;
  /** Lift coefficient there. */
  readonly liftAt: (spinRatio: number, reynolds: number) => number;
  readonly measured: { readonly reynolds: Span; readonly spinRatio: Span };
}
interface Span {
  readonly min: number;
  readonly max: number;
}

/** The published fits that can be asked for by name. */
type AirFitId = 'joined' | 'naruo-mizota' | 'smits-smith';
/** What the air does to the ball: a published fit, none at all, or two fixed numbers. */
export type Drag = AirFitId | AirFit | 'none' | { readonly cd: number; readonly cl: number };

/**
 * Drag coefficient of a spinning ball, without unit.
 * `spinRatio` is surface speed over air speed (omega r / v), `reynolds` is 2 r v / nu.
 * Source: Smits & Smith 1994, Science and Golf II 340, mark B.
 */
export const dragCoefficient = (spinRatio: number, reynolds: number): number =>
  0.24 + 0.18 * spinRatio + 0.06 * Math.sin((Math.PI * (reynolds - 9e4)) / 2e5);

/** Lift coefficient, without unit: 0 without spin. Same source. */
export const liftCoefficient = (spinRatio: number): number => 0.54 * spinRatio ** 0.4;

/**
 * How fast the spin changes, rad/s^2, at `speed` through the air (m/s) on a ball of `radius` (m). Smits & Smith 1994; the
 * test range of the rules body uses the same law (US patent 6,186,002), mark B. So both fits share it.
 */
export const spinDecay = (spinRate: number, speed: number, radius: number): number =>
  (-2e-5 * spinRate * speed) / radius;

/** Spin ratios that Naruo et al. measured. Their polynomials are nowhere near the air outside them. */
const NARUO_SPIN: Span = { min: 0.03, max: 1.13 };
const naruoDrag = (s: number): number => 0.2049 + s * (0.2148 + s * (1.098 + s * (-1.76 + s * 0.751)));
const naruoLift = (s: number): number => 0.0616 + s * (1.25 + s * (-1.644 + s * (1.006 - s * 0.2158)));
const naruoLiftSlope = (s: number): number => 1.25 + s * (-3.288 + s * (3.018 - s * 0.8632));

// Outside, both go on without a corner, which the integrator would pay for with steps or with centimetres.

/** Lift below the measured spin ratios: none without spin, and at the edge value and slope of the polynomial. */
function fadingLift(spinRatio: number): number {
  const { min } = NARUO_SPIN;
  const share = spinRatio / min;
  const rise = naruoLiftSlope(min) * min;
  return share * (2 * naruoLift(min) - rise + share * (rise - naruoLift(min)));
}

/** A spin ratio as the polynomials take it: past the last measured it soon stops growing. */
const tamed = (spinRatio: number): number =>
  spinRatio <= NARUO_SPIN.max
    ? spinRatio
    : NARUO_SPIN.max + PAST_MEASURED * Math.tanh((spinRatio - NARUO_SPIN.max) / PAST_MEASURED);
const PAST_MEASURED = 0.1;

const naruoLiftAt = (spinRatio: number): number =>
  spinRatio < NARUO_SPIN.min ? fadingLift(spinRatio) : naruoLift(tamed(spinRatio));

/** Up to here spin adds to the drag as Naruo et al. found: the last spin ratio of the rules body's test range, which agrees. */
const RANGE_SPIN = 0.218;
/** Past it, drag a unit of spin ratio (Dewhurst, The Science of the Perfect Swing, quoted second-hand, mark B). */
const DEWHURST_SLOPE = 0.2087;
/** Over these further spin ratios one slope turns into the other: a corner would cost the integrator steps. Ours. */
const TURN_OF_SLOPE = 0.02;
const naruoDragSlope = (s: number): number => 0.2148 + s * (2.196 + s * (-5.28 + s * 3.004));

/** What spin makes of the drag, continued past the test range. */
function joinedDrag(spinRatio: number): number {
  const past = spinRatio - RANGE_SPIN;
  if (past <= 0) return naruoDrag(spinRatio);
  const steeper = naruoDragSlope(RANGE_SPIN) - DEWHURST_SLOPE;
  const turned = Math.min(past, TURN_OF_SLOPE);
  return naruoDrag(RANGE_SPIN) + DEWHURST_SLOPE * past + steeper * turned * (1 - turned / (2 * TURN_OF_SLOPE));
}

/**
 * Lyu et al. give a ball without spin a drag coefficient of 0.215 at a Reynolds number of 100,000, 0.302 at 75,000 and 0.477 at 50,000. On
 * straight lines between these, the slower two are 0.021 and 0.196 above the value at 81,000, where the test range ends.
 */
const RANGE_REYNOLDS = 8.1e4;
const SLOWEST_REYNOLDS = 5e4;
/** Slope of the line between the two slower ones, a unit of Reynolds number. */
const SLOW_SLOPE = 0.007 / 1000;
/** The rise sets in and levels off along a parabola over so many: a corner would cost the integrator steps. It meets 75,000. */
const SETTING_IN = 6000;

/** How much more a slow ball drags: through those three, and below the slowest soon no more (ours). */
function slowBallDrag(reynolds: number): number {
  const slower = RANGE_REYNOLDS - reynolds;
  if (slower <= 0) return 0;
  const all = RANGE_REYNOLDS - SLOWEST_REYNOLDS;
  const ending = Math.min(SETTING_IN, Math.max(0, slower - all));
  return SLOW_SLOPE * (easedIn(Math.min(slower, all)) + ending - (ending * ending) / (2 * SETTING_IN));
}
const easedIn = (by: number): number => (by < SETTING_IN ? (by * by) / (2 * SETTING_IN) : by - SETTING_IN / 2);

/**
 * Published fits made for golf balls.
 *
 * `smits-smith`: Smits & Smith 1994, Science and Golf II 340, mark B. Measured for drives; irons spin beyond it.
 *
 * `naruo-mizota`: Naruo, Mizota & Shimozono 2004 (Trans. JSME B 70:2371), mark B: a wind tunnel with a driven ball, up to
 * wedge spin. They fitted Reynolds numbers up to 125,000 and found the coefficients to depend on spin ratio alone. Up to
 * 200,000 a rules body's test range finds the same within 0.03 (a reference test says where), so that counts as measured.
 * Ours: below the measured spin ratios lift falls to none at no spin; above them both coefficients soon stop growing.
 *
 * `joined`: `naruo-mizota` where that test range measured, and published numbers by others where it did not. Slower balls drag more, as
 * balls shot through still air do (Lyu, Kensrud, Smith & Tosaya 2018, Proceedings 2:238, read off their figure by others, mark B); spin
 * past the range adds to the drag as Dewhurst has it. Lift is Naruo's. No number in it is set on a flight.
 */
export const AIR_FITS: Readonly<Record<AirFitId, AirFit>> = {
  'smits-smith': {
    dragAt: dragCoefficient,
    liftAt: liftCoefficient,
    measured: { reynolds: { min: 7e4, max: 2.1e5 }, spinRatio: { min: 0.08, max: 0.2 } },
  },
  'naruo-mizota': {
    dragAt: (spinRatio) => naruoDrag(tamed(spinRatio)),
    liftAt: naruoLiftAt,
    measured: { reynolds: { min: 7.09e4, max: 2e5 }, spinRatio: NARUO_SPIN },
  },
  joined: {
    dragAt: (spinRatio, reynolds) => joinedDrag(tamed(spinRatio)) + slowBallDrag(reynolds),
    liftAt: naruoLiftAt,
    measured: { reynolds: { min: SLOWEST_REYNOLDS, max: 2e5 }, spinRatio: NARUO_SPIN },
  },
};

/** The fit that shots on the desk fly with: the nearest to published flights of those compared (`npm run validate`). */
export const SHOT_DRAG: AirFitId = 'joined';

/** The fit behind a drag choice; `undefined` for none and for fixed coefficients. */
export function fitOf(drag: Drag): AirFit | undefined {
  if (typeof drag === 'string') return drag === 'none' ? undefined : AIR_FITS[drag];
  return 'dragAt' in drag ? drag : undefined;
}

/** Whether coefficients at this spin ratio and Reynolds number are carried on past what was measured. */
export const isExtrapolated = (
  spinRatio: number,
  reynolds: number,
  { measured }: AirFit = AIR_FITS['smits-smith'],
): boolean =>
  !(
    spinRatio > measured.spinRatio.min &&
    spinRatio < measured.spinRatio.max &&
    reynolds > measured.reynolds.min &&
    reynolds < measured.reynolds.max
  );

/** Carry of the driver on which published models were compared (74.65 m/s, 10.9 deg, 2700 rpm), m. */
const COMPARED_CARRY = 228;
/** By how much their carries differ there, m. */
const COMPARED_SPREAD = 20;

/**
 * Honest width of a carry figure, m, from the shortest to the longest that published models would give.
 * They differ by about 20 m on a driver; scaling that with carry is our assumption. 0 at no carry.
 */
export const carryWidth = (carryM: number): number => (Math.max(0, carryM) * COMPARED_SPREAD) / COMPARED_CARRY;
