import { expect, test } from 'vitest';
import { CALIBRATED, FROM_PLANE_TO_PATH, PREDICTED, THE_BALL } from '../../src/words/about/model';

const sentences = [...CALIBRATED, ...PREDICTED, ...FROM_PLANE_TO_PATH, ...THE_BALL].flatMap((text) =>
  text.split(/(?<=[.?!]) (?=[A-Z])/),
);

test('what is said about the model is said in at most 15 words a sentence', () => {
  for (const sentence of sentences) expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(15);
});

test('what the fit asks for is never called predicted: hand speed, uncocking, when a part turns fastest', () => {
  for (const asked of [/hand speed|hands/i, /uncock/i, /turns? fastest/i]) {
    expect(CALIBRATED.filter((text) => asked.test(text))).not.toEqual([]);
    expect(PREDICTED.filter((text) => asked.test(text))).toEqual([]);
  }
});
