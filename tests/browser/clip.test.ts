import { createHash } from 'node:crypto';
import jsQR from 'jsqr';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  FILM_NOTHING,
  decodePng,
  drawFrames,
  dropFile,
  makeByTouch,
  openClip,
  playFrames,
  psnr,
  putFaultFirst,
  wishShort,
  type Picture,
  type Saved,
} from './clipPage';
import { readEmbedded } from '../../src/export/files/embedded';
import { readHash } from '../../src/export/link/link';
import { askFfprobe, readGif, readMp4, readWebm, type Container } from './containers';
import { DRAW_NOTHING, DRAW_NOTHING_ON_PAGE, look, openDesk } from './deskPage';
import { launch, offOrigin, SCREENS, type Witness } from './support';

let browser: Browser | undefined;
let page: Page;
let witness: Witness;
/** Another page, for clips whose figure nobody looks at. */
let plain: Page;
let seen: Witness;
const made: Record<string, Saved> = {};

beforeAll(async () => {
  browser = await launch();
  const touch = { viewport: SCREENS.tablet, hasTouch: true } as const;
  ({ page, witness } = await openDesk(browser, { ...touch, init: [DRAW_NOTHING_ON_PAGE] }));
  const bare = { ...touch, bypassCSP: true, init: [DRAW_NOTHING, putFaultFirst] };
  ({ page: plain, witness: seen } = await openDesk(browser, bare));
  await plain.evaluate((fault) => Object.assign(globalThis, { fault }), FILM_NOTHING);
  for (const each of [page, plain]) {
    await each.getByRole('button', { name: 'Typical swings' }).first().tap();
    await each.getByRole('button', { name: 'Cupped wrist' }).tap();
    await openClip(each);
    await wishShort(each);
  }
});
afterAll(() => browser?.close());

const FPS = 25;
/** Address held 0.4 s, the swing at the player's own speed (0.75 s back, 0.25 s down, 0.45 s through), the finish held 0.75 s. */
const SECONDS = 2.6;
const COUNT = Math.round(SECONDS * FPS);

/** The card at the end of "best", at the frames of the film. */
const CARD_COUNT = Math.round(3.4 * FPS);

// The first clip of a page: its maker is fetched while the desk goes on.
test('while a clip is made the desk goes on working, and what is dialled meanwhile does not get into the clip', async () => {
  await page.getByLabel('Format').selectOption('best');
  await page.getByLabel('End card with code').setChecked(true);
  const flexion = async (): Promise<number> => (await look(page)).document.movements.leadWristFlexionDeg;
  const dial = page.locator('[data-dial="leadWristFlexion"] input[type="range"]');
  const making = makeByTouch(page, 'Make the clip');
  await page.locator('.work').waitFor();
  await dial.press('ArrowRight');
  expect(await flexion()).toBe(-19);
  expect(await page.locator('.work').count()).toBe(1);
  made['best'] = await making;
  expect(readEmbedded(made['best'].bytes)).toMatchObject({ document: { movements: { leadWristFlexionDeg: -20 } } });
  await page.getByLabel('End card with code').setChecked(false);
  await dial.press('ArrowLeft');
  expect(await flexion()).toBe(-20);
});

const KINDS: readonly (readonly [string, string, RegExp, (bytes: Buffer) => Container, RegExp])[] = [
  ['best', 'mp4', /^MP4 \(H\.264\), 320 × 180/, readMp4, /^avc1/],
  ['vp9', 'webm', /^WebM \(VP9\), 320 × 180/, readWebm, /^V_VP9$/],
  ['vp8', 'webm', /^WebM \(VP8\), 320 × 180/, readWebm, /^V_VP8$/],
  ['gif', 'gif', /^GIF, 320 × 180/, readGif, /^gif$/],
];

/** What ffprobe calls the codecs; asked as well where it is installed. */
const FFPROBE_NAMES: Readonly<Record<string, string>> = { best: 'h264', vp9: 'vp9', vp8: 'vp8', gif: 'gif' };

/** Frames of these are looked at further down. */
const LOOKED_AT: readonly string[] = ['best', 'vp9'];

