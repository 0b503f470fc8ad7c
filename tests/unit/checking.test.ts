import { exactOptional, pipe } from 'valibot';
import { describe, expect, test } from 'vitest';
import { read } from '../../src/checking/read';
import { fields, listUpTo, nameOr, numberIn, oneOf, textUpTo, whole } from '../../src/checking/schemas';
import { DEFAULT_DOCUMENT } from '../../src/store';
import { readDocument } from '../../src/store/document/validate';

const range = pipe(
  fields({ low: numberIn(0, 10), high: numberIn(0, 10) }),
  whole(({ low, high }) => (low <= high ? undefined : { path: 'low', message: 'Swap them.' })),
);
const schema = fields({
  range,
  words: listUpTo(oneOf(['a', 'b']), 2),
  name: exactOptional(textUpTo(3)),
  day: exactOptional(nameOr(['still'], { wind: numberIn(-1, 1) })),
});
const GOOD = { range: { low: 1, high: 2 }, words: ['a'] };

describe('what fits', () => {
  test('is read into fresh objects and lists', () => {
    const given = { ...GOOD, name: 'x', day: { wind: 0 } };
    const found = read(schema, given);
    if ('fault' in found) throw new Error(found.fault.message);
    expect(found.value).toEqual(given);
    expect(found.value.range).not.toBe(given.range);
    expect(found.value.words).not.toBe(given.words);
    expect(read(schema, { ...GOOD, day: 'still' })).toEqual({ value: { ...GOOD, day: 'still' } });
  });
});

describe('what does not fit', () => {
  test.each([
    ['a number past its end', { range: { low: -1, high: 2 } }, 'range.low', '-1 is out of range. Enter 0 to 10.'],
    ['no number', { range: { low: '1', high: 2 } }, 'range.low', 'Expected a number, found a string.'],
    ['an endless number', { range: { low: 1, high: Infinity } }, 'range.high', 'Not a finite number. Enter 0 to 10.'],
    ['parts that do not go together', { range: { low: 3, high: 2 } }, 'range.low', 'Swap them.'],
    ['an unknown word', { words: ['a', 'c'] }, 'words[1]', '"c" is not known. Use one of: a, b.'],
    ['too many', { words: ['a', 'a', 'a'] }, 'words', 'More than 2 entries.'],
    ['no list', { words: 'a' }, 'words', 'Expected a list, found a string.'],
    ['a list where fields are due', { range: [] }, 'range', 'Expected an object, found a list.'],
    ['null', { range: null }, 'range', 'Expected an object, found null.'],
    ['too long a text', { name: 'abcd' }, 'name', 'Longer than 3 characters.'],
    ['neither name nor object', { day: 'windy' }, 'day', '"windy" is not known. Use an object, or one of: still.'],
    ['a wrong object in a name’s place', { day: { wind: 2 } }, 'day.wind', '2 is out of range. Enter -1 to 1.'],
    [
      'a field of every object',
      { constructor: 1 },
      'constructor',
      'Unknown field. Known here: range, words, name, day.',
    ],
  ])('%s: field and sentence', (_, part, path, message) => {
    expect(read(schema, { ...GOOD, ...part })).toEqual({ fault: { path, message } });
  });

  test('a field that nobody knows comes before one that is missing: a misspelt field is both', () => {
    const found = read(schema, { rnage: GOOD.range, words: ['a'] });
    expect(found).toHaveProperty('fault.path', 'rnage');
    expect(read(schema, { words: ['c'] })).toHaveProperty('fault.path', 'words[0]');
    expect(read(schema, { words: ['a'] })).toEqual({ fault: { path: 'range', message: 'Missing.' } });
  });

  test('a long name from outside is cut', () => {
    expect(read(schema, { ...GOOD, ['x'.repeat(1000)]: 1 })).toHaveProperty('fault.path', `${'x'.repeat(40)}...`);
  });

  test('in a document, a length no body has is named by its full path', () => {
    const player = { ...DEFAULT_DOCUMENT.player, segmentsM: { upperArm: 1.9 } };
    expect(readDocument({ ...DEFAULT_DOCUMENT, player })).toEqual({
      problem: 'part of it is damaged (player.segmentsM.upperArm)',
    });
    expect(readDocument({ ...DEFAULT_DOCUMENT, hat: 1 })).toEqual({ problem: 'part of it is damaged (hat)' });
  });
});
