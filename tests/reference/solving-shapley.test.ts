import { describe, expect, test } from 'vitest';
import { STILL, type Movements } from '../../src/model/movements';
import { withMovements, type Swing } from '../../src/reading/swing';
import { PARTS, solveContributions, type Part } from '../../src/solving/diagnosis/contributions';
import type { Question } from '../../src/solving/diagnosis/question';
import { referenceSwing } from './solvingPlayers';

const here = referenceSwing(1.78);
const there: Swing = withMovements(referenceSwing(1.62), {
  leadWristFlexion: 0.1,
  rotationRate: 1.1,
  rotationDelay: 0.01,
  trailSideBend: 0.1,
  pelvisShift: 0.02,
} satisfies Movements);

/** A game in which each part plays once it has gone over to the second swing. */
const play =
  (worth: (players: readonly Part[]) => number): Question =>
  (swing) => {
    const m = swing.movements;
    const has: Record<Part, boolean> = {
      leadWrist: m.leadWristFlexion !== STILL.leadWristFlexion,
      rotation: m.rotationRate !== STILL.rotationRate,
      sideTilt: m.trailSideBend !== STILL.trailSideBend,
      setUp: swing.rig === there.rig,
    };
    return { value: worth(PARTS.filter((part) => has[part])) };
  };

function shares(worth: (players: readonly Part[]) => number): number[] {
  const result = solveContributions(here, there, play(worth));
  if ('missing' in result) throw new Error(result.missing);
  return PARTS.map((part) => result.parts[part]);
}

const nearly = (values: readonly number[]): unknown[] => values.map((value) => expect.closeTo(value, 12) as unknown);

describe('the shares are Shapley values', () => {
  // Littlechild & Owen, A Simple Expression for the Shapley Value in a Special Case, Management Science 20 (1973): each further
  // stretch of a runway is paid in equal parts by those who need it. Costs 8, 11, 13, 18: 8/4 = 2, 2 + 3/3, 3 + 2/2, 4 + 5. C.
  test('four aeroplanes share the cost of a runway by the published formula', () => {
    const cost: Record<Part, number> = { leadWrist: 8, rotation: 11, sideTilt: 13, setUp: 18 };
    expect(shares((players) => Math.max(0, ...players.map((part) => cost[part])))).toEqual(nearly([2, 3, 4, 9]));
  });

  // Counted over the six orders of three gloves: the only right glove completes a pair in four of them. C.
  test('one right glove and two left ones are worth two thirds and a sixth each', () => {
    const pairs = (players: readonly Part[]): number =>
      players.includes('leadWrist') && (players.includes('rotation') || players.includes('sideTilt')) ? 1 : 0;
    expect(shares(pairs)).toEqual(nearly([2 / 3, 1 / 6, 1 / 6, 0]));
  });

  test('parts that can stand in for each other get equal shares', () => {
    for (const power of [0.5, 1, 2, 3]) {
      const [a, b, c, d] = shares((players) => players.length ** power);
      for (const other of [b, c, d]) expect(other).toBeCloseTo(a, 12);
      expect(a).toBeCloseTo(4 ** power / 4, 12);
    }
  });
});
