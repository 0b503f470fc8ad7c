import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { DRAW_NOTHING, openDesk, openDrawer } from './deskPage';
import { openFilmMaker, stageSwing } from './filmMaker';
import { readFile } from '../../src/record/file/readFile';
import { addPlayer, download, inStore, openBook, press } from './lessonsPage';
import { launch, offOrigin, SCREENS, type Visit } from './support';

let browser: Browser | undefined;
let visit: Visit;
let page: Page;
let context: BrowserContext;
let maker: Awaited<ReturnType<typeof openFilmMaker>>;
beforeAll(async () => {
  browser = await launch();
  maker = await openFilmMaker(browser);
  visit = await openDesk(browser, { init: [DRAW_NOTHING], hasTouch: true });
  ({ page, context } = visit);
  await openDrawer(page, 'seen');
  await page.getByRole('radio', { name: 'Video' }).check();
});
afterEach(async () => {
  // What failed half way leaves the next test its page.
  const close = page.getByRole('button', { name: 'Close film' });
  if (await close.isVisible()) await close.click();
  expect(visit.witness.errors).toEqual([]);
  expect(offOrigin(visit.witness)).toEqual([]);
});
afterAll(async () => {
  await context?.close();
  await browser?.close();
});

const choose = (name: string, bytes: Buffer, mimeType = 'video/mp4'): Promise<void> =>
  page.setInputFiles('.film-choose input', { name, mimeType, buffer: bytes });
const openOne = async (name: string, bytes: Buffer): Promise<void> => {
  await choose(name, bytes);
  await page.locator('.film-sheet canvas[data-frame="0"]').waitFor();
};
const closeOne = async (): Promise<void> => {
  await page.getByRole('button', { name: 'Close film' }).click();
  await page.locator('.film-open').waitFor();
};

/** Goes to a frame by the slider and waits until its picture is drawn. */
const goTo = async (frame: number): Promise<void> => {
  await page.locator('.film-scales input').fill(String(frame));
  await page.locator(`.film-sheet canvas[data-frame="${frame}"]`).waitFor();
};

// What becomes of every kind of file, and which frame is shown, is looked at without the desk: film-alone.test.ts.
describe('on the desk', () => {
  test('a file that is refused says why and what to do, and the next one opens', async () => {
    const whole = await maker.make({ codec: 'avc', container: 'mp4', fps: 60, w: 160, h: 160, frames: 12 });
    const refuse = async (name: string, bytes: Buffer, words: RegExp): Promise<void> => {
      await choose(name, bytes);
      await page.locator('.film-problem').filter({ hasText: words }).waitFor({ timeout: 5000 });
    };
    await refuse('empty.mp4', Buffer.alloc(0), /empty/);
    await refuse('cut.mp4', whole.subarray(0, Math.floor(whole.length / 2)), /breaks off/);
    await openOne('whole.mp4', whole);
    expect(await page.locator('.film-place p').innerText()).toContain('of 12, 60 a second');
    // What the film lies over is out of reach of keys; the bar above it is not.
    const reached = new Set<string | null>();
    for (let k = 0; k < 40; k++) {
      await page.keyboard.press('Tab');
      const place = await page.evaluate(() =>
        ['film-desk', 'bar', 'board', 'drawer'].find((name) => document.activeElement?.closest(`.${name}`)),
      );
      reached.add(place ?? null);
    }
    expect(reached).toContain('film-desk');
    expect(reached).not.toContain('board');
    expect(reached).not.toContain('drawer');
    await closeOne();
    expect(await page.evaluate(() => document.activeElement?.matches('.film-choose input'))).toBe(true);
    expect(await page.locator('.board').evaluate((board: HTMLElement) => board.inert)).toBe(false);
  });

  test('of two films pasted one right after the other the second stays, and nothing of the first', async () => {
    const films = await Promise.all(
      [30, 5].map((frames) => maker.make({ codec: 'avc', container: 'mp4', fps: 60, w: 160, h: 160, frames })),
    );
    await page.evaluate(
      (texts) => {
        for (const text of texts) {
          const clipboardData = new DataTransfer();
          clipboardData.items.add(new File([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))], 'film.mp4'));
          window.dispatchEvent(new ClipboardEvent('paste', { clipboardData }));
        }
      },
      films.map((film) => film.toString('base64')),
    );
    await page.locator('.film-sheet canvas[data-frame="0"]').waitFor();
    const decoders = (): number => page.workers().filter((worker) => worker.url().includes('video')).length;
    await expect.poll(decoders).toBe(1);
    expect(await page.locator('.film-place p').innerText()).toContain('of 5,');
    await closeOne();
    await expect.poll(decoders).toBe(0);
  });
});

