import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { drawn, openDesk, openDrawer, slider } from './deskPage';
import { findCrowding } from './geometry';
import { launch, SCREENS } from './support';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const SIZES = {
  ...SCREENS,
  'small landscape tablet': { width: 1024, height: 768 },
  'big screen': { width: 1920, height: 1080 },
} as const;

const opener = (page: Page) => page.locator('button[popovertarget="situations"]:visible:not(.situations *)').first();

/** Holds a ghost and exaggerates: on the desk where there is room, otherwise in the sheet of situations. */
async function holdAndExaggerate(page: Page): Promise<void> {
  const inSheet = !(await page.locator('.acts').getByRole('switch').isVisible());
  if (inSheet) await opener(page).click();
  const place = page.locator(inSheet ? '.situations' : '.acts');
  await place.getByRole('switch', { name: 'Exaggerate' }).click();
  await place.getByRole('button', { name: 'Hold ghost' }).click();
  if (inSheet) await place.getByRole('button', { name: 'Close' }).click();
}

/** One after the other: what a desk looks like, and how to get there from the one before. */
const STATES: readonly (readonly [string, (page: Page) => Promise<unknown>])[] = [
  ['at the reference', () => Promise.resolve()],
  ['with the set-up open', (page) => page.locator('#tab-setUp').click()],
  [
    'with the joints bench open',
    async (page) => {
      await openDrawer(page, 'joints');
      await page.locator('.bench-row').nth(15).waitFor();
    },
  ],
  ['with the model page open', (page) => openDrawer(page, 'about')],
  [
    'past the usual range, exaggerated, with a ghost',
    async (page) => {
      await openDrawer(page, 'about');
      await slider(page, 'leadWristFlexion').press('Home');
      await holdAndExaggerate(page);
    },
  ],
  ['with the situations open', (page) => opener(page).click()],
];

for (const [size, viewport] of Object.entries(SIZES)) {
  test(`${viewport.width} x ${viewport.height} (${size}): controls are big enough and apart, no word is cut`, async () => {
    const { page, context, witness } = await openDesk(browser!, { viewport, reducedMotion: 'reduce' });
    const wrong: string[] = [];
    for (const [state, reach] of STATES) {
      await reach(page);
      await drawn(page);
      for (const sentence of await findCrowding(page)) wrong.push(`${state}: ${sentence}`);
    }
    expect(wrong).toEqual([]);
    expect(witness.errors).toEqual([]);
    await context.close();
  });
}

test('the checker sees crowding when there is some', async () => {
  const { page, context } = await openDesk(browser!);
  await page.addStyleTag({
    content: '.pm { width: 30px; min-width: 0 } .step { margin-left: -20px } .plate-word { font-size: 12px }',
  });
  const wrong = (await findCrowding(page)).join('\n');
  expect(wrong).toMatch(/"Lead wrist: cupped" is 30 x/);
  expect(wrong).toMatch(/overlaps button "To the next position"/);
  expect(wrong).toMatch(/"On plane" is 12px/);
  await context.close();
});

describe('axe finds nothing', () => {
  const check = async (page: Page): Promise<string[]> => {
    const { violations } = await new AxeBuilder({ page })
      .options({ rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } } })
      .analyze();
    return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 120)}`));
  };
  for (const board of ['light', 'dark'] as const) {
    test(`on the ${board} board`, async () => {
      const { page, context } = await openDesk(browser!, { reducedMotion: 'reduce' });
      if (board === 'dark') {
        await page.locator('#tab-setUp').click();
        await page.getByRole('radio', { name: 'Dark' }).check({ force: true });
        await page.locator('#tab-setUp').click();
      }
      const wrong: string[] = [];
      for (const [state, reach] of STATES) {
        await reach(page);
        await drawn(page);
        for (const sentence of await check(page)) wrong.push(`${state}: ${sentence}`);
      }
      expect(wrong).toEqual([]);
      await context.close();
    });
  }
  test('on a phone', async () => {
    const { page, context } = await openDesk(browser!, { viewport: SCREENS.phone });
    expect(await check(page)).toEqual([]);
    await context.close();
  });
});
