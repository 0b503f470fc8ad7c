import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { browserFlags } from '../../.config/browser.mjs';
import { findFaults } from './axe';
import { DRAW_NOTHING } from './deskPage';
import { guard } from './guard';
import { planText } from './planLink';
import { launch, offOrigin, open, SCREENS, type Visit } from './support';

/** Chromium's own camera: a test picture, allowed without asking. */
const CAMERA = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'];

let browser: Browser | undefined;
beforeAll(async () => {
  // The usual launch first, for what it says when there is no browser, and for the server that may be away.
  await (await launch()).close();
  browser = guard(await chromium.launch({ executablePath: inject('browserPath'), args: [...browserFlags, ...CAMERA] }));
});
afterAll(() => browser?.close());

/** Keeps every track that the page is given, to look at after it has let go of them. */
const KEEP_TRACKS = (): void => {
  const { mediaDevices } = navigator;
  const ask = mediaDevices.getUserMedia.bind(mediaDevices);
  const tracks: MediaStreamTrack[] = [];
  Object.assign(globalThis, { tracks });
  mediaDevices.getUserMedia = async (wanted) => {
    const stream = await ask(wanted);
    tracks.push(...stream.getTracks());
    return stream;
  };
};
const REFUSE = (): void => {
  navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('No', 'NotAllowedError'));
};

async function openMirror(screen: keyof typeof SCREENS, init: () => void, text = planText()): Promise<Visit> {
  const visit = await open(browser!, {
    path: `#${text}`,
    viewport: SCREENS[screen],
    hasTouch: true,
    reducedMotion: 'reduce',
    init: [DRAW_NOTHING, init],
  });
  await visit.page.getByRole('button', { name: 'Practise at the mirror' }).tap();
  await visit.page.locator('.mirror').waitFor();
  return visit;
}

const tap = (page: Page, name: string): Promise<void> => page.getByRole('button', { name }).tap();
const trackStates = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    (globalThis as unknown as { tracks: MediaStreamTrack[] }).tracks.map(({ readyState }) => readyState),
  );
/** Box of what is drawn on the stage's canvas, shares of it: left, top, right, bottom. */
const drawnBox = (page: Page): Promise<number[]> =>
  page.locator('.mirror-stage canvas').evaluate((canvas) => {
    const { width, height } = canvas as HTMLCanvasElement;
    const { data } = (canvas as HTMLCanvasElement).getContext('2d')!.getImageData(0, 0, width, height);
    const box = [1, 1, 0, 0];
    for (let i = 3; i < data.length; i += 4) {
      if (data[i] < 128) continue;
      const at = (i - 3) / 4;
      const [x, y] = [(at % width) / width, Math.floor(at / width) / height];
      box[0] = Math.min(box[0], x);
      box[1] = Math.min(box[1], y);
      box[2] = Math.max(box[2], x);
      box[3] = Math.max(box[3], y);
    }
    return box;
  });
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.mirror :is(button, input, .mirror-line)')]
      .map((one) => ({ one, box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 48 || box.height < 47.5)
      .map(({ one }) => one.textContent ?? ''),
  );
/** Hides the page as a browser does, as far as its scripts can tell. */
const hide = (page: Page): Promise<void> =>
  page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
    delete (document as { visibilityState?: unknown }).visibilityState;
  });

