import type { Club } from '../../model/club';

/** Driver head speed of skilled men, m/s, and what fitted players of other statures stay within. Source: Bourgain et al. 2022, mark B. */
const DRIVER = { speed: 45.4, least: 35, most: 51 } as const;

/**
 * Head speed by club length (m) as a share of the same player's driver: professional means of 50.5, 42.0, 40.2 and 37.1 m/s with driver,
 * 5-iron, 7-iron and pitching wedge of usual length. From memory, mark M. What speaks for them: with the driver above, 5-iron to wedge
 * come out at 37.8 to 33.4, where the review has 37.7 to 33.8 for irons (mark B).
 */
const SHARES: readonly (readonly [length: number, share: number])[] = [
  [0.9017, 37.1 / 50.5],
  [0.9398, 40.2 / 50.5],
  [0.9652, 42 / 50.5],
  [1.143, 1],
];

/** The share at a length: straight between the published clubs, carried on past the first and the last. */
function shareAt(length: number): number {
  const above = SHARES.findIndex(([long]) => length < long);
  const i = above < 0 ? SHARES.length - 1 : Math.max(1, above);
  const [[from, low], [to, high]] = [SHARES[i - 1], SHARES[i]];
  return low + ((high - low) * (length - from)) / (to - from);
}

/** The head speed asked of a reference swing: m/s at a stature of 1.78 m, and the bounds of the goal for other statures. */
export function headSpeedGoal({ length }: Pick<Club, 'length'>): {
  readonly headSpeed: number;
  readonly headSpeedBounds: readonly [least: number, most: number];
} {
  const share = shareAt(length);
  return { headSpeed: share * DRIVER.speed, headSpeedBounds: [share * DRIVER.least, share * DRIVER.most] };
}
