import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { findFaults } from './axe';
import { DRAW_NOTHING, drawerIds, drawn, jumpToDrawer, openDesk, openDrawer, showSection, slider } from './deskPage';
import { findCrowding } from './geometry';
import { shareDesk } from './sharedDesk';
import { SCREENS } from './support';

const SIZES = {
  ...SCREENS,
  'small landscape tablet': { width: 1024, height: 768 },
  'small upright tablet': { width: 768, height: 1024 },
  'square window': { width: 900, height: 900 },
  'phone on its side': { width: 667, height: 375 },
  'small phone': { width: 360, height: 740 },
  'big screen': { width: 1920, height: 1080 },
} as const;

/** The light one last, as the desk is left. */
const BOARDS = ['dark', 'light'] as const;

/** Too low for everything at once: the page scrolls beside the plates, which stay in sight. */
const SCROLLS: readonly string[] = ['phone on its side'];

const CALM = { reducedMotion: 'reduce', init: [DRAW_NOTHING] } as const;

const shared = shareDesk(CALM);
let page: Page;
beforeAll(() => ({ page } = shared));

const REFUSE_WRITES = (): void => {
  const open = Reflect.get(IDBDatabase.prototype, 'transaction') as (...args: unknown[]) => unknown;
  Reflect.set(IDBDatabase.prototype, 'transaction', function (this: IDBDatabase, ...args: unknown[]) {
    if (args[1] === 'readwrite') throw new DOMException('full', 'QuotaExceededError');
    return open.apply(this, args);
  });
};

const opener = (page: Page) => page.locator('button[popovertarget="situations"]:visible:not(.situations *)').first();

/** Keeps the swing for comparison and exaggerates, or lets go: in the list on the picture, or behind its button. */
async function holdAndExaggerate(page: Page): Promise<void> {
  const menu = page.locator('[aria-controls="stage-shows"]');
  const isBehind = await menu.isVisible();
  if (isBehind) await menu.click();
  const list = page.getByRole('group', { name: 'Show also' });
  await list.getByRole('switch', { name: 'Exaggerate' }).click();
  await list.getByRole('button', { name: 'Keep as comparison' }).click();
  if (isBehind) await page.keyboard.press('Escape');
}

/** Presses a key on the lead wrist's dial; on a phone it is chosen first. */
async function press(page: Page, id: 'leadWristFlexion', key: string): Promise<void> {
  const pick = page.locator('.pick').getByRole('button', { name: 'Lead wrist' });
  if (await pick.isVisible()) await pick.click();
  await slider(page, id).press(key);
}

/** One after the other: what a desk looks like, and how to get there from the one before. The last leads back to the first. */
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
      await press(page, 'leadWristFlexion', 'Home');
      await holdAndExaggerate(page);
    },
  ],
  ['with the typical swings open', (page) => opener(page).click()],
];

/** Back to the first state, with the views open where they hide behind a button. */
async function showViews(page: Page): Promise<boolean> {
  await page.locator('.situations').getByRole('button', { name: 'Close' }).click();
  await holdAndExaggerate(page);
  await press(page, 'leadWristFlexion', 'Home');
  await page.locator('.turn').first().click();
  const button = page.locator('[aria-controls="stage-views"]');
  if (!(await button.isVisible())) return false;
  await button.click();
  return true;
}

describe('controls are big enough and apart, no word is cut, the page fits the screen', () => {
  for (const [size, viewport] of Object.entries(SIZES)) {
    test(`${viewport.width} x ${viewport.height} (${size})`, async () => {
      const wrong: string[] = [];
      const look = async (state: string): Promise<void> => {
        await drawn(page);
        for (const board of size in SCREENS ? BOARDS : (['light'] as const)) {
          await page.evaluate((name) => (document.documentElement.dataset['board'] = name), board);
          for (const sentence of await findCrowding(page)) wrong.push(`${state}, ${board}: ${sentence}`);
        }
        const over = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
        if (over > 0 && !SCROLLS.includes(size)) wrong.push(`${state}: the page is ${over} px longer than the screen`);
      };
      await page.setViewportSize(viewport);
      for (const [state, reach] of STATES) {
        await reach(page);
        await look(state);
      }
      if (await showViews(page)) {
        await look('with the views open');
        await page.keyboard.press('Escape');
      }
      expect(wrong).toEqual([]);
    });
  }
});

