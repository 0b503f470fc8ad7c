import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readRecord } from '../../src/record/validate';
import { createRandom } from '../reference/random';
import { appAddress, launch, SCREENS } from './support';

/** Kills in one run; `RECORD_KILLS=300 npm test -- record-kill` makes more. */
const KILLS = Number(process.env['RECORD_KILLS'] ?? 15);
const SEED = Number(process.env['SEED'] ?? 7);
/** How far the store may be behind the screen, ms. */
const BEHIND_MS = 350;

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** A page of the same origin that runs nothing of ours, to look into the store from outside. */
async function lookIntoStore(page: Page): Promise<{ [field: string]: unknown }[]> {
  await page.goto(new URL('manifest.webmanifest', appAddress()).href);
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('slantwise.lesson-book');
        opening.onerror = () => reject(new Error('the store does not open'));
        opening.onsuccess = () => {
          const all = opening.result.transaction('records').objectStore('records').getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result as never);
          };
        };
      }),
  );
}

test(`killed ${KILLS} times in the middle of typing, no record is damaged and at most ${BEHIND_MS} ms are lost (seed ${SEED})`, async () => {
  const random = createRandom(SEED);
  // The 3D stage has no part in this and takes most of the time to load.
  const context = await browser!.newContext({ viewport: SCREENS.phone, serviceWorkers: 'block' });
  await context.route(/Stage-[^/]*\.js$/, (route) => route.abort());
  const losses: number[] = [];
  let before: { text: string; ms: number }[] = [];
  // One round more than kills: each page shows what the one before has left.
  for (let kill = 0; kill <= KILLS; kill++) {
    const page = await context.newPage();
    const records = kill === 0 ? [] : await lookIntoStore(page);
    for (const record of records) expect(readRecord(record)).toHaveProperty('record');
    await page.goto(appAddress());
    if (kill === 0) {
      await page.getByRole('button', { name: /^Lesson/ }).click();
      await page.getByLabel('New player, a nickname will do').fill('Robin');
      await page.locator('.lessons').getByRole('button', { name: 'Add', exact: true }).click();
      await page.locator('.lessons').getByRole('button', { name: 'New lesson today' }).click();
    } else {
      await page.getByRole('button', { name: 'Lesson open' }).click();
      const kept = await page.getByLabel('Notes').inputValue();
      // What was typed next, had it been kept, would have been this old at the end: that much is lost.
      const firstLost = before[before.findIndex(({ text }) => text === kept) + 1];
      losses.push(firstLost ? before.at(-1)!.ms - firstLost.ms : 0);
    }
    await page.getByLabel('Notes').waitFor();
    const typed: { text: string; ms: number }[] = [];
    await page.exposeFunction('tell', (text: string, ms: number) => void typed.push({ text, ms }));
    await page.evaluate((round) => {
      const field = [...document.querySelectorAll('textarea')].at(-1)!;
      const plain = Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')!;
      const { tell } = globalThis as unknown as { tell: (text: string, ms: number) => void };
      let letters = 0;
      field.focus();
      setInterval(() => {
        const text = `kill ${round}, letter ${letters++}`;
        plain.set!.call(field, text);
        field.dispatchEvent(new Event('input', { bubbles: true }));
        tell(text, Date.now());
      }, 15);
    }, kill);
    await new Promise((resolve) => setTimeout(resolve, 300 + random() * 900));
    const cdp = await context.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    void cdp.send('Page.crash').catch(() => {});
    await crashed;
    before = typed;
    await page.close();
  }
  const sorted = losses.toSorted((a, b) => a - b);
  const share = (part: number): number => sorted[Math.floor((sorted.length - 1) * part)];
  console.log(
    `record-kill: lost ${share(0.5)} ms (median), ${share(0.95)} ms (p95), ${share(1)} ms (most) in ${KILLS} kills`,
  );
  expect(losses).toHaveLength(KILLS);
  expect(share(1)).toBeLessThanOrEqual(BEHIND_MS);
  await context.close();
}, 3_600_000);
