import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { deg, toRad } from '../../src/math/angle';
import { STEPS as REHEARSED_STEPS } from '../../src/plates/plate/rehearsal';
import { current, currentPose, deriveAside, desk, setMovement } from '../../src/store';
import { createMeter, dragAlong, nextFrame, standStill, type Costs, type Meter } from './drag';
import { withPage } from './site';
import type { Row } from './table';

export const name = 'screen';

/** Steps of the first drag after opening, of the drag after it, and steps to and fro. */
const FIRST_STEPS = 60;
/** Between the two drags, ms: a coach looks at what the first one did, and the page gets ready for more. */
const REST_MS = 15_000;
const STEPS = 240;
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

const gzipSize = (file: string): number => gzipSync(readFileSync(file), { level: 9 }).length;
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))];

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

/**
 * The model's share, without a screen: everything one step of a slider makes the store work out. What the page has worked out by the
 * drag after the rest comes first: its first drag, and its rehearsal.
 */
function modelCosts(): number[] {
  const bend = (step: number): number => 30 * Math.sin((step / PERIOD) * 2 * Math.PI);
  const timed = (step: number): number => {
    const start = performance.now();
    setMovement('leadWristFlexion', bend(step));
    current();
    currentPose();
    return performance.now() - start;
  };
  for (let step = 0; step < FIRST_STEPS; step++) timed(step);
  for (let step = 0; step < REHEARSED_STEPS; step++) deriveAside(desk.getState(), toRad(deg(bend(step))));
  return Array.from({ length: STEPS }, (_, step) => timed(step));
}

export async function run(): Promise<Row[]> {
  // Before anything is built: what a build leaves behind would be cleared away in between, and the browser draws on the same processors.
  const model = modelCosts();
  return withPage(async ({ address, folder, page }) => {
    await page.addInitScript(countDraws);
    const asked = new Set<string>();
    page.on('request', (request) => asked.add(new URL(request.url()).pathname));
    await page.goto(address);
    await page.locator('canvas').first().waitFor();
    await nextFrame(page.locator('body'));
    const payload = [...asked].filter((file) => /\.(js|css)$/.test(file)).map((file) => gzipSize(join(folder, file)));
    const meter = await createMeter(page);
    const first = await drag(page, meter, FIRST_STEPS);
    await new Promise((resolve) => setTimeout(resolve, REST_MS));
    const costs = await drag(page, meter, STEPS);
    const frames = await page.evaluate(
      () => (globalThis as unknown as { drawnFrames: { draws: number; triangles: number }[] }).drawnFrames,
    );
    const steps = FIRST_STEPS + STEPS;
    if (frames.length < steps) throw new Error(`Only ${frames.length} frames were drawn in ${steps} steps.`);
    return [
      {
        what: 'scripts and style sheets until the picture stands, gzip',
        value: sum(payload) / 1000,
        unit: 'kB',
        goal: 'at most 480',
      },
      { what: 'script a slider step, first drag after opening, median', value: quantile(first.clock, 0.5), unit: 'ms' },
      { what: 'script a slider step, first drag after opening, p95', value: quantile(first.clock, 0.95), unit: 'ms' },
      { what: 'script a slider step after a rest, median', value: quantile(costs.clock, 0.5), unit: 'ms' },
      {
        what: 'script a slider step after a rest, p95',
        value: quantile(costs.clock, 0.95),
        unit: 'ms',
        goal: 'at most 4',
      },
      { what: 'of that, the model, p95', value: quantile(model, 0.95), unit: 'ms', goal: 'at most 1' },
      // The clock runs on while the software renderer holds the processors.
      {
        what: 'script a slider step after a rest in processor time, median',
        value: quantile(costs.processor, 0.5),
        unit: 'ms',
      },
      {
        what: 'script a slider step after a rest in processor time, p95',
        value: quantile(costs.processor, 0.95),
        unit: 'ms',
        goal: 'at most 4',
      },
      { what: 'layout after a slider step in processor time, median', value: quantile(costs.layout, 0.5), unit: 'ms' },
      {
        what: 'draw calls a frame, most',
        value: Math.max(...frames.map(({ draws }) => draws)),
        unit: '',
        goal: 'at most 80',
      },
      {
        what: 'triangles a frame, most',
        value: Math.max(...frames.map(({ triangles }) => triangles)),
        unit: '',
        goal: 'at most 120000',
      },
    ];
  });
}
