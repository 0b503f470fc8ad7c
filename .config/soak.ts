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

const problems: string[] = [];

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
 * Brings the desk to where samples can be compared, whatever was done before: empty, standing still, the set-up open, every sheet
 * closed, and the picture made anew by changing the board and back. Runs in the page.
 */
async function settle(): Promise<void> {
  const frames = async (): Promise<void> => {
    for (let i = 0; i < 3; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
  };
  const probed = globalThis as unknown as { slantwiseProbe: () => { status: string }; slantwiseClear: () => void };
  (document.activeElement as HTMLElement | null)?.blur();
  for (const sheet of document.querySelectorAll<HTMLElement>('[popover]:popover-open')) sheet.hidePopover();
  await frames();
  probed.slantwiseClear();
  await frames();
  while (probed.slantwiseProbe().status === 'solving') await frames();
  document.querySelector<HTMLElement>('#tab-setUp')!.click();
  const findSection = (name: string): HTMLElement | undefined =>
    [...document.querySelectorAll<HTMLElement>('.drawer-index button')].find(({ textContent }) => textContent === name);
  while (!findSection('Units')) await frames();
  findSection('Units')!.click();
  await frames();
  for (const board of ['Dark', 'Light']) {
    [...document.querySelectorAll('.set-up label')]
      .find(({ textContent }) => textContent === board)!
      .querySelector('input')!
      .click();
    await frames();
  }
  // What slides, fades or is said for a moment comes to its end.
  await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
  await new Promise((resolve) => setTimeout(resolve, 400));
  await frames();
}

/** Nodes that scripts hold though they hang in no page. */
async function countDetached(session: CDPSession): Promise<number> {
  type Node = { readonly children?: readonly Node[] };
  const count = ({ children = [] }: Node): number => 1 + children.reduce((sum, child) => sum + count(child), 0);
  // In between, the protocol would keep a list of all nodes itself.
  await session.send('DOM.enable');
  const { detachedNodes } = await session.send('DOM.getDetachedDomNodes');
  await session.send('DOM.disable');
  return detachedNodes.reduce((sum, { treeNode }) => sum + count(treeNode), 0);
}

/** What is left after everything that can be collected has been. */
async function look(page: Page, session: CDPSession, minute: number, done: number): Promise<Sample> {
  await page.evaluate(settle);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters');
  const detached = await countDetached(session);
  const alive = await page.evaluate(
    () => (globalThis as unknown as { graphicsAlive: Record<string, number> }).graphicsAlive,
  );
  // Elements, texts and comments that hang in the page; what the browser builds into fields itself is in `attached` alone.
  // In the head there is a link more for every part of the program that has been fetched.
  const [inPage, fetched] = await page.evaluate(() => {
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ALL);
    let count = 1;
    while (walk.nextNode()) count++;
    return [count, document.head.childNodes.length];
  });
  const counts = {
    attached: nodes - detached - fetched,
    inPage,
    detached,
    fetched,
    listeners: jsEventListeners,
    workers: page.workers().length,
    ...alive,
  };
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
const VARIES = new Set(['attached', 'inPage', 'listeners', 'workers']);
/** Nodes that may hang in no page: drawings keep every shape they have shown, to bring it back (`paintShapes`). */
const MOST_DETACHED = 80;

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

/** Uses once whatever loads or starts something when it is used for the first time, so that no sample has less than another. Runs in the page. */
async function useEverything(): Promise<void> {
  const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
  const press = async (selector: string, text?: string): Promise<void> => {
    const all = [...document.querySelectorAll<HTMLElement>(selector)];
    (text === undefined ? all : all.filter(({ textContent }) => textContent.trim() === text)).at(0)?.click();
    await wait(300);
  };
  const enter = async (field: HTMLInputElement | HTMLSelectElement, value: string, event: string): Promise<void> => {
    const { prototype } = field instanceof HTMLSelectElement ? HTMLSelectElement : HTMLInputElement;
    Object.getOwnPropertyDescriptor(prototype, 'value')!.set!.call(field, value);
    field.dispatchEvent(new Event(event, { bubbles: true }));
    field.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
    await wait(300);
  };
  for (const [at, text] of ['6', '12'].entries()) {
    const field = document.querySelectorAll<HTMLInputElement>('[id^="mark-"]')[at]?.querySelector('input');
    if (field) await enter(field, text, 'input');
  }
  await press('.situations-list button');
  for (const club of ['driver', '7-iron']) {
    for (const id of [
      'setUp',
      'seen',
      'ledger',
      'map',
      'compare',
      'family',
      'plan',
      'ball',
      'rule',
      'gains',
      'joints',
    ]) {
      await press(`#tab-${id}, #part-${id}`);
      if (id === 'setUp') await enter(document.querySelector<HTMLSelectElement>('.set-up select')!, club, 'change');
      // A worker's first answer, and a map in fine.
      await wait(['setUp', 'family', 'gains', 'map'].includes(id) ? 6000 : 2000);
    }
    for (const name of ['Keep as comparison', 'Exaggerate', 'Down the line', 'Free', 'Guess first']) {
      await press('button', name);
      const dial = document.querySelector<HTMLInputElement>('.dial input[type="range"]')!;
      await enter(dial, club === 'driver' ? dial.max : dial.min, 'input');
      await press('button', 'Show it');
    }
    for (const id of ['about', 'lessons']) await press(`#tab-${id}`);
  }
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
    if ((await page.locator('.lesson-mark').count()) === 0) problems.push('the lesson is not open any more');
    const rest = Object.entries(sample)
      .slice(3)
      .map(([name, value]) => `${name} ${value}`);
    console.log(
      `${sample.minute.toFixed(1).padStart(6)} min ${done} acts, heap ${sample.heapMb.toFixed(2)} MB, ${rest.join(', ')}`,
    );
  }
  return samples;
}

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
    await page.evaluate(useEverything);
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
      const level =
        name === 'fetched' || (name === 'detached' ? Math.max(...values) <= MOST_DETACHED : isLevel(warm, name));
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
