import { readFileSync } from 'node:fs';
import { type Browser, type Page } from 'playwright-core';
import type { Session } from './table';

export const name = 'export';

/** Frames of the slow downswing: everything in them moves. */
const TIMED = { from: 146, to: 162 } as const;
const QUICK_TIMED = { from: 148, to: 155 } as const;

interface Times {
  readonly drawn: number;
  readonly encoded: number;
  readonly both: number;
}
interface Probed {
  readonly slantwiseTiming: (from: number, to: number) => Promise<Times>;
  readonly longTasks: number[];
}

/** Memory of all processes of the browser together, MB; not a number where the system does not tell. */
async function memoryOf(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const page = 4096;
  return processInfo.reduce((sum, { id }) => {
    try {
      const [, resident, shared] = readFileSync(`/proc/${id}/statm`, 'utf8').split(' ').map(Number);
      return sum + ((resident - shared) * page) / 1e6;
    } catch {
      return NaN;
    }
  }, 0);
}

async function openClip(page: Page, address: string): Promise<void> {
  await page.goto(`${address}?probe`);
  await page.locator('.plate-drawing').nth(1).waitFor();
  await page.getByRole('button', { name: 'Typical swings' }).first().click();
  await page.getByRole('button', { name: 'Cupped wrist' }).click();
  await page.locator('#tab-clip').click();
  await page.getByLabel('Size').selectOption('1080p');
}

/** Keeps the page's tasks of more than 50 ms. */
const watchLongTasks = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const long: number[] = [];
    Object.assign(globalThis, { longTasks: long });
    new PerformanceObserver((list) => long.push(...list.getEntries().map(({ duration }) => duration))).observe({
      type: 'longtask',
    });
  });
const countLongTasks = (page: Page): Promise<number> =>
  page.evaluate(() => (globalThis as unknown as Probed).longTasks.filter((ms) => ms > 50).length);

/** The whole clip through the drawer: 1080p, 30 frames a second, with the second body. */
async function makeClip(page: Page, browser: Browser): Promise<{ seconds: number; frames: number; peak: number }> {
  const before = await memoryOf(browser);
  let peak = before;
  const started = performance.now();
  await page.getByRole('button', { name: 'Make the clip', exact: true }).click();
  const file = page.locator('.files li');
  while ((await file.count()) === 0) {
    peak = Math.max(peak, await memoryOf(browser));
    await new Promise((resolve) => setTimeout(resolve, 250));
    if ((await page.locator('.work-excuse').count()) > 0)
      throw new Error(await page.locator('.work-excuse').innerText());
  }
  const seconds = (performance.now() - started) / 1000;
  const [, length] = /([\d.]+) s,/.exec(await file.first().innerText()) ?? [];
  return { seconds, frames: Math.round(Number(length) * 30), peak: peak - before };
}

/** How long it takes from the tap on Stop until the page says that it has stopped, ms. */
async function stopMidway(page: Page): Promise<number> {
  await page.getByRole('button', { name: 'Make the clip', exact: true }).click();
  await page.getByText(/frame [1-9]\d* of/).waitFor();
  return page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const started = performance.now();
        new MutationObserver((_, observer) => {
          if (!document.querySelector('.work-excuse')) return;
          observer.disconnect();
          resolve(performance.now() - started);
        }).observe(document.body, { childList: true, subtree: true, attributes: true });
        [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Stop')!.click();
      }),
  );
}

export const run = ({ quick, withPage, put }: Session): Promise<void> =>
  withPage(async ({ address, browser, page }) => {
    page.setDefaultTimeout(300_000);
    await openClip(page, address);
    await watchLongTasks(page);
    if (!quick) {
      // Without the slow downswing, which is half of it and made of the same frames.
      const slow = page.getByLabel('Slow downswing');
      const camera = await slow.inputValue();
      await slow.selectOption('none');
      const whole = await makeClip(page, browser);
      await slow.selectOption(camera);
      put(
        { what: 'clip of two swings, 1080p30: frames a second', value: whole.frames / whole.seconds, unit: '1/s' },
        { what: 'memory at most, above the open app', value: whole.peak, unit: 'MB' },
      );
    }
    const stopped = await stopMidway(page);
    const long = await countLongTasks(page);
    put(
      { what: 'page held up over 50 ms while a clip is made', value: long, unit: 'times', goal: 'at most 0' },
      { what: 'stopping midway', value: stopped, unit: 'ms', goal: 'at most 300' },
    );
    const timed = quick ? QUICK_TIMED : TIMED;
    const times = await page.evaluate(
      ({ from, to }) => (globalThis as unknown as Probed).slantwiseTiming(from, to),
      timed,
    );
    const rate = (ms: number): number => ((timed.to - timed.from) * 1000) / ms;
    const slower = Math.min(rate(times.drawn), rate(times.encoded));
    put(
      { what: 'moving frames drawn alone', value: rate(times.drawn), unit: '1/s' },
      { what: 'the same, encoded alone (H.264)', value: rate(times.encoded), unit: '1/s' },
      { what: 'the same, drawn and encoded', value: rate(times.both), unit: '1/s' },
      {
        what: 'drawn and encoded, of the slower alone',
        value: rate(times.both) / slower,
        unit: 'share',
        goal: 'at least 0.8',
      },
    );
  });