describe('from a film to both readings', () => {
  const scene = stageSwing();
  let film: Buffer | undefined;
  test.each(['tablet', 'phone'] as const)(
    'by touch on a %s: at most 20 taps',
    async (screen) => {
      await page.setViewportSize(SCREENS[screen]);
      film ??= await maker.make(scene.order);
      await openOne('swing.mp4', film);
      // Opening, and then every touch of the screen; a drag of the slider is one.
      let taps = 1;
      const canvas = page.locator('.film-sheet canvas').first();
      const shown = async (): Promise<number> => Number(await canvas.getAttribute('data-frame'));
      const tap = async ([u, v]: readonly [number, number]): Promise<void> => {
        const { x, y, width, height } = (await canvas.boundingBox())!;
        await page.touchscreen.tap(x + (u / scene.order.w) * width, y + (v / scene.order.h) * height);
        taps++;
      };
      for (const at of Object.values(scene.address)) await tap(at);
      // The slider leads near, the fine scale to the frame. Whoever goes on from a whole address is on the way to the next place.
      await goTo(scene.armFrame - 3);
      const fine = (await page.locator('.film-fine').boundingBox())!;
      await page.touchscreen.tap(fine.x + (fine.width * 15.5) / 25, fine.y + fine.height / 2);
      await page.locator(`.film-sheet canvas[data-frame="${scene.armFrame}"]`).waitFor();
      taps += 2;
      expect(await page.locator('.film-places [aria-pressed="true"]').innerText()).toContain('Lead arm parallel');
      const arm = scene.frames[scene.armFrame];
      for (const at of [arm.hands, arm.clubHead, arm.trailShoulder, arm.trailElbow]) await tap(at);
      await page.locator('.film-reading .film-verdict b').first().waitFor();
      // From there the desk leads to where the shaft should be level, and then to the frames on either side of it.
      await page.locator('.film-places').getByRole('button', { name: 'Shaft parallel' }).tap();
      taps++;
      const both = page.locator('.film-reading .film-verdict b');
      for (let before = scene.armFrame; (await both.count()) < 2;) {
        await expect.poll(shown).not.toBe(before);
        before = await shown();
        for (const at of [scene.frames[before].hands, scene.frames[before].clubHead]) await tap(at);
        // Either it leads on, or both readings are there.
        await expect.poll(async () => (await both.count()) === 2 || (await shown()) !== before).toBe(true);
      }
      expect(taps).toBeLessThanOrEqual(20);
      for (const [k, truth] of scene.truthCm.entries()) {
        const number = async (selector: string): Promise<number> =>
          Number(
            (await page.locator(`.film-reading ${selector}`).nth(k).innerText())
              .replace('−', '-')
              .replace(/[^\d.-]/g, ''),
          );
        // Shown to the centimetre.
        expect(Math.abs((await number('.film-verdict b')) - truth)).toBeLessThan(
          (await number('.film-verdict small')) + 0.5,
        );
      }
      expect(await page.locator('.film-causes li').count()).toBe(4);
      await page.getByRole('button', { name: 'Keep as seen' }).click();
      await closeOne();
      await page.getByRole('radio', { name: 'On the plates' }).check();
      expect(
        Math.abs(Number(await page.locator('#mark-shaftParallel input').first().inputValue()) - scene.truthCm[1]),
      ).toBeLessThan(8);
      await page.getByRole('radio', { name: 'Video' }).check();
    },
    60_000,
  );

  test('with a lesson open: the tripod stands, marks and stills are kept without the film, and come back', async () => {
    await page.setViewportSize(SCREENS.tablet);
    film ??= await maker.make(scene.order);
    await openBook(page);
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await openDrawer(page, 'seen');
    await page.getByRole('radio', { name: 'Video' }).check();
    await openOne('swing.mp4', film);
    const tap = async ([u, v]: readonly [number, number]): Promise<void> => {
      const { x, y, width, height } = (await page.locator('.film-sheet canvas').first().boundingBox())!;
      await page.touchscreen.tap(x + (u / scene.order.w) * width, y + (v / scene.order.h) * height);
    };
    await page.getByRole('button', { name: 'The tripod has not moved' }).tap();
    await goTo(scene.armFrame);
    const arm = scene.frames[scene.armFrame];
    // Where the stick's end has moved, the tripod has: nothing is read until the mark is put right.
    const [stickX, stickY] = scene.address.stickA;
    const stick = [stickX + 30, stickY] as const;
    for (const at of [stick, arm.hands, arm.clubHead, arm.trailShoulder, arm.trailElbow]) await tap(at);
    await page.getByText(/The camera moved after address: the stick is \d+ px off/).waitFor();
    expect(await page.locator('.film-verdict b').count()).toBe(0);
    await page.locator('.film-list').getByRole('button', { name: 'Stick, near end' }).first().tap();
    await tap(scene.address.stickA);
    await page.locator('.film-reading .film-verdict b').first().waitFor();
    // A frame picked by eye is three too late: from there it leads back to the two on either side of level.
    await goTo(scene.shaftFrame + 3);
    await page.locator('.film-places').getByRole('button', { name: 'Shaft parallel' }).tap();
    for (const frame of [scene.shaftFrame + 3, scene.shaftFrame, scene.shaftFrame + 1]) {
      await page.locator(`.film-sheet canvas[data-frame="${frame}"]`).waitFor();
      for (const at of [scene.frames[frame].hands, scene.frames[frame].clubHead]) await tap(at);
    }
    const both = page.locator('.film-reading .film-verdict b');
    await expect.poll(() => both.count()).toBe(2);
    // Impact, once marked, is where the figure ends; the readings stay about where they are.
    await goTo(scene.shaftFrame + 5);
    await page.getByRole('button', { name: 'This frame is impact' }).tap();
    await page.getByText(`Impact: frame ${scene.shaftFrame + 6}.`).waitFor();
    expect(await both.count()).toBe(2);
    await page.getByRole('button', { name: 'Clear impact' }).tap();
    await goTo(scene.shaftFrame + 1);
    const read = await both.allInnerTexts();
    // What is made of it: without the film's picture unless that is asked for, and never with a name.
    const make = async (what: string): Promise<{ name: string; bytes: Buffer }> => {
      const [got] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: what }).click(),
      ]);
      return { name: got.suggestedFilename(), bytes: readFileSync(await got.path()) };
    };
    await page.getByRole('button', { name: 'Target', exact: true }).click();
    const drawn = await make('Make a still');
    await page.getByLabel('With the film’s own picture').check();
    const burnt = await make('Make a still');
    expect([drawn.name, burnt.name]).toEqual(['slantwise-over-film.png', 'slantwise-over-film.png']);
    const sky = (png: Buffer): Promise<readonly number[]> =>
      page.evaluate(async (text) => {
        const image = await createImageBitmap(new Blob([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))]));
        const pen = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
        pen.drawImage(image, 0, 0);
        return [...pen.getImageData(20, 20, 1, 1).data];
      }, png.toString('base64'));
    const [paper, film1] = [await sky(drawn.bytes), await sky(burnt.bytes)];
    expect(paper).toEqual([0xf6, 0xf0, 0xe3, 255]);
    expect(film1).not.toEqual(paper);
    const clip = await make('Make a clip');
    expect(clip.name).toMatch(/^slantwise-over-film\.(mp4|webm)$/);
    expect(clip.bytes.length).toBeGreaterThan(5000);
    await page.getByText('The clip is saved.').waitFor();
    await page.getByLabel('With two stills').check();
    await page.getByRole('button', { name: 'Keep as seen' }).click();
    await page.getByText('Kept with the lesson: marks, camera, readings and stills.').waitFor();
    await expect.poll(async () => (await inStore(page)).filter(({ kind }) => kind === 'still').length).toBe(2);
    const stored = (await inStore(page)).filter(({ kind }) => kind !== 'player');
    expect(JSON.stringify(stored)).not.toContain('swing.mp4');
    for (const { jpeg, w, h } of stored.filter(({ kind }) => kind === 'still')) {
      // A baseline JPEG starts with a JFIF header (APP0), not with Exif, which would hold place and time (ITU-T T.871, 10.1).
      expect(Buffer.from(jpeg as string, 'base64').subarray(0, 4)).toEqual(Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
      expect([w, h]).toEqual([540, 960]);
    }
    await closeOne();
    // The clip opens again, with every frame between the checkpoints and some beyond.
    await choose(clip.name, clip.bytes, clip.name.endsWith('mp4') ? 'video/mp4' : 'video/webm');
    const [, count] = /of (\d+), 25 a second/.exec(await page.locator('.film-place p').innerText())!;
    expect(Number(count)).toBeGreaterThan(scene.shaftFrame - scene.armFrame + 5);
    await closeOne();

    // A backup holds the stills only when they are asked for.
    await openBook(page);
    await press(page, 'Players');
    await press(page, 'Backup and hand-over');
    const kindsIn = async (): Promise<readonly string[]> => {
      const { text } = await download(page, () => press(page, 'Save a backup'));
      const read = readFile(text);
      return 'records' in read ? read.records.map(({ kind }) => kind) : [];
    };
    expect(await kindsIn()).not.toContain('still');
    await page.getByLabel(/^Stills too \(2\)/).check();
    expect((await kindsIn()).filter((kind) => kind === 'still')).toHaveLength(2);

    await page.reload();
    await openDrawer(page, 'seen');
    await page.getByRole('radio', { name: 'Video' }).check();
    await expect.poll(() => page.locator('.kept-film image').count()).toBe(2);
    await openOne('swing.mp4', film);
    await page.getByRole('button', { name: 'Put the kept marks on' }).tap();
    await expect.poll(() => both.allInnerTexts()).toEqual(read);
    await closeOne();
  }, 60_000);

  test('three pictures are read too, each chosen for what it is, without a word at shaft parallel', async () => {
    await page.setViewportSize(SCREENS.phone);
    film ??= await maker.make(scene.order);
    await openOne('swing.mp4', film);
    const pictures: { name: string; mimeType: string; buffer: Buffer }[] = [];
    for (const [frame, mimeType] of [
      [0, 'image/webp'],
      [scene.armFrame, 'image/jpeg'],
      [scene.shaftFrame, 'image/png'],
    ] as const) {
      await goTo(frame);
      const url = await page
        .locator('.film-sheet canvas')
        .first()
        .evaluate((canvas: HTMLCanvasElement, type) => canvas.toDataURL(type, 0.95), mimeType);
      expect(url.startsWith(`data:${mimeType};`)).toBe(true);
      pictures.push({ name: `${frame}`, mimeType, buffer: Buffer.from(url.split(',')[1], 'base64') });
    }
    await closeOne();
    await page.getByRole('radio', { name: 'Photo' }).check();
    await page.setInputFiles('.film-choose input', [...pictures, pictures[0]]);
    await page.getByText('Open a film, or one to three pictures.').waitFor();
    for (const way of ['paste', 'drop'] as const) {
      await page.evaluate(
        ([files, how]) => {
          const given = new DataTransfer();
          for (const { name, type, text } of files)
            given.items.add(new File([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))], name, { type }));
          if (how === 'paste') window.dispatchEvent(new ClipboardEvent('paste', { clipboardData: given }));
          else
            document
              .querySelector('.film-desk, .film-open')!
              .dispatchEvent(new DragEvent('drop', { dataTransfer: given, bubbles: true, cancelable: true }));
        },
        [
          pictures.map(({ name, mimeType, buffer }) => ({ name, type: mimeType, text: buffer.toString('base64') })),
          way,
        ] as const,
      );
      // Dropped on the desk of those that were pasted, they take their place.
      await page.locator('.film-sheet canvas[data-frame="0"]').waitFor();
      expect(await page.locator('.film-pictures button').count()).toBe(3);
      if (way === 'drop') break;
      await page.getByRole('button', { name: 'Picture 2' }).tap();
      await page.locator('.film-sheet canvas[data-frame="1"]').waitFor();
    }
    const tap = async ([u, v]: readonly [number, number]): Promise<void> => {
      const { x, y, width, height } = (await page.locator('.film-sheet canvas').first().boundingBox())!;
      await page.touchscreen.tap(x + (u / scene.order.w) * width, y + (v / scene.order.h) * height);
    };
    for (const at of Object.values(scene.address)) await tap(at);
    const show = async (picture: number): Promise<void> => {
      await page.getByRole('button', { name: `Picture ${picture}` }).tap();
      await page.locator(`.film-sheet canvas[data-frame="${picture - 1}"]`).waitFor();
    };
    await show(2);
    const arm = scene.frames[scene.armFrame];
    for (const at of [arm.hands, arm.clubHead, arm.trailShoulder, arm.trailElbow]) await tap(at);
    await show(3);
    const shaft = scene.frames[scene.shaftFrame];
    for (const at of [shaft.hands, shaft.clubHead]) await tap(at);
    const [first, second] = [0, 1].map((k) => page.locator('.film-reading').nth(k));
    await second.getByText('A single picture is not enough for a word here.').waitFor();
    expect(await second.innerText()).toContain('Too close to call');
    const number = async (reading: typeof first, part: string): Promise<number> =>
      Number((await reading.locator(part).innerText()).replace('−', '-').replace(/[^\d.-]/g, ''));
    expect(await number(second, '.film-verdict small')).toBeGreaterThanOrEqual(7);
    for (const [k, reading] of [first, second].entries()) {
      const off = Math.abs((await number(reading, '.film-verdict b')) - scene.truthCm[k]);
      expect(off).toBeLessThan((await number(reading, '.film-verdict small')) + 0.5);
    }
    expect(await page.locator('.film-places button').count()).toBe(3);
    await closeOne();
    await page.getByRole('radio', { name: 'Video' }).check();
  }, 60_000);
});
