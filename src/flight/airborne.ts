import type { Slope } from '../math/ode';
import type { Air } from './air';
import type { Ball } from './ball';
import { fitOf, isExtrapolated, spinDecay, type AirFit, type Drag } from './coefficients';
import type { Vec3 } from './launch';

/** Components of a ball in the air: place (m), velocity (m/s) in the world frame, spin rate (rad/s). */
export const [X, Y, Z, VX, VY, VZ, SPIN] = [0, 1, 2, 3, 4, 5, 6];
export const STATE_SIZE = 7;

/** Everything that stays the same while the ball flies. SI; `wind` is the velocity of the air, so +X is a tail wind. */
export interface Surroundings {
  readonly ball: Ball;
  readonly air: Air;
  readonly drag: Drag;
  readonly wind: Vec3;
  readonly gravity: number;
  /** Unit vector. Constant: a spinning ball keeps its axis. */
  readonly spinAxis: Vec3;
}

/**
 * Slope of a ball's state: gravity, drag against the air stream, lift along spin axis x air stream, spin decay.
 * Lift is (1/2) rho A C_L v^2 (axis x stream direction): what counts is the part of the axis square to the stream, and
 * none is left when the axis lies along it. Two fixed coefficients ask for the axis only, not how fast the ball spins.
 * @internal Tests compare this slope with published forces.
 */
export function airborneSlope(around: Surroundings): Slope {
  const { enter, slope } = createAirborne();
  enter(around);
  return slope;
}

/** One slope for ball after ball: `enter` says what surrounds the next. Allocates only when made. */
export function createAirborne(): { readonly enter: (around: Surroundings) => void; readonly slope: Slope } {
  let fit: AirFit | undefined;
  // Kept as plain numbers in one array: a slope is asked for a hundred times in a flight.
  const c = new Float64Array(AIR_SIZE);

  function enter({ ball, air, drag, wind, gravity, spinAxis }: Surroundings): void {
    fit = fitOf(drag);
    const fixed = typeof drag === 'object' && 'cd' in drag ? drag : undefined;
    c[RADIUS] = ball.radius;
    c[PER_MASS] = (0.5 * air.density * Math.PI * ball.radius * ball.radius) / ball.mass;
    c[VISCOSITY] = air.viscosity;
    c[GRAVITY] = gravity;
    c[CD] = fixed?.cd ?? 0;
    c[CL] = fixed?.cl ?? 0;
    for (let i = 0; i < 3; i++) {
      c[WIND + i] = wind[i];
      c[AXIS + i] = spinAxis[i];
    }
  }

  function slope(y: Float64Array, out: Float64Array): void {
    const wx = y[VX] - c[WIND];
    const wy = y[VY] - c[WIND + 1];
    const wz = y[VZ] - c[WIND + 2];
    const speed = Math.sqrt(wx * wx + wy * wy + wz * wz);
    let cd = c[CD];
    let cl = c[CL];
    if (fit && speed > 0) {
      const spinRatio = (y[SPIN] * c[RADIUS]) / speed;
      const reynolds = (2 * c[RADIUS] * speed) / c[VISCOSITY];
      cd = fit.dragAt(spinRatio, reynolds);
      cl = fit.liftAt(spinRatio, reynolds);
    }
    const hold = -c[PER_MASS] * cd * speed;
    const lift = c[PER_MASS] * cl * speed;
    out[X] = y[VX];
    out[Y] = y[VY];
    out[Z] = y[VZ];
    out[VX] = hold * wx + lift * (c[AXIS + 1] * wz - c[AXIS + 2] * wy);
    out[VY] = hold * wy + lift * (c[AXIS + 2] * wx - c[AXIS] * wz) - c[GRAVITY];
    out[VZ] = hold * wz + lift * (c[AXIS] * wy - c[AXIS + 1] * wx);
    out[SPIN] = fit ? spinDecay(y[SPIN], speed, c[RADIUS]) : 0;
  }
  return { enter, slope };
}

/** Where the surroundings stand in the slope's own array. */
const [RADIUS, PER_MASS, VISCOSITY, GRAVITY, CD, CL, WIND, AXIS] = [0, 1, 2, 3, 4, 5, 6, 9];
const AIR_SIZE = 12;

/** Whether the coefficients are used outside their measured range when a ball of this spin has this velocity. */
export function isBeyondMeasured(
  { ball, air, drag, wind }: Surroundings,
  vx: number,
  vy: number,
  vz: number,
  spinRate: number,
): boolean {
  const fit = fitOf(drag);
  if (!fit) return false;
  const wx = vx - wind[0];
  const wy = vy - wind[1];
  const wz = vz - wind[2];
  const speed = Math.sqrt(wx * wx + wy * wy + wz * wz);
  return isExtrapolated((spinRate * ball.radius) / speed, (2 * ball.radius * speed) / air.viscosity, fit);
}
