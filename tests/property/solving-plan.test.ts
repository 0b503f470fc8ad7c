import { describe, expect, test } from 'vitest';
import { DIALS, MOVEMENT_GROUPS, type MovementGroup } from '../../src/model/movements';
import { withMovements } from '../../src/reading/swing';
import { DEFAULT_BANDS, judge } from '../../src/reading/verdicts';
import { HALF_RANGE } from '../../src/solving/diagnosis/judged';
import { solvePlans } from '../../src/solving/diagnosis/plan';
import { fullReadings, playersOffPlane } from '../reference/solvingPlayers';

const ALLOWED: readonly (readonly MovementGroup[])[] = [
  MOVEMENT_GROUPS,
  ['leadWrist'],
  ['rotation', 'sideTilt'],
  ['leadWrist', 'sideTilt'],
  ['leadWrist', 'rotation'],
];
const players = playersOffPlane(60, 21);
const answers = players.map((swing, i) => ({
  swing,
  allow: ALLOWED[i % ALLOWED.length],
  ...solvePlans({ swing, allow: ALLOWED[i % ALLOWED.length] }),
}));
const plans = answers.flatMap(({ swing, plans: own }) => own.map((plan) => ({ swing, ...plan })));

describe('every plan of sixty players, half of them steep and half over-shallow', () => {
  test('a movement that is locked never moves, not by the last bit', () => {
    for (const { swing, uses, movements, change } of plans) {
      for (const { id, group } of DIALS) {
        if (uses.includes(group)) continue;
        expect(movements[id]).toBe(swing.movements[id]);
        expect(change[id]).toBe(0);
      }
    }
  });

  test('the planned swing, read in full, gives exactly the readings the plan prints', () => {
    for (const { swing, movements, readings } of plans) {
      expect(fullReadings(withMovements(swing, movements))).toEqual([readings.leadArmParallel, readings.shaftParallel]);
    }
  });

  test('"reached" means both readings are in their bands, "closest" that one is short by what it says', () => {
    let closest = 0;
    for (const { status, readings, short } of plans) {
      const isIn = (id: 'leadArmParallel' | 'shaftParallel'): boolean =>
        judge(readings[id], DEFAULT_BANDS[id]) === 'onPlane';
      expect(status === 'reached').toBe(isIn('leadArmParallel') && isIn('shaftParallel'));
      expect(status === 'reached').toBe(short.leadArmParallel === 0 && short.shaftParallel === 0);
      if (status === 'closest') closest++;
    }
    expect(closest).toBeGreaterThan(5);
    expect(closest).toBeLessThan(plans.length / 2);
  });

  test('no plan leaves the range of motion', () => {
    for (const { movements } of plans) {
      for (const { id, min, max } of DIALS) {
        expect(movements[id]).toBeGreaterThanOrEqual(min);
        expect(movements[id]).toBeLessThanOrEqual(max);
      }
    }
  });

  test('the effort is the root of the sum of squares of the changes over half of the usual range', () => {
    for (const { change, effort } of plans) {
      expect(effort).toBeCloseTo(Math.hypot(...DIALS.map(({ id }, i) => change[id] / HALF_RANGE[i])), 9);
    }
  });

  test('all together never takes more than the best movement alone', () => {
    for (const { plans: own, allow } of answers) {
      if (allow.length < 2) continue;
      const blend = own.find(({ uses }) => uses.length === allow.length)!;
      for (const { status, effort } of own) {
        if (status === 'reached') expect(blend).toMatchObject({ status: 'reached' });
        if (status === 'reached') expect(blend.effort).toBeLessThan(effort + 1e-4);
      }
    }
  });

  test('the same question gives the same answer', () => {
    const { swing, allow, plans: own } = answers[0];
    expect(solvePlans({ swing, allow }).plans).toEqual(own);
  });
});
