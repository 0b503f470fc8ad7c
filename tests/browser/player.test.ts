import jsQR from 'jsqr';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPracticeCode } from '../../src/practice/code';
import { findFaults } from './axe';
import { dropFile, FILM_NOTHING, makeByTouch, openClip, playFrames, putFaultFirst, wishShort } from './clipPage';
import { DRAW_NOTHING, look, REFUSE_PICTURE } from './deskPage';
import { PLAN, planText } from './planLink';
import { launch, offOrigin, open, SCREENS, type Visit } from './support';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Opens a link with a plan by touch, without movement. */
async function openPlan(text: string, options: Partial<Parameters<typeof open>[1]> = {}): Promise<Visit> {
  const visit = await open(browser!, {
    path: `?probe#${text}`,
    viewport: SCREENS.phone,
    hasTouch: true,
    reducedMotion: 'reduce',
    init: [DRAW_NOTHING],
    ...options,
  });
  await visit.page.locator('.player-verdicts').nth(1).waitFor();
  return visit;
}
/** Targets under 48 px, words cut by their box, words of two elements over each other. */
const findFlaws = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const name = (one: Element): string => (one.getAttribute('aria-label') ?? one.textContent ?? '').slice(0, 30);
    const targets = [...document.querySelectorAll('.player button, .player label, .player input[type="range"]')];
    const small = targets
      .map((one) => ({ one, box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 48 || box.height < 47.5)
      .map(({ one, box }) => `"${name(one)}" is ${box.width.toFixed(0)} x ${box.height.toFixed(0)} px`);
    const texts = [...document.querySelectorAll('.player *')].filter(
      (one) =>
        !one.closest('.unseen') &&
        [...one.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent!.trim() !== ''),
    );
    const cut = texts
      .filter((one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline')
      .map((one) => `"${name(one)}" is cut`);
    const boxes = texts.map((one) => ({ one, box: one.getBoundingClientRect() }));
    const over = boxes.flatMap(({ one, box: a }, i) =>
      boxes
        .slice(i + 1)
        .filter(
          ({ one: other, box: b }) =>
            !one.contains(other) &&
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4,
        )
        .map(({ one: other }) => `"${name(one)}" lies on "${name(other)}"`),
    );
    return [...small, ...cut, ...over];
  });
const LONG = {
  feel: 'Feel the knuckles '.repeat(11).trim(),
  words: 'A word of your coach that is long enough. '.repeat(14).trim(),
  drills: PLAN.drills.map(({ name }) => ({
    name: `${name}, with a name that goes on for a line and a half of a phone`,
    how: 'Do this slowly and then once more. '.repeat(6).trim(),
    often: 'ten times slowly, then five balls, twice a day, every day until then',
  })),
  names: { player: 'Bartholomew Featherstonehaugh', coach: 'Somebody With a Long Name' },
} as const;
const LEFT = {
  player: { statureM: 1.6, handed: 'left' },
  units: { length: 'in', speed: 'mph' },
  board: 'dark',
} as const;

describe("the player's page", () => {
  test('shows before and after with both verdicts, the task, the feel, the drills and the names, and leaves the desk alone', async () => {
    const { page, context, witness } = await openPlan(planText());
    const text = await page.locator('.player').innerText();
    for (const part of ['For Juniper, from Rowan', 'Less cup in the lead wrist', PLAN.feel, PLAN.words, '12 Mar 2027'])
      expect(text).toContain(part);
    for (const { name, how, often } of PLAN.drills) for (const part of [name, how, often]) expect(text).toContain(part);
    const verdicts = await page
      .locator('.player-verdicts li')
      .evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset['verdict']));
    expect(verdicts).toEqual(['steep', 'steep', 'onPlane', 'onPlane']);
    // No dials, no tabs, nothing asked.
    expect(await page.locator('[data-dial], [role="tab"], .tabs').count()).toBe(0);
    expect((await look(page)).document.plan).toBeNull();
    await page.getByRole('button', { name: 'Open the desk' }).tap();
    await page.locator('.plate-word').first().waitFor();
    expect((await look(page)).document.plan).toEqual(PLAN);
    expect(new URL(page.url()).hash).toBe('');
    expect([witness.errors, witness.violations, offOrigin(witness)]).toEqual([[], [], []]);
    await context.close();
  });

  test('keeps what is ticked, counted and answered on the device, and wipes it with one button', async () => {
    const { page, context } = await openPlan(planText());
    await page.getByRole('checkbox', { name: 'Ruler on the wrist' }).tap();
    const more = page.getByRole('button', { name: 'One more' });
    for (let i = 0; i < 3; i++) await more.first().tap();
    await page.getByRole('button', { name: 'One less' }).first().tap();
    await page.getByRole('radio', { name: 'sometimes' }).nth(1).check({ force: true });
    const said = (): Promise<(string | boolean)[]> =>
      Promise.all([
        page.getByText('of 7 days').innerText(),
        page.locator('.player-count output').first().innerText(),
        page.getByRole('checkbox').first().isChecked(),
        page.getByRole('radio', { name: 'sometimes' }).nth(1).isChecked(),
      ]);
    expect(await said()).toEqual(['1 of 7 days', '2', true, true]);
    // What goes back to the coach is what was ticked.
    await page.getByLabel('One line to your coach').fill('Felt easier today.');
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the code as a file' }).tap(),
    ]);
    const text = (await (await file.createReadStream()).toArray()).join('').trim();
    expect(readPracticeCode(text)).toEqual({
      practice: {
        planId: PLAN.id,
        days: [
          {
            date: await page.evaluate(() => new Date().toLocaleDateString('sv-SE')),
            done: [true, false, false],
            counts: [2, 0, 0],
          },
        ],
        felt: [null, 'sometimes', null],
        words: 'Felt easier today.',
      },
    });
    await page.reload();
    await page.locator('.player-practise').waitFor();
    expect(await said()).toEqual(['1 of 7 days', '2', true, true]);
    await page.getByRole('button', { name: 'Wipe what I ticked' }).tap();
    await page.getByRole('button', { name: 'Wipe them' }).tap();
    expect(await said()).toEqual(['0 of 7 days', '0', false, false]);
    expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('practice')))).toEqual([]);
    await context.close();
  });

  test('saves reminders as a calendar file', async () => {
    const { page, context } = await openPlan(planText());
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save reminders for my calendar' }).tap(),
    ]);
    expect(download.suggestedFilename()).toBe('slantwise-practice.ics');
    await context.close();
  });

  test('stands on phone and tablets, on both boards, with the longest words: nothing cut or crowded, nothing for axe', async () => {
    const wrong: string[] = [];
    for (const [kind, text] of [
      ['light', planText()],
      ['dark, left-handed, inches, long', planText(LONG, LEFT)],
      [
        'with nothing but the plan',
        planText({
          feel: '',
          words: '',
          drills: [],
          cautions: [],
          nextDate: null,
          names: { player: null, coach: null },
        }),
      ],
    ] as const) {
      const { page, context, witness } = await openPlan(text);
      for (const size of ['phone', 'upright tablet', 'tablet'] as const) {
        await page.setViewportSize(SCREENS[size]);
        for (const sentence of await findFlaws(page)) wrong.push(`${kind}, ${size}: ${sentence}`);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (wide > 0) wrong.push(`${kind}, ${size}: ${wide} px wider than the screen`);
      }
      for (const fault of await findFaults(page, ['.player'])) wrong.push(`${kind}: ${fault}`);
      wrong.push(...witness.errors);
      await context.close();
    }
    expect(wrong).toEqual([]);
  });

  test('without 3D shows stick figures, and moves both of them', async () => {
    const { page, context } = await openPlan(planText(), { init: [REFUSE_PICTURE] });
    const paths = (): Promise<(string | null)[]> =>
      page.locator('.twins-club').evaluateAll((all) => all.map((one) => one.getAttribute('d')));
    const before = await paths();
    expect(new Set(before).size).toBe(2);
    await page.getByRole('slider', { name: 'Time in the swing' }).press('End');
    const after = await paths();
    expect(after[0]).not.toBe(before[0]);
    expect(after[1]).not.toBe(before[1]);
    await context.close();
  });

  test('plays for five seconds at most, then stands still until the button is pressed', async () => {
    const { page, context } = await openPlan(planText(), { reducedMotion: 'no-preference' });
    const play = page.getByRole('button', { name: 'Play', exact: true });
    await play.waitFor({ timeout: 15_000 });
    const time = page.getByRole('slider', { name: 'Time in the swing' });
    const rest = await time.inputValue();
    await page.evaluate(() => {
      const ask = globalThis.requestAnimationFrame;
      const state = { asked: 0 };
      Object.assign(globalThis, { frames: state });
      globalThis.requestAnimationFrame = (work) => (state.asked++, ask(work));
    });
    const asked = (): Promise<number> =>
      page.evaluate(() => (globalThis as unknown as { frames: { asked: number } }).frames.asked);
    await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 300)));
    expect(await asked()).toBe(0);
    expect(await time.inputValue()).toBe(rest);
    await play.tap();
    await expect.poll(() => time.inputValue()).not.toBe(rest);
    expect(await asked()).toBeGreaterThan(0);
    await context.close();
  });

  test('opens from the code on the last card of a clip, and from the clip itself', async () => {
    const { page, context } = await openPlan(planText(), {
      viewport: SCREENS.tablet,
      bypassCSP: true,
      init: [DRAW_NOTHING, putFaultFirst],
    });
    await page.evaluate((fault) => Object.assign(globalThis, { fault }), FILM_NOTHING);
    await page.getByRole('button', { name: 'Open the desk' }).tap();
    await openClip(page);
    await wishShort(page);
    await page.getByLabel('Format').selectOption('best');
    await page.getByLabel('End card with code').setChecked(true);
    const clip = await makeByTouch(page, 'Make the clip');
    const [card] = await playFrames(page, clip, 'video/mp4', [3.5], 25);
    const code = jsQR(new Uint8ClampedArray(card.data), card.width, card.height);
    const { hash } = new URL(code!.data);
    await dropFile(page, clip);
    const fromCode = await openPlan(hash.slice(1));
    for (const on of [page, fromCode.page]) {
      await on.locator('.player-verdicts').nth(1).waitFor();
      expect(await on.locator('.player').innerText()).toContain('For Juniper, from Rowan');
    }
    await fromCode.context.close();
    await context.close();
  });

  test('a damaged link says so on an untouched desk', async () => {
    const { page, context } = await open(browser!, { path: `?probe#${planText().slice(0, -2)}`, init: [DRAW_NOTHING] });
    await page.getByText('The link could not be opened: it is damaged. Nothing was changed.').waitFor();
    expect((await look(page)).document.plan).toBeNull();
    await context.close();
  });
});
