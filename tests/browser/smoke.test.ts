import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DRAW_NOTHING } from './deskPage';
import { takeStrays } from './guard';
import { appAddress, launch, offOrigin, open, SCREENS } from './support';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

test('the browser for these tests draws WebGL 2', async () => {
  const { page, context } = await open(browser!);
  const pixel = await page.evaluate(() => {
    const gl = document.createElement('canvas').getContext('webgl2');
    if (!gl) return undefined;
    gl.clearColor(1, 0.6, 0, 1);
    gl.clear(gl.COLOR_BUFFER_BIT);
    const read = new Uint8Array(4);
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, read);
    return [...read];
  });
  expect(pixel).toEqual([255, 153, 0, 255]);
  await context.close();
});

for (const [name, viewport] of Object.entries(SCREENS)) {
  test(`the app opens at ${viewport.width} x ${viewport.height} (${name}) without an error and asks nobody but its own origin`, async () => {
    // With the worker, as on a device: what it fetches is watched too.
    const { page, context, witness } = await open(browser!, { viewport, serviceWorkers: 'allow' });
    await page.getByRole('heading', { level: 1, name: 'Slantwise' }).waitFor();
    await page.waitForLoadState('networkidle');
    await page.evaluate(() => document.fonts.ready);
    expect(witness.requests.length).toBeGreaterThan(0);
    expect(offOrigin(witness)).toEqual([]);
    expect(witness.violations).toEqual([]);
    expect(witness.errors).toEqual([]);
    await context.close();
  });
}

test("both typefaces load from the app's own files, with true minus sign and degree sign", async () => {
  const { page, context, witness } = await open(browser!, { init: [DRAW_NOTHING] });
  const loaded = await page.evaluate(async () => {
    const fonts = [
      "17px 'Vollkorn Variable'",
      "italic 17px 'Vollkorn Variable'",
      "17px 'Sofia Sans Semi Condensed Variable'",
    ];
    const faces = await Promise.all(fonts.map((font) => document.fonts.load(font, 'Steep \u22124\u00b0')));
    return faces.map((found) => found.map(({ status }) => status).join());
  });
  expect(loaded).toEqual(['loaded', 'loaded', 'loaded']);
  expect(new Set(witness.requests.filter((url) => url.endsWith('.woff2'))).size).toBe(3);
  expect(offOrigin(witness)).toEqual([]);
  await context.close();
});

test('what goes wrong on a page does not go unnoticed', async () => {
  const { page, context, witness } = await open(browser!, { init: [DRAW_NOTHING] });
  await page.evaluate(() => {
    console.error('said aloud');
    setTimeout(() => {
      throw new Error('thrown later');
    });
  });
  await expect.poll(() => witness.errors.join()).toMatch(/said aloud[\s\S]*thrown later/);
  expect(offOrigin({ ...witness, requests: [appAddress(), 'blob:null/1', 'https://example.invalid/x'] })).toEqual([
    'https://example.invalid/x',
  ]);
  await context.close();
});

test('the page is locked down: a request to another origin is blocked and noticed', async () => {
  const { page, context, witness } = await open(browser!, { init: [DRAW_NOTHING] });
  const outcome = await page.evaluate(async () => {
    try {
      await fetch('https://example.invalid/');
      return 'went out';
    } catch {
      return 'blocked';
    }
  });
  expect(outcome).toBe('blocked');
  await expect.poll(() => witness.violations).toEqual(['connect-src: https://example.invalid/']);
  expect(witness.errors.join()).toContain('Content Security Policy');
  // The same would fail any test that does not expect it.
  expect(takeStrays()).toContain('connect-src: https://example.invalid/');
  await context.close();
});
