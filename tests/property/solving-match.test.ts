import { describe, expect, test } from 'vitest';
import { createNormal } from '../../src/math/normal';
import { rad } from '../../src/math/angle';
import { dialOf, STILL, type MovementId } from '../../src/model/movements';
import { DEFAULT_BANDS, judge } from '../../src/reading/verdicts';
import { findVerdictShare } from '../../src/solving/diagnosis/verdictShare';
import { solveMatch } from '../../src/solving/diagnosis/match';
import { createRandom } from '../reference/random';
import { fullReadings, playerWith, randomReference } from '../reference/solvingPlayers';

/** Causes to find: largest departure from the reference, least that can be seen, and how well it must be found. */
const CAUSES: readonly { id: MovementId; most: number; least: number; within: number }[] = [
  { id: 'leadWristFlexion', most: rad(30), least: rad(3), within: rad(1) },
  { id: 'rotationRate', most: 0.2, least: 0.03, within: 0.02 },
  { id: 'rotationDelay', most: 0.03, least: 0.003, within: 0.002 },
  { id: 'trailSideBend', most: rad(10), least: rad(2), within: rad(1) },
];
const random = createRandom(51);
const PLUS_MINUS = { leadArmParallel: 0.01, shaftParallel: 0.02 };

/** A player with one movement off, in either direction. */
function nextPlayer(i: number) {
  const cause = CAUSES[i % CAUSES.length];
  const reference = randomReference(random);
  const size = cause.least + (cause.most - cause.least) * random();
  const truth = STILL[cause.id] + (random() < 0.5 ? -size : size);
  const [gap, depth] = fullReadings(playerWith({ [cause.id]: truth }, reference));
  return { cause, reference, truth, gap, depth };
}

const seenAs = (gap: number, depth: number) => ({
  leadArmParallel: { value: gap, plusMinus: PLUS_MINUS.leadArmParallel },
  shaftParallel: { value: depth, plusMinus: PLUS_MINUS.shaftParallel },
});

describe('finding the cause', { timeout: 90_000 }, () => {
  test('of 200 players with one movement off, the right movement comes first, within 1 degree, 0.02 of rate or 2 ms', () => {
    for (let i = 0; i < 200; i++) {
      const { cause, reference, truth, gap, depth } = nextPlayer(i);
      const [first] = solveMatch({ swing: reference, seen: seenAs(gap, depth) }).explanations;
      expect(first).toMatchObject({ dials: [cause.id], status: 'fits' });
      expect(Math.abs(first.movements[cause.id] - truth)).toBeLessThan(cause.within);
    }
  });

  test('when the coach errs as much as he says, the truth lies within the give or take of the right cause in 95 of 100', () => {
    const normal = createNormal(random);
    const COUNT = 400;
    let covered = 0;
    let nominal = 0;
    for (let i = 0; i < COUNT; i++) {
      const { cause, reference, truth, gap, depth } = nextPlayer(i);
      const seen = seenAs(
        gap + (PLUS_MINUS.leadArmParallel / 2) * normal(),
        depth + (PLUS_MINUS.shaftParallel / 2) * normal(),
      );
      const { explanations } = solveMatch({ swing: reference, seen, allow: [dialOf(cause.id).group] });
      const right = explanations.find(({ dials }) => dials.join() === cause.id)!;
      nominal++;
      if (Math.abs(right.movements[cause.id] - truth) <= right.plusMinus!) covered++;
    }
    // Two standard deviations: 95.45 of 100, give or take three of the binomial's own (3.1 for 400 players).
    expect(Math.abs(covered / nominal - 0.9545)).toBeLessThan(3 * Math.sqrt((0.9545 * 0.0455) / nominal));
  });

  test('a verdict said to hold in N of 100 is the true one in N of 100, whatever N', () => {
    const normal = createNormal(random);
    const band = DEFAULT_BANDS.leadArmParallel;
    const plusMinus = 0.02;
    const bins = Array.from({ length: 5 }, () => ({ count: 0, promised: 0, kept: 0 }));
    for (let i = 0; i < 200_000; i++) {
      // Truths spread evenly and wide: before looking, the coach leans to no side.
      const truth = -0.12 + 0.24 * random();
      const { verdict, share } = findVerdictShare({ value: truth + (plusMinus / 2) * normal(), plusMinus }, band);
      const bin = bins[Math.max(0, Math.min(4, Math.floor((share - 0.5) * 10)))];
      bin.count++;
      bin.promised += share;
      if (judge(truth, band) === verdict) bin.kept++;
    }
    for (const { count, promised, kept } of bins) {
      expect(count).toBeGreaterThan(1000);
      expect(Math.abs(kept - promised) / count).toBeLessThan(4 * Math.sqrt(0.25 / count));
    }
  });
});
