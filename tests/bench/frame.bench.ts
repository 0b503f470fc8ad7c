import type { Page } from 'playwright-core';
import { findFirsts, lookOut } from './firstPicture';
import type { Seat } from './site';
import { quantile, type Session } from './table';

export const name = 'frame';

/** None of its rows has a goal. */
export const hasGoals = false;

/** Rounds, two frames of each kind in each; they take turns, so that what else the machine does falls on all of them. */
const ROUNDS = 3;

/** A draw call by what it draws; `nth` where a frame has several like it, `offScreen` into a picture of its own. */
interface DrawCall {
  readonly indices?: number;
  readonly instances?: number;
  readonly nth?: number;
  readonly offScreen?: true;
}

/** Figure and club, all of them. */
const SOLIDS = 99_978;

/** What a frame is drawn without, by the draw calls that it takes. */
const WITHOUT: Readonly<Record<string, DrawCall>> = {
  'the lit paper': { indices: 16 * 12 * 6 },
  'the pins': { indices: 6, instances: 3 },
  'the ribbon of the trace': { indices: 540 },
  'thin lines: target line, rules, hands': { indices: 6, instances: 645 },
  'the ground with its shadow': { indices: 6, nth: 0 },
  'the cast shadow': { offScreen: true },
  'the ink contour': { indices: SOLIDS, nth: 1 },
};

/** What the shader of figure and club is made without, by the text it is replaced in. */
const SHADED_WITHOUT: Readonly<Record<string, readonly [from: string, to: string]>> = {
  'the grain of the wood': ['clamp(shade, 0., 1.)', '.3'],
  'the gleam at its edge': ['outgoingLight += gleam *', 'outgoingLight += 0. *'],
};

/**
 * Runs in the page before anything else. Measures each frame from its beginning until the processor that draws has finished it, ms,
 * and leaves out the draw calls that `skipped` names.
 */
function timeFrames(): void {
  const state = { skipped: undefined as DrawCall | undefined, left: 0, took: [] as number[] };
  Object.assign(globalThis, { frameTimes: state });
  const gl = WebGL2RenderingContext.prototype;
  const last: { drawn?: WebGL2RenderingContext } = {};
  const takeLast = (): WebGL2RenderingContext | undefined => {
    const { drawn } = last;
    delete last.drawn;
    return drawn;
  };
  /** How many calls like the one that is skipped this frame has had. */
  let alike = 0;
  const isSkipped = (context: WebGL2RenderingContext, indices: number, instances: number): boolean => {
    const { skipped } = state;
    if (!skipped) return false;
    const isOff = context.getParameter(context.FRAMEBUFFER_BINDING) !== null;
    if (skipped.offScreen) return isOff;
    if (isOff || skipped.indices !== indices || (skipped.instances ?? 1) !== instances) return false;
    return skipped.nth === undefined || alike++ === skipped.nth;
  };
  // Where each call says how many instances it draws, and how many indices or corners.
  const hook = (name: string, count: number, instances?: number): void => {
    const real: (...args: number[]) => void = gl[name as 'drawElements'];
    Reflect.set(gl, name, function (this: WebGL2RenderingContext, ...args: number[]): void {
      last.drawn = this;
      if (isSkipped(this, args[count], instances === undefined ? 1 : args[instances])) state.left++;
      else real.apply(this, args);
    });
  };
  hook('drawElements', 1);
  hook('drawElementsInstanced', 1, 4);
  hook('drawArrays', 2);
  const ask = globalThis.requestAnimationFrame;
  const pixel = new Uint8Array(4);
  globalThis.requestAnimationFrame = (work) =>
    ask((time) => {
      takeLast();
      alike = 0;
      const start = performance.now();
      work(time);
      const context = takeLast();
      if (!context) return;
      context.readPixels(0, 0, 1, 1, context.RGBA, context.UNSIGNED_BYTE, pixel);
      state.took.push(performance.now() - start);
    });
}

/** Runs in the page before anything else: every shader is made with one text for another. */
function reshade([from, to]: readonly [string, string]): void {
  const gl = WebGL2RenderingContext.prototype;
  const hooked: string = 'shaderSource';
  const real: (shader: WebGLShader, text: string) => void = gl[hooked as 'shaderSource'];
  const state = { replaced: 0 };
  Object.assign(globalThis, { reshaded: state });
  Reflect.set(gl, hooked, function (this: WebGL2RenderingContext, shader: WebGLShader, text: string): void {
    if (text.includes(from)) state.replaced++;
    real.call(this, shader, text.replace(from, to));
  });
}

interface Timed {
  readonly frameTimes: { skipped: DrawCall | undefined; left: number; took: number[] };
  readonly reshaded: { readonly replaced: number };
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

/** A page with the desk's first picture. */
async function openDesk({ address, newVisitor }: Seat, shaded?: readonly [string, string]): Promise<Page> {
  const page = await newVisitor();
  await page.addInitScript(timeFrames);
  if (shaded) await page.addInitScript(reshade, shaded);
  await lookOut(page);
  await page.goto(address);
  await findFirsts(page);
  return page;
}

/** A frame of the picture in software drawing, and what its parts cost, each with and without in turn. */
export async function run({ withPage, put }: Session): Promise<void> {
  await withPage(async (seat) => {
    const page = await openDesk(seat);
    const reshaded: Page[] = [];
    for (const shaded of Object.values(SHADED_WITHOUT)) {
      const other = await openDesk(seat, shaded);
      const { replaced } = await other.evaluate(() => (globalThis as unknown as Timed).reshaded);
      if (replaced === 0) throw new Error(`No shader holds "${shaded[0]}".`);
      reshaded.push(other);
    }
    const kinds = [undefined, ...Object.values(WITHOUT)];
    const took = kinds.map((): number[] => []);
    const shadedTook = reshaded.map((): number[] => []);
    const lap = async (into: readonly number[][], of: readonly (DrawCall | undefined)[], on = page): Promise<void> => {
      for (const [i, skipped] of of.entries())
        for (const key of ['ArrowRight', 'ArrowLeft']) into[i].push(await timeOne(on, key, skipped));
    };
    for (let round = 0; round < ROUNDS; round++) {
      // Not counted: what another page had in the caches is away after it.
      await lap([[]], [undefined]);
      await lap(took, kinds);
      for (const [i, other] of reshaded.entries()) await lap([[], shadedTook[i]], [undefined, undefined], other);
    }
    const left = await page.evaluate(() => (globalThis as unknown as Timed).frameTimes.left);
    const expected = ROUNDS * 2 * Object.keys(WITHOUT).length;
    if (left < expected) throw new Error(`Only ${left} of at least ${expected} draw calls were left out.`);
    const unit = 'ms';
    const median = (of: readonly number[]): number => quantile(of, 0.5);
    put({ what: 'a frame drawn in software, median', value: median(took[0]), unit });
    put(...Object.keys(WITHOUT).map((what, i) => ({ what: `without ${what}`, value: median(took[i + 1]), unit })));
    put(
      ...Object.keys(SHADED_WITHOUT).map((what, i) => ({
        what: `without ${what}`,
        value: median(shadedTook[i]),
        unit,
      })),
    );
    for (const other of reshaded) await other.context().close();

    // Kept beside the swing now, a swing of its own far enough away to be drawn.
    const compare = page.getByRole('button', { name: /^(Hold ghost|Keep as comparison)$/ });
    const [alone, compared]: number[][] = [[], []];
    const wrist = page.locator('[data-dial="leadWristFlexion"] input[type="range"]');
    const twice = [undefined, undefined];
    for (let round = 0; round < ROUNDS; round += 2) {
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
