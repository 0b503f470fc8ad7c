import type { Slope } from '../math/ode';
import type { Air } from './air';
import type { Ball } from './ball';
import { dragCoefficient, isExtrapolated, liftCoefficient, spinDecay, type Drag } from './coefficients';
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
 */
export function airborneSlope({ ball, air, drag, wind, gravity, spinAxis: [ax, ay, az] }: Surroundings): Slope {
  const { radius } = ball;
  const perMass = (0.5 * air.density * Math.PI * radius * radius) / ball.mass;
  const [windX, windY, windZ] = wind;
  const measured = drag === 'smits-smith';
  const fixed = typeof drag === 'object' ? drag : { cd: 0, cl: 0 };
  return (y, out) => {
    const wx = y[VX] - windX;
    const wy = y[VY] - windY;
    const wz = y[VZ] - windZ;
    const speed = Math.sqrt(wx * wx + wy * wy + wz * wz);
    let { cd, cl } = fixed;
    if (measured && speed > 0) {
      const spinRatio = (y[SPIN] * radius) / speed;
      cd = dragCoefficient(spinRatio, (2 * radius * speed) / air.viscosity);
      cl = liftCoefficient(spinRatio);
    }
    const hold = -perMass * cd * speed;
    const lift = perMass * cl * speed;
    out[X] = y[VX];
    out[Y] = y[VY];
    out[Z] = y[VZ];
    out[VX] = hold * wx + lift * (ay * wz - az * wy);
    out[VY] = hold * wy + lift * (az * wx - ax * wz) - gravity;
    out[VZ] = hold * wz + lift * (ax * wy - ay * wx);
    out[SPIN] = measured ? spinDecay(y[SPIN], speed, radius) : 0;
  };
}

/** Whether the coefficients are used outside their measured range when a ball of this spin has this velocity. */
export function isBeyondMeasured(
  { ball: { radius }, air, drag, wind }: Surroundings,
  vx: number,
  vy: number,
  vz: number,
  spinRate: number,
): boolean {
  if (drag !== 'smits-smith') return false;
  const speed = Math.hypot(vx - wind[0], vy - wind[1], vz - wind[2]);
  return isExtrapolated((spinRate * radius) / speed, (2 * radius * speed) / air.viscosity);
}
