import type { Browser, Page } from 'playwright-core';
import type { DeskLook } from '../../src/store/desk/probe';
import { open, type Visit } from './support';

/** Opens the desk with the probe and waits until panels, plates and picture are there. */
export async function openDesk(browser: Browser, options: Parameters<typeof open>[1] = {}): Promise<Visit> {
  const visit = await open(browser, { ...options, path: '?probe' });
  await ready(visit.page);
  return visit;
}

/**
 * For `init` where a test looks at words, numbers and poses: scene and frames run as ever, but no pixel is filled, which leaves the
 * machine free.
 */
export const DRAW_NOTHING = (): void => {
  for (const draw of ['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced'])
    Reflect.set(WebGL2RenderingContext.prototype, draw, () => undefined);
};

/**
 * As DRAW_NOTHING for the picture on the page, where a test looks at stills and clips: these are drawn beside the page, and in full.
 */
export const DRAW_NOTHING_ON_PAGE = (): void => {
  for (const name of ['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced']) {
    const draw = Reflect.get(WebGL2RenderingContext.prototype, name) as (...args: unknown[]) => void;
    Reflect.set(WebGL2RenderingContext.prototype, name, function (this: WebGL2RenderingContext, ...args: unknown[]) {
      if (!(this.canvas instanceof HTMLCanvasElement && this.canvas.isConnected)) draw.apply(this, args);
    });
  }
};

/** For `init` where a test looks at the picture, but not at its edges: without smoothing a frame takes half the time. */
export const DRAW_ROUGH = (): void => {
  const canvas = HTMLCanvasElement.prototype;
  const give = Reflect.get(canvas, 'getContext') as (...args: unknown[]) => unknown;
  Reflect.set(canvas, 'getContext', function (this: HTMLCanvasElement, kind: string, options?: object) {
    return give.call(this, kind, kind.startsWith('webgl') ? { ...options, antialias: false } : options);
  });
};

/** For `init` where the picture has no part: as on a device without WebGL a stick figure stands in its place. */
export const REFUSE_PICTURE = (): void => {
  const canvas = HTMLCanvasElement.prototype;
  const give = Reflect.get(canvas, 'getContext') as (...args: unknown[]) => unknown;
  Reflect.set(canvas, 'getContext', function (this: HTMLCanvasElement, ...args: unknown[]) {
    return String(args[0]).startsWith('webgl') ? null : give.apply(this, args);
  });
};

/** Panels, plates, typefaces and the first picture are there. */
export async function ready(page: Page): Promise<void> {
  // On a phone the drawings wait behind their verdicts.
  await page.locator('.plate-drawing').nth(1).waitFor({ state: 'attached' });
  await page.waitForFunction(() => (globalThis as unknown as Probed).slantwiseProbe().drawn !== null);
  // The controls that turn the picture follow it, and take touch over from the page.
  await page.waitForFunction(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.stage-canvas canvas');
    return canvas === null || canvas.style.touchAction === 'none';
  });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

interface Probed {
  slantwiseProbe: () => DeskLook;
}

/** What the desk holds and draws, as the page sees it now. */
export const look = (page: Page): Promise<DeskLook> =>
  page.evaluate(() => (globalThis as unknown as Probed).slantwiseProbe());

/** The native slider of a dial. */
export const slider = (page: Page, id: string) => page.locator(`[data-dial="${id}"] input[type="range"]`);

/** Screen point of a value on a slider: the thumb's middle runs from 18 px to 18 px before the end. */
export async function pointOn(page: Page, id: string, value: number): Promise<{ x: number; y: number }> {
  const box = (await slider(page, id).boundingBox())!;
  const [min, max] = await slider(page, id).evaluate((input: HTMLInputElement) => [
    Number(input.min),
    Number(input.max),
  ]);
  const share = (value - min) / (max - min);
  return { x: box.x + 18 + (box.width - 36) * share, y: box.y + box.height / 2 };
}

/** A picture that waits for the graphics processor comes within so many frames, or the test that looks at it fails. */
const MOST_FRAMES = 120;

/**
 * Two frames later everything a change set off has been drawn, unless the graphics processor still has two pictures to draw: then the
 * figure comes with a later one.
 */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(async (most) => {
    const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));
    const isBehind = (): boolean => {
      const { drawn: figure, pose } = (globalThis as unknown as Probed).slantwiseProbe();
      return figure !== null && figure.some((value, i) => value !== pose[i]);
    };
    await frame();
    await frame();
    for (let i = 0; i < most && 'slantwiseProbe' in globalThis && isBehind(); i++) await frame();
  }, MOST_FRAMES);

