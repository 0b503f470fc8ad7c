import type { CDPSession, Locator } from 'playwright-core';

const scriptSeconds = async (session: CDPSession): Promise<number> => {
  const { metrics } = await session.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'ScriptDuration')!.value;
};

/** Two frames later everything that a step set off has been drawn. */
export const nextFrame = (slider: Locator): Promise<void> =>
  slider.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

/**
 * Drags a slider to these places (shares of its length) and answers what each step costs the page's own thread in scripts, ms. Input
 * goes to the browser itself: the driver's own mouse runs scripts in the page while a button is down.
 */
export async function dragAlong(slider: Locator, session: CDPSession, shares: readonly number[]): Promise<number[]> {
  const box = (await slider.boundingBox())!;
  const mouse = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', share: number): Promise<unknown> =>
    session.send('Input.dispatchMouseEvent', {
      type,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
      x: box.x + box.width * share,
      y: box.y + box.height / 2,
    });
  await mouse('mousePressed', 0.5);
  const costs: number[] = [];
  for (const share of shares) {
    const before = await scriptSeconds(session);
    await mouse('mouseMoved', share);
    await nextFrame(slider);
    costs.push(((await scriptSeconds(session)) - before) * 1000);
  }
  await mouse('mouseReleased', 0.5);
  return costs;
}
