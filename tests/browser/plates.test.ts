import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { DRAW_NOTHING, drawn, look, openDesk, pointOn, slider } from './deskPage';
import { shareDesk } from './sharedDesk';
import { SCREENS } from './support';

const shared = shareDesk();
let page: Page;
beforeAll(() => ({ page } = shared));

const engraving = (page: Page) => page.locator('.plate-engraving');
/** Smallest text anywhere, css px. */
const SMALLEST_PX = 15;

/** Sets a dial with the keyboard's own means, then waits for the picture. */
async function setDial(page: Page, id: string, value: number): Promise<void> {
  await slider(page, id).fill(String(value));
  await drawn(page);
}

interface Lettering {
  readonly text: string;
  readonly px: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
/** Every text in the drawing of a plate as the browser set it: size in css px, and the box it fills inside its picture. */
const letteringOf = (page: Page, plate: number): Promise<Lettering[]> =>
  page
    .locator('.plate-picture')
    .nth(plate)
    .evaluate((picture) => {
      const frame = picture.getBoundingClientRect();
      return [...picture.querySelectorAll('text')].map((text) => {
        const box = text.getBoundingClientRect();
        const { a: scale, f: y0 } = text.getScreenCTM()!;
        const size = (element: Element): number => parseFloat(getComputedStyle(element).fontSize) * scale;
        // The element's own box holds room for accents; ink goes from the tall letters' tops to the long letters' feet.
        const base = y0 + Number(text.getAttribute('y')) * scale;
        const isFigure = text.classList.contains('plate-figure');
        return {
          text: text.textContent,
          px: Math.min(...[text, ...text.querySelectorAll('tspan')].map(size)),
          left: box.left - frame.left,
          top: base - 0.72 * size(text) - frame.top,
          right: frame.right - box.right,
          bottom: frame.bottom - base - (isFigure ? 0.02 : 0.25) * size(text),
        };
      });
    });

/** On a phone a plate is a strip until a second tap puts its drawing in the figure's place. */
async function turnOver(plate: number): Promise<void> {
  const isDrawn = (): Promise<boolean> => page.locator('.plate-drawing').nth(plate).isVisible();
  for (let taps = 0; taps < 2 && !(await isDrawn()); taps++) {
    await page.locator('.plate-header button').nth(plate).click();
    await drawn(page);
  }
}

describe('reading a plate', () => {
  for (const [name, viewport] of Object.entries(SCREENS)) {
    test(`on the ${name}, words and numbers on the plates are large enough, whole, and inside their frame`, async () => {
      await page.setViewportSize(viewport);
      for (const wristDeg of [0, -24, 24]) {
        await setDial(page, 'leadWristFlexion', wristDeg);
        for (const plate of [0, 1]) {
          if (name === 'phone') await turnOver(plate);
          const letters = await letteringOf(page, plate);
          expect(letters.some(({ text }) => /\d/.test(text))).toBe(true);
          for (const { px, text, ...gaps } of letters) {
            // Sizes are kept in tenths of a plate unit.
            expect({ text, isLarge: px >= SMALLEST_PX - 0.1 }).toEqual({ text, isLarge: true });
            for (const gap of Object.values(gaps)) expect(gap).toBeGreaterThanOrEqual(0);
          }
        }
        const cut = await page
          .locator('.plate-word, .plate-amount, .plate-where, .plate-source')
          .evaluateAll((all) =>
            all
              .filter((e) => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'none')
              .map((e) => e.textContent),
          );
        expect(cut).toEqual([]);
      }
    });
  }

  test('the picture says the same sentence to a screen reader as the words below it show', async () => {
    await setDial(page, 'leadWristFlexion', -24);
    const label = await page.locator('.plate-drawing').first().getAttribute('aria-label');
    const [amount] = await page.locator('.plate-amount').allInnerTexts();
    const [where] = await page.locator('.plate-where').allInnerTexts();
    expect(label).toMatch(/^Lead arm parallel, seen down the line\. Steep: /);
    expect(label).toContain(`${amount.replace(' cm', ' centimetres')} ${where}`);
  });
});

describe('working on a plate', () => {
  test('tapping anywhere on a plate moves time to its checkpoint, and so does its title from the keyboard', async () => {
    const plates = page.locator('.plate');
    const chosen = () => plates.evaluateAll((all) => all.map((plate) => plate.hasAttribute('data-selected')));
    const box = (await plates.nth(1).boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.3, box.y + box.height * 0.5);
    await drawn(page);
    expect(await chosen()).toEqual([false, true]);
    await page.getByRole('button', { name: 'Lead arm parallel' }).focus();
    await page.keyboard.press('Enter');
    await drawn(page);
    expect(await chosen()).toEqual([true, false]);
  });

  test('while a slider is dragged only contours are drawn; the engraving comes back when it is let go', async () => {
    await engraving(page).first().waitFor({ state: 'attached' });
    const [from, to] = [await pointOn(page, 'leadWristFlexion', 0), await pointOn(page, 'leadWristFlexion', -15)];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 4 });
    await drawn(page);
    expect(await engraving(page).count()).toBe(0);
    expect(await page.locator('.plate-part').count()).toBeGreaterThan(40);
    const carried = page.locator('g[transform] > .plate-part');
    expect(await carried.count()).toBeGreaterThan(0);
    await page.mouse.up();
    await engraving(page).first().waitFor({ state: 'attached' });
    // Drawn where they stand now, no contour is carried along.
    expect(await carried.count()).toBe(0);
  });

