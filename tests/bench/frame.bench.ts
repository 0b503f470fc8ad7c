import type { Page } from 'playwright-core';
import { findFirsts, lookOut } from './firstPicture';
import { quantile, type Session } from './table';

export const name = 'frame';

/** Frames of each kind; they take turns, so that what else the machine does falls on all of them. */
const ROUNDS = { full: 8, quick: 4 } as const;

/** What a frame is drawn without, by the draw call that it takes, or with, by what the desk is asked for. */
const WITHOUT = {
  'the lit paper': { indices: 16 * 12 * 6, instances: 1 },
  'the pins': { indices: 6, instances: 3 },
} as const;

interface DrawCall {
  readonly indices: number;
  readonly instances: number;
}

/**
 * Runs in the page before anything else. Measures each frame from its beginning until the processor that draws has finished it, ms,
 * and leaves out the draw call that `skipped` names.
 */
function timeFrames(): void {
  const state = { skipped: undefined as DrawCall | undefined, took: [] as number[] };
  Object.assign(globalThis, { frameTimes: state });
  const gl = WebGL2RenderingContext.prototype;
  const last: { drawn?: WebGL2RenderingContext } = {};
  const takeLast = (): WebGL2RenderingContext | undefined => {
    const { drawn } = last;
    delete last.drawn;
    return drawn;
  };
  const isSkipped = (indices: number, instances: number): boolean =>
    state.skipped?.indices === indices && state.skipped.instances === instances;
  // Where each call says how many instances it draws.
  const hook = (name: 'drawElements' | 'drawElementsInstanced', instances?: number): void => {
    const real: (...args: number[]) => void = gl[name as 'drawElements'];
    Reflect.set(gl, name, function (this: WebGL2RenderingContext, ...args: number[]): void {
      last.drawn = this;
      if (!isSkipped(args[1], instances === undefined ? 1 : args[instances])) real.apply(this, args);
    });
  };
  hook('drawElements');
  hook('drawElementsInstanced', 4);
  const ask = globalThis.requestAnimationFrame;
  const pixel = new Uint8Array(4);
  globalThis.requestAnimationFrame = (work) =>
    ask((time) => {
      takeLast();
      const start = performance.now();
      work(time);
      const context = takeLast();
      if (!context) return;
      context.readPixels(0, 0, 1, 1, context.RGBA, context.UNSIGNED_BYTE, pixel);
      state.took.push(performance.now() - start);
    });
}

interface Timed {
  readonly frameTimes: { skipped: DrawCall | undefined; took: number[] };
}

/** One frame after one step of the lead wrist's dial, ms; `skipped` is not drawn. */
async function timeOne(page: Page, key: string, skipped: DrawCall | undefined): Promise<number> {
  const before = await page.evaluate((call) => {
    const { frameTimes } = globalThis as unknown as Timed;
    frameTimes.skipped = call;
    return frameTimes.took.length;
  }, skipped);
  await page.locator('[data-dial="leadWristFlexion"] input[type="range"]').press(key);
  await page.waitForFunction((count) => (globalThis as unknown as Timed).frameTimes.took.length > count, before);
  return page.evaluate((count) => (globalThis as unknown as Timed).frameTimes.took[count], before);
}

/** A frame of the picture in software drawing, and what its parts cost, each with and without in turn in one page. */
export async function run({ quick, withPage, put }: Session): Promise<void> {
  await withPage(async ({ address, newVisitor }) => {
    const page = await newVisitor();
    await page.addInitScript(timeFrames);
    await lookOut(page);
    await page.goto(address);
    await findFirsts(page);
    const rounds = quick ? ROUNDS.quick : ROUNDS.full;
    const kinds = [undefined, ...Object.values(WITHOUT)];
    const took = kinds.map((): number[] => []);
    const lap = async (into: readonly number[][], of: readonly (DrawCall | undefined)[]): Promise<void> => {
      for (const [i, skipped] of of.entries())
        for (const key of ['ArrowRight', 'ArrowLeft']) into[i].push(await timeOne(page, key, skipped));
    };
    for (let round = 0; round < rounds; round++) await lap(took, kinds);
    const unit = 'ms';
    const median = (of: readonly number[]): number => quantile(of, 0.5);
    put({ what: 'a frame drawn in software, median', value: median(took[0]), unit });
    put(...Object.keys(WITHOUT).map((what, i) => ({ what: `without ${what}`, value: median(took[i + 1]), unit })));

    // Kept beside the swing now, a swing of its own far enough away to be drawn.
    const compare = page.getByRole('button', { name: /^(Hold ghost|Keep as comparison)$/ });
    const [alone, compared]: number[][] = [[], []];
    const wrist = page.locator('[data-dial="leadWristFlexion"] input[type="range"]');
    const twice = [undefined, undefined];
    for (let round = 0; round < rounds; round += 2) {
      await lap([alone, alone], twice);
      await compare.click();
      await wrist.press('PageUp');
      await lap([compared, compared], twice);
      await wrist.press('PageDown');
      await compare.click();
    }
    put(
      { what: 'alone, in turn with the comparison', value: median(alone), unit },
      { what: 'with the see-through comparison', value: median(compared), unit },
    );
    await page.context().close();
  });
}
