import { airAt, ALTITUDE_LIMITS } from './air';
import { findBadField, type Bounds, type Refused } from './answer';
import type { Drag } from './coefficients';
import { launchOf, type LaunchNumbers } from './launch';
import { findFlight, type Flight } from './trajectory';

/** The day, in the words of an edge. Left out: still air at sea level and the measured coefficients. */
export interface Day {
  readonly drag?: Drag;
  /** Wind toward the target. Negative blows against the ball. */
  readonly tailWindMps?: number;
  /** Wind from left to right of the target line. */
  readonly crossWindMps?: number;
  /** Above sea level; `ALTITUDE_LIMITS`. */
  readonly altitudeM?: number;
  /** Points of the track to return; see `FlightSettings`. */
  readonly points?: number;
}

const LAUNCH_BOUNDS: Record<keyof LaunchNumbers, Bounds> = {
  ballSpeedMps: { above: 0, max: 150 },
  launchDeg: { min: -90, max: 90 },
  startDeg: { min: -180, max: 180 },
  spinRpm: { min: 0, max: 20000 },
  spinAxisDeg: { min: -180, max: 180 },
};

const DAY_BOUNDS = { tailWindMps: { min: -40, max: 40 }, crossWindMps: { min: -40, max: 40 }, ...ALTITUDE_LIMITS };

/** The flight of a ball with these launch numbers on this day, or why there is none. */
export function flightOf(numbers: LaunchNumbers, day: Day = {}): Flight | Refused {
  const { drag = 'smits-smith', tailWindMps = 0, crossWindMps = 0, altitudeM = 0, points = 0 } = day;
  const bad =
    findBadField(numbers, LAUNCH_BOUNDS) ?? findBadField({ tailWindMps, crossWindMps, altitudeM }, DAY_BOUNDS);
  if (bad) return bad;
  return findFlight(launchOf(numbers), { drag, wind: [tailWindMps, 0, crossWindMps], air: airAt(altitudeM), points });
}
