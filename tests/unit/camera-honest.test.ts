import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { DIALS, STILL } from '../../src/model/movements';
import { USUAL_TRIPODS, standCamera, type Tripod } from '../../src/reading/camera/camera';
import { readThrough } from '../../src/reading/camera/cameraReadings';
import { addressOf, createHonestReader } from '../../src/reading/camera/honest';
import { CHECKPOINTS } from '../../src/reading/checkpointTable';
import { DEFAULT_ARM_ANGLE, isReached, readCheckpoints, type CheckpointId } from '../../src/reading/checkpoints';
import { withMovements } from '../../src/reading/swing';
import { createRandom } from '../reference/random';
import { dialled, referenceSwing } from '../reference/solvingPlayers';

const swing = referenceSwing();
const aside: Tripod = { ...USUAL_TRIPODS.downTheLine, offset: 0.6, height: 1.4 };
const IDS = ['leadArmParallel', 'shaftParallel'] as const;

/** What a swing reads, and what a camera shows of it: by the camera's own reading, which is checked against another pinhole elsewhere. */
function filmed(movements: Partial<typeof STILL>, tripod: Tripod, id: CheckpointId) {
  const checkpoint = readCheckpoints(withMovements(swing, { ...STILL, ...movements }), DEFAULT_ARM_ANGLE)[id];
  if (!isReached(checkpoint)) throw new Error('not reached');
  const lens = standCamera('downTheLine', tripod, addressOf(swing));
  const through = readThrough(CHECKPOINTS[id].judged, lens, checkpoint.pose);
  if (!('seen' in through)) throw new Error('not seen');
  return { seen: through.seen, own: through.seen - through.bend };
}

describe('what was seen through a placed camera', () => {
  test('comes back as it is: on swings of every movement the truth lies within the margin, two standard deviations, in 95 of 100', () => {
    const random = createRandom(11);
    const reader = createHonestReader(swing, aside, DEFAULT_ARM_ANGLE);
    let [bent, inside] = [0, 0];
    for (let turn = 0; turn < 40; turn++) {
      const movements = Object.fromEntries(
        DIALS.map(({ id, usualMin, usualMax }) => [id, usualMin + (usualMax - usualMin) * random()]),
      );
      for (const id of IDS) {
        const { seen, own } = filmed(movements, aside, id);
        const honest = reader.read(id, { value: seen, plusMinus: 0.02 })!;
        if (Math.abs(honest.value - own) < honest.plusMinus) inside++;
        expect(honest.plusMinus).toBeGreaterThan(0.02);
        if (Math.abs(seen - own) > 0.05) bent++;
      }
    }
    expect(inside).toBeGreaterThanOrEqual(0.95 * 80);
    // The camera must really have bent what it showed, or nothing was put right.
    expect(bent).toBeGreaterThan(20);
  });

  test('is far nearer the truth than what was seen: on a cupped swing within 2 cm, where the camera was 5 cm or more off (our limits)', () => {
    const reader = createHonestReader(swing, aside, DEFAULT_ARM_ANGLE);
    const { seen, own } = filmed(dialled({ wristDeg: -18 }), aside, 'shaftParallel');
    const honest = reader.read('shaftParallel', { value: seen, plusMinus: 0.03 })!;
    expect(Math.abs(seen - own)).toBeGreaterThan(0.05);
    expect(Math.abs(honest.value - own)).toBeLessThan(0.02);
  });

  test('a camera that stands right changes nothing but the margin, which holds how well its place is known', () => {
    const far: Tripod = { ...USUAL_TRIPODS.downTheLine, distance: 400, height: 0.8, roll: 0 };
    const reader = createHonestReader(swing, far, DEFAULT_ARM_ANGLE);
    for (const id of IDS) {
      const { seen, own } = filmed(dialled({ wristDeg: -10 }), far, id);
      expect(Math.abs(seen - own)).toBeLessThan(0.01);
      const honest = reader.read(id, { value: seen, plusMinus: 0.03 })!;
      expect(Math.abs(honest.value - seen)).toBeLessThan(0.01);
      expect(honest.plusMinus).toBeGreaterThanOrEqual(0.03);
    }
  });

  test('a camera that is tilted by a degree more doubles no number: roll is in the margin', () => {
    const tilted: Tripod = { ...aside, roll: rad(4) };
    const { seen, own } = filmed(dialled({ wristDeg: -10 }), tilted, 'leadArmParallel');
    const honest = createHonestReader(swing, tilted, DEFAULT_ARM_ANGLE).read('leadArmParallel', {
      value: seen,
      plusMinus: 0.02,
    })!;
    expect(Math.abs(honest.value - own)).toBeLessThan(honest.plusMinus);
  });
});
