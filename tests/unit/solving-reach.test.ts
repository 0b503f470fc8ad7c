import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { STILL } from '../../src/model/movements';
import { DIAL_INDEX, HALF_RANGE, toDials, type Judge } from '../../src/solving/diagnosis/judged';
import { reachPointAt, solveReach, startsFrom, type ReachProblem } from '../../src/solving/reference/reach';

const WRIST = DIAL_INDEX.leadWristFlexion;
const from = toDials(STILL);

/** A made-up player whose shaft reading depends on the wrist alone, `bend` half ranges from where it is. */
function problemOf(reading: (bend: number) => number): ReachProblem {
  const judge: Judge = {
    evaluations: 0,
    read(dials, out) {
      out[0] = reading((dials[WRIST] - from[WRIST]) / HALF_RANGE[WRIST]);
      out[1] = 0;
    },
  };
  const aim = { low: -1, high: 0.005, weight: 1e5 };
  return { judge, from, free: [WRIST], aims: [aim, { ...aim, weight: 0 }] };
}

describe('searching for the smallest change', () => {
  test('half of the usual range of each dial counts the same: 30 degrees, 0.2, 30 ms, 6 degrees, 6 cm', () => {
    const expected = [rad(30), 0.2, 0.03, rad(6), 0.06];
    HALF_RANGE.forEach((half, i) => expect(half).toBeCloseTo(expected[i], 12));
  });

  test('a reading that first gets worse on the way to the band is still brought there, thanks to more than one start', () => {
    // Downhill from where the wrist is leads into a dip that stays outside the band; the way in is over a rise.
    const problem = problemOf((bend) => 0.05 - 0.05 * bend + 0.03 * Math.sin(6 * bend));
    expect(solveReach(problem, [from])!.outside[0]).toBeGreaterThan(0.02);
    const point = solveReach(problem, startsFrom(from))!;
    expect(point.outside[0]).toBeLessThan(1e-6);
    expect(point.effort).toBeGreaterThan(0.5);
    expect(point.effort).toBeLessThan(0.75);
  });

  test('a swing that cannot be read where it is, is still planned for from where it can', () => {
    const problem = problemOf((bend) => (bend < 0.2 ? NaN : 0.05 - 0.1 * bend));
    expect(reachPointAt(problem, from)).toBeUndefined();
    expect(solveReach(problem, [from])).toBeUndefined();
    expect(solveReach(problem, startsFrom(from))!.effort).toBeCloseTo(0.45, 4);
  });

  test('a dial that stands outside its limits may come back or stay, not go further', () => {
    const out = from.slice();
    out[WRIST] = rad(55);
    const problem: ReachProblem = { ...problemOf((bend) => 0.05 + 0.1 * bend), from: out };
    expect(solveReach(problem, [out])!.dials[WRIST]).toBeLessThan(rad(55));
    const away: ReachProblem = { ...problemOf((bend) => 0.5 - 0.1 * bend), from: out };
    expect(solveReach(away, [out])!.dials[WRIST]).toBe(rad(55));
  });

  test('a band that the reading never enters is approached to the nearest point', () => {
    const point = solveReach(
      problemOf((bend) => 0.02 + (bend - 0.4) ** 2),
      startsFrom(from),
    )!;
    expect(point.effort).toBeCloseTo(0.4, 3);
    expect(point.outside[0]).toBeCloseTo(0.015, 6);
  });
});
