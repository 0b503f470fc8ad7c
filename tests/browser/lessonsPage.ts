import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { REFUSE_PICTURE } from './deskPage';
import { appAddress, open, SCREENS, type Visit } from './support';

/** A page of the app's own origin that runs nothing of the app: from here one looks into the store from outside. */
const OUTSIDE = 'manifest.webmanifest';

/**
 * The 3D picture has no part in the lesson book and takes most of the time. The app is told that there is none: answering for its
 * files would hold up all of them.
 */
export const withoutPicture = (context: BrowserContext): Promise<unknown> => context.addInitScript(REFUSE_PICTURE);

/** One page for a whole file; `startAfresh` makes a new device of it. */
export async function openBookPage(browser: Browser): Promise<Visit> {
  const visit = await open(browser, { path: OUTSIDE });
  await withoutPicture(visit.context);
  return visit;
}

/** Nothing stored, the lesson book open, with its example. */
export async function startAfresh(page: Page, size: keyof typeof SCREENS = 'tablet'): Promise<void> {
  await page.setViewportSize(SCREENS[size]);
  await page.goto(new URL(OUTSIDE, appAddress()).href);
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        localStorage.clear();
        const removing = indexedDB.deleteDatabase('slantwise.lesson-book');
        removing.onsuccess = () => resolve();
        removing.onerror = () => reject(new Error('the store cannot be removed'));
      }),
  );
  await page.goto(new URL('?probe', appAddress()).href);
  await openBook(page);
}

export async function openBook(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Lesson(s| book)$/ }).click();
  await page.locator('.lessons .lesson-actions').first().waitFor();
}

/** Presses a button of the lesson book. */
export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page
    .locator('.lessons')
    .getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) })
    .click();

export async function addPlayer(page: Page, name: string): Promise<void> {
  await page.getByLabel('New player, a nickname will do').fill(name);
  await press(page, 'Add');
}

export interface Kept {
  readonly id: string;
  readonly kind: string;
  readonly [field: string]: unknown;
}

/** What lies in the store, read behind the app's back. */
export const inStore = (page: Page): Promise<Kept[]> =>
  page.evaluate(
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

export async function download(page: Page, start: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [got] = await Promise.all([page.waitForEvent('download'), start()]);
  return { name: got.suggestedFilename(), text: readFileSync(await got.path(), 'utf8') };
}
