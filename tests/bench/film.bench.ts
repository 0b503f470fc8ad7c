import type { Page } from 'playwright-core';
import { answerFilm } from '../../src/film/answerFilm';
import { ALL_DIALS } from '../../src/film/explain';
import { fitFilm } from '../../src/film/fit/fitFilm';
import { readFilm } from '../../src/film/readings';
import { refineLine } from '../../src/film/refineLine';
import { openFilmMaker } from '../browser/filmMaker';
import { simulate } from '../unit/filmSimulated';
import type { Session } from './table';

export const name = 'film';

const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))];

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

/** Clicks to another frame and waits until its picture is drawn, ms. */
async function stepTo(page: Page, button: string, frame: number): Promise<number> {
  const start = performance.now();
  await page.getByRole('button', { name: button }).click();
  await page.locator(`.film-sheet canvas[data-frame="${frame}"]`).waitFor();
  return performance.now() - start;
}

export async function run({ quick, put, withPage }: Session): Promise<void> {
  const films = Array.from({ length: quick ? 10 : 40 }, (_, i) => simulate(i + 1)!);
  const fits = timeAll(
    films.map(
      ({ expected, marks }) =>
        () =>
          readFilm(fitFilm(expected, marks, ALL_DIALS)),
    ),
  );
  const answers = timeAll(
    films.map(
      ({ expected, marks }) =>
        () =>
          answerFilm({ swing: expected.swing, marks }),
    ),
  );
  const refined = timeAll(Array.from({ length: 10 }, drawLine));
  put(
    { what: 'camera and readings from all marks, median', value: quantile(fits, 0.5), unit: 'ms', goal: 'at most 30' },
    { what: 'the same with its causes, median', value: quantile(answers, 0.5), unit: 'ms' },
    { what: 'line found along the shaft, median', value: quantile(refined, 0.5), unit: 'ms', goal: 'at most 100' },
  );
  // Encoding takes longest: two seconds stand for ten, whose frame table is five times as long.
  const frames = quick ? 120 : 480;
  await withPage(async ({ browser, address, newVisitor }) => {
    const maker = await openFilmMaker(browser);
    const bytes = await maker.make({ container: 'mp4', codec: 'avc', fps: 240, w: 1080, h: 1920, frames });
    await maker.close();
    const page = await newVisitor();
    await page.goto(address);
    await page.locator('.plate-drawing').nth(1).waitFor();
    if (!(await page.locator('#tab-seen').isVisible())) await page.locator('#tab-more').click();
    await page.locator('#tab-seen').click();
    await page.getByRole('radio', { name: 'Video' }).check();
    const start = performance.now();
    await page.setInputFiles('.film-choose input', { name: 'film.mp4', mimeType: 'video/mp4', buffer: bytes });
    await page.locator('.film-sheet canvas[data-frame="0"]').waitFor();
    const first = performance.now() - start;
    const on: number[] = [];
    for (let i = 1; i <= 40; i++) on.push(await stepTo(page, 'One frame on', i));
    const back: number[] = [];
    for (let i = 39; i > 30; i--) back.push(await stepTo(page, 'One frame back', i));
    put(
      {
        what: `film of ${frames} frames of 1080 by 1920: first picture`,
        value: first / 1000,
        unit: 's',
        goal: 'at most 1.5',
      },
      { what: 'next frame, from click to picture, p90', value: quantile(on, 0.9), unit: 'ms', goal: 'at most 50' },
      { what: 'back within the kept frames, from click to picture, median', value: quantile(back, 0.5), unit: 'ms' },
    );
    await page.context().close();
  });
}
