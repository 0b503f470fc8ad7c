import { planText } from './planLink';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DRAW_NOTHING, drawn } from './deskPage';
import { openRelay } from './testServer';
import { appAddress, launch, SCREENS, watch } from './support';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/**
 * The first load: everything has been put into the cache, the worker has taken the page, and the page has all it asked
 * for before that, so that a server which goes now cuts off nothing.
 */
async function firstLoad(address: string) {
  const context = await browser!.newContext({ viewport: SCREENS.tablet, serviceWorkers: 'allow' });
  const page = await context.newPage();
  const witness = await watch(page);
  // Files and workers are looked at here, and that a picture is there, not what is in it.
  await context.addInitScript(DRAW_NOTHING);
  await page.goto(address);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  await page.waitForLoadState('networkidle');
  return { context, page, witness };
}

/** The page knows by now which workers there are: it asked when it started, and is answered in the order of asking. */
async function hearOfWorker(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.register('./sw.js').then(() => undefined));
  await drawn(page);
}

const openBook = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Lesson book' }).click();
  await page.locator('.lessons').waitFor();
};

test('with the server gone the app starts again and everything works, also what was never opened before', async () => {
  const relay = await openRelay();
  const { context, page, witness } = await firstLoad(relay.address);
  await relay.close();
  await expect(fetch(relay.address)).rejects.toThrow();

  await page.reload();
  await page.getByRole('heading', { level: 1, name: 'Slantwise' }).waitFor();
  await page.locator('canvas').first().waitFor();
  await page.evaluate(() => document.fonts.ready);
  expect(await page.evaluate(() => document.fonts.check("17px 'Vollkorn Variable'"))).toBe(true);
  await page.getByRole('slider', { name: /Lead wrist/ }).fill('-20');
  await page.getByText('Steep', { exact: true }).first().waitFor();
  // Every drawer, whose parts are fetched when it is opened.
  const tabs = page.getByRole('navigation', { name: 'Drawers' }).locator('button:not(#tab-more)');
  for (let at = 0; at < (await tabs.count()); at++) {
    await tabs.nth(at).click();
    await page.locator('.drawer-body').waitFor();
    await page.locator('.drawer-body', { hasNotText: 'Fetching' }).waitFor();
  }
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await openBook(page);
  await page.getByLabel('New player, a nickname will do').fill('Robin');
  await page.locator('.lessons').getByRole('button', { name: 'Add', exact: true }).click();
  await page.locator('.lessons').getByRole('button', { name: 'New lesson today' }).click();
  await page.reload();
  await page.getByRole('button', { name: 'Lesson open' }).waitFor();
  // A player's link opens too, and his page is there again after a reload.
  const link = new URL(relay.address);
  link.hash = planText();
  await page.goto(link.href);
  await page.reload();
  await page.locator('.player-verdicts').nth(1).waitFor();
  await page.locator('.twins-canvas canvas').waitFor();
  expect(witness.violations).toEqual([]);
  // The look for a new version fails without a network, and the browser says so; nothing else may go wrong.
  const isLook = (text: string): boolean => text.includes('ERR_CONNECTION_REFUSED') && text.endsWith('/sw.js');
  expect(witness.errors.filter((text) => !isLook(text))).toEqual([]);
  await context.close();
});

test('a new version waits while a lesson is open, is offered when it is closed, and then taken', async () => {
  const relay = await openRelay();
  const { context, page } = await firstLoad(relay.address);
  const waiting = (): Promise<boolean> =>
    page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting !== null);
  await openBook(page);
  await page.getByLabel('New player, a nickname will do').fill('Robin');
  await page.locator('.lessons').getByRole('button', { name: 'Add', exact: true }).click();
  await page.locator('.lessons').getByRole('button', { name: 'New lesson today' }).click();
  await page.getByText('Open: what you dial goes into this lesson.').waitFor();
  let loads = 0;
  page.on('load', () => loads++);

  relay.update();
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  await expect.poll(waiting, { timeout: 20_000 }).toBe(true);
  const offer = page.getByRole('button', { name: 'Take the new version' });
  expect(await offer.count()).toBe(0);
  await page.reload();
  await page.getByRole('button', { name: 'Lesson open' }).waitFor();
  expect(await waiting()).toBe(true);
  expect(await offer.count()).toBe(0);
  expect(loads).toBe(1);

  // Another tab, without a lesson of its own, does not offer it either while the lesson is open here.
  const other = await context.newPage();
  await other.goto(relay.address);
  await other.getByText('Another tab writes the lesson book.').waitFor();
  const offerThere = other.getByRole('button', { name: 'Take the new version' });
  await hearOfWorker(other);
  expect(await offerThere.count()).toBe(0);
  expect(await waiting()).toBe(true);

  await page.getByRole('button', { name: 'Lesson open' }).click();
  await page.locator('.lessons').getByRole('button', { name: 'Close lesson' }).click();
  await offerThere.waitFor();
  await other.close();
  await Promise.all([page.waitForEvent('load'), offer.click()]);
  await page.getByRole('heading', { level: 1, name: 'Slantwise' }).waitFor();
  await expect.poll(waiting).toBe(false);
  await openBook(page);
  await page.locator('.lessons').getByRole('button', { name: /Robin/ }).waitFor();
  await context.close();
  await relay.close();
});

test('the app can be installed: a manifest with icons of our own in the sizes it names', async () => {
  const { context, page } = await firstLoad(appAddress());
  const place = await page.locator('link[rel=manifest]').getAttribute('href');
  const manifest = (await (await fetch(new URL(place!, appAddress()))).json()) as {
    name: string;
    display: string;
    start_url: string;
    icons: { src: string; sizes: string; purpose?: string }[];
  };
  expect(manifest).toMatchObject({ name: 'Slantwise', display: 'standalone', start_url: './' });
  expect(manifest.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true);
  for (const { src, sizes } of manifest.icons) {
    const bytes = Buffer.from(await (await fetch(new URL(src, appAddress()))).arrayBuffer());
    // Width and height stand at byte 16 and 20 of every PNG (ISO/IEC 15948).
    expect(bytes.subarray(1, 4).toString()).toBe('PNG');
    expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
  }
  await context.close();
});

test('servers get the same policy as a file of headers, with what only a header can say', async () => {
  const headers = await (await fetch(new URL('_headers', appAddress()))).text();
  const page = await (await fetch(appAddress())).text();
  const meta = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(page)![1].replaceAll('&#39;', "'");
  expect(headers).toContain(`Content-Security-Policy: ${meta}; frame-ancestors 'none'`);
  expect(meta).toMatch(/default-src 'none'.*connect-src 'self'/);
  expect(/script-src [^;]+/.exec(meta)![0]).toBe("script-src 'self'");
  expect(page).not.toMatch(/<script(?![^>]*\bsrc=)/);
});
