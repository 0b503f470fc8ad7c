// Takes the picture in the README: the built app, a cupped wrist, on a tablet. Run after `npm run build`.
import { preview } from 'vite';
import { chromium } from 'playwright-core';
import { browserFlags, resolveBrowser } from './browser.mjs';

const server = await preview({ preview: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: browserFlags });
const page = await browser.newPage({ viewport: { width: 1180, height: 820 }, deviceScaleFactor: 1.5 });
await page.goto(server.resolvedUrls?.local[0] ?? '');
await page.locator('canvas').waitFor({ timeout: 60_000 });
const wrist = page.getByRole('slider', { name: /lead wrist/i });
await wrist.focus();
for (let i = 0; i < 16; i++) await page.keyboard.press('ArrowLeft');
await page.waitForTimeout(8000);
await page.screenshot({ path: new URL('./picture/desk.png', import.meta.url).pathname });
await browser.close();
await server.close();
