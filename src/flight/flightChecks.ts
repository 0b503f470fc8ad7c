import type { Surroundings } from './airborne';
import { badInput, type Refused } from './answer';
import { AIR_FITS } from './coefficients';
import type { Launch } from './launch';

/** What is wrong with a launch, before it flies: the first part that is not finite, or is no unit vector. */
export function findBadLaunch({ velocity, spinAxis, spinRate }: Launch): Refused | undefined {
  if (!velocity.every(Number.isFinite)) return badInput('velocity', 'velocity: every part must be finite, m/s.');
  if (!velocity.some((part) => part !== 0))
    return badInput('velocity', 'velocity: the ball does not move. Enter a speed above 0.');
  if (!(Math.abs(Math.hypot(spinAxis[0], spinAxis[1], spinAxis[2]) - 1) < 1e-6))
    return badInput('spinAxis', 'spinAxis: must be a unit vector.');
  if (!(spinRate >= 0 && spinRate < Infinity)) {
    return badInput('spinRate', 'spinRate: must be 0 or more, rad/s. Topspin is a spin axis tilted beyond 90 deg.');
  }
  return undefined;
}

/** What is wrong with the air, the ball or the points asked for. */
export function findBadSettings({ drag, wind, air, ball, gravity }: Surroundings, points: number): Refused | undefined {
  if (typeof drag !== 'object' && drag !== 'none' && !Object.hasOwn(AIR_FITS, drag)) {
    return badInput('drag', 'drag: enter "smits-smith", "naruo-mizota", "joined", "none" or {"cd": 0.25, "cl": 0.15}.');
  }
  if (
    typeof drag === 'object' &&
    'cd' in drag &&
    !(drag.cd >= 0 && drag.cl >= 0 && Number.isFinite(drag.cd + drag.cl))
  ) {
    return badInput('drag', 'drag: cd and cl must be 0 or more.');
  }
  if (!wind.every(Number.isFinite)) return badInput('wind', 'wind: every part must be finite, m/s.');
  const bad =
    findNotAbove0('air', air.density) ??
    findNotAbove0('air', air.viscosity) ??
    findNotAbove0('ball', ball.mass) ??
    findNotAbove0('ball', ball.radius) ??
    findNotAbove0('gravity', gravity);
  if (bad) return bad;
  if (points === 0 || (Number.isInteger(points) && points >= 2)) return undefined;
  return badInput('points', 'points: must be 0, or a whole number from 2.');
}

const findNotAbove0 = (field: string, value: number): Refused | undefined =>
  value > 0 && value < Infinity ? undefined : badInput(field, `${field}: ${value} must be above 0.`);
