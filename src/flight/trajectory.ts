import { toDeg } from '../math/angle';
import { createOde } from '../math/ode';
import { solveBrent } from '../math/root';
import { SEA_LEVEL, type Air } from './air';
import { createAirborne, isBeyondMeasured, SPIN, STATE_SIZE, VX, VY, VZ, X, Y, Z, type Surroundings } from './airborne';
import { badInput, type Refused } from './answer';
import { FLIGHT_BALL, type Ball } from './ball';
import { findBadLaunch, findBadSettings } from './flightChecks';
import type { Drag } from './coefficients';
import type { Launch, Vec3 } from './launch';

/** Where and how the ball flies. Everything left out is a still day at sea level with the measured coefficients. */
export interface FlightSettings {
  readonly drag?: Drag;
  /** Velocity of the air, m/s, world frame: +X tail wind, +Z from left to right. Constant with height. */
  readonly wind?: Vec3;
  readonly air?: Air;
  readonly ball?: Ball;
  readonly gravity?: number;
  /** How many points of the track to return, evenly in time from launch to landing. 0 for none, else at least 2. */
  readonly points?: number;
  /** Error allowed in one step, relative to 1 + |value|. */
  readonly tolerance?: number;
}

/** One flight from the ground to the ground at the same height. Right means positive Z. */
export interface Flight {
  /** From launch to landing, straight along the ground. */
  readonly carryM: number;
  readonly timeS: number;
  readonly apexM: number;
  /** Steepness of the descent below the horizontal. */
  readonly landingDeg: number;
  /** Start line seen from above, positive right of the target. */
  readonly startDeg: number;
  /** Landing, from the target line. Positive right. */
  readonly offlineM: number;
  /** Landing, from the start line. Positive: the ball curved right. */
  readonly curveM: number;
  readonly landingSpeedMps: number;
  /** The coefficients were carried on past what was measured, somewhere on the way. */
  readonly extrapolated: boolean;
  /** Rows of t, x, y, z (s, m) from the ball's own place. Worked out when it is first asked for: few flights are drawn. */
  readonly track: Float64Array;
}

const LONGEST_FLIGHT = 30;
const LONGEST_STEP = 0.5;
const FIRST_STEP = 0.1;
const TOLERANCE = 1e-6;
/** An ordinary flight takes about twenty; absurd forces would take for ever. */
const MOST_STEPS = 10_000;
const STILL_AIR: Vec3 = [0, 0, 0];

/** One integrator for all flights: they never overlap. */
const air = createAirborne();
const ode = createOde(air.slope, STATE_SIZE, TOLERANCE, LONGEST_STEP);
const { y, at } = ode;
const begin = new Float64Array(STATE_SIZE);
const rate = new Float64Array(STATE_SIZE);
const height = (x: number): number => at(x, Y);
const climb = (x: number): number => at(x, VY);
// At launch the height is zero too; divided by the time since then, only the landing is left.
const steepness = (x: number): number => (x > 0 ? at(x, Y) / x : at(0, VY) * ode.h);

/** Puts the integrator at the launch. */
function takeOff({ velocity, spinRate }: Launch, around: Surroundings, tolerance: number): void {
  air.enter(around);
  begin.fill(0);
  begin.set(velocity, VX);
  begin[SPIN] = spinRate;
  ode.start(begin, FIRST_STEP, tolerance);
}

/** Scratch: how high the ball was and whether the coefficients held, from the launch to the landing. Filled by `followDown`. */
const seen = { apexM: 0, extrapolated: false };

/**
 * The flight of a ball launched from the origin, or why there is none: `never-rises` when it starts along or into the
 * ground, `never-lands` when it is still up after 30 s, `bad-input` when a number is not finite or makes no sense.
 */
