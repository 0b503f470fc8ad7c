import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { withMovements } from '../../src/reading/swing';
import type { Sightings } from '../../src/solving/diagnosis/verdictShare';
import { score, solveMatch } from '../../src/solving/diagnosis/match';
import { dialled, fullReadings, playerWith, referenceSwing } from '../reference/solvingPlayers';

const swing = referenceSwing();
const inCm = (gap: number | undefined, depth: number | undefined, plusMinusCm = 2): Sightings => ({
  ...(gap !== undefined && { leadArmParallel: { value: gap / 100, plusMinus: plusMinusCm / 100 } }),
  ...(depth !== undefined && { shaftParallel: { value: depth / 100, plusMinus: plusMinusCm / 100 } }),
});

describe('what a coach saw', () => {
  test('a shaft high on the arm and a head in front are explained by every movement on its own, and by the smallest blend', () => {
    const { explanations } = solveMatch({ swing, seen: inCm(1.6, 10.8) });
    expect(explanations.map(({ dials }) => dials.join('+')).toSorted()).toEqual([
      'leadWristFlexion',
      'leadWristFlexion+rotationRate+rotationDelay+trailSideBend',
      'rotationDelay',
      'rotationRate',
      'rotationRate+rotationDelay',
      'trailSideBend',
    ]);
    const single = explanations.find(({ dials }) => dials[0] === 'leadWristFlexion')!;
    const blend = explanations.find(({ uses }) => uses.length === 3)!;
    expect(single.movements.leadWristFlexion).toBeLessThan(rad(-10));
    expect(blend.misfit).toBeLessThan(1e-5);
    for (const { misfit, effort } of explanations) if (misfit < 1e-5) expect(blend.effort).toBeLessThan(effort + 1e-4);
  });

  test('each explanation, made the swing now, gives the readings it prints', () => {
    for (const { movements, readings } of solveMatch({ swing, seen: inCm(-3, -14) }).explanations) {
      expect(fullReadings(withMovements(swing, movements))).toEqual([readings.leadArmParallel, readings.shaftParallel]);
    }
  });

  test('the most likely comes first: less misfit, fewer dials, and among equals the smaller effort', () => {
    for (const seen of [inCm(1.6, 10.8), inCm(-3, -14), inCm(4, undefined), inCm(undefined, 7)]) {
      const { explanations } = solveMatch({ swing, seen });
      const scores = explanations.map(score);
      for (let i = 1; i < scores.length; i++) {
        expect(scores[i]).toBeGreaterThan(scores[i - 1] - 2e-6);
        if (Math.abs(scores[i] - scores[i - 1]) < 1e-9) {
          expect(explanations[i].effort).toBeGreaterThanOrEqual(explanations[i - 1].effort);
        }
      }
    }
  });

  test('with one plate marked, several bodies look exactly alike', () => {
    const { explanations } = solveMatch({ swing, seen: inCm(undefined, 9) });
    const alike = explanations.filter(({ misfit }) => misfit < 1e-5);
    expect(alike.length).toBeGreaterThanOrEqual(4);
    for (const { readings } of alike) expect(readings.shaftParallel).toBeCloseTo(0.09, 6);
  });

  test('sightings that contradict each other come with how far the closest body stays away', () => {
    const { explanations } = solveMatch({ swing, seen: inCm(8, -25, 1) });
    for (const { status, misfit } of explanations) {
      expect(status).toBe('closest');
      expect(misfit).toBeGreaterThan(1);
    }
  });

  test('"fits" means each reading lies within the give or take of the coach', () => {
    const seen = inCm(1.6, 10.8, 3);
    for (const { status, readings } of solveMatch({ swing, seen }).explanations) {
      const isWithin =
        Math.abs(readings.leadArmParallel - 0.016) <= 0.03 && Math.abs(readings.shaftParallel - 0.108) <= 0.03;
      expect(status).toBe(isWithin ? 'fits' : 'closest');
    }
  });

  test('movements that the coach rules out stay out of every explanation', () => {
    const { explanations } = solveMatch({ swing, seen: inCm(1.6, 10.8), allow: ['rotation'] });
    expect(explanations.length).toBe(3);
    for (const { movements } of explanations) {
      expect([movements.leadWristFlexion, movements.trailSideBend, movements.pelvisShift]).toEqual([0, 0, 0]);
    }
  });

  test('it can start from the swing on screen instead of the reference', () => {
    const from = dialled({ wristDeg: -10 });
    const [gap, depth] = fullReadings(playerWith(dialled({ wristDeg: -10, rate: 1.1 })));
    const seen = inCm(gap * 100, depth * 100);
    const [first] = solveMatch({ swing, seen, from }).explanations;
    expect(first.dials).toEqual(['rotationRate']);
    expect(first.movements.rotationRate).toBeCloseTo(1.1, 4);
    expect(first.movements.leadWristFlexion).toBe(from.leadWristFlexion);
  });

  test('the movements of the swing on screen do not matter', () => {
    const seen = inCm(1.6, 10.8);
    const other = solveMatch({ swing: playerWith(dialled({ wristDeg: 20, rate: 0.8 })), seen });
    expect(other.explanations).toEqual(solveMatch({ swing, seen }).explanations);
  });

  test('a mark with almost no give or take is met to a hundredth of it', () => {
    const seen = inCm(1.6, undefined, 0.01);
    const [first] = solveMatch({ swing, seen }).explanations;
    expect(Math.abs(first.readings.leadArmParallel - 0.016)).toBeLessThan(1e-6);
  });

  test('bad input is refused in clear words', () => {
    expect(() => solveMatch({ swing, seen: {} })).toThrow('Nothing was marked.');
    expect(() => solveMatch({ swing, seen: inCm(NaN, 3) })).toThrow('What was seen is no number.');
    expect(() => solveMatch({ swing, seen: inCm(2, 3, 0) })).toThrow('The give or take must be above zero.');
    expect(() => solveMatch({ swing, seen: inCm(2, 3), allow: [] })).toThrow('Every movement is locked.');
  });
});
