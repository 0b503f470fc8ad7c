import { rad, toDeg } from '../math/angle';
import { fromRpm, toRpm } from './ball';

/** A vector in the world frame: X toward the target, Y up, Z to the right of a golfer's target line. */
export type Vec3 = readonly [x: number, y: number, z: number];

/**
 * The ball as it leaves the face. `velocity` in m/s; `spinAxis` is the unit vector about which it turns by the right
 * hand, `spinRate` how fast, rad/s, never negative. Pure backspin on a ball toward the target has the axis +Z: the top
 * of the ball moves back, and the lift, along axis x velocity, points up.
 */
export interface Launch {
  readonly velocity: Vec3;
  readonly spinAxis: Vec3;
  readonly spinRate: number;
}

/** A launch in the words of an edge. */
export interface LaunchNumbers {
  readonly ballSpeedMps: number;
  /** Above the horizontal. */
  readonly launchDeg: number;
  /** Start line seen from above. 0 at the target, positive right of it. */
  readonly startDeg: number;
  readonly spinRpm: number;
  /**
   * Tilt of the spin axis, seen along the ball's start. 0 pure backspin, positive tilts the right end down: the ball
   * curves right. 90 is pure sidespin, beyond that the ball has topspin.
   */
  readonly spinAxisDeg: number;
}

/** The launch with these numbers. The spin axis lies square to the ball's velocity. */
export function launchOf(numbers: LaunchNumbers): Launch {
  const up = rad(numbers.launchDeg);
  const right = rad(numbers.startDeg);
  const tilt = rad(numbers.spinAxisDeg);
  const [cu, su, cr, sr, ct, st] = [
    Math.cos(up),
    Math.sin(up),
    Math.cos(right),
    Math.sin(right),
    Math.cos(tilt),
    Math.sin(tilt),
  ];
  const v = numbers.ballSpeedMps;
  return {
    velocity: [v * cu * cr, v * su, v * cu * sr],
    spinAxis: [-ct * sr + st * su * cr, -st * cu, ct * cr + st * su * sr],
    spinRate: fromRpm(numbers.spinRpm),
  };
}

/** The numbers of a launch. A ball straight up counts as starting at the target. */
export function numbersOf({ velocity: [vx, vy, vz], spinAxis: [ax, ay, az], spinRate }: Launch): LaunchNumbers {
  const level = Math.hypot(vx, vz);
  const speed = Math.hypot(level, vy);
  const [cr, sr] = level > 0 ? [vx / level, vz / level] : [1, 0];
  const [cu, su] = speed > 0 ? [level / speed, vy / speed] : [1, 0];
  const acrossRight = az * cr - ax * sr;
  const acrossDown = su * (ax * cr + az * sr) - cu * ay;
  return {
    ballSpeedMps: speed,
    launchDeg: toDeg(Math.atan2(vy, level)),
    startDeg: toDeg(Math.atan2(sr, cr)),
    spinRpm: toRpm(spinRate),
    spinAxisDeg: toDeg(Math.atan2(acrossDown, acrossRight)),
  };
}
