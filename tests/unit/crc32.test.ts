import { crc32 as crc32OfZlib } from 'node:zlib';
import { expect, test } from 'vitest';
import { crc32 } from '../../src/math/crc32';
import { createRandom } from '../reference/random';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

test('the published check value: CRC-32/ISO-HDLC of "123456789" is CBF43926 (RevEng catalogue of CRC algorithms)', () => {
  expect(crc32(bytesOf('123456789'))).toBe(0xcbf43926);
});

test('an empty PNG end chunk has the sum that every PNG file ends with (AE 42 60 82)', () => {
  expect(crc32(bytesOf('IEND'))).toBe(0xae426082);
});

test('random bytes of any length have the same sum as in zlib', () => {
  const random = createRandom(20261129);
  for (let length = 0; length < 300; length++) {
    const bytes = Uint8Array.from({ length }, () => Math.floor(random() * 256));
    expect(crc32(bytes)).toBe(crc32OfZlib(bytes));
  }
});