for (const [kind, extension, said, read, codec] of KINDS) {
  test(`a clip made by touch as "${kind}" names its format, and another reader counts every frame at its time`, async () => {
    if (!made[kind]) {
      const on = LOOKED_AT.includes(kind) ? page : plain;
      await on.getByLabel('Format').selectOption(kind);
      made[kind] = await makeByTouch(on, 'Make the clip');
    }
    const file = made[kind];
    const count = COUNT + (kind === 'best' ? CARD_COUNT : 0);
    expect(file.name).toMatch(new RegExp(`^slantwise-.*\\.${extension}$`));
    expect(file.said).toMatch(said);
    const container = read(file.bytes);
    expect(container.codec).toMatch(codec);
    expect([container.width, container.height]).toEqual([320, 180]);
    expect(container.times).toHaveLength(count);
    // No frame doubled, none dropped: frame i stands at i / fps, to the container's own tick of a millisecond.
    container.times.forEach((time, i) => expect(Math.abs(time - i / FPS)).toBeLessThan(1.1e-3));
    expect(Math.abs(container.seconds - count / FPS)).toBeLessThan(1.1e-3);
    const probed = askFfprobe(file.bytes, extension);
    if (!probed) return;
    expect(probed).toMatchObject({ codec: FFPROBE_NAMES[kind], width: 320, height: 180, frames: count });
    expect(Math.abs(probed.seconds - count / FPS)).toBeLessThan(0.5 / FPS);
  });
}

test('the same clip made again is the same file, byte by byte (VP9)', async () => {
  await page.getByLabel('Format').selectOption('vp9');
  const again = await makeByTouch(page, 'Make the clip');
  const hash = ({ bytes }: Saved): string => createHash('sha256').update(bytes).digest('hex');
  expect(hash(again)).toBe(hash(made['vp9']));
});

const AT = [0, 19, 28, 34, 45] as const;
let direct: Picture[];

test('the same frame drawn twice has the same pixels', async () => {
  // The second time in another order: a frame depends on nothing that was drawn before it.
  const pictures = await drawFrames(page, [...AT, ...AT.toReversed()]);
  direct = pictures.slice(0, AT.length);
  const again = pictures.slice(AT.length).toReversed();
  direct.forEach((picture, i) => expect(psnr(picture, again[i])).toBe(Infinity));
  // Frames of different times differ, or the comparison would say nothing.
  expect(psnr(direct[1], direct[3])).toBeLessThan(35);
});

/** How much of a picture is nearly of a colour, px. */
const countOf = ({ data }: Picture, [r, g, b]: readonly [number, number, number]): number => {
  let found = 0;
  for (let i = 0; i < data.length; i += 4) {
    if (Math.abs(data[i] - r) + Math.abs(data[i + 1] - g) + Math.abs(data[i + 2] - b) < 24) found++;
  }
  return found;
};

test('on the way to a checkpoint, at it, in the change and after it a frame is the same in whatever order it is drawn', async () => {
  await page.getByLabel('Swings', { exact: true }).selectOption('ghosted');
  await page.getByLabel('Slow downswing').selectOption('downTheLine');
  // Frames of 25 a second: slow, pattern growing, stop, second stop, change, becoming the other, become it.
  const at = [80, 107, 150, 235, 300, 325, 370];
  const pictures = await drawFrames(page, [...at, ...[3, 6, 0, 5, 2, 4, 1].map((i) => at[i])]);
  const [, growing, stop, second, change, , become] = pictures;
  [3, 6, 0, 5, 2, 4, 1].forEach((i, k) => expect(psnr(pictures[i], pictures[at.length + k])).toBe(Infinity));
  // Verdict and number stand there once the pattern has grown; the second body, in its own colour, in the change alone.
  const [steep, plum] = [
    [0x82, 0x37, 0x00],
    [0x7d, 0x2f, 0x63],
  ] as const;
  for (const picture of [stop, second]) expect(countOf(picture, steep)).toBeGreaterThan(400);
  expect(countOf(growing, steep)).toBeLessThan(countOf(stop, steep) * 0.8);
  expect(countOf(change, plum)).toBeGreaterThan(400);
  for (const picture of [stop, second, become]) expect(countOf(picture, plum)).toBeLessThan(20);
  await wishShort(page);
});

