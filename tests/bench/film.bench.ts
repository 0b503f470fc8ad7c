import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { answerFilm } from '../../src/film/answerFilm';
import { ALL_DIALS } from '../../src/film/explain';
import { fitFilm } from '../../src/film/fit/fitFilm';
import { readFilm } from '../../src/film/readings';
import { refineLine } from '../../src/film/refineLine';
import { openFilmMaker } from '../browser/filmMaker';
import { simulate } from '../unit/filmSimulated';
import { sweptMemory } from './memory';
import { quantile, type Session } from './table';

export const name = 'film';

/** Milliseconds of each of some pieces of work, the first ones left out: they warm up. */
function timeAll(works: readonly (() => unknown)[]): readonly number[] {
  for (const work of works.slice(0, 3)) work();
  return works.map((work) => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
}

const SIDE = 700;

/** A thin light line on even ground, and two taps beside it. */
function drawLine(): () => unknown {
  const data = new Float32Array(SIDE * SIDE).fill(110);
  for (let y = 60; y < SIDE - 60; y++) for (let x = 348; x < 352; x++) data[y * SIDE + x] = 170;
  return () => refineLine({ width: SIDE, height: SIDE, data }, [356, 620], [344, 90]);
}

/** Goes from frame to frame and times each, ms: from the click, or from the slider's change, until its picture is drawn. */
const stepAlong = (page: Page, frames: readonly number[], by: 'One frame on' | 'One frame back' | 'slider') =>
  page.evaluate(
    async ([list, name]) => {
      const taken: number[] = [];
      for (const frame of list) {
        const canvas = document.querySelector<HTMLCanvasElement>('.film-sheet canvas')!;
        const drawn = new Promise<void>((resolve) => {
          new MutationObserver((_, observer) => {
            if (canvas.dataset['frame'] !== String(frame)) return;
            observer.disconnect();
            resolve();
          }).observe(canvas, { attributeFilter: ['data-frame'] });
        });
        const start = performance.now();
        if (name === 'slider') {
          const input = document.querySelector<HTMLInputElement>('.film-scales input')!;
          Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!.call(input, String(frame));
          input.dispatchEvent(new Event('input', { bubbles: true }));
        } else document.querySelector<HTMLElement>(`[aria-label="${name}"]`)!.click();
        await drawn;
        taken.push(performance.now() - start);
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
      return taken;
    },
    [frames, by] as const,
  );

/** Encoded frames, and how many times over they make the film: ten seconds at 240, a quarter of that in the quick bench. */
const ENCODED = 60;
const OVER = { full: 40, quick: 10 } as const;

/** A film as a phone makes it, in a file on disk. Encoding all of its frames would take minutes. */
async function makeFile(browser: Browser, folder: string, over: number): Promise<string> {
  const maker = await openFilmMaker(browser);
  const bytes = await maker.make({
    container: 'mp4',
    codec: 'avc',
    fps: 240,
    w: 1080,
    h: 1920,
    frames: ENCODED,
    times: over,
    bitrate: 40e6,
    isRough: true,
  });
  await maker.close();
  const path = join(folder, 'film.mp4');
  writeFileSync(path, bytes);
  return path;
}

const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.abs(to - from) + 1 }, (_, i) => (to > from ? from + i : from - i));

export async function run({ quick, put, withPage }: Session): Promise<void> {
  const films = Array.from({ length: quick ? 5 : 20 }, (_, i) => simulate(i + 1)!);
  const fits = timeAll(
    films.map(
      ({ expected, marks }) =>
        () =>
          readFilm(fitFilm(expected, marks, ALL_DIALS)),
    ),
  );
  const refined = timeAll(Array.from({ length: 10 }, drawLine));
  put(
    { what: 'camera and readings from all marks, median', value: quantile(fits, 0.5), unit: 'ms', goal: 'at most 30' },
    { what: 'line found along the shaft, median', value: quantile(refined, 0.5), unit: 'ms', goal: 'at most 100' },
  );
  if (!quick) {
    const answers = timeAll(
      films.map(
        ({ expected, marks }) =>
          () =>
            answerFilm({ swing: expected.swing, marks }),
      ),
    );
    put({ what: 'the readings with their causes, median', value: quantile(answers, 0.5), unit: 'ms' });
  }
  const looks = quick ? 3 : 6;
  await withPage(async ({ browser, address, newVisitor }) => {
    const folder = mkdtempSync(join(tmpdir(), 'film-'));
    const over = quick ? OVER.quick : OVER.full;
    const path = await makeFile(browser, folder, over);
    const page = await newVisitor();
    await page.goto(address);
    await page.locator('.plate-drawing').nth(1).waitFor();
    if (!(await page.locator('#tab-seen').isVisible())) await page.locator('#tab-more').click();
    await page.locator('#tab-seen').click();
    await page.getByRole('radio', { name: 'Video' }).check();
    await page.locator('.film-choose').waitFor();
    const before = await sweptMemory(browser, page, looks);
    const start = performance.now();
    await page.setInputFiles('.film-choose input', path);
    await page.locator('.film-sheet canvas[data-frame="0"]').waitFor();
    const first = performance.now() - start;
    const steps = 80;
    const on = await stepAlong(page, range(1, steps), 'One frame on');
    // The first step back decodes the run before it.
    const back = (await stepAlong(page, range(steps - 1, steps - 9), 'One frame back')).slice(1);
    const jumps = quick ? [] : await stepAlong(page, [2000, 310, 77, 2399, 640, 1999], 'slider');
    const far = quick ? [] : await stepAlong(page, range(1998, 1975), 'One frame back');
    const rest = performance.now();
    await page.locator('.film-sheet canvas[data-whole="true"]').waitFor();
    const whole = performance.now() - rest;
    const held = (await sweptMemory(browser, page, looks)) - before;
    await page.getByRole('button', { name: 'Close film' }).click();
    await page.locator('.film-choose').waitFor();
    const left = (await sweptMemory(browser, page, looks)) - before;
    put(
      {
        what: `film of ${ENCODED * over} frames of 1080 by 1920, ${Math.round(statSync(path).size / 1e6)} MB: first picture`,
        value: first / 1000,
        unit: 's',
        goal: 'at most 1.5',
      },
      { what: 'next frame, from click to picture, p90', value: quantile(on, 0.9), unit: 'ms', goal: 'at most 50' },
      {
        what: 'back within the kept frames, from click to picture, p90',
        value: quantile(back, 0.9),
        unit: 'ms',
        goal: 'at most 16',
      },
      ...(quick
        ? []
        : [
            { what: 'back without end, from click to picture, median', value: quantile(far, 0.5), unit: 'ms' },
            { what: 'the same, at most', value: Math.max(...far), unit: 'ms' },
            { what: 'from the last of them to its picture at full size', value: whole, unit: 'ms' },
            { what: 'any frame by the slider, median', value: quantile(jumps, 0.5), unit: 'ms' },
          ]),
      { what: 'memory that the open film holds', value: held, unit: 'MB', goal: 'at most 250' },
      { what: 'memory that is left of it once it is closed', value: left, unit: 'MB', goal: 'at most 20' },
    );
    await page.context().close();
    rmSync(folder, { recursive: true, force: true });
  });
}