/** What the plates say: verdict word, number in words, source. */
export const plateWords = (page: Page): Promise<string[]> => page.locator('.plate-verdict').allInnerTexts();

const SECTIONS = ['Player', 'Club', 'Top and tempo', 'Camera', 'Bands', 'Units'];

/** Every drawer there is, the set-up a section at a time if asked for, in the order of their tabs and of the sheet of further drawers. */
export const drawerIds = (page: Page, { bySection = false } = {}): Promise<string[]> =>
  page
    .locator('[id^="tab-"]:not(#tab-more)')
    .evaluateAll((tabs) =>
      tabs
        .map(({ id }) => id.slice('tab-'.length))
        .flatMap((id) => (id === 'ledger' ? [id, 'map', 'compare', 'family'] : id === 'rule' ? [id, 'gains'] : [id])),
    )
    .then((ids) =>
      ids.flatMap((id) => (bySection && id === 'setUp' ? SECTIONS.map((section) => `${id}/${section}`) : [id])),
    );

/** Turns the exaggeration on or off: in the list on the picture, or behind its button where the picture is small. */
export async function exaggerate(page: Page): Promise<void> {
  const menu = page.locator('[aria-controls="stage-shows"]');
  const isBehind = await menu.isVisible();
  if (isBehind) await menu.click();
  await page.locator('.stage').getByRole('switch', { name: 'Exaggerate' }).click();
  if (isBehind) await page.keyboard.press('Escape');
}

/** Drawers that are a part of another's tab. */
const PARTS: Readonly<Record<string, string>> = { map: 'ledger', compare: 'ledger', family: 'ledger', gains: 'rule' };

/** Opens a drawer by its tab, or from the sheet of further drawers; `setUp/Club` at a section. */
export async function openDrawer(page: Page, place: string): Promise<void> {
  const [id, section] = place.split('/');
  const part = page.locator(`#part-${id}`);
  const whole = PARTS[id];
  const isThere = section !== undefined && (await page.locator(`#drawer[data-drawer="${id}"]`).isVisible());
  if (isThere) await showSection(page, section);
  else if (await part.isVisible()) await part.click();
  else if (whole !== undefined) {
    await openDrawer(page, whole);
    await part.click();
  } else {
    const tab = page.locator(`#tab-${id}`);
    if (!(await tab.isVisible())) await page.locator(':is(#tab-more, #bar-more):visible').click();
    await tab.click();
  }
  if (section !== undefined && !isThere) await showSection(page, section);
  await settled(page);
}

/**
 * Opens a drawer as `openDrawer` does, by script: where many are looked at one after the other, and how they open is not the question.
 * What they fetch or work out first is there; it says so with dots.
 */
export async function jumpToDrawer(page: Page, place: string): Promise<void> {
  const [id, section] = place.split('/');
  await page.evaluate(
    async ({ tab, part, name }) => {
      const until = async <T>(find: () => T | null | undefined | false): Promise<T> => {
        for (let frames = 0; frames < 1000; frames++) {
          const found = find();
          if (found) return found;
          await new Promise(requestAnimationFrame);
        }
        throw new Error(`The drawer "${part}" does not open.`);
      };
      const open = (): string | undefined => document.querySelector<HTMLElement>('#drawer')?.dataset['drawer'];
      const click = (selector: string): void => document.querySelector<HTMLElement>(selector)!.click();
      if (open() !== part && open() !== tab && !document.querySelector(`#part-${part}`)) click(`#tab-${tab}`);
      if (tab !== part) (await until(() => document.querySelector<HTMLElement>(`#part-${part}`))).click();
      await until(() => open() === part);
      if (name !== undefined) {
        const named = (): HTMLElement | undefined =>
          [...document.querySelectorAll<HTMLElement>('#drawer nav button')].find(
            (button) => button.textContent === name,
          );
        (await until(named)).click();
      }
      await until(() => !document.querySelector('#drawer')!.textContent.includes('…'));
      await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
    },
    { tab: PARTS[id] ?? id, part: id, name: section },
  );
}

/** A section of the set-up, by its name. */
export const showSection = (page: Page, name: string): Promise<void> =>
  page.getByRole('navigation', { name: 'Sections' }).getByRole('button', { name, exact: true }).click();

/** What slides or fades stands still. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
  });
