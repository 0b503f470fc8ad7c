import type { Page } from 'playwright-core';

/** A phone of the middle, and a mobile network: the processor slowed so many times, bytes a second, ms. */
const SLOWED = 4;
const BYTES_PER_S = 10e6 / 8;
const LATENCY_MS = 40;

/** How a slowed page is said in a row. */
export const SLOW = 'processor slowed 4 times, 10 Mbit/s, 40 ms';

/** Makes a page's device and network slow, before it goes anywhere. */
export async function slowDown(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: LATENCY_MS,
    downloadThroughput: BYTES_PER_S,
    uploadThroughput: BYTES_PER_S,
  });
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
}
