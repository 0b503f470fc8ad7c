import { expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { DIALS } from '../../src/model/movements';
import { CAUTIONS } from '../../src/words';
import { findCautions, findPractice, sayChange } from '../../src/words/why/practice';

const words = (sentence: string): number => sentence.split(/\s+/).length;
const all = DIALS.flatMap(({ id, step }) => [step, -step].map((change) => ({ id, change })));

test('every movement has a feel and two or three drills in each direction', () => {
  for (const { id, change } of all) {
    const practice = findPractice(id, change)!;
    expect(practice.feel).toMatch(/^Feel /);
    expect(practice.drills.length).toBeGreaterThanOrEqual(2);
    expect(practice.drills.length).toBeLessThanOrEqual(3);
    expect(practice.source).toBe('rule of thumb');
    for (const { often } of practice.drills) expect(often).toMatch(/\d/);
  }
});

test('more and less of one movement are never practised the same way', () => {
  for (const { id, step } of DIALS) {
    const [more, less] = [findPractice(id, step)!, findPractice(id, -step)!];
    expect(more.feel).not.toBe(less.feel);
    const names = [...more.drills, ...less.drills].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  }
});

test('no sentence is longer than 15 words', () => {
  for (const { id, change } of all) {
    const { feel, drills, cautions } = findPractice(id, change)!;
    for (const sentence of [
      feel,
      ...cautions,
      ...drills.flatMap(({ how }) => how),
      sayChange(id, change, { length: 'in' })!,
    ]) {
      expect(words(sentence), sentence).toBeLessThanOrEqual(15);
      expect(sentence).toMatch(/[.]$/);
    }
  }
});

test('nothing changes, nothing to practise', () => {
  for (const { id } of DIALS) {
    expect(findPractice(id, 0)).toBeUndefined();
    expect(sayChange(id, 0, { length: 'cm' })).toBeUndefined();
  }
});

test('a change is said in the direction in which it goes', () => {
  expect(sayChange('leadWristFlexion', rad(12), { length: 'cm' })).toBe(
    'Bow the lead wrist 12° more by lead arm parallel.',
  );
  expect(sayChange('leadWristFlexion', rad(-12), { length: 'cm' })).toMatch(/^Cup .* 12°/);
  expect(sayChange('rotationRate', -0.08, { length: 'cm' })).toMatch(/8 % less/);
  expect(sayChange('rotationDelay', 0.012, { length: 'cm' })).toMatch(/12 ms later/);
  expect(sayChange('pelvisShift', 0.02, { length: 'cm' })).toMatch(/2 cm farther/);
});

/** What a physiotherapist would want said to anyone who is sent away to practise a movement (common practice, no published source). */
const MUST_SAY: Readonly<Record<string, readonly RegExp[]>> = {
  'warming up': [/warm up/i],
  'the end of a range': [/range/i, /not force|never force|gently/i],
  'the low back': [/low(er)? back/i, /side bend|tilt/i],
  'when to stop, and whom to ask': [/stop/i, /pain|hurts/i, /physician|doctor/i, /physio/i],
  'who needs a professional first': [/children/i, /back/i, /wrist/i, /professional|physician|physio/i],
  'people near by': [/swinging (distance|range)|out of reach|stand clear/i],
};

test.each(Object.entries(MUST_SAY))('nobody is sent to practise without a word on %s', (_, words) => {
  for (const { id, change } of all) {
    const cautions = findCautions([findPractice(id, change)!]);
    const saying = cautions.filter((caution) => words.every((word) => word.test(caution)));
    expect(saying, `${id} ${change}`).not.toEqual([]);
  }
});

test('a caution tells the player something to do or not to do, in a full sentence', () => {
  for (const caution of CAUTIONS) expect(caution).toMatch(/^[A-Z].*\.$/);
});

test('whatever is practised, the usual cautions stand there, each once', () => {
  const cautions = findCautions(all.map(({ id, change }) => findPractice(id, change)!));
  for (const caution of CAUTIONS) expect(cautions).toContain(caution);
  expect(new Set(cautions).size).toBe(cautions.length);
});
