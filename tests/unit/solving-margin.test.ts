import { describe, expect, test } from 'vitest';
import { MOVEMENT_GROUPS, STILL } from '../../src/model/movements';
import { withMovements } from '../../src/reading/swing';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { planOnSteps, planWithMargin } from '../../src/solving/diagnosis/planOnSteps';
import { shareInBand } from '../../src/solving/diagnosis/verdictShare';
import { readBase } from '../../src/solving/playOut';
import { fullReadings, playersOffPlane } from '../reference/solvingPlayers';

const players = playersOffPlane(8, 33);
/** Margins of a careful eye, of an eye, and of a glance, cm (our choice). */
const MARGINS = [1, 3, 6] as const;

const asked = players.flatMap((swing) =>
  MARGINS.map((cm) => {
    const doubt = { leadArmParallel: cm / 100, shaftParallel: cm / 100 };
    const question = { swing, base: readBase(withMovements(swing, STILL)), allow: MOVEMENT_GROUPS, doubt };
    return { swing, doubt, smallest: planOnSteps(question).plans, more: planWithMargin(question).plans };
  }),
);
const pairs = asked.flatMap(({ smallest, more }) =>
  smallest.flatMap((least) => {
    const wide = more.find(({ exact }) => exact.uses.join() === least.exact.uses.join());
    return wide ? [{ least, wide }] : [];
  }),
);

describe('more margin', () => {
  test('lands at least as often as the smallest change, whatever moves, or is that change and says so', () => {
    expect(pairs.length).toBeGreaterThan(40);
    for (const { least, wide } of pairs) {
      if (wide.isMost) expect(wide.movements).toEqual(least.movements);
      else expect(wide.holds).toBeGreaterThan(least.holds);
    }
  });

  test('is worth asking for: most plans land noticeably more often, and the mean share grows', () => {
    const mean = (of: readonly { readonly holds: number }[]): number =>
      of.reduce((sum, { holds }) => sum + holds, 0) / of.length;
    expect(pairs.filter(({ wide }) => !wide.isMost).length).toBeGreaterThan(pairs.length / 2);
    expect(mean(pairs.map(({ wide }) => wide))).toBeGreaterThan(mean(pairs.map(({ least }) => least)) + 0.1);
  });

  test("its share is that of both readings over the coach's own margin, and its readings are those of the dialled swing", () => {
    for (const { swing, doubt, more } of asked) {
      for (const { movements, readings, holds } of more) {
        const [arm, shaft] = fullReadings(withMovements(swing, movements));
        expect(readings).toEqual({ leadArmParallel: arm, shaftParallel: shaft });
        const share =
          shareInBand({ value: arm, plusMinus: doubt.leadArmParallel }, DEFAULT_BANDS.leadArmParallel) *
          shareInBand({ value: shaft, plusMinus: doubt.shaftParallel }, DEFAULT_BANDS.shaftParallel);
        expect(holds).toBeCloseTo(share, 12);
      }
    }
  });
});
