import type { BrowserContext } from 'playwright-core';
import { openRelay, type Relay } from './testServer';

/**
 * `npm run test:offline`: every device visits once, the worker fills its cache, and then the server goes away for good. What
 * needs a server by nature, and so is left out there, is offline.test.ts: it has servers of its own, which come and go.
 */
export const isServerAway = process.env['OFFLINE'] === '1';

let relay: Relay | undefined;
let visitors = 0;

/** Where the app is found while the server is away; undefined when it stays. */
export const awayAddress = (): string | undefined => relay?.address;

export async function prepareAway(): Promise<void> {
  if (!isServerAway || relay) return;
  relay = await openRelay();
  await relay.close();
}

/** The one visit: a page that runs nothing of the app and leaves nothing behind but the worker and its full cache. */
export async function visitOnce(context: BrowserContext): Promise<void> {
  if (!relay) return;
  if (visitors++ === 0) await relay.reopen();
  const page = await context.newPage();
  await page.goto(new URL('manifest.webmanifest', relay.address).href);
  await page.evaluate(async () => {
    await navigator.serviceWorker.register('sw.js');
    const { active } = await navigator.serviceWorker.ready;
    while (active?.state !== 'activated') await new Promise((resolve) => setTimeout(resolve, 20));
  });
  await page.close();
  if (--visitors === 0) await relay.close();
}

/** The browser looks for a new worker now and then and says that nobody answers: with the server away that is as it should be. */
export const isLookForWorker = (text: string, url: string): boolean =>
  isServerAway && /ERR_CONNECTION_REFUSED/.test(text) && url.endsWith('/sw.js');