export function findFlight(launch: Launch, settings: FlightSettings = {}): Flight | Refused {
  const { points = 0, tolerance = TOLERANCE } = settings;
  const { drag = 'smits-smith', wind = STILL_AIR, air: sky = SEA_LEVEL, ball = FLIGHT_BALL, gravity = 9.81 } = settings;
  const around: Surroundings = { drag, wind, air: sky, ball, gravity, spinAxis: launch.spinAxis };
  const bad = findBadLaunch(launch) ?? findBadSettings(around, points);
  if (bad) return bad;

  takeOff(launch, around, tolerance);
  const [vx, vy, vz] = launch.velocity;
  air.slope(begin, rate);
  if (vy < 0 || (vy === 0 && !(rate[VY] > 0))) {
    return { missing: 'never-rises', message: 'The ball starts along or into the ground. It does not fly.' };
  }
  const landing = followDown(around);
  if (typeof landing !== 'number') return landing;

  const timeS = ode.t - ode.h * (1 - landing);
  const x = at(landing, X);
  const z = at(landing, Z);
  const lx = at(landing, VX);
  const ly = at(landing, VY);
  const lz = at(landing, VZ);
  const level = Math.hypot(vx, vz);
  let track: Float64Array | undefined;
  return {
    carryM: Math.hypot(x, z),
    timeS,
    apexM: seen.apexM,
    landingDeg: toDeg(Math.atan2(-ly, Math.hypot(lx, lz))),
    startDeg: toDeg(Math.atan2(vz, vx)),
    offlineM: z,
    curveM: level > 0 ? (z * vx - x * vz) / level : z,
    landingSpeedMps: Math.hypot(lx, ly, lz),
    extrapolated: seen.extrapolated || isBeyondMeasured(around, lx, ly, lz, at(landing, SPIN)),
    get track() {
      return (track ??= trackOf(launch, around, tolerance, timeS, points));
    },
  };
}

/** Steps on until the ball is down: where in the last step, 0 to 1, or why it never is. */
function followDown(around: Surroundings): number | Refused {
  seen.apexM = 0;
  seen.extrapolated = isBeyondMeasured(around, y[VX], y[VY], y[VZ], y[SPIN]);
  let landing = -1;
  for (let steps = 0; landing < 0; steps++) {
    const climbBefore = y[VY];
    const heightBefore = y[Y];
    if (steps === MOST_STEPS || !ode.step()) {
      return badInput('launch', 'The forces are too large to follow. Enter a smaller speed, spin or coefficient.');
    }
    let low = 1;
    if (climbBefore > 0 !== y[VY] > 0) {
      const turn = solveBrent(climb, 0, 1, climbBefore, y[VY], 1e-12);
      seen.apexM = Math.max(seen.apexM, height(turn));
      if (climbBefore < 0) low = turn;
    }
    const lowest = height(low);
    if (lowest <= 0) {
      landing =
        steps === 0
          ? solveBrent(steepness, 0, low, steepness(0), lowest / low, 1e-14)
          : solveBrent(height, 0, low, heightBefore, lowest, 1e-14);
    } else {
      seen.extrapolated ||= isBeyondMeasured(around, y[VX], y[VY], y[VZ], y[SPIN]);
    }
    if (ode.t - ode.h * (1 - Math.max(0, landing)) > LONGEST_FLIGHT) {
      return { missing: 'never-lands', message: `The ball is still in the air after ${LONGEST_FLIGHT} s.` };
    }
  }
  return landing;
}

/** Flies once more, step for step the same, and reads the track off on the way. */
function trackOf(launch: Launch, around: Surroundings, tolerance: number, timeS: number, points: number): Float64Array {
  const track = new Float64Array(4 * points);
  if (points === 0) return track;
  takeOff(launch, around, tolerance);
  ode.step();
  for (let i = 0; i < points; i++) {
    const t = (timeS * i) / (points - 1);
    while (ode.t < t && ode.step());
    const x = 1 - (ode.t - t) / ode.h;
    track[4 * i] = t;
    track[4 * i + 1] = at(x, X);
    track[4 * i + 2] = at(x, Y);
    track[4 * i + 3] = at(x, Z);
  }
  return track;
}