describe('the mirror', () => {
  test('plays the camera under the contour, counts a hold, and lets the camera go when it is hidden and left', async () => {
    const { page, context, witness } = await openMirror('phone', KEEP_TRACKS);
    expect(await trackStates(page)).toEqual([]);
    await tap(page, 'Use the camera');
    const video = page.locator('.mirror-stage video');
    await expect
      .poll(() => video.evaluate((one: HTMLVideoElement) => one.currentTime), { timeout: 10_000 })
      .toBeGreaterThan(0);
    expect(await video.evaluate((one) => getComputedStyle(one).transform)).toBe('matrix(-1, 0, 0, 1, 0, 0)');

    // The head line follows the finger, and the contour the line.
    const before = await drawnBox(page);
    const line = (await page.locator('[data-line="head"]').boundingBox())!;
    const [x, y] = [line.x + line.width - 40, line.y + line.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + 60, { steps: 3 });
    await page.mouse.up();
    const stage = (await page.locator('.mirror-stage').boundingBox())!;
    const lower = (await drawnBox(page))[1] - before[1];
    expect(lower * stage.height).toBeGreaterThan(57);
    expect(lower * stage.height).toBeLessThan(63);
    await page.getByRole('slider', { name: 'Head line' }).fill('0.75');
    // The same, typed.
    const typed = page.getByRole('textbox', { name: 'Head line' });
    expect(await typed.inputValue()).toBe('75');
    await typed.fill('7500');
    await typed.press('Enter');
    await page.getByText('75 % stays in use.').waitFor();
    await typed.fill('76');
    await typed.press('Enter');
    expect(await page.getByRole('slider', { name: 'Head line' }).inputValue()).toBe('0.76');
    expect((await drawnBox(page))[1]).toBeCloseTo(0.25, 1);
    expect([await smallTargets(page), await findFaults(page, ['.mirror'])]).toEqual([[], []]);

    await tap(page, 'Done');
    await tap(page, 'Hold');
    const count = page.locator('.mirror-count');
    await expect.poll(() => count.getAttribute('data-phase')).toBe('ready');
    // Nothing of the page itself runs from frame to frame: what a frame takes is the browser's own video.
    const frames = await page.evaluate(
      () =>
        new Promise<number[]>((resolve) => {
          const times: number[] = [];
          const next = (now: number): void => {
            times.push(now);
            if (times.length > 60) resolve(times.slice(1).map((time, i) => time - times[i]));
            else requestAnimationFrame(next);
          };
          requestAnimationFrame(next);
        }),
    );
    const sorted = frames.toSorted((a, b) => a - b);
    console.info(`Mirror: a frame takes ${sorted[30].toFixed(1)} ms, nine of ten under ${sorted[54].toFixed(1)} ms.`);
    expect(sorted[30]).toBeLessThan(50);
    await page.getByText('1 of 10 held').waitFor({ timeout: 12_000 });
    expect([await smallTargets(page), await findFaults(page, ['.mirror'])]).toEqual([[], []]);

    await hide(page);
    expect(await trackStates(page)).toEqual(['ended']);
    await tap(page, 'Start the camera again');
    await video.waitFor();
    expect(await trackStates(page)).toEqual(['ended', 'live']);
    await tap(page, 'Leave');
    await page.locator('.player').waitFor();
    expect(await trackStates(page)).toEqual(['ended', 'ended']);
    expect([witness.errors, witness.violations, offOrigin(witness)]).toEqual([[], [], []]);
    await context.close();
  });

  test('shows the pose on paper where the camera is refused, for either hand and on the dark board', async () => {
    const left = planText({}, { player: { statureM: 1.78, handed: 'left' }, board: 'dark' });
    const boxes = [];
    for (const text of [planText(), left]) {
      const { page, context } = await openMirror('upright tablet', REFUSE, text);
      await tap(page, 'Use the camera');
      await page.getByText('The camera is not allowed here.').waitFor();
      await page.getByText('Hold the picture beside a mirror instead.').waitFor();
      expect(await page.locator('.mirror-stage video').count()).toBe(0);
      boxes.push(await drawnBox(page));
      expect([await smallTargets(page), await findFaults(page, ['.mirror'])]).toEqual([[], []]);
      await context.close();
    }
    const [[l, top, r, bottom], [l2, top2, r2, bottom2]] = boxes;
    expect(bottom - top).toBeGreaterThan(0.5);
    // The other hand's picture is the mirror image, to a pixel or two.
    for (const [a, b] of [
      [l, 1 - r2],
      [r, 1 - l2],
      [top, top2],
      [bottom, bottom2],
    ])
      expect(Math.abs(a - b)).toBeLessThan(0.01);
  });
});