  test('the dark board chalks the lit side, the light board engraves the other', async () => {
    await engraving(page).first().waitFor({ state: 'attached' });
    const shown = () =>
      page.evaluate(() =>
        ['.is-shade', '.is-lit'].map(
          (side) => getComputedStyle(document.querySelector(`.plate-engraving${side}`)!).display,
        ),
      );
    expect(await shown()).toEqual(['inline', 'none']);
    await page.evaluate(() => document.documentElement.setAttribute('data-board', 'dark'));
    expect(await shown()).toEqual(['none', 'inline']);
    await page.evaluate(() => document.documentElement.setAttribute('data-board', 'light'));
  });
});

interface Watched {
  turns: number;
  changes: number;
}
/** For `init`: how often the page was given an idle moment or a frame; the test counts changes to what is on it beside that. */
const watchTurns = (): void => {
  const watched = { turns: 0, changes: 0 };
  Object.assign(globalThis, { watched });
  const idle = globalThis.requestIdleCallback;
  globalThis.requestIdleCallback = (work, options) =>
    idle((deadline) => {
      watched.turns++;
      work(deadline);
    }, options);
  const frame = globalThis.requestAnimationFrame;
  globalThis.requestAnimationFrame = (work) =>
    frame((time) => {
      watched.turns++;
      work(time);
    });
};

/** Turns that fetching at the first quiet moment may take. */
const MOST_TURNS = 20;
/** Long enough for a page that works by itself to have a turn, ms. */
const LEFT_ALONE_MS = 3000;

test('a page that is left alone does nothing', async () => {
  const { page: own, context } = await openDesk(shared.browser, { init: [DRAW_NOTHING, watchTurns] });
  const watched = () => own.evaluate(() => ({ ...(Reflect.get(globalThis, 'watched') as Watched) }));
  await engraving(own).nth(1).waitFor({ state: 'attached' });
  await drawn(own);
  const before = await look(own);
  await own.evaluate(() => {
    const counts = Reflect.get(globalThis, 'watched') as Watched;
    counts.turns = 0;
    new MutationObserver((changes) => (counts.changes += changes.length)).observe(document.body, {
      subtree: true,
      childList: true,
      attributes: true,
      characterData: true,
    });
  });
  // What drawers need is fetched in between; then nothing comes any more.
  let last = await watched();
  await expect
    .poll(
      async () => {
        const now = await watched();
        const isStill = now.turns === last.turns;
        last = now;
        return isStill;
      },
      { timeout: 60_000, interval: LEFT_ALONE_MS },
    )
    .toBe(true);
  expect(last.changes).toBe(0);
  expect(last.turns).toBeLessThan(MOST_TURNS);
  expect(await look(own)).toEqual(before);
  await context.close();
});
