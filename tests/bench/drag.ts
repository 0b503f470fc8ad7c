import type { CDPSession, Locator, Page } from 'playwright-core';

/** What the page's own thread has spent in scripts: by the clock, and in processor time. Each needs a session of its own. */
export interface Meter {
  readonly clock: CDPSession;
  readonly processor: CDPSession;
}

export async function createMeter(page: Page): Promise<Meter> {
  const [clock, processor] = [await page.context().newCDPSession(page), await page.context().newCDPSession(page)];
  await clock.send('Performance.enable', { timeDomain: 'timeTicks' });
  await processor.send('Performance.enable', { timeDomain: 'threadTicks' });
  return { clock, processor };
}

const scriptMs = async (session: CDPSession): Promise<number> => {
  const { metrics } = await session.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'ScriptDuration')!.value * 1000;
};

/** What steps cost, ms each. By the clock a step also waits while the software renderer has the processors. */
export interface Costs {
  readonly clock: number[];
  readonly processor: number[];
}

/** Two frames later everything that a step set off has been drawn. */
export const nextFrame = (slider: Locator): Promise<void> =>
  slider.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

/**
 * Drags a slider to these places (shares of its length) and answers what each step costs the page's own thread in scripts, ms. Input
 * goes to the browser itself: the driver's own mouse runs scripts in the page while a button is down.
 */
export async function dragAlong(slider: Locator, meter: Meter, shares: readonly number[]): Promise<Costs> {
  const box = (await slider.boundingBox())!;
  const mouse = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', share: number): Promise<unknown> =>
    meter.clock.send('Input.dispatchMouseEvent', {
      type,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
      x: box.x + box.width * share,
      y: box.y + box.height / 2,
    });
  await mouse('mousePressed', 0.5);
  const costs: Costs = { clock: [], processor: [] };
  for (const share of shares) {
    const before = { clock: await scriptMs(meter.clock), processor: await scriptMs(meter.processor) };
    await mouse('mouseMoved', share);
    await nextFrame(slider);
    for (const by of ['clock', 'processor'] as const) costs[by].push((await scriptMs(meter[by])) - before[by]);
  }
  await mouse('mouseReleased', 0.5);
  return costs;
}
