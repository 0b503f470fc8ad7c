import { isRefused } from '../../src/flight/answer';
import type { Head } from '../../src/flight/heads';
import { impactOf } from '../../src/flight/impact';

/** One published pair of launch and spin, with its flight where that is given. Speeds in m/s, distances in metres. */
export interface LaunchPair {
  readonly name: string;
  readonly kind: 'wood' | 'iron';
  readonly club: 'driver' | '5-iron' | '7-iron' | 'pitching wedge';
  readonly ballSpeedMps: number;
  readonly launchDeg: number;
  readonly spinRpm: number;
  /** Of the head, from memory throughout: no source gives it beside launch and spin. */
  readonly attackDeg: number;
  readonly carryM?: number;
  readonly apexM?: number;
  readonly landingDeg?: number;
  /** B: seen quoted by a second source. M: from memory, in whole or in part: printed, never a pass or a fail. */
  readonly mark: 'B' | 'M';
  /** Half of them set the tangential restitution and choose the air; the others are predicted. */
  readonly half: 'calibrated' | 'kept out';
  readonly source: string;
}

const MPH = 0.44704;
const TOUR = 'PGA Tour season means, quoted by Golf Digest, 7 March 2012';
const BODIES = 'USGA and R&A, Distance Report 2015, mean of professional drives, quoted second-hand';
const MEMORY = 'professional means, from memory';

const drive = (
  name: string,
  mph: number,
  launchDeg: number,
  spinRpm: number,
  half: LaunchPair['half'],
  source: string,
): LaunchPair => ({
  name,
  kind: 'wood',
  club: 'driver',
  ballSpeedMps: mph * MPH,
  launchDeg,
  spinRpm,
  attackDeg: -1.3,
  mark: 'B',
  half,
  source,
});

/** Every second season of drives, and of the irons the one whose ball speed and spin are published, set our numbers. */
export const LAUNCH_PAIRS: readonly LaunchPair[] = [
  drive('drives of 2007', 165.1, 10.9, 2842, 'calibrated', TOUR),
  drive('drives of 2009', 165, 11.3, 2679, 'calibrated', TOUR),
  drive('drives of 2011', 166.4, 10.8, 2687, 'calibrated', TOUR),
  drive('drives of 2008', 165, 11.2, 2685, 'kept out', TOUR),
  drive('drives of 2010', 165.9, 10.7, 2725, 'kept out', TOUR),
  drive('drives of 2015', 167.7, 10.8, 2599, 'kept out', BODIES),
  {
    name: '7-iron',
    kind: 'iron',
    club: '7-iron',
    ballSpeedMps: 53.6,
    launchDeg: 16.3,
    spinRpm: 7097,
    attackDeg: -4.3,
    carryM: 157,
    apexM: 29,
    landingDeg: 50,
    mark: 'M',
    half: 'calibrated',
    source: `${MEMORY}; ball speed and spin second-hand`,
  },
  {
    name: '5-iron',
    kind: 'iron',
    club: '5-iron',
    ballSpeedMps: 59,
    launchDeg: 12.1,
    spinRpm: 5361,
    attackDeg: -3.7,
    carryM: 177,
    apexM: 28,
    landingDeg: 49,
    mark: 'M',
    half: 'kept out',
    source: MEMORY,
  },
  {
    name: 'pitching wedge',
    kind: 'iron',
    club: 'pitching wedge',
    ballSpeedMps: 45.6,
    launchDeg: 24.2,
    spinRpm: 9304,
    attackDeg: -5,
    carryM: 124,
    apexM: 26,
    landingDeg: 52,
    mark: 'M',
    half: 'kept out',
    source: MEMORY,
  },
  {
    name: 'driver',
    kind: 'wood',
    club: 'driver',
    ballSpeedMps: 74.7,
    launchDeg: 10.9,
    spinRpm: 2686,
    attackDeg: -1.3,
    carryM: 251,
    apexM: 29,
    landingDeg: 38,
    mark: 'M',
    half: 'calibrated',
    source: MEMORY,
  },
];

/**
 * The strike with a head that gives the ball the published speed and launch: head speed (m/s), dynamic loft (deg) and the spin
 * (rpm) that comes with them. `tangential` is tried in place of the head's own.
 */
export function strikeBehind(
  { ballSpeedMps, launchDeg, attackDeg }: LaunchPair,
  { mass, restitution }: Head,
  tangential: number,
): { readonly headSpeedMps: number; readonly loftDeg: number; readonly spinRpm: number } {
  let headSpeedMps = ballSpeedMps / 1.4;
  const hit = (dynamicLoftDeg: number) => {
    const numbers = { headSpeedMps, dynamicLoftDeg, faceDeg: 0, pathDeg: 0, attackDeg, headMassKg: mass };
    const launch = impactOf(numbers, restitution, tangential);
    if (isRefused(launch)) throw new Error(launch.message);
    return launch;
  };
  for (let round = 0; ; round++) {
    let [low, high] = [attackDeg, 80];
    while (high - low > 1e-9) {
      const middle = (low + high) / 2;
      if (hit(middle).launchDeg < launchDeg) low = middle;
      else high = middle;
    }
    const launch = hit(low);
    if (round === 20) return { headSpeedMps, loftDeg: low, spinRpm: launch.spinRpm };
    headSpeedMps *= ballSpeedMps / launch.ballSpeedMps;
  }
}

/** The tangential restitution with which the spins of these pairs are met on average (mean of the logarithms). */
export function calibrateTangential(pairs: readonly LaunchPair[], headOf: (club: LaunchPair['club']) => Head): number {
  let [low, high] = [-0.9, 0.9];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    const over = pairs.reduce((sum, pair) => {
      return sum + Math.log(strikeBehind(pair, headOf(pair.club), middle).spinRpm / pair.spinRpm);
    }, 0);
    if (over < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