for (const [kind, type] of [
  ['best', 'video/mp4'],
  ['vp9', 'video/webm'],
] as const) {
  test(`frames of the "${kind}" clip played back are the frames that were drawn, at five times`, async () => {
    const played = await playFrames(
      page,
      made[kind],
      type,
      // Early in the frame: past its middle the player may already show the key frame that comes next.
      AT.map((frame) => (frame + 0.25) / FPS),
      FPS,
    );
    played.forEach((picture, i) => {
      const own = psnr(picture, direct[i]);
      // 30 dB: below it the loss of an 8-bit video is usually called visible (common practice).
      expect(own, `frame ${AT[i]}`).toBeGreaterThan(30);
      // And it is this frame rather than any other of the five.
      direct.forEach((other, k) => k === i || expect(own).toBeGreaterThan(psnr(picture, other)));
    });
  });
}

/** How well a text written on the page is found in the upper part of a picture: best normalised cross-correlation, -1 to 1. */
async function findText(picture: Picture, text: string): Promise<number> {
  const url = await page.evaluate((sentence) => {
    const canvas = document.createElement('canvas');
    const pen = canvas.getContext('2d')!;
    const font = '500 9px "Sofia Sans Semi Condensed Variable"';
    pen.font = font;
    canvas.width = Math.ceil(pen.measureText(sentence).width);
    canvas.height = 10;
    pen.font = font;
    pen.fillStyle = '#f6f0e3';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.fillStyle = '#4a4234';
    pen.fillText(sentence, 0, 8);
    return canvas.toDataURL('image/png');
  }, text);
  const wanted = decodePng(url);
  const grey = ({ data }: Picture, at: number): number => data[at * 4] + data[at * 4 + 1] + data[at * 4 + 2];
  const template = Array.from({ length: wanted.width * wanted.height }, (_, i) => grey(wanted, i));
  const centred = (values: readonly number[]): number[] => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return values.map((value) => value - mean);
  };
  const a = centred(template);
  const size = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
  let best = -1;
  for (let y = 0; y <= picture.height * 0.2; y++) {
    for (let x = 8; x <= 20; x++) {
      const b = centred(
        template.map((_, i) =>
          grey(picture, (y + Math.floor(i / wanted.width)) * picture.width + x + (i % wanted.width)),
        ),
      );
      best = Math.max(best, a.reduce((sum, value, i) => sum + value * b[i], 0) / (size(a) * size(b) || 1));
    }
  }
  return best;
}

test('every decoded frame says that it is an illustration from a model, not a recording', async () => {
  const played = await playFrames(page, made['best'], 'video/mp4', [0.02, 1.1, 2.5], FPS);
  for (const picture of played) {
    const found = await findText(picture, 'Illustration from a model, not a recording');
    expect(found).toBeGreaterThan(0.7);
    expect(await findText(picture, 'Recording of a golfer, not an invention at all')).toBeLessThan(found - 0.3);
  }
});

