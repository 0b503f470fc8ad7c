/** What the air does to the ball: measured coefficients, none at all, or two fixed numbers. */
export type Drag = 'smits-smith' | 'none' | { readonly cd: number; readonly cl: number };

/** Where Smits and Smith measured. Outside, their formulas are carried on and the flight says "extrapolated". */
const MEASURED = { reynolds: { min: 7e4, max: 2.1e5 }, spinRatio: { min: 0.08, max: 0.2 } } as const;

/**
 * Drag coefficient of a spinning ball, without unit.
 * `spinRatio` is surface speed over air speed (omega r / v), `reynolds` is 2 r v / nu.
 * Source: Smits & Smith 1994, Science and Golf II 340, mark B.
 */
export const dragCoefficient = (spinRatio: number, reynolds: number): number =>
  0.24 + 0.18 * spinRatio + 0.06 * Math.sin((Math.PI * (reynolds - 9e4)) / 2e5);

/** Lift coefficient, without unit: 0 without spin. Same source. */
export const liftCoefficient = (spinRatio: number): number => 0.54 * spinRatio ** 0.4;

/** How fast the spin changes, rad/s^2, at `speed` through the air (m/s) on a ball of `radius` (m). Same source. */
export const spinDecay = (spinRate: number, speed: number, radius: number): number =>
  (-2e-5 * spinRate * speed) / radius;

/** Whether the coefficients at this spin ratio and Reynolds number are carried on past what was measured. */
export const isExtrapolated = (spinRatio: number, reynolds: number): boolean =>
  !(
    spinRatio > MEASURED.spinRatio.min &&
    spinRatio < MEASURED.spinRatio.max &&
    reynolds > MEASURED.reynolds.min &&
    reynolds < MEASURED.reynolds.max
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