/** The stage of the first version, css px: width and height. */
const FIRST_STAGE = {
  tablet: [562, 428],
  'upright tablet': [820, 332],
  phone: [390, 207],
  laptop: [720, 492],
} as const;

test.each(Object.entries(FIRST_STAGE))(
  'on the %s the stage is at least 1.6 times as large as it was',
  async (size, was) => {
    await page.setViewportSize(SCREENS[size as keyof typeof FIRST_STAGE]);
    const [width, height] = await page
      .locator('.stage-place')
      .evaluate(({ clientWidth, clientHeight }) => [clientWidth, clientHeight]);
    expect(width * height).toBeGreaterThanOrEqual(1.6 * was[0] * was[1]);
  },
);

/** Whether what is looked at is really in sight: the middle of each lies inside the screen and under nothing else. */
const findHidden = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    ['.stage-image', '.plate:first-child .plate-word', '.plate:last-child .plate-word', '.plate-amount'].filter(
      (what) => {
        const thing = document.querySelector(what)!;
        const { left, top, width, height } = thing.getBoundingClientRect();
        const hit = document.elementFromPoint(left + width / 2, top + height / 2);
        // A plate's title is the target for all of it.
        return width === 0 || hit === null || !(thing.contains(hit) || hit.closest('.plate')?.contains(thing));
      },
    ),
  );

test.each([...Object.entries(SCREENS), ['phone on its side', SIZES['phone on its side']] as const])(
  'on the %s figure and both verdicts stay in sight with any drawer open',
  async (_, viewport) => {
    await page.setViewportSize(viewport);
    const hidden: Record<string, string[]> = {};
    for (const id of await drawerIds(page)) {
      await jumpToDrawer(page, id);
      hidden[id] = await findHidden(page);
    }
    expect(hidden).toEqual(Object.fromEntries(Object.keys(hidden).map((id) => [id, []])));
  },
);

test('in inches, for a small left-handed player past the usual ranges, no drawer cuts or crowds its words', async () => {
  await page.setViewportSize(SCREENS.tablet);
  await openDrawer(page, 'setUp/Units');
  await page.getByRole('radio', { name: 'inches' }).check({ force: true });
  await showSection(page, 'Player');
  await page.getByRole('radio', { name: 'Left-handed' }).check({ force: true });
  const height = page.getByLabel('Height', { exact: true });
  await height.fill(`4'9 1/4`);
  await height.press('Enter');
  await openDrawer(page, 'setUp');
  for (const id of ['leadWristFlexion', 'rotationDelay', 'trailSideBend'] as const)
    await slider(page, id).press('Home');
  const wrong: string[] = [];
  for (const [size, viewport] of Object.entries(SCREENS)) {
    await page.setViewportSize(viewport);
    for (const id of await drawerIds(page, { bySection: true })) {
      await jumpToDrawer(page, id);
      await drawn(page);
      for (const board of BOARDS) {
        await page.evaluate((name) => (document.documentElement.dataset['board'] = name), board);
        for (const sentence of await findCrowding(page)) wrong.push(`${size}, ${board}, ${id}: ${sentence}`);
      }
      const wide = await page.locator('.drawer-body').evaluate((body) => body.scrollWidth - body.clientWidth);
      if (wide > 0) wrong.push(`${size}, ${id}: ${wide} px wider than the drawer`);
      // A section of the set-up fits its screen; a phone's drawer leaves the figure and both verdicts in sight, and is low.
      if (id.startsWith('setUp/') && size !== 'phone') {
        const high = await page.locator('.drawer-body').evaluate((body) => body.scrollHeight - body.clientHeight);
        if (high > 0) wrong.push(`${size}, ${id}: ${high} px higher than the drawer`);
      }
    }
  }
  expect(wrong).toEqual([]);
});

