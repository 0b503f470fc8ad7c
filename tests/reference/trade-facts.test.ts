import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { STILL, type Movements } from '../../src/model/movements';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, impliedPath } from '../../src/reading/delivery/delivery';
import { withMovements } from '../../src/reading/swing';
import { CLUB_IDS } from '../../src/model/club';
import { createStrangers, failingFacts, swingOfStranger } from './facts';
import { caseOf, read, spread } from './players';

// Causes and effects every teacher knows: common practice (T), no published source. No search asks for them: they come out of the geometry.
// Checked strictly over the usual range; what fails beyond it is printed by npm run validate.
const cases = ([1.62, 1.78, 1.93] as const).flatMap((h) => [caseOf(h, '7-iron'), caseOf(h, 'driver')]);
/** Players and clubs that no shipped swing was fitted for. */
const others = [caseOf(1.56, '9-iron'), caseOf(1.745, '5-iron'), caseOf(1.9, 'pitching wedge'), caseOf(2.1, 'driver')];

interface Claim {
  readonly words: string;
  readonly moves: readonly Partial<Movements>[];
  /** +1: toward steep, in front and out-to-in from step to step. */
  readonly sense: 1 | -1;
  readonly plane: boolean;
}

const CLAIMS: readonly Claim[] = [
  {
    words: 'bowing the lead wrist flattens, cupping steepens',
    moves: spread(-30, 30, 24).map((d) => ({ leadWristFlexion: rad(d) })),
    sense: -1,
    plane: true,
  },
  {
    words: 'turning faster throws the club out in front, slower drops it behind',
    moves: spread(0.8, 1.2, 24).map((rotationRate) => ({ rotationRate })),
    sense: 1,
    plane: false,
  },
  {
    words: 'turning later drops the club behind, earlier throws it out',
    moves: spread(-30, 30, 24).map((ms) => ({ rotationDelay: ms / 1000 })),
    sense: -1,
    plane: false,
  },
  {
    words: 'bending to the trail side flattens, toward the target steepens',
    moves: spread(-6, 6, 24).map((d) => ({ trailSideBend: rad(d) })),
    sense: -1,
    plane: true,
  },
];

describe.each([...cases, ...others])('$name', ({ swing, strike }) => {
  test.each(CLAIMS)('$words', ({ moves, sense, plane }) => {
    const all = moves.map((m) => {
      const checkpoints = readCheckpoints(withMovements(swing, { ...STILL, ...m }));
      const p5 = read(checkpoints, 'leadArmParallel');
      return {
        gap: p5.bicepGap,
        plane: p5.shaftPlane,
        depth: read(checkpoints, 'shaftParallel').headDepth,
        path: impliedPath(checkpoints, strike)!,
      };
    });
    for (let i = 1; i < all.length; i++) {
      expect(sense * (all[i].gap - all[i - 1].gap)).toBeGreaterThan(0);
      if (plane) expect(sense * (all[i].plane - all[i - 1].plane)).toBeGreaterThan(0);
      expect(sense * (all[i].depth - all[i - 1].depth)).toBeGreaterThan(0);
      expect(-sense * (all[i].path - all[i - 1].path)).toBeGreaterThan(0);
    }
  });
});

describe.each(cases)('at the ball, $name', ({ swing, strike }) => {
  const delivered = (m: Partial<Movements>) => {
    const moved = withMovements(swing, { ...STILL, ...m });
    const { delivery } = deliver(moved, readCheckpoints(moved), strike);
    if ('missing' in delivery) throw new Error(delivery.missing);
    return delivery;
  };

  test.each(CLAIMS)('$words, and the path follows', ({ moves, sense }) => {
    const paths = moves.filter((_, i) => i % 2 === 0).map((m) => delivered(m).path);
    for (let i = 1; i < paths.length; i++) expect(-sense * (paths[i] - paths[i - 1])).toBeGreaterThan(0);
  });

  test('bowing the lead wrist closes the face, cupping opens it', () => {
    const faces = spread(-30, 30, 12).map((d) => delivered({ leadWristFlexion: rad(d) }).face);
    for (let i = 1; i < faces.length; i++) expect(faces[i]).toBeLessThan(faces[i - 1]);
  });

  test('the head meets the ball over the whole range of every movement', () => {
    for (const { moves } of CLAIMS) {
      for (const m of [moves[0], moves.at(-1)!]) expect(delivered(m).status).toBe('held');
    }
  });
});

/** Steps over a usual range: every quarter of it is checked at its ends and in the middle. */
const STEPS = 8;

describe('at reading angles 0, -10 and -20 every fact holds in sign, unasked,', () => {
  const statures = [1.5, 1.62, 1.7, 1.78, 1.85, 1.93, 2.05];
  test.each(statures.flatMap((h) => CLUB_IDS.map((club) => [h, club] as const)))(
    'for the shipped %f m, %s',
    (h, club) => {
      expect(failingFacts(caseOf(h, club).swing, STEPS)).toEqual([]);
    },
  );

  // The same seed as in npm run validate, which goes on to 200.
  test.each(createStrangers(2026, 24))('for a player who is not shipped: $name', (stranger) => {
    expect(failingFacts(swingOfStranger(stranger), STEPS)).toEqual([]);
  });
});
