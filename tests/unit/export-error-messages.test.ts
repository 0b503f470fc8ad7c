import { expect, test } from 'vitest';
import { sayError } from '../../src/words/showing/errorMessages';
import { createEstimate, fileName, Stopped } from '../../src/export/task/exportTask';

const error = (name: string, message = 'x'): Error => Object.assign(new Error(message), { name });

test('what went wrong is said with what to do, and that no file was made', () => {
  const said: [Error, boolean, RegExp][] = [
    [new Stopped(), false, /^Stopped\./],
    [error('PictureLost'), false, /graphics .* smaller size/],
    [error('QuotaExceededError'), false, /not enough memory .* smaller size/],
    [error('RangeError', 'Array buffer allocation failed'), false, /not enough memory/],
    [error('EncodingError'), false, /encoder .* gave up.* another format/],
    [error('InvalidStateError', 'Codec reclaimed due to inactivity.'), true, /page was hidden .* in front/],
    // As Chromium, Firefox and Safari put it (from memory).
    ...[
      'Failed to fetch dynamically imported module: http://x/y.js',
      'error loading dynamically imported module: http://x/y.js',
      'Importing a module script failed.',
    ].map((said): [Error, boolean, RegExp] => [error('TypeError', said), true, /did not arrive.* load the page again/]),
    [error('Error', 'This device cannot write GIF. Choose another format.'), false, /cannot write GIF/],
  ];
  for (const [thrown, wasHidden, words] of said) {
    const sentence = sayError(thrown, wasHidden);
    expect(sentence).toMatch(words);
    expect(sentence).toContain('No file was made.');
  }
});

test('time left comes from the time that has gone, once there is enough of it to tell', () => {
  let clock = 0;
  const left = createEstimate(() => clock);
  expect(left(0.5)).toBeUndefined();
  clock = 10_000;
  expect(left(0.25)).toBeCloseTo(30, 9);
  expect(left(1)).toBe(0);
});

test('file names hold nothing that a file system minds', () => {
  expect(fileName('Clip', 'sideBySide', '16x9')).toBe('slantwise-clip-sidebyside-16x9');
  expect(fileName('../../a:b\\c?*', '')).toBe('slantwise-a-b-c');
  expect(fileName('x'.repeat(300)).length).toBeLessThanOrEqual(80);
});
