import type { Page } from 'playwright-core';

/** Milliseconds since the page was asked for. */
export interface Firsts {
  /** The verdicts of both plates stand on the page. */
  readonly words: number;
  /** The page has asked for the first picture of the figure. */
  readonly drawn: number;
  /** The graphics processor has finished it. */
  readonly picture: number;
}

/** A slowed page on a busy machine, ms. */
const PATIENCE_MS = 120_000;

/** A picture of less is none yet: a shader tried out, or a canvas cleared. */
const LEAST_TRIANGLES = 1000;

/** Runs in the page before anything else, and looks for the first words and the first picture from outside the app. */
function lookForFirsts(least: number): void {
  const firsts: { words?: number; drawn?: number; picture?: number } = {};
  Object.assign(globalThis, { firsts });
  const look = new MutationObserver(() => {
    const words = [...document.querySelectorAll('.plate-word')].filter(({ textContent }) => textContent !== '');
    if (words.length < 2) return;
    look.disconnect();
    requestAnimationFrame(() => (firsts.words = performance.now()));
  });
  look.observe(document, { subtree: true, childList: true, characterData: true });

  let triangles = 0;
  const gl = WebGL2RenderingContext.prototype;
  const waitFor = (context: WebGL2RenderingContext): void => {
    const fence = context.fenceSync(context.SYNC_GPU_COMMANDS_COMPLETE, 0)!;
    context.flush();
    const ask = (): void => {
      if (context.getSyncParameter(fence, context.SYNC_STATUS) === context.SIGNALED) firsts.picture = performance.now();
      else setTimeout(ask, 5);
    };
    setTimeout(ask, 5);
  };
  const hook = (method: string, vertices: number): void => {
    const key = method as 'drawArrays';
    const real: (...args: number[]) => void = gl[key];
    const isInstanced = method.endsWith('Instanced');
    Object.assign(gl, {
      [key](this: WebGL2RenderingContext, ...args: number[]): void {
        real.apply(this, args);
        if (args[0] !== this.TRIANGLES || triangles >= least) return;
        triangles += (args[vertices] / 3) * (isInstanced ? args[args.length - 1] : 1);
        // The whole frame is drawn in this turn of the page; what is put on after it waits for all of that.
        if (triangles < least) return;
        firsts.drawn = performance.now();
        queueMicrotask(() => waitFor(this));
      },
    });
  };
  hook('drawArrays', 2);
  hook('drawArraysInstanced', 2);
  hook('drawElements', 1);
  hook('drawElementsInstanced', 1);
}

/** Has the page look out for its first words and picture. Before it is opened. */
export async function lookOut(page: Page): Promise<void> {
  await page.addInitScript(lookForFirsts, LEAST_TRIANGLES);
}

/** Waits for both and answers when they came. */
export async function findFirsts(page: Page): Promise<Firsts> {
  await page.waitForFunction(
    () => {
      const { firsts } = globalThis as unknown as { firsts: Partial<Firsts> };
      return firsts.words !== undefined && firsts.picture !== undefined;
    },
    undefined,
    { timeout: PATIENCE_MS },
  );
  return page.evaluate(() => (globalThis as unknown as { firsts: Firsts }).firsts);
}
