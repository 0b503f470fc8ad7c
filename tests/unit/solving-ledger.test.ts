import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { withMovements, type Swing } from '../../src/reading/swing';
import {
  mixSwings,
  PARTS,
  solveContributions,
  type Contributions,
  type NoContributions,
} from '../../src/solving/diagnosis/contributions';
import { askImpliedPath, askReading, type Question } from '../../src/solving/diagnosis/question';
import { dialled, playerWith, referenceSwing } from '../reference/solvingPlayers';

const reference = referenceSwing();
const gap = askReading('leadArmParallel', 'bicepGap');
const depth = askReading('shaftParallel', 'headDepth');

function ledger(from: Swing, to: Swing, ask: Question): Contributions {
  const result = solveContributions(from, to, ask);
  if ('missing' in result) throw new Error(result.missing);
  return result;
}

const sum = (parts: Contributions['parts']): number => Object.values(parts).reduce((a, b) => a + b, 0);

describe('the ledger of a reading', () => {
  test('a cupped wrist and an early turn both make the player steep, and the two shares are the whole difference', () => {
    const player = playerWith(dialled({ wristDeg: -15, delayMs: -10 }));
    for (const ask of [gap, depth]) {
      const { from, to, parts } = ledger(reference, player, ask);
      expect(to).toBeGreaterThan(from);
      expect(parts.leadWrist).toBeGreaterThan(0.005);
      expect(parts.rotation).toBeGreaterThan(0.005);
      expect(parts.sideTilt).toBe(0);
      expect(parts.setUp).toBe(0);
      expect(Math.abs(sum(parts) - (to - from))).toBeLessThan(1e-9);
    }
  });

  test('the two ends of the ledger are the readings of the two swings', () => {
    const player = playerWith(dialled({ wristDeg: 12, tiltDeg: 5, rate: 1.1 }));
    const { from, to } = ledger(reference, player, depth);
    const before = readCheckpoints(reference).shaftParallel;
    const after = readCheckpoints(player).shaftParallel;
    if (!isReached(before) || !isReached(after)) throw new Error('never parallel');
    expect(from).toBe(before.readings.headDepth);
    expect(to).toBe(after.readings.headDepth);
  });

  test('a player who does nothing different owes nothing to anything', () => {
    const { parts, alone, last, evaluations } = ledger(reference, playerWith({}), gap);
    for (const shares of [parts, alone, last]) expect(Object.values(shares)).toEqual([0, 0, 0, 0]);
    expect(evaluations).toBe(1);
  });

  test('"alone" is the change from the first swing, "last" the change that completes the second', () => {
    const player = playerWith(dialled({ wristDeg: -20, rate: 1.2 }));
    const { alone, last, from, to } = ledger(reference, player, depth);
    const wristOnly = depth(playerWith(dialled({ wristDeg: -20 })));
    const turnOnly = depth(playerWith(dialled({ rate: 1.2 })));
    if ('missing' in wristOnly || 'missing' in turnOnly) throw new Error('never parallel');
    expect(alone.leadWrist).toBe(wristOnly.value - from);
    expect(last.leadWrist).toBe(to - turnOnly.value);
    // What the two do together is not what they do apart: that is why both stand in the ledger.
    expect(Math.abs(alone.leadWrist - last.leadWrist)).toBeGreaterThan(0.001);
  });

  test('another player with the same movements differs by set-up alone', () => {
    const { parts, from, to } = ledger(reference, referenceSwing(1.93, 'driver'), depth);
    expect(parts).toMatchObject({ leadWrist: 0, rotation: 0, sideTilt: 0 });
    // A weighted sum of equal differences: it may round in the last digit.
    expect(parts.setUp).toBeCloseTo(to - from, 14);
  });

  test('set-up is a fourth share between two players who also move differently', () => {
    const to = withMovements(referenceSwing(1.62), dialled({ wristDeg: -10, tiltDeg: -4 }));
    const { parts, from, to: end, evaluations } = ledger(reference, to, depth);
    expect(parts.setUp).not.toBe(0);
    expect(parts.rotation).toBe(0);
    expect(Math.abs(sum(parts) - (end - from))).toBeLessThan(1e-9);
    expect(evaluations).toBe(8);
  });

  test('a bar that is played moves its own part and nothing else', () => {
    const to = withMovements(referenceSwing(1.62), dialled({ wristDeg: -10, rate: 1.1, tiltDeg: -4 }));
    expect(mixSwings(reference, to, ['rotation']).movements).toEqual(dialled({ rate: 1.1 }));
    expect(mixSwings(reference, to, ['setUp', 'leadWrist'])).toEqual(withMovements(to, dialled({ wristDeg: -10 })));
    expect(mixSwings(reference, to, [])).toEqual(reference);
    expect(mixSwings(reference, to, PARTS)).toEqual(to);
  });

  test('a pelvis that is dialled on its own to what the chest does is no difference', () => {
    const linked = playerWith(dialled({ rate: 1.2, delayMs: 5 }));
    const own = playerWith({ ...dialled({ rate: 1.2, delayMs: 5 }), pelvisRate: 1.2, pelvisDelay: 0.005 });
    expect(ledger(linked, own, depth).parts.rotation).toBe(0);
    const held = playerWith({ ...dialled({ rate: 1.2, delayMs: 5 }), pelvisRate: 0.9 });
    expect(ledger(linked, held, askReading('shaftParallel', 'pelvisTurn')).parts.rotation).toBeLessThan(rad(-1));
  });

  test('the implied path can be asked about: a cupped wrist sends it out-to-in, by as much as the plane turned', () => {
    const path = askImpliedPath('shaftParallel', reference, rad(0.4));
    const player = playerWith(dialled({ wristDeg: -20 }));
    const { from, to, parts } = ledger(reference, player, path);
    expect(from).toBe(rad(0.4));
    expect(parts.leadWrist).toBeCloseTo(to - from, 12);
    const plane = ledger(reference, player, askReading('shaftParallel', 'planeDirection'));
    expect(to - from).toBeCloseTo(plane.to - plane.from, 12);
    expect(to).toBeLessThan(from - rad(5));
  });

  test('when a mixture of the two swings never passes the checkpoint, the ledger says which one', () => {
    const held: Question = (swing) =>
      swing.movements.leadWristFlexion < 0 ? { missing: 'never-parallel' } : gap(swing);
    const player = playerWith(dialled({ wristDeg: -20, rate: 1.1 }));
    const result = solveContributions(reference, player, held) as NoContributions;
    expect(result).toMatchObject({ missing: 'never-parallel', gone: ['leadWrist'] });
  });

  test('a swing that never comes down is a reason, not a number', () => {
    const { curves } = reference;
    const frozen: Swing = { ...reference, curves: { ...curves, pieces: curves.pieces.map(() => 0) } };
    expect(gap(frozen)).toEqual({ missing: 'never-parallel' });
    expect(solveContributions(reference, frozen, gap)).toMatchObject({ missing: 'never-parallel', gone: ['setUp'] });
  });

  test('a reading that is not defined in a pose is a reason of its own', () => {
    const broken: Swing = { ...reference, reference: { ...reference.reference, ballPoint: [0, 0, NaN] } };
    expect(askReading('leadArmParallel', 'gripEndLine')(broken)).toEqual({ missing: 'no-number' });
  });
});
