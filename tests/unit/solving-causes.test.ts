import { describe, expect, test } from 'vitest';
import { toDeg } from '../../src/math/angle';
import { DIALS } from '../../src/model/movements';
import { DEFAULT_ARM_ANGLE, isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { withMovements } from '../../src/reading/swing';
import { rankCauses, type Cause } from '../../src/solving/diagnosis/causes';
import { HALF_RANGE } from '../../src/solving/diagnosis/judged';
import { matchOnSteps } from '../../src/solving/diagnosis/matchOnSteps';
import { sayWhatTells } from '../../src/words/why/family';
import { sayFit, sayMatch } from '../../src/words/why/sightings';
import { createRandom } from '../reference/random';
import { dialled, playerWith, referenceSwing } from '../reference/solvingPlayers';

const swing = referenceSwing();
const causesOf = (p5Cm: number, p6Cm: number, plusMinusCm: number): readonly Cause[] => {
  const seen = {
    leadArmParallel: { value: p5Cm / 100, plusMinus: plusMinusCm / 100 },
    shaftParallel: { value: p6Cm / 100, plusMinus: plusMinusCm / 100 },
  };
  return rankCauses(matchOnSteps({ swing, seen }).explanations, swing, DEFAULT_ARM_ANGLE);
};
const random = createRandom(7);
const many = Array.from({ length: 25 }, () => causesOf(-4 + 14 * random(), -14 + 36 * random(), 1 + 4 * random()));

describe('the causes of what was seen', () => {
  test('stand with what fits above what does not, and among either with the usual ranges first', () => {
    const group = ({ status, isUsual }: Cause): number => (status === 'fits' ? 0 : 2) + (isUsual ? 0 : 1);
    for (const causes of many) {
      const groups = causes.map(group);
      expect(groups).toEqual(groups.toSorted((a, b) => a - b));
      for (const { isUsual, movements } of causes) {
        const inside = DIALS.every(
          ({ id, usualMin, usualMax, step }) =>
            movements[id] > usualMin - step / 2 && movements[id] < usualMax + step / 2,
        );
        expect(isUsual).toBe(inside);
      }
    }
    expect(many.flat().some(({ isUsual }) => !isUsual)).toBe(true);
  });

  test('are each another swing: no two are within 4 degrees of wrist or 3 % of turn of each other', () => {
    for (const causes of many) {
      causes.forEach((one, at) => {
        for (const other of causes.slice(at + 1)) {
          const efforts = DIALS.map(({ id }, i) => (one.movements[id] - other.movements[id]) / HALF_RANGE[i]);
          expect(Math.hypot(...efforts)).toBeGreaterThanOrEqual(0.13);
        }
      });
    }
  });

  test('are counted as they are listed', () => {
    for (const causes of many) {
      const fits = causes.filter(({ status }) => status === 'fits').length;
      const said = sayMatch(causes);
      if (fits === 0) expect(said).toMatch(/^No swing explains both marks/);
      else expect(said).toBe(fits === 1 ? 'One cause would look like this.' : `${fits} causes would look like this.`);
    }
  });

  test('say what tells each from the next, and that difference is there when both are read in full', () => {
    let told = 0;
    for (const causes of many) {
      causes.forEach(({ tell, movements }, i) => {
        if (!tell) return;
        told++;
        if (tell.at === 'ball') throw new Error('a cause is told by the player, not by the ball');
        const { at } = tell;
        const [here, there] = [movements, causes[i + 1].movements].map(
          (of) => readCheckpoints(withMovements(swing, of), DEFAULT_ARM_ANGLE)[at],
        );
        if (!isReached(here) || !isReached(there)) throw new Error('a checkpoint that is not reached tells nothing');
        expect(tell.size).toBeGreaterThanOrEqual(1);
        if (tell.sign.id === 'chestTurn')
          expect(here.readings.thoraxTurn - there.readings.thoraxTurn).toBeCloseTo(tell.change, 9);
        if (tell.sign.id === 'handHeight')
          expect(here.readings.handHeight - there.readings.handHeight).toBeCloseTo(tell.change, 9);
        expect(sayWhatTells(tell, { length: 'cm' }).text.split(' ').length).toBeLessThanOrEqual(15);
      });
    }
    expect(told).toBeGreaterThan(many.length);
  });

  test('a cupped wrist is told from an early turn by the wrist or by an open chest (common practice)', () => {
    const cupped = readCheckpoints(playerWith(dialled({ wristDeg: -18 })), DEFAULT_ARM_ANGLE);
    const { leadArmParallel: arm, shaftParallel: shaft } = cupped;
    if (!isReached(arm) || !isReached(shaft)) throw new Error('not reached');
    const [first] = causesOf(arm.readings.bicepGap * 100, shaft.readings.headDepth * 100, 2);
    expect(toDeg(first.movements.leadWristFlexion)).toBeCloseTo(-18, 6);
    expect(['wristFlexion', 'chestTurn']).toContain(first.tell?.sign.id);
  });
});

test('a cause past the usual range says so, and one that nearly fits is just outside the margin', () => {
  expect(sayFit({ misfit: 0.4, isUsual: true })).toBe('fits within your margin');
  expect(sayFit({ misfit: 0.4, isUsual: false })).toBe('fits within your margin, past the usual range');
  expect(sayFit({ misfit: 1.1, isUsual: true })).toBe('just outside your margin');
});