test.each(Object.entries(SCREENS))('on the %s nothing on the desk moves when a value grows', async (_, viewport) => {
  await page.setViewportSize(viewport);
  const places = (): Promise<number[]> =>
    page
      .locator('.stage-place, .plate, .plate-picture, .scrub, .dial, .pm, .acts button, .tabs button, .stage-item')
      .evaluateAll((all) =>
        all.flatMap((one) => {
          const { left, top, width, height } = one.getBoundingClientRect();
          return [left, top, width, height];
        }),
      );
  await drawn(page);
  const before = await places();
  // The wrist's slider is on every screen; a phone shows one at a time.
  for (const [id, end] of [
    ['leadWristFlexion', 'End'],
    ['leadWristFlexion', 'Home'],
    ['rotationRate', 'Home'],
    ['rotationDelay', 'Home'],
    ['pelvisShift', 'Home'],
  ] as const) {
    if (id !== 'leadWristFlexion' && !(await slider(page, id).isVisible())) continue;
    await slider(page, id).press(end);
    await drawn(page);
    expect(await places(), `${id} ${end}`).toEqual(before);
  }
});

test("the checkpoints' names on the rail keep clear of those beside them in the latest swing", async () => {
  for (const name of ['tablet', 'upright tablet'] as const) {
    await page.setViewportSize(SIZES[name]);
    const dials = ['leadWristFlexion', 'rotationDelay', 'trailSideBend', 'pelvisShift'];
    for (const id of dials) await slider(page, id).press('End');
    await slider(page, 'rotationRate').press('Home');
    await drawn(page);
    const names = await page.locator('.scrub-position > span').evaluateAll((all) =>
      all
        .map((one) => one.getBoundingClientRect())
        .filter(({ width }) => width > 0)
        .map(({ left, right }) => ({ left, right })),
    );
    expect(names.length).toBeGreaterThan(3);
    names.slice(1).forEach(({ left }, i) => expect(left).toBeGreaterThan(names[i].right));
    for (let i = 0; i < 5; i++) await page.locator('.turn').first().click();
  }
});

test('in the colours of the system rail, rules and what is chosen are to be seen', async () => {
  await page.setViewportSize(SIZES.tablet);
  await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
  const grounds = await page.evaluate(() => {
    const of = (selector: string): string => getComputedStyle(document.querySelector(selector)!).backgroundColor;
    return {
      page: of('body'),
      marks: ['.scrub-rail', '.scrub-position i', '.rule-line', '.rule-change', ".speeds [aria-pressed='true']"].map(
        of,
      ),
      pattern: getComputedStyle(document.querySelector('.plate-swatch')!).backgroundImage,
    };
  });
  await page.emulateMedia({ forcedColors: 'none', reducedMotion: 'reduce' });
  for (const ground of grounds.marks) expect(ground).not.toBe(grounds.page);
  expect(grounds.pattern).toMatch(/gradient/);
});

/** What the coach works with and looks at, one by one: what lies under something else at its ends or in its middle. */
const findCovered = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const things = [
      ...document.querySelectorAll('.scrub input, .dial input[type="range"], .plate, .stage-image'),
    ].filter(
      // The sliders of second dials are for the keyboard alone.
      (thing) => !thing.parentElement?.matches('.dial + .dial > .rule'),
    );
    const isHit = (thing: Element, share: number): boolean => {
      const { left, top, width, height } = thing.getBoundingClientRect();
      const hit = document.elementFromPoint(left + 20 + share * (width - 40), top + height / 2);
      return hit !== null && thing.contains(hit);
    };
    // The views stand at the edges of the picture.
    const sharesOf = (thing: Element): number[] => (thing.matches('.stage-image') ? [0.5] : [0, 0.5, 1]);
    const covered = things.filter((thing) => !sharesOf(thing).every((share) => isHit(thing, share)));
    const missing = things.length === 7 ? [] : [`${things.length} things instead of 7`];
    return [...missing, ...covered.map((thing) => thing.getAttribute('aria-label') ?? thing.className)];
  });

test.each(['upright tablet', 'small upright tablet'] as const)(
  'on the %s every drawer leaves time, sliders, plates and figure uncovered, and scrolls by itself',
  async (size) => {
    await page.setViewportSize(SIZES[size]);
    const wrong: Record<string, string[]> = {};
    const all = await drawerIds(page);
    expect(all.length).toBeGreaterThan(10);
    for (const id of all) {
      await jumpToDrawer(page, id);
      await drawn(page);
      const over = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
      const wide = await page.locator('.drawer-body').evaluate((body) => body.scrollWidth - body.clientWidth);
      const longer = over > 0 ? [`the page is ${over} px longer than the screen`] : [];
      const wider = wide > 0 ? [`the drawer holds something ${wide} px wider than itself`] : [];
      wrong[id] = [...(await findCovered(page)), ...longer, ...wider];
    }
    expect(wrong).toEqual(Object.fromEntries(all.map((id) => [id, []])));
  },
);

