import type { CDPSession, Locator, Page } from 'playwright-core';

/** What the page's own thread has spent in scripts and on layout: by the clock, and in processor time. Each needs a session of its own. */
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

/** What the page's own thread has spent since it began, ms. */
export async function spentMs(session: CDPSession): Promise<{ readonly script: number; readonly layout: number }> {
  const { metrics } = await session.send('Performance.getMetrics');
  const ms = (wanted: string): number => metrics.find(({ name }) => name === wanted)!.value * 1000;
  return { script: ms('ScriptDuration'), layout: ms('LayoutDuration') };
}

/** What steps cost, ms each. By the clock a step also waits while somebody else has the processors. */
export interface Costs {
  readonly clock: number[];
  readonly processor: number[];
  /** Laying out the page after the scripts, in processor time. */
  readonly layout: number[];
}

/**
 * Two frames later everything that a step set off has been drawn. Asking for them runs scripts in the page, which count
 * as the page's, and so does the time for which other threads of the browser break into them.
 */
export const nextFrame = (slider: Locator): Promise<void> =>
  slider.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

const LOOK_MS = 40;
const STILL_LOOKS = 5;

/** Waits until the page has run no script for as long as a frame takes here, and runs none in it itself. */
export async function standStill({ clock }: Meter): Promise<void> {
  let last = -1;
  for (let looks = 0; looks < STILL_LOOKS; looks++) {
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    const { script } = await spentMs(clock);
    if (script !== last) looks = 0;
    last = script;
  }
}

/** Longer than the scripts of a step take, ms. */
const NAP_MS = 60;
const bed = new Int32Array(new SharedArrayBuffer(4));

/**
 * Sleeps through what has just been sent. The browser answers between a step's scripts and its picture; reading that at once, the driver
 * would take a processor away from the page in the middle of what is measured.
 */
async function nap(): Promise<void> {
  // What was sent goes out first.
  await new Promise((resolve) => setTimeout(resolve, 1));
  Atomics.wait(bed, 0, 0, NAP_MS);
}

/**
 * Drags a slider to these places (shares of its length) and answers what each step costs the page's own thread until it has
 * `settled`, ms. Input goes to the browser itself: the driver's own mouse runs scripts in the page while a button is down.
 */
export async function dragAlong(
  slider: Locator,
  meter: Meter,
  shares: readonly number[],
  settled: () => Promise<void>,
): Promise<Costs> {
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
  const costs: Costs = { clock: [], processor: [], layout: [] };
  for (const share of shares) {
    const before = { clock: await spentMs(meter.clock), processor: await spentMs(meter.processor) };
    const moved = mouse('mouseMoved', share);
    await nap();
    await moved;
    await settled();
    const after = { clock: await spentMs(meter.clock), processor: await spentMs(meter.processor) };
    costs.clock.push(after.clock.script - before.clock.script);
    costs.processor.push(after.processor.script - before.processor.script);
    costs.layout.push(after.processor.layout - before.processor.layout);
  }
  await mouse('mouseReleased', 0.5);
  return costs;
}
