import { describe, expect, test } from 'vitest';
import { isRefused } from '../../src/flight/answer';
import { BALL_LIMITS, evenBall, FLIGHT_BALL, IMPACT_BALL } from '../../src/flight/ball';
import { HEADS } from '../../src/flight/heads';
import { impactOf, PENNER, restitutionAt, startShare, type StrikeNumbers } from '../../src/flight/impact';
import type { LaunchNumbers } from '../../src/flight/launch';

const square = { faceDeg: 0, pathDeg: 0, attackDeg: 0 };

function strike(numbers: StrikeNumbers, restitution = PENNER): LaunchNumbers {
  const launch = impactOf(numbers, restitution);
  if (isRefused(launch)) throw new Error(launch.message);
  return launch;
}

// Penner 2001 (Am J Phys 69:563), 2003 (Rep Prog Phys 66:131), formulas mark B; the values computed from them, mark C.
describe('a square strike with m 0.0459 kg and r 0.02135 m', () => {
  test.each([
    [45, 12, 0.2, 62.07, 9.684, 2805],
    [40.2, 26, 0.25, 53.794, 20.898, 5349],
    [36, 45, 0.29, 39.867, 34.948, 7781],
  ])(
    '%d m/s, loft %d deg, head %d kg gives %d m/s, %d deg, %d rpm',
    (headSpeedMps, dynamicLoftDeg, headMassKg, speed, launch, rpm) => {
      const ball = strike({ headSpeedMps, dynamicLoftDeg, headMassKg, ...square });
      expect(ball.ballSpeedMps.toFixed(3)).toBe(speed.toFixed(3));
      expect(ball.launchDeg.toFixed(3)).toBe(launch.toFixed(3));
      expect(ball.spinRpm.toFixed(0)).toBe(rpm.toFixed(0));
      expect(ball.startDeg).toBe(0);
      expect(ball.spinAxisDeg).toBeCloseTo(0, 12);
    },
  );

  test('restitution is 0.86 - 0.0029 V, and never below 0', () => {
    expect(restitutionAt(PENNER, 40)).toBeCloseTo(0.744, 12);
    expect(restitutionAt(PENNER, 400)).toBe(0);
  });
});

// Wood et al. 2018, Proceedings 2(6):249, mark A: 61 to 83 % of the way from path to face, driver near the top.
describe('the ball starts 61 to 83 % of the way from path to face', () => {
  // Head speed, dynamic loft and attack: plausible deliveries of our own.
  const deliveries = [
    ['driver', 45, 13, 1],
    ['5-iron', 38, 20, -3.5],
    ['7-iron', 37, 26, -4],
    ['9-iron', 34, 33, -4.5],
    ['pitching wedge', 32, 38, -5],
    ['sand wedge', 30, 48, -5],
  ] as const;
  const shareOf = (
    club: keyof typeof HEADS,
    speed: number,
    loft: number,
    attack: number,
    faceDeg: number,
    pathDeg: number,
  ) => {
    const { mass, restitution } = HEADS[club];
    const numbers = {
      headSpeedMps: speed,
      dynamicLoftDeg: loft,
      attackDeg: attack,
      faceDeg,
      pathDeg,
      headMassKg: mass,
    };
    return startShare(strike(numbers, restitution).startDeg, pathDeg, faceDeg)!;
  };

  test.each(deliveries)('%s', (club, speed, loft, attack) => {
    for (const [face, path] of [
      [2, 0],
      [-3, 0],
      [0, 5],
      [4, -4],
    ]) {
      const share = shareOf(club, speed, loft, attack, face, path);
      expect(share).toBeGreaterThan(0.61);
      expect(share).toBeLessThan(0.83);
    }
  });

  test('the more lofted the club, the lower the share', () => {
    const shares = deliveries.map(([club, speed, loft, attack]) => shareOf(club, speed, loft, attack, 2, 0));
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    expect(new Set(shares).size).toBe(shares.length);
  });

  test('a ball that rolls on the face leaves the band below where the face is laid back 55 deg or more (known limit)', () => {
    expect(shareOf('sand wedge', 30, 52, -5, 2, 0)).toBeGreaterThan(0.61);
    expect(shareOf('sand wedge', 30, 55, -5, 2, 0)).toBeLessThan(0.61);
  });
});

// R&A / USGA Equipment Rules, mark B: at most 45.93 g, at least 42.67 mm across.
test('the ball in the air is the heaviest and smallest that the rules allow', () => {
  expect(FLIGHT_BALL.mass).toBe(0.04593);
  expect(FLIGHT_BALL.radius).toBe(0.021335);
  expect(IMPACT_BALL.mass).toBeLessThanOrEqual(BALL_LIMITS.massKg.max);
  expect(2 * IMPACT_BALL.radius).toBeGreaterThanOrEqual(BALL_LIMITS.diameterM.min);
});

test('a solid even sphere has two fifths of m r squared', () => {
  expect(evenBall(2, 3).inertia).toBeCloseTo(7.2, 12);
});
