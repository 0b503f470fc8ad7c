import type { Page } from 'playwright-core';
import { current, currentPose, setMovement } from '../../src/store';
import { createMeter, dragAlong, standStill, type Costs, type Meter } from './drag';
import { findFirsts, lookOut } from './firstPicture';
import type { Seat } from './site';
import { quantile, type Row, type Session } from './table';

export const name = 'screen';

/** Steps of the first drag after opening, and of the drag after that: the browser is still optimising after eighty steps. */
const FULL = { first: 60, later: 120 } as const;
const QUICK = { first: 14, later: 10 } as const;
const PERIOD = 30;

/** Counts what every animation frame draws. Runs in the page, before anything else. */
function countDraws(): void {
  const count = { draws: 0, triangles: 0 };
  const frames: { draws: number; triangles: number }[] = [];
  Object.assign(globalThis, { drawnFrames: frames });
  const gl = WebGL2RenderingContext.prototype;
  const hook = (method: 'drawArrays' | 'drawElements', vertices: number): void => {
    for (const instanced of ['', 'Instanced']) {
      const key = `${method}${instanced}` as 'drawArrays';
      const real: (...args: number[]) => void = gl[key];
      Object.assign(gl, {
        [key](this: WebGL2RenderingContext, ...args: number[]): void {
          count.draws += 1;
          if (args[0] === this.TRIANGLES)
            count.triangles += (args[vertices] / 3) * (instanced ? args[args.length - 1] : 1);
          real.apply(this, args);
        },
      });
    }
  };
  hook('drawArrays', 2);
  hook('drawElements', 1);
  const ask = globalThis.requestAnimationFrame;
  globalThis.requestAnimationFrame = (work) =>
    ask((time) => {
      const before = { ...count };
      work(time);
      const draws = count.draws - before.draws;
      if (draws > 0) frames.push({ draws, triangles: count.triangles - before.triangles });
    });
}

/**
 * Drags the lead wrist's slider to and fro and listens to what each step costs the page's own thread. At the ends of the
 * slider, which lie half a thumb inside it, further steps would change nothing.
 */
const drag = (page: Page, meter: Meter, steps: number): Promise<Costs> =>
  dragAlong(
    page.getByRole('slider', { name: 'Lead wrist', exact: true }),
    meter,
    // Half a step off, so that the first one is a change already.
    Array.from({ length: steps }, (_, i) => 0.5 + 0.4 * Math.sin(((i + 0.5) / PERIOD) * 2 * Math.PI)),
    () => standStill(meter),
  );

/** The model's share, without a screen: everything one step of a slider makes the store work out, ms. */
function modelCosts(steps: number): number[] {
  const timed = (step: number): number => {
    const start = performance.now();
    setMovement('leadWristFlexion', 30 * Math.sin((step / PERIOD) * 2 * Math.PI));
    current();
    currentPose();
    return performance.now() - start;
  };
  // As in the page, where the first drag comes before.
  for (let step = 0; step < FULL.first; step++) timed(step);
  return Array.from({ length: steps }, (_, step) => timed(step));
}

interface Frame {
  readonly draws: number;
  readonly triangles: number;
}
interface Drags {
  readonly first: Costs;
  readonly later: Costs;
  readonly frames: readonly Frame[];
}

/** A page that has just been opened, dragged for the first time and once more. */
async function dragAfterOpening({ address, newVisitor }: Seat, steps: typeof FULL | typeof QUICK): Promise<Drags> {
  const page = await newVisitor();
  await page.addInitScript(countDraws);
  await lookOut(page);
  await page.goto(address);
  await findFirsts(page);
  const meter = await createMeter(page);
  await standStill(meter);
  const first = await drag(page, meter, steps.first);
  const later = await drag(page, meter, steps.later);
  const frames = await page.evaluate(() => (globalThis as unknown as { drawnFrames: Frame[] }).drawnFrames);
  await page.context().close();
  const least = steps.first + steps.later;
  if (frames.length < least) throw new Error(`Only ${frames.length} frames were drawn in ${least} steps.`);
  return { first, later, frames };
}

/** By the clock, for which the goals are, and in processor time: the clock runs on while the software renderer has the processors. */
function costRows(which: string, { clock, processor }: Costs, goal: string): Row[] {
  const unit = 'ms';
  return [
    { what: `script a slider step, ${which}, median`, value: quantile(clock, 0.5), unit },
    { what: `script a slider step, ${which}, p95`, value: quantile(clock, 0.95), unit, goal },
    { what: `the same in processor time, ${which}, median`, value: quantile(processor, 0.5), unit },
    { what: `the same in processor time, ${which}, p95`, value: quantile(processor, 0.95), unit },
  ];
}

export async function run({ quick, withPage, put }: Session): Promise<void> {
  const steps = quick ? QUICK : FULL;
  // Before anything is built: what a build leaves behind would be cleared away in between, and the browser draws on the same processors.
  const model = modelCosts(240);
  put({
    what: "the model's share of a slider step, p95",
    value: quantile(model, 0.95),
    unit: 'ms',
    goal: 'at most 1.5',
  });
  await withPage(async (seat) => {
    const { first, later, frames } = await dragAfterOpening(seat, steps);
    put(...costRows('first drag', first, 'at most 8'), ...costRows('later drag', later, 'at most 5'));
    const { layout } = later;
    const most = (of: keyof Frame): number => frames.reduce((top, frame) => Math.max(top, frame[of]), 0);
    put(
      { what: 'layout after a slider step in processor time, median', value: quantile(layout, 0.5), unit: 'ms' },
      { what: 'draw calls a frame, most', value: most('draws'), unit: '', goal: 'at most 20' },
      { what: 'triangles a frame, most', value: most('triangles'), unit: '', goal: 'at most 110000' },
    );
  });
}
