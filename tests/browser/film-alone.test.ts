import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sayRefused } from '../../src/words/film/film';
import type { FilmAlone } from './film-alone/page';
import { evenTimes, type Numbered } from './film-alone/films';
import { serveFolder } from './serve';
import { launch } from './support';

declare const alone: FilmAlone;

/** Random jumps, steps and turns on each film. The whole proof: `FILM_JUMPS=500`. */
const JUMPS = Number(process.env['FILM_JUMPS'] ?? 100);
const FRAMES = 90;

let browser: Browser | undefined;
let page: Page;
let site: Awaited<ReturnType<typeof serveFolder>> | undefined;
beforeAll(async () => {
  [browser, site] = await Promise.all([launch(), serveFolder(join(import.meta.dirname, 'film-alone'))]);
  page = await browser.newPage();
  await page.goto(site.address);
  await page.waitForFunction(() => 'alone' in globalThis);
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const NUMBERED: readonly (Pick<Numbered, 'codec' | 'container'> & { readonly name: string })[] = [
  { name: 'H.264 in MP4', codec: 'avc', container: 'mp4' },
  { name: 'H.264 in MOV', codec: 'avc', container: 'mov' },
  { name: 'VP8 in WebM', codec: 'vp8', container: 'webm' },
  { name: 'VP9 in WebM', codec: 'vp9', container: 'webm' },
  { name: 'AV1 in MP4', codec: 'av1', container: 'mp4' },
];
const jump = (order: Pick<Numbered, 'codec' | 'container'>, count: number) =>
  page.evaluate(([film, times]) => alone.jump(film, times, 11), [
    { ...order, times: evenTimes(FRAMES, 240) },
    count,
  ] as const);

describe('numbered frames', () => {
  test.for(NUMBERED)(
    '$name: every frame that is asked for is the one that is shown',
    async ({ codec, container }, { skip }) => {
      const canEncode = await page.evaluate((name) => alone.canEncode(name), codec);
      if (!canEncode) skip(`This browser encodes no ${codec}: the film cannot be made.`);
      const { info, wrong, tints } = await jump({ codec, container }, JUMPS);
      // The browser's own colours, and those of the glance.
      const [whole, glance] = tints!;
      for (const [k, value] of glance.entries()) expect(Math.abs(value - whole[k])).toBeLessThanOrEqual(4);
      expect(info).toMatchObject({ kind: 'video', w: 320, h: 160, frames: FRAMES });
      expect(Math.round(info!.fps!)).toBe(240);
      expect(wrong).toEqual([]);
    },
  );
});

/** Why each of these is not opened. */
const REFUSED: Readonly<Record<string, string>> = {
  empty: 'empty',
  noise: 'not-film',
  words: 'not-film',
  'HEIC photo': 'photo',
  'cut MP4': 'cut',
  'cut MP4 with its index in front': 'cut',
  'cut WebM': 'cut',
  'picture 100,000 px wide': 'too-many-pixels',
  'film 65,535 px wide': 'too-many-pixels',
  'over 4 GB': 'too-large',
  'over a minute': 'too-long',
  'over a minute and says nothing of its length': 'too-long',
  'no track': 'damaged',
  'sound only': 'no-video',
  HEVC: 'codec',
  'codec that nobody knows': 'codec',
  'codec that nobody plays': 'codec',
  'hole at the start': 'damaged',
};
/** What each of these says of itself; every frame of it shows its own number. */
const OPENED: Readonly<Record<string, object>> = {
  'film named as a picture': { kind: 'video', frames: 24, fps: 60 },
  'picture named as a film': { kind: 'picture', w: 30, h: 50, frames: 1 },
  'turned by 90': { w: 160, h: 320, frames: 24 },
  'turned by 180': { w: 320, h: 160, frames: 24 },
  'turned by 270': { w: 160, h: 320, frames: 24 },
  'uneven times': { frames: 24 },
  're-timed slow motion': { frames: 24 },
  // Five frames lie before the start that the edit list sets.
  'start cut off by an edit list': { frames: 19, fps: 60 },
  'late start by an edit list': { frames: 24, fps: 60 },
  'with sound': { frames: 24, fps: 60 },
  'hole in the middle': { frames: 90, fps: 60 },
};
/** A refusal, and the first picture of a film that opens, come within a second. */
const SOON_MS = 1000;
const openOne = (name: string) => page.evaluate((one) => alone.open(one), name);

describe('a file', () => {
  test('is on one of the two lists below', async () => {
    expect(new Set(await page.evaluate(() => alone.names))).toEqual(
      new Set([...Object.keys(REFUSED), ...Object.keys(OPENED)]),
    );
  });

  test.each(Object.entries(REFUSED))('%s: is refused as %s', async (name, reason) => {
    const { refused, ms } = await openOne(name);
    expect(refused).toBe(reason);
    expect(ms).toBeLessThan(SOON_MS);
  });

  test('that is refused has a remedy of its own for each reason, and the codec in it', async () => {
    const reasons = [...new Set(Object.values(REFUSED))];
    expect(new Set(reasons.map((reason) => sayRefused(reason))).size).toBe(reasons.length);
    for (const [name, codec] of [
      ['HEVC', 'HEVC'],
      ['codec that nobody plays', 'ProRes'],
      ['HEIC photo', 'HEIC'],
    ]) {
      const found = await openOne(name);
      expect(found.codec).toBe(codec);
      expect(sayRefused(found.refused!, found.codec)).toContain(codec);
    }
    expect((await openOne('codec that nobody knows')).codec).toBeUndefined();
  });

  test.each(Object.entries(OPENED))('%s: opens, and every frame shows its own number', async (name, says) => {
    const { info, refused, wrong = [], lost = [], ms } = await openOne(name);
    expect(refused).toBeUndefined();
    expect(info).toMatchObject(says);
    expect(wrong).toEqual([]);
    expect(ms).toBeLessThan(SOON_MS);
    if (name !== 'hole in the middle') return expect(lost).toEqual([]);
    // Frames from the hole to the next key frame are lost, and said to be; none shows another's picture.
    expect(lost.length).toBeGreaterThan(0);
    expect(lost.every((frame) => frame >= 30 && frame < 60)).toBe(true);
  });

  test('leaves no worker behind once it is closed or refused', async () => {
    await expect.poll(() => page.workers().length).toBe(0);
  });
});

/** Films that are drawn, encoded, opened and read. More: `FILMS=20`. */
const FILMS = Number(process.env['FILMS'] ?? 2);
/**
 * How far the picture may lie from where the camera puts a point, px of a film of 1080 by 1920. It is drawn and encoded at half that size: the
 * edge of a thing in it is good to some 3 of its own.
 */
const AGREES = { player: 8, stick: 10 } as const;
const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1];

describe("a swing that is drawn in the app's own scene, filmed, opened and marked", () => {
  test(
    'stands in the picture where its marks are, shows its shaft to the search for lines, and is read within the give or take',
    async () => {
      const lines: number[] = [];
      const readings: { off: number; plusMinus: number; word?: boolean }[] = [];
      // Where something to be marked lies beside the picture, nobody could mark it: the next seed.
      for (let seed = 1; readings.length < 2 * FILMS && seed < 4 * FILMS + 4; seed++) {
        const film = await page.evaluate((number) => alone.render(number), seed);
        if (!film) continue;
        for (const [name, off] of film.off) expect(off, `film ${seed}, ${name}`).toBeLessThan(AGREES.player);
        expect(film.stick, `film ${seed}, stick`).toBeLessThan(AGREES.stick);
        // The check can fail: a camera half a degree aside does not agree.
        expect(film.turned, `film ${seed}, stick`).toBeGreaterThan(AGREES.stick);
        if (film.line !== undefined) lines.push(film.line);
        readings.push(...film.readings);
        console.log(
          `film ${seed}: ${film.readings.map(({ off, plusMinus }) => `${off.toFixed(1)} of ± ${plusMinus.toFixed(1)} cm`).join(', ')}; line ${film.line?.toFixed(1)} px`,
        );
      }
      expect(readings.length).toBe(2 * FILMS);
      expect(lines.length).toBeGreaterThanOrEqual(FILMS / 2);
      expect(median(lines)).toBeLessThan(6);
      const inside = readings.filter(({ off, plusMinus }) => Math.abs(off) <= plusMinus).length;
      // Of a few films none may be outside; of many, one in eight.
      expect(inside / readings.length).toBeGreaterThanOrEqual(FILMS < 5 ? 1 : 0.88);
      expect(readings.filter(({ word }) => word === false).length).toBeLessThanOrEqual(0.05 * readings.length);
    },
    FILMS * 60_000,
  );
});

describe('where workers cannot decode', () => {
  beforeAll(() => page.evaluate(() => alone.takeDecoderAway()));

  test.each(NUMBERED)('$name: a video element shows every frame that is asked for', async (film) => {
    const before = await page.evaluate(() => alone.elements());
    const { info, wrong } = await jump(film, Math.ceil(JUMPS / 4));
    expect(info).toMatchObject({ frames: FRAMES });
    expect(wrong).toEqual([]);
    expect(await page.evaluate(() => alone.elements())).toBe(before + 1);
  });

  test.each([
    ['turned by 90', []],
    ['turned by 270', []],
    ['uneven times', []],
    ['start cut off by an edit list', []],
    // The edit ends where the last frame begins: the element stops before it.
    ['late start by an edit list', [23]],
  ])('%s: shows every frame too', async (name, without) => {
    const { info, wrong, lost } = await openOne(name);
    expect(info).toMatchObject(OPENED[name]);
    expect([wrong, lost]).toEqual([[], without]);
  });
});
