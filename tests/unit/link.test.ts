import jsQR from 'jsqr';
import { crc32, deflateRawSync } from 'node:zlib';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { toBase64Url } from '../../src/checking/base64url';
import { codeOf } from '../../src/export/picture/qrCode';
import { readEmbedded, toMarked } from '../../src/export/files/embedded';
import { LONGEST_TEXT, packJson, readHash, readText, toAddress, toText } from '../../src/export/link/link';
import { withPngText } from '../../src/export/picture/png';
import { DEFAULT_DOCUMENT, type Document } from '../../src/store';
import { smallPng } from '../property/pictures';

const CUPPED: Document = {
  ...DEFAULT_DOCUMENT,
  movements: { ...DEFAULT_DOCUMENT.movements, leadWristFlexionDeg: -20 },
};

test('the link of a fresh document takes fewer than 100 characters', () => {
  expect(toText(DEFAULT_DOCUMENT).length).toBeLessThan(100);
  expect(toText(CUPPED).length).toBeLessThan(100);
});

test('links that are out there keep opening: one written on the first day', () => {
  // Written by the first version of the format; if this fails, links people hold have been broken.
  expect(readText(FIRST_DAY)).toMatchObject({ document: CUPPED });
});
const FIRST_DAY = 's1.hlZ27BvQ1KVrNJq-hnn6AgA';

test('a newer or unknown version says so', () => {
  expect(readText(toText(CUPPED).replace('s1.', 's3.'))).toEqual({ problem: 'a newer Slantwise wrote it' });
  expect(readText(toText(CUPPED).replace('s1.', 's0.'))).toEqual({ problem: 'its version is unknown' });
});

test('an address without a document is not a link', () => {
  expect(readHash('')).toBeUndefined();
  expect(readHash('#drawer')).toBeUndefined();
});

test('a link cut short, or with one letter changed, says it is damaged', () => {
  const text = toText(CUPPED);
  expect(readText(text.slice(0, -3))).toEqual({ problem: 'it is damaged' });
  const changed = text.slice(0, 12) + (text[12] === 'A' ? 'B' : 'A') + text.slice(13);
  expect(readText(changed)).toEqual({ problem: 'it is damaged' });
});

test('a link with __proto__ inside is refused, spelled plainly or in escapes', () => {
  for (const key of ['__proto__', '\\u005f_proto__', '\\u005F\\u005fproto\\u005f_']) {
    const json = JSON.stringify(CUPPED).replace('{"statureM"', `{"${key}":{"handed":"left"},"statureM"`);
    expect(JSON.parse(json)).toBeDefined();
    expect(readText(packJson(json))).toEqual({ problem: 'it is damaged' });
  }
  expect(({} as { handed?: string }).handed).toBeUndefined();
});

test('oversize is refused before anything is parsed: long links by length, packed ones while they unfold', () => {
  expect(readText(`s1.${'A'.repeat(LONGEST_TEXT)}`)).toEqual({ problem: 'it is too long' });
  // A million blanks deflate to a kilobyte: a bomb that fits into a link.
  const bomb = new TextEncoder().encode(`${' '.repeat(1_000_000)}{}`);
  const packed = deflateRawSync(bomb, { level: 9 });
  const sealed = new Uint8Array(4 + packed.length);
  new DataView(sealed.buffer).setUint32(0, crc32(bomb));
  sealed.set(packed, 4);
  const text = `s1.${toBase64Url(sealed)}`;
  expect(text.length).toBeLessThan(LONGEST_TEXT);
  expect(readText(text)).toEqual({ problem: 'it is too large' });
});

test('an independent reader finds the address in the code', () => {
  const address = toAddress(CUPPED, 'https://board.invalid/slantwise/');
  const squares = codeOf(address);
  const size = squares.length * 4;
  const pixels = new Uint8ClampedArray(size * size * 4).fill(255);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++)
      if (squares[y >> 2][x >> 2]) pixels.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3);
  expect(jsQR(pixels, size, size)?.data).toBe(address);
});

test('an independent reader still opens a picture that carries the document, and sees the same pixels', () => {
  const before = smallPng();
  const after = withPngText(before, 'Comment', toMarked(CUPPED));
  const read = PNG.sync.read(Buffer.from(after), { checkCRC: true });
  expect([...read.data]).toEqual([...PNG.sync.read(Buffer.from(before)).data]);
  expect(readEmbedded(after)).toEqual({ document: CUPPED });
});

test('a file of somebody else carries nothing of ours', () => {
  expect(readEmbedded(smallPng())).toBeUndefined();
  expect(readEmbedded(new Uint8Array())).toBeUndefined();
});
