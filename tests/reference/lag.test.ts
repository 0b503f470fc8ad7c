import { describe, expect, test } from 'vitest';
import { rad, toDeg } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf } from '../../src/model/club';
import { createPose } from '../../src/model/pose';
import { findLeadArmParallel, isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { armToShaft, bicepGap, headDepth } from '../../src/reading/readings';
import { createSwing, swingPose, type Swing } from '../../src/reading/swing';
import { wristEffect } from '../../src/reading/wristEffect';
import { solveReference } from '../../src/solving/reference/reference';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const swingAt = (lagDeg?: number): { status: string; swing: Swing } => {
  const club = clubOf({ ...CLUBS['7-iron'], ...(lagDeg !== undefined && { lagDeg }) });
  const { status, reference } = solveReference(body, club);
  return { status, swing: createSwing(body, club, reference) };
};
const pose = createPose();
const lagOf = (swing: Swing): number => {
  const arm = findLeadArmParallel(swing);
  if ('missing' in arm) throw new Error(arm.missing);
  swingPose(swing, arm.t, pose);
  return toDeg(armToShaft(pose));
};

/**
 * Change of the bicep gap for 10 deg of cupping, cm, against the lag: the contract of the model, measured on its first version's reference
 * swing, 1.78 m with a 7-iron. Another reference swing holds other sizes; what has to agree is the trend.
 */
const TABLE = [
  [124, 2.2],
  [116, 1.7],
  [107, 1.15],
  [98, 0.6],
  [89, 0.1],
] as const;

describe('the lag at lead arm parallel', () => {
  test.each([85, 95, 105, 115, 125])(
    'is reached by the search where %f deg are asked for, on plane at both checkpoints',
    (lagDeg) => {
      const { status, swing } = swingAt(lagDeg);
      expect(['converged', 'stalled']).toContain(status);
      expect(Math.abs(lagOf(swing) - lagDeg)).toBeLessThan(0.2);
      const { leadArmParallel: arm, shaftParallel: shaft } = readCheckpoints(swing);
      if (!isReached(arm) || !isReached(shaft)) throw new Error('a checkpoint is missing');
      expect(Math.abs(bicepGap(arm.pose))).toBeLessThan(0.005);
      expect(Math.abs(headDepth(shaft.pose) + 0.02)).toBeLessThan(0.02);
    },
  );

  test('is that of the reference where none is asked for, and inside what may be asked for', () => {
    expect(lagOf(swingAt().swing)).toBeGreaterThan(85);
    expect(lagOf(swingAt().swing)).toBeLessThan(125);
  });

  // Measured: 3.1, 2.3, 1.5, 0.8, -0.1 searched; the size within 1 cm of the table's, the order its own.
  test('decides what the wrist does: less from lag to lag, next to nothing at a right angle', () => {
    const sizes = TABLE.map(([lagDeg]) => 100 * wristEffect(swingAt(lagDeg).swing)!.gapFor10Cupped);
    sizes.forEach((size, i) => {
      expect(Math.abs(size - TABLE[i][1])).toBeLessThan(1);
      if (i > 0) expect(size).toBeLessThan(sizes[i - 1]);
    });
    expect(Math.abs(sizes.at(-1)!)).toBeLessThan(0.3);
  });

  test('of the same posture with another hold tells the same to 0.4 cm, without a search', () => {
    const { swing } = swingAt();
    for (const [lagDeg] of TABLE) {
      const told = wristEffect(swing, undefined, rad(lagDeg))!;
      expect(toDeg(told.lag)).toBeCloseTo(lagDeg, 6);
      const searched = wristEffect(swingAt(lagDeg).swing)!;
      expect(100 * Math.abs(told.gapFor10Cupped - searched.gapFor10Cupped)).toBeLessThan(0.4);
    }
  });
});
