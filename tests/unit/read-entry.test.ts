import { describe, expect, test } from 'vitest';
import { readHeight, readLength, readNumber, showFeet } from '../../src/panels/fields/readEntry';
import { sayNumber, showLength } from '../../src/words/numbers/numbers';

/** Exact since 1959: 1 in = 2.54 cm, 1 ft = 12 in (international yard and pound agreement). */
const INCHES_OF_178_CM = 178 / 2.54;

describe('what people type', () => {
  test.each([
    ['178', 178],
    [' 178 cm', 178],
    ['1.70', 170],
    ['1,70 m', 170],
    ['1.70m', 170],
    [`5'10"`, 177.8],
    ['5’10', 177.8],
    ['5 ft 10 in', 177.8],
    ['5ft', 152.4],
    ['5\' 10 1/2"', 179.07],
    ['70 in', 177.8],
  ])('"%s" is a height of %d cm', (text, cm) => expect(readHeight(text, 'cm')).toBeCloseTo(cm, 6));

  test.each([
    ['70', 70],
    [`5'10`, 70],
    ['178', INCHES_OF_178_CM],
    ['1.78', INCHES_OF_178_CM],
    ['178 cm', INCHES_OF_178_CM],
  ])('"%s" is a height of %d in', (text, inches) => expect(readHeight(text, 'in')).toBeCloseTo(inches, 5));

  test.each([
    ['2 1/4', 2.25],
    ['2¼', 2.25],
    ['1/2', 0.5],
    ['−1,5', -1.5],
    ['-1½', -1.5],
    ['.5', 0.5],
    ['5 cm', 1.968504],
    ['2"', 2],
  ])('"%s" is a length of %d in', (text, inches) => expect(readLength(text, 'in')).toBeCloseTo(inches, 6));

  test('a length of less than 3 cm is not taken for metres', () => expect(readLength('1.7', 'cm')).toBe(1.7));

  test.each(['abc', '5 feet tall', "5'x", '12 kg', '--3', 'cm', '1/'])('"%s" is no length', (text) => {
    expect(readLength(text, 'cm')).toBeNaN();
  });

  test('nothing typed is not nought', () => {
    expect([readNumber('  '), readLength('', 'in'), readHeight('', 'cm')]).toEqual([undefined, undefined, undefined]);
  });
});

describe('inches are shown in quarters', () => {
  test.each([
    [0.0572, '2¼ in', '2.25 inches'],
    [0.0254, '1 in', '1 inch'],
    [0.0127, '½ in', '0.5 inch'],
    [0.019, '¾ in', '0.75 inch'],
    [-0.0381, '−1½ in', 'minus 1.5 inches'],
    [0.001, '0 in', '0 inches'],
  ])('%d m is %s', (metres, text, spoken) => {
    expect(showLength(metres, { length: 'in' })).toMatchObject({ text, spoken });
  });

  test('a quarter alone is said as a decimal', () => expect(sayNumber('¼')).toBe('0.25'));

  test.each([
    [70, `5'10"`],
    [72, `6'0"`],
    [INCHES_OF_178_CM, `5'10"`],
    [67.3, `5'7¼"`],
  ])('a height of %d in is %s', (inches, text) => {
    expect(showFeet(inches)).toBe(text);
    expect(readHeight(text, 'in')).toBeCloseTo(Math.round(inches * 4) / 4, 9);
  });
});
