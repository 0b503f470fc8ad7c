import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterEach, expect, test, vi } from 'vitest';
import { readImageHeader } from '../../src/checking/imageHeader';
import { contrast, readableOn } from '../../src/export/picture/ownColour';
import { findMarkFault, MARK_LIMITS } from '../../src/panels/showing/own/markFile';
import { readKeptLook } from '../../src/panels/showing/own/ownLook';
import { readSavedLook } from '../../src/panels/showing/own/savedLook';
import { writeEverything } from '../../src/record/file/everything';
import { OWN_LOOK_KEY, writeFile } from '../../src/record/file/file';
import { readFile } from '../../src/record/file/readFile';
import { makePlayer } from './record-stand';

const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
  Uint8Array.from(
    parts.flatMap((part) =>
      typeof part === 'string' ? Array.from(part, (letter) => letter.charCodeAt(0)) : [...part],
    ),
  );
const png = (width: number, height: number): Uint8Array => {
  const file = new Uint8Array(PNG.sync.write(new PNG({ width: 3, height: 2 })));
  const view = new DataView(file.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  return file;
};
/** A JPEG's start: its own notes (APP1, 300 bytes), a table (DHT), then the frame header (ITU-T T.81, B.2.2). */
const jpeg = (width: number, height: number): Uint8Array =>
  bytes(
    [0xff, 0xd8, 0xff, 0xe1, 1, 44],
    Array.from({ length: 298 }, () => 0xff),
    [0xff, 0xc4, 0, 4, 1, 2],
    [0xff, 0xff, 0xc2, 0, 17, 8, height >> 8, height & 255, width >> 8, width & 255, 3, 1, 2, 3, 4, 5, 6],
  );
/** RFC 9649: the extended, the lossless and the lossy header, each of 300 by 200. */
const webp: Readonly<Record<string, Uint8Array>> = {
  extended: bytes('RIFF', [0, 0, 0, 0], 'WEBPVP8X', [10, 0, 0, 0, 0, 0, 0, 0, 299 & 255, 1, 0, 199, 0, 0]),
  lossless: bytes('RIFF', [0, 0, 0, 0], 'WEBPVP8L', [9, 0, 0, 0, 0x2f, 0x2b, 0xc1, 0x31, 0, 0, 0, 0, 0, 0]),
  lossy: bytes('RIFF', [0, 0, 0, 0], 'WEBPVP8 ', [9, 0, 0, 0, 0, 0, 0, 0x9d, 1, 0x2a, 300 & 255, 1, 200, 0]),
};

test('format and size of a picture are read from its header alone', () => {
  expect(readImageHeader(png(3, 2))).toEqual({ format: 'png', width: 3, height: 2 });
  expect(readImageHeader(jpeg(1200, 300))).toEqual({ format: 'jpeg', width: 1200, height: 300 });
  for (const file of Object.values(webp)) {
    expect(readImageHeader(file)).toEqual({ format: 'webp', width: 300, height: 200 });
  }
});

test('what is no picture, is cut short, or claims to be huge is refused in words before anything is decoded', () => {
  const refused = (file: Uint8Array, size = file.length): string => findMarkFault(file, size) ?? '';
  for (const file of [bytes('<svg xmlns="http://www.w3.org/2000/svg"/>'), bytes('GIF89a'), bytes(''), png(0, 5)]) {
    expect(refused(file)).toMatch(/^This is no PNG, JPEG or WebP picture\./);
  }
  for (const file of [png(30, 20), jpeg(30, 20), ...Object.values(webp)]) {
    // Cut anywhere it is refused or read as it was; nothing is thrown.
    for (let length = 0; length < file.length; length++) {
      const found = readImageHeader(file.subarray(0, length));
      if (found) expect(found).toEqual(readImageHeader(file));
    }
    expect(refused(file)).toBe('');
  }
  expect(refused(png(40_000, 40_000))).toMatch(/^This picture has 40000 × 40000 pixels\./);
  expect(refused(png(MARK_LIMITS.side + 1, 10))).not.toBe('');
  expect(refused(png(10, 10), MARK_LIMITS.bytes + 1)).toMatch(/over 5 MB/);
});

test('a kept look that was not written by us is left out, part by part', () => {
  const nothing = { colour: null, mark: null };
  const mark = 'data:image/png;base64,iVBORw0KGgo=';
  for (const text of [null, '', '{', '7', '[]', '{"colour":"red","mark":"https://example.org/a.png"}']) {
    expect(readKeptLook(text)).toEqual(nothing);
  }
  expect(readKeptLook(JSON.stringify({ colour: '#12ab9f', mark: 'data:image/svg+xml;base64,AAAA' }))).toEqual({
    colour: '#12ab9f',
    mark: null,
  });
  expect(readKeptLook(JSON.stringify({ colour: '#12ab9f', mark }))).toEqual({ colour: '#12ab9f', mark });
});

test('an own colour stays as it is where it can be read, and is moved toward the ink where it cannot', () => {
  // WCAG 2.2: black on white is 21 to 1; #767676 on white is the palest grey of 4.5 to 1.
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
  expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  for (const [paper, ink] of [
    ['#f6f0e3', '#211d18'],
    ['#1a1b1a', '#f0ead8'],
  ]) {
    for (const colour of ['#ffff00', '#0b3d91', '#ff0000', '#ffffff', '#000000', '#7f7f7f']) {
      const written = readableOn(colour, paper, ink);
      expect(contrast(written, paper)).toBeGreaterThanOrEqual(4.5);
      if (contrast(colour, paper) >= 4.5) expect(written).toBe(colour);
    }
  }
  expect(readableOn('red', '#f6f0e3', '#211d18')).toBe('#211d18');
});

const toMark = (file: Uint8Array): string => `data:image/png;base64,${Buffer.from(file).toString('base64')}`;
const saved = (text: string): string | undefined => {
  const reading = readFile(text);
  if ('refused' in reading) throw new Error(reading.refused);
  return reading.ownLook;
};

afterEach(() => void vi.unstubAllGlobals());

test('what saves everything holds the own look, and it is read back from there; a backup does not', () => {
  const look = { colour: '#12ab9f', mark: toMark(png(30, 20)) };
  const stored = new Map([
    [OWN_LOOK_KEY, JSON.stringify(look)],
    ['slantwise.rules', '[]'],
    ['of another page', 'secret'],
  ]);
  vi.stubGlobal('localStorage', {
    length: stored.size,
    key: (at: number) => [...stored.keys()][at] ?? null,
    getItem: (key: string) => stored.get(key) ?? null,
  });
  const player = makePlayer();
  const { text } = writeEverything([player], 1000);
  expect(readSavedLook(saved(text))).toEqual({ look });
  expect(text).not.toContain('secret');
  // Wiped: not in the next file.
  stored.delete(OWN_LOOK_KEY);
  expect(saved(writeEverything([player], 1000).text)).toBeUndefined();
  expect(saved(writeFile([player], 1000))).toBeUndefined();
});

test('files of earlier versions open without a look, and a file that was written with one still opens', () => {
  const fixture = (name: string): string => readFileSync(join(import.meta.dirname, '../fixtures', name), 'utf8');
  const older = JSON.parse(fixture('lesson-book-file-v3.json')) as { readonly alongside?: unknown };
  expect(older.alongside).toBeUndefined();
  expect(readSavedLook(saved(JSON.stringify(older)))).toBeUndefined();
  const found = readSavedLook(saved(fixture('everything-v3.json')));
  expect(found).toMatchObject({ look: { colour: '#0b3d91' } });
  // The mark in it: a PNG of 12 by 8 px.
  const mark = found && 'look' in found ? found.look.mark! : '';
  const { width, height } = PNG.sync.read(Buffer.from(mark.slice(mark.indexOf(',') + 1), 'base64'));
  expect([width, height]).toEqual([12, 8]);
});

test('a look in a file that is damaged, foreign or huge is refused before it is decoded, and says what to do', () => {
  const mark = toMark(png(30, 20));
  const of = (look: unknown): ReturnType<typeof readSavedLook> => readSavedLook(JSON.stringify(look));
  const damaged = /damaged\. Choose your picture again/;
  for (const bad of [
    { colour: null, mark: 'https://example.org/a.png' },
    { colour: null, mark: mark.replace('image/png', 'image/svg+xml') },
    { colour: null, mark: `${mark}<` },
    { colour: 'red', mark },
    { colour: null, mark, script: 'x' },
    { mark },
    [mark],
  ])
    expect(of(bad)).toEqual({ fault: expect.stringMatching(damaged) as string });
  expect(readSavedLook('{')).toEqual({ fault: expect.stringMatching(damaged) as string });
  expect(of({ colour: null, mark: toMark(bytes('GIF89a, with enough after it to look like a header')) })).toEqual({
    fault: expect.stringMatching(/no PNG.*Choose one of these/) as string,
  });
  expect(of({ colour: null, mark: toMark(png(40_000, 40_000)) })).toEqual({
    fault: expect.stringMatching(/Choose a smaller one/) as string,
  });
  expect(of({ colour: null, mark: null })).toBeUndefined();
  expect(readSavedLook(undefined)).toBeUndefined();
});
