import { describe, expect, test } from 'vitest';
import { isReached, readCheckpoints, type CheckpointId } from '../../src/reading/checkpoints';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { annotatePlate } from '../../src/plates/plate/plateDrawing';
import { letteringAt } from '../../src/plates/annotation/lettering';
import { sayApart, sayOffCheckpoint } from '../../src/words/why/comparing';
import { dialled, playerWith } from '../reference/solvingPlayers';

const letters = letteringAt(1);
const frameOf = (id: CheckpointId, wristDeg: number, most?: number) => {
  const checkpoint = readCheckpoints(playerWith(dialled({ wristDeg, rate: wristDeg < 0 ? 1.4 : 1 })))[id];
  if (!isReached(checkpoint)) throw new Error('not reached');
  return annotatePlate({
    id,
    checkpoint,
    bands: DEFAULT_BANDS,
    units: { length: 'cm' },
    handed: 'right',
    reference: undefined,
    ghost: undefined,
    letters,
    ...(most !== undefined && { most }),
  })!.frame;
};

describe('plates side by side', () => {
  test('both plates of a pair take the scale they are given, and still keep their readings on the sheet', () => {
    for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
      for (const wristDeg of [0, -40]) expect(frameOf(id, wristDeg, 210).scale).toBe(210);
    }
  });

  test('a larger scale than the plates have is never taken', () => {
    expect(frameOf('leadArmParallel', 0, 300).scale).toBe(frameOf('leadArmParallel', 0).scale);
  });
});

describe('the sentence over two swings', () => {
  const say = (leadArmParallel: number, shaftParallel: number) =>
    sayApart({ name: 'This swing', leadArmParallel, shaftParallel }, { length: 'cm' });

  test('says by how much the first differs, and has its twin for a screen reader', () => {
    expect(say(0.07, 0.2).text).toBe(
      'This swing: lead arm parallel 7 cm steeper, shaft parallel 20 cm farther in front.',
    );
    expect(say(0.07, 0.2).spoken).toBe(
      'This swing: lead arm parallel 7 centimetres steeper, shaft parallel 20 centimetres farther in front.',
    );
    expect(say(-0.07, -0.2).text).toBe(
      'This swing: lead arm parallel 7 cm shallower, shaft parallel 20 cm farther behind.',
    );
  });

  test('never says nothing where there is a little, nor a little where there is nothing', () => {
    expect(say(0.003, 0).text).toBe('This swing: lead arm parallel 0.3 cm steeper, shaft parallel the same.');
    expect(say(0, -0.2).text).toBe('This swing: lead arm parallel the same, shaft parallel 20 cm farther behind.');
    expect(say(0.0004, 0).text).toBe('This swing: the same at both checkpoints.');
    expect(say(NaN, 0).text).toBe('One of the two swings does not reach a checkpoint.');
  });

  test('by the clock it says how far a swing is from its own checkpoint', () => {
    expect(sayOffCheckpoint('leadArmParallel', 0.012)).toBe('12 ms past lead arm parallel');
    expect(sayOffCheckpoint('shaftParallel', -0.02)).toBe('20 ms before shaft parallel');
    expect(sayOffCheckpoint('shaftParallel', 0.0001)).toBe('At shaft parallel');
  });
});
