import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';

/**
 * Memory of all processes of the browser together, MB: their own. Not with it is what the browser keeps to be thrown away at will: where it draws
 * without a graphics processor, up to 500 MB of pictures that were decoded once. Not a number where the system does not tell.
 */
async function memoryOf(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  return processInfo.reduce((sum, { id }) => {
    try {
      const [, kB] = /^Pss_Anon:\s+(\d+) kB/m.exec(readFileSync(`/proc/${id}/smaps_rollup`, 'utf8')) ?? [];
      return sum + (Number(kB) * 1024) / 1e6;
    } catch {
      return NaN;
    }
  }, 0);
}

/** The same once the page has swept up, MB: the least of some `looks`, because what was let go of goes in its own time. */
export async function sweptMemory(browser: Browser, page: Page, looks = 6): Promise<number> {
  const session = await page.context().newCDPSession(page);
  let least = Infinity;
  for (let look = 0; look < looks; look++) {
    await session.send('HeapProfiler.collectGarbage');
    await page.waitForTimeout(500);
    least = Math.min(least, await memoryOf(browser));
  }
  await session.detach();
  return least;
}
