// npm run soak: random actions in a lesson for 20 minutes; memory and graphics resources have to stay level. SOAK_MINUTES=240 runs 4 hours.
import { chromium, type CDPSession, type Page } from 'playwright-core';
import { preview } from 'vite';
import { withSite } from '../tests/bench/site';
import { acts, doAct, lessonActs } from '../tests/browser/fuzzActs';
import { createRandom } from '../tests/reference/random';
import { browserFlags, resolveBrowser } from './browser.mjs';

const MINUTES = Number(process.env['SOAK_MINUTES'] ?? 20);
const SEED = Number(process.env['SEED'] ?? 5);
/** The most the memory may grow after warming up, MB a minute. */
const STEEPEST = 0.2;
const SAMPLES = 40;

type Sample = { readonly minute: number; readonly acts: number; readonly heapMb: number } & Record<string, number>;

/** Counts what lives on the graphics card. Runs in the page, before anything else. */
function countGraphics(): void {
  const alive: Record<string, number> = {};
  Object.assign(globalThis, { graphicsAlive: alive });
  for (const kind of ['Buffer', 'Texture', 'Program', 'Shader', 'Framebuffer', 'Renderbuffer', 'VertexArray']) {
    for (const proto of [WebGLRenderingContext.prototype, WebGL2RenderingContext.prototype]) {
      const [make, drop] = [`create${kind}`, `delete${kind}`];
      if (!(make in proto)) continue;
      const [create, remove] = [Reflect.get(proto, make), Reflect.get(proto, drop)] as ((
        ...args: unknown[]
      ) => unknown)[];
      Reflect.set(proto, make, function (this: unknown, ...args: unknown[]) {
        alive[kind] = (alive[kind] ?? 0) + 1;
        return create.apply(this, args);
      });
      Reflect.set(proto, drop, function (this: unknown, ...args: unknown[]) {
        if (args[0]) alive[kind]--;
        return remove.apply(this, args);
      });
    }
  }
}

/**
 * Brings the desk to where samples can be compared, whatever was done before: standing still at address, the set-up open, the
 * club without a tee, and the picture made anew by changing the board and back. Runs in the page.
 */
