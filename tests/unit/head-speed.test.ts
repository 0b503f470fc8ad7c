import { expect, test } from 'vitest';
import { CLUB_IDS, CLUBS } from '../../src/model/club';
import { headSpeedGoal } from '../../src/solving/reference/headSpeed';

const goal = (length: number): number => headSpeedGoal({ length }).headSpeed;

// Bourgain et al. 2022, mark B: skilled men 45.4 +- 3.6 m/s with a driver, 33.8 to 37.7 with irons.
test('the driver is swung at the published mean, irons inside the published range to a tenth', () => {
  expect(goal(CLUBS.driver.lengthM)).toBe(45.4);
  for (const id of ['5-iron', '7-iron', '9-iron'] as const) {
    expect(goal(CLUBS[id].lengthM)).toBeGreaterThan(33.7);
    expect(goal(CLUBS[id].lengthM)).toBeLessThan(37.8);
  }
});

test('a shorter club is slower, for every pair of clubs and evenly between them', () => {
  const speeds = CLUB_IDS.map((id) => goal(CLUBS[id].lengthM));
  expect(speeds).toEqual(speeds.toSorted((a, b) => b - a));
  expect(new Set(speeds).size).toBe(speeds.length);
  for (let length = 0.8; length < 1.22; length += 0.001) expect(goal(length + 0.001)).toBeGreaterThan(goal(length));
});

test('the bounds lie round the goal and keep its share', () => {
  const { headSpeed, headSpeedBounds } = headSpeedGoal({ length: CLUBS['7-iron'].lengthM });
  expect(headSpeedBounds[0]).toBeLessThan(headSpeed);
  expect(headSpeedBounds[1]).toBeGreaterThan(headSpeed);
  expect(headSpeedBounds[1] / headSpeed).toBeCloseTo(51 / 45.4, 12);
});