test('a failed write is said in words that can be read and cover nothing', async () => {
  const { page, context } = await openDesk(shared.browser, { ...CALM, init: [DRAW_NOTHING, REFUSE_WRITES] });
  const wrong: string[] = [];
  for (const name of ['tablet', 'upright tablet', 'phone', 'phone on its side', 'small phone'] as const) {
    const viewport = SIZES[name];
    const size = `${viewport.width} x ${viewport.height}`;
    await page.setViewportSize(viewport);
    const said = page.getByText(/^Not saved\./);
    await said.waitFor();
    for (const state of ['', ', with the set-up open']) {
      if (state) await page.locator('#tab-setUp').click();
      await drawn(page);
      if (!(await said.isVisible())) wrong.push(`${size}${state}: not to be seen`);
      for (const sentence of await findCrowding(page)) wrong.push(`${size}${state}: ${sentence}`);
    }
    await page.locator('#tab-setUp').click();
  }
  expect(wrong).toEqual([]);
  await context.close();
});

test('the checker sees crowding when there is some', async () => {
  const crowding = await page.addStyleTag({
    content: '.pm { width: 30px; min-width: 0 } .step { margin-left: -20px } .plate-word { font-size: 12px }',
  });
  const wrong = (await findCrowding(page)).join('\n');
  expect(wrong).toMatch(/"Lead wrist: cupped" is 30 x/);
  expect(wrong).toMatch(/overlaps button "To the next position"/);
  expect(wrong).toMatch(/"On plane" is 12px/);
  await crowding.evaluate((style: HTMLElement) => style.remove());
});

describe('axe finds nothing', () => {
  const ENHANCED = { rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } } };
  const CONTRAST = { runOnly: { type: 'rule' as const, values: ['color-contrast', 'color-contrast-enhanced'] } };
  for (const board of ['light', 'dark'] as const) {
    test(`on the ${board} board`, async () => {
      if (board === 'dark') {
        await openDrawer(page, 'setUp/Units');
        await page.getByRole('radio', { name: 'Dark' }).check({ force: true });
        await page.locator('#tab-setUp').click();
      }
      const wrong: string[] = [];
      for (const [state, reach] of STATES) {
        await reach(page);
        await drawn(page);
        for (const sentence of await findFaults(page, ['html'], ENHANCED)) wrong.push(`${state}: ${sentence}`);
      }
      await showViews(page);
      expect(wrong).toEqual([]);
    });
  }
  test('in any drawer on either board, down to its last line', async () => {
    // So tall that no drawer scrolls: of what is out of sight the checker cannot tell what it stands on.
    await page.setViewportSize({ width: 1180, height: 3000 });
    const wrong: string[] = [];
    const look = async (id: string): Promise<void> => {
      for (const board of ['dark', 'light'] as const) {
        await page.evaluate((name) => (document.documentElement.dataset['board'] = name), board);
        for (const sentence of await findFaults(page, ['#drawer'], CONTRAST))
          wrong.push(`${id}, ${board}: ${sentence}`);
      }
    };
    // A swing that gives each drawer something to show.
    await press(page, 'leadWristFlexion', 'Home');
    for (const id of await drawerIds(page, { bySection: true })) {
      await jumpToDrawer(page, id);
      await page.locator('#drawer details').evaluateAll((all) => all.forEach((one) => one.setAttribute('open', '')));
      await drawn(page);
      await look(id);
    }
    expect(wrong).toEqual([]);
    const faint = await page.addStyleTag({ content: '#drawer li:last-child { color: var(--line) }' });
    await look('with its last lines faint');
    expect(wrong.join('\n')).toMatch(/faint, dark: color-contrast[^]*faint, light: color-contrast/);
    await faint.evaluate((style: HTMLElement) => style.remove());
  });
  test.each(['phone', 'upright tablet'] as const)('on the %s', async (size) => {
    await page.setViewportSize(SCREENS[size]);
    await drawn(page);
    expect(await findFaults(page, ['html'], ENHANCED)).toEqual([]);
  });
});