async function settle(): Promise<void> {
  const frames = async (): Promise<void> => {
    for (let i = 0; i < 3; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
  };
  const find = <T extends HTMLElement>(selector: string): T | null => document.querySelector<T>(selector);
  const enter = async (field: HTMLInputElement | HTMLSelectElement, value: string, event: string): Promise<void> => {
    const { prototype } = field instanceof HTMLSelectElement ? HTMLSelectElement : HTMLInputElement;
    Object.getOwnPropertyDescriptor(prototype, 'value')!.set!.call(field, value);
    field.dispatchEvent(new Event(event, { bubbles: true }));
    await frames();
  };
  find('.play[aria-label="Pause"]')?.click();
  if (!find('.set-up')) find('#tab-setUp')!.click();
  while (!find('.set-up select')) await frames();
  const rail = find<HTMLInputElement>('.scrub input')!;
  await enter(rail, rail.min, 'input');
  await enter(find<HTMLSelectElement>('.set-up select')!, '7-iron', 'change');
  const { slantwiseProbe } = globalThis as unknown as { slantwiseProbe: () => { status: string } };
  while (slantwiseProbe().status === 'solving') await frames();
  for (const board of ['Dark', 'Light']) {
    const labels = [...document.querySelectorAll('.set-up label')];
    labels
      .find(({ textContent }) => textContent === board)!
      .querySelector('input')!
      .click();
    await frames();
  }
}

/** What is left after everything that can be collected has been. */
async function look(page: Page, session: CDPSession, minute: number, done: number): Promise<Sample> {
  await page.evaluate(settle);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters');
  const alive = await page.evaluate(
    () => (globalThis as unknown as { graphicsAlive: Record<string, number> }).graphicsAlive,
  );
  // Elements, texts and comments that hang in the page; what React keeps for later hangs nowhere.
  const inPage = await page.evaluate(() => {
    const walk = document.createTreeWalker(document, NodeFilter.SHOW_ALL);
    let count = 1;
    while (walk.nextNode()) count++;
    return count;
  });
  const counts = { nodes, inPage, listeners: jsEventListeners, workers: page.workers().length, ...alive };
  return { minute, acts: done, heapMb: usedSize / 1e6, ...counts };
}

/** Slope of the straight line that fits best, per minute. */
function slopeOf(samples: readonly Sample[], of: string): number {
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [x, y] = [mean(samples.map(({ minute }) => minute)), mean(samples.map((sample) => sample[of]))];
  const over = samples.map((sample) => (sample.minute - x) * (sample[of] - y));
  const under = samples.map(({ minute }) => (minute - x) ** 2);
  return mean(over) / mean(under);
}

/** What the desk shows in words differs a little from sample to sample; what lies on the graphics card does not. */
const VARIES = new Set(['nodes', 'inPage', 'listeners', 'workers']);

/** A count is level when it comes back, in the last third, to where it was in the first: on the graphics card to the least. */
function isLevel(samples: readonly Sample[], of: string): boolean {
  const third = Math.ceil(samples.length / 3);
  const values = samples.map((sample) => sample[of]);
  const first = values.slice(0, third);
  return Math.min(...values.slice(-third)) <= (VARIES.has(of) ? Math.max(...first) : Math.min(...first));
}

const ACTS = [...acts, ...lessonActs, ...lessonActs];

/** A lesson of a player of our own, which follows the desk through everything. */
async function startLesson(page: Page): Promise<void> {
  await page.locator('#tab-lessons').click();
  const form = page.locator('.lesson-new');
  await form.getByLabel('New player, a nickname will do').fill('Robin');
  await form.getByRole('button', { name: 'Start a lesson' }).click();
  await page.locator('#drawer[data-drawer="seen"]').waitFor();
}

async function soak(page: Page): Promise<readonly Sample[]> {
  const session = await page.context().newCDPSession(page);
  const chance = createRandom(SEED);
  const samples: Sample[] = [];
  const start = Date.now();
  const minuteNow = (): number => (Date.now() - start) / 60_000;
  let done = 0;
  while (minuteNow() < MINUTES) {
    await doAct(page, ACTS[Math.floor(chance() * ACTS.length)], chance);
    done++;
    if (minuteNow() < (samples.length * MINUTES) / SAMPLES) continue;
    const sample = await look(page, session, minuteNow(), done);
    samples.push(sample);
    const rest = Object.entries(sample)
      .slice(3)
      .map(([name, value]) => `${name} ${value}`);
    console.log(
      `${sample.minute.toFixed(1).padStart(6)} min ${done} acts, heap ${sample.heapMb.toFixed(2)} MB, ${rest.join(', ')}`,
    );
  }
  return samples;
}

const problems: string[] = [];
await withSite(async (folder) => {
  const server = await preview({
    configFile: false,
    root: folder,
    build: { outDir: folder },
    logLevel: 'error',
    preview: { port: 0 },
  });
  const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: [...browserFlags] });
  try {
    // Half the pixels each way: software draws them, and it is the number of actions that counts.
    const page = await browser.newPage({
      viewport: { width: 820, height: 1180 },
      deviceScaleFactor: 0.5,
      reducedMotion: 'reduce',
    });
    page.on('pageerror', (error) => problems.push(`an error: ${error.message}`));
    // The runner names functions through a helper of its own, which the page does not have.
    await page.addInitScript('globalThis.__name = (work) => work');
    await page.addInitScript(countGraphics);
    await page.goto(`${server.resolvedUrls!.local[0]}?probe`);
    await page.locator('canvas').first().waitFor();
    await startLesson(page);
    const samples = await soak(page);
    // The first quarter warms up: code is compiled, every drawer has been opened.
    const warm = samples.slice(Math.ceil(samples.length / 4));
    const slope = slopeOf(warm, 'heapMb');
    console.log(
      `\nAfter warming up: heap ${slope >= 0 ? '+' : ''}${slope.toFixed(3)} MB a minute (at most ${STEEPEST}).`,
    );
    if (!(slope < STEEPEST)) problems.push(`the heap grows by ${slope.toFixed(3)} MB a minute`);
    for (const name of Object.keys(warm[0]).slice(3)) {
      const values = warm.map((sample) => sample[name]);
      const level = isLevel(warm, name);
      console.log(`${name}: ${Math.min(...values)} to ${Math.max(...values)}, ${level ? 'level' : 'GROWING'}`);
      if (!level) problems.push(`${name} grow`);
    }
  } finally {
    await browser.close();
    await server.close();
  }
});
if (problems.length > 0) {
  console.error(`\nNot level: ${[...new Set(problems)].join('; ')}.`);
  process.exitCode = 1;
}
