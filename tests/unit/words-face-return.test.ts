import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { sayNewModel, SOME_EARLIER } from '../../src/words/book/newModel';
import { FACE_RETURN_ASSUMED, sayFaceDrawn, sayFaceReturned, sayReturnTakes } from '../../src/words/swing/faceReturn';

const METRIC = { length: 'cm', speed: 'm/s' } as const;
const wordsIn = (sentence: string): number => sentence.split(/\s+/).length;

describe('a face that comes back', () => {
  test('is said by how far it comes', () => {
    expect([0, 0.3, 0.5, 1].map(sayFaceReturned)).toEqual(['as it comes', '30 % of the way', 'half way', 'square']);
    expect(sayFaceDrawn(0.5)).toBe('The face is drawn half way back to square.');
    expect(sayFaceDrawn(0)).toBe('The face is drawn as it comes.');
  });

  test('takes roll and bow, each in its own sense, and it is said whether the joints allow it', () => {
    expect(sayReturnTakes({ roll: rad(-9), flexion: rad(4), isInRange: true })).toEqual([
      'Square takes 9° of closing roll and 4° of bow.',
      'That is within the range of motion.',
    ]);
    expect(sayReturnTakes({ roll: rad(7), flexion: rad(-3), isInRange: false })).toEqual([
      'The nearest to square takes 7° of opening roll and 3° of cup.',
      'The range of motion allows no more.',
    ]);
    expect(sayReturnTakes({ roll: rad(0.2), flexion: rad(-0.2), isInRange: true })[0]).toBe(
      'Square takes no roll and no bow.',
    );
  });
});

describe('what an earlier model computed', () => {
  const before = { leadArmParallel: 1.2, shaftParallel: -4 };
  test('is held against what is computed now', () => {
    expect(sayNewModel('swing', before, { leadArmParallel: 0.7, shaftParallel: -6.1 }, METRIC)).toBe(
      'The model has changed since this swing was saved. Its lean is now side bend. ' +
        'Computed now: lead arm parallel 0.5 cm lower, shaft parallel 2.1 cm farther behind.',
    );
  });
  test('that has not moved, or is reached no longer, is called that', () => {
    expect(sayNewModel('lesson', before, { leadArmParallel: 1.22, shaftParallel: null }, METRIC)).toContain(
      'lead arm parallel the same, shaft parallel no longer reached.',
    );
    expect(sayNewModel('lesson', { leadArmParallel: null, shaftParallel: null }, before, METRIC)).toContain(
      'lead arm parallel reached, shaft parallel reached.',
    );
  });
});

test('every sentence has at most 15 words', () => {
  const sentences = [
    FACE_RETURN_ASSUMED,
    SOME_EARLIER,
    ...[0, 0.35, 1].map(sayFaceDrawn),
    ...sayReturnTakes({ roll: rad(-12), flexion: rad(11), isInRange: false }),
    ...sayNewModel(
      'lesson',
      { leadArmParallel: 0, shaftParallel: 0 },
      { leadArmParallel: 12.3, shaftParallel: 12.3 },
      METRIC,
    ).split(/(?<=\.) /),
  ];
  for (const sentence of sentences) expect(wordsIn(sentence), sentence).toBeLessThanOrEqual(15);
});
