/** A golf ball: kilograms, metres, and the moment of inertia about its centre in kg m^2. */
export interface Ball {
  readonly mass: number;
  readonly radius: number;
  readonly inertia: number;
}

/** What the equipment rules allow: mass at most, diameter at least. Source: R&A / USGA Equipment Rules, mark B. */
export const BALL_LIMITS = { massKg: { max: 0.04593 }, diameterM: { min: 0.04267 } } as const;

/** A ball of even density: I = 2/5 m r^2, as the impact formulas take it. Kilograms and metres. */
export const evenBall = (mass: number, radius: number): Ball => ({
  mass,
  radius,
  inertia: 0.4 * mass * radius * radius,
});

/** The ball of the impact formulas: m 45.9 g, r 21.35 mm. Source: Penner 2001 (Am J Phys 69:563), mark B. */
export const IMPACT_BALL = evenBall(0.0459, 0.02135);

/** The ball in the air: the heaviest and smallest that the equipment rules allow. */
export const FLIGHT_BALL = evenBall(BALL_LIMITS.massKg.max, BALL_LIMITS.diameterM.min / 2);

const RPM_PER_RAD_S = 30 / Math.PI;

/** Spin rate from rad/s to revolutions a minute. */
export const toRpm = (spinRate: number): number => spinRate * RPM_PER_RAD_S;

/** Spin rate from revolutions a minute to rad/s. */
export const fromRpm = (spinRpm: number): number => spinRpm / RPM_PER_RAD_S;