test('stopping midway works in the page\u2019s next turn, says so and leaves no file', async () => {
  await page.getByLabel('Format').selectOption('best');
  await page.getByLabel('Size').selectOption('1080p');
  const before = await page.locator('.files li').count();
  await page.getByRole('button', { name: 'Make the clip', exact: true }).tap();
  await page.getByText(/frame ([3-9]|\d\d) of/).waitFor();
  // How many seconds that is the bench measures; here nothing may have to be waited for.
  const said = await page.evaluate(async () => {
    [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Stop')!.click();
    await new Promise((resolve) => setTimeout(resolve));
    return document.querySelector('.work-excuse')?.textContent;
  });
  expect(said).toBe('Stopped. No file was made.');
  expect(await page.locator('.work').count()).toBe(0);
  expect(await page.locator('.files li').count()).toBe(before);
  await page.getByLabel('Size').selectOption('draft');
});

test('another reader finds the code on the last card in the decoded film, though it is only 180 px tall: it opens the swing', async () => {
  const [card] = await playFrames(page, made['best'], 'video/mp4', [COUNT / FPS + 2], FPS);
  const code = jsQR(new Uint8ClampedArray(card.data), card.width, card.height);
  expect(readHash(new URL(code!.data).hash)).toMatchObject({ document: { movements: { leadWristFlexionDeg: -20 } } });
});

for (const kind of ['best', 'vp9', 'vp8', 'gif']) {
  test(`the clip made as "${kind}" dropped on the page opens as the swing it was made from`, async () => {
    await page.getByRole('button', { name: 'Reset all' }).first().click();
    expect((await look(page)).document.movements.leadWristFlexionDeg).toBe(0);
    await dropFile(page, made[kind]);
    await expect.poll(async () => (await look(page)).document.movements.leadWristFlexionDeg).toBe(-20);
  });
}

describe('when a clip comes to nothing', () => {
  beforeAll(() => plain.getByLabel('Format').selectOption('best'));

  /** Code by which the encoder does this with its tenth frame. */
  const onTenth = (act: string): string => `{
    const encode = VideoEncoder.prototype.encode;
    const errors = new WeakMap();
    const fail = (encoder, name) => { encoder.close(); errors.get(encoder)(new DOMException('gone', name)); };
    VideoEncoder = class extends VideoEncoder {
      constructor(init) { super(init); errors.set(this, init.error); }
    };
    let count = 0;
    VideoEncoder.prototype.encode = function (...all) {
      if (++count === 10) { ${act} }
      return encode.apply(this, all);
    };
    const getContext = OffscreenCanvas.prototype.getContext;
    OffscreenCanvas.prototype.getContext = function (kind, ...rest) {
      const pen = getContext.call(this, kind, ...rest);
      if (kind.startsWith('webgl')) self.graphics = pen;
      return pen;
    };
  }`;

  test.each([
    [
      'the encoder is lost',
      `return fail(this, 'EncodingError');`,
      /^The encoder of this device gave up\. No file was made\./,
    ],
    [
      'memory runs out',
      `throw new RangeError('Array buffer allocation failed');`,
      /^There is not enough memory for this\./,
    ],
    [
      'the graphics go',
      `self.graphics.getExtension('WEBGL_lose_context').loseContext();`,
      /^The graphics of this device took/,
    ],
    [
      'the page was hidden and the encoder taken back',
      `return fail(this, 'QuotaExceededError');`,
      /^The page was hidden/,
    ],
  ])('%s: it says what happened and leaves no file', async (what, act, words) => {
    const before = await plain.locator('.files li').count();
    await plain.evaluate(
      ({ fault, state }) => {
        Object.assign(globalThis, { fault });
        Object.defineProperty(document, 'visibilityState', { value: state, configurable: true });
      },
      // No pixel is looked at: none is filled in the worker either.
      { fault: `${FILM_NOTHING} ${onTenth(act)}`, state: what.includes('hidden') ? 'hidden' : 'visible' },
    );
    await expect(makeByTouch(plain, 'Make the clip')).rejects.toThrow(words);
    expect(await plain.locator('.work-excuse').innerText()).toContain('No file was made.');
    expect(await plain.locator('.files li').count()).toBe(before);
    expect(await plain.locator('.work').count()).toBe(0);
  });

  test('without an encoder, and without drawing beside the page, it still comes out: as a GIF, and the drawer says so', async () => {
    await plain.evaluate(() =>
      ['VideoEncoder', 'OffscreenCanvas'].forEach((api) => Reflect.deleteProperty(globalThis, api)),
    );
    const file = await makeByTouch(plain, 'Make the clip');
    expect(file.said).toMatch(/^GIF, 320 × 180/);
    expect(readGif(file.bytes).times).toHaveLength(COUNT);
    expect(seen.errors).toEqual([]);
  });
});

test('finished files stay listed until they are dismissed', async () => {
  const files = page.locator('.files li');
  const count = await files.count();
  expect(count).toBeGreaterThanOrEqual(3);
  await page.getByRole('button', { name: 'Close', exact: true }).first().click();
  await openClip(page);
  expect(await files.count()).toBe(count);
  await files
    .first()
    .getByRole('button', { name: /^Dismiss/ })
    .tap();
  expect(await files.count()).toBe(count - 1);
});

test('nothing went wrong on the page, and nothing was sent anywhere', () => {
  expect(witness.errors).toEqual([]);
  expect(witness.violations).toEqual([]);
  expect(offOrigin(witness)).toEqual([]);
});
