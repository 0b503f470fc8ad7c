import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { findFaults } from './axe';
import { DRAW_NOTHING, drawn, look, openDesk, openDrawer, slider } from './deskPage';
import { findCrowding } from './geometry';
import { launch, offOrigin, SCREENS, type Visit } from './support';

// One page for all: every test starts from a desk on which everything was undone and no drawer is open.
let browser: Browser | undefined;
let visit: Visit;
let page: Page;
let client: CDPSession;
beforeAll(async () => {
  browser = await launch();
  visit = await openDesk(browser, { hasTouch: true, init: [DRAW_NOTHING] });
  ({ page } = visit);
  client = await visit.context.newCDPSession(page);
});
afterAll(() => browser?.close());
beforeEach(async () => {
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('.drawer-head button:last-child')?.click();
    const undo = document.querySelector<HTMLElement>('.undo button')!;
    const { past } = (globalThis as unknown as Probe).slantwiseProbe();
    for (let i = 0; i < past.length; i++) undo.click();
  });
  await drawn(page);
});

const situation = (name: string): Promise<void> =>
  page.evaluate((label) => {
    const all = [...document.querySelectorAll<HTMLElement>('.situations-list button')];
    all.find(({ textContent }) => textContent === label)!.click();
  }, name);
/** Cupped, early and fast: steep at both checkpoints. */
const makeSteep = (): Promise<void> => situation('Cupped and too fast');
const lead = () => page.locator('.why-lead');
/** The sentence that leads a drawer, as it is seen and as a screen reader hears it. */
const twin = (): Promise<{ seen: string; heard: string }> =>
  lead().evaluate((at) => {
    const spoken = at.querySelector('.unseen')?.textContent;
    const shown = at.querySelector('[aria-hidden]')?.textContent;
    return { seen: shown ?? at.textContent, heard: spoken ?? at.textContent };
  });
const ring = (plate: string) => page.getByRole('slider', { name: `${plate}: what you saw` });

/** A finger pulls the ring of a plate to the right. */
async function pull(plate: string, px: number): Promise<void> {
  const box = (await ring(plate).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: number): Promise<unknown> =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: at, y }] });
  await touch('touchStart', x);
  for (let i = 1; i <= 4; i++) await touch('touchMove', x + (i * px) / 4);
  await touch('touchEnd', x + px);
}

interface Probe {
  slantwiseProbe: () => Awaited<ReturnType<typeof look>>;
}

describe('the ledger', () => {
  test('leads with a sentence whose numbers add up, in sight and for a screen reader', async () => {
    await makeSteep();
    await openDrawer(page, 'ledger');
    await lead()
      .getByText(/^Of \d+ cm too steep/)
      .waitFor();
    const { seen, heard } = await twin();
    const [total, ...parts] = (seen.match(/\d+/g) ?? []).map(Number);
    expect(parts.reduce((a, b) => a + b, 0)).toBe(total);
    expect(heard).toBe(seen.replace(' cm ', ' centimetres '));
    const bars = await page.locator('.waterfall-row[data-part] .unseen').allTextContents();
    expect(bars).toHaveLength(2);
    for (const bar of bars) expect(bar).toMatch(/: (plus|minus) [\d.]+ centimetres\. Alone .+, last .+\.$/);
  });

  test('drawers whose numbers are never exaggerated say so once, and only while the plates beside them are', async () => {
    await makeSteep();
    const said = page.locator('.drawer-body').getByText('not exaggerated', { exact: false });
    const twice = page.locator('.stage').getByRole('switch', { name: 'Exaggerate' });
    for (const id of ['ledger', 'map', 'plan']) {
      await openDrawer(page, id);
      expect(await said.count()).toBe(0);
      await twice.click();
      await said.waitFor();
      expect(await said.count()).toBe(1);
      await twice.click();
    }
  });

  test('a bar plays only its own movement, stops by itself and changes nothing', async () => {
    // Every frame of it is drawn: a small picture is drawn fast where there is no graphics card.
    await page.setViewportSize(SCREENS.phone);
    await makeSteep();
    await openDrawer(page, 'ledger');
    const before = await look(page);
    await page.getByRole('button', { name: 'Play only the cupped wrist' }).click();
    await page.waitForFunction(() => {
      const { movements } = (globalThis as unknown as Probe).slantwiseProbe();
      return movements.leadWristFlexion < -0.01 && movements.rotationRate === 1;
    });
    await page.waitForFunction(() => (globalThis as unknown as Probe).slantwiseProbe().session.trial === null);
    const after = await look(page);
    expect(after.document).toEqual(before.document);
    expect(after.past).toEqual(before.past);
    expect(after.bicepGapCm).toBe(before.bicepGapCm);
    await page.setViewportSize(SCREENS.tablet);
  });

  test('shares out any reading, between any two swings, those of the lesson book too', async () => {
    await openDrawer(page, 'ledger');
    await page.getByLabel('Reading').selectOption('ball:headSpeed');
    await page.getByLabel('To', { exact: true }).selectOption({ label: '12 Jan 2026, as seen' });
    await lead().getByText(/m\/s/).first().waitFor();
    expect((await twin()).heard).toContain('metres per second');
    await page.locator('.waterfall-end').getByText('Example: Juniper, 12 Jan 2026, as seen').waitFor();
    await page.getByLabel('Reading').selectOption('leadArmParallel:bicepGap');
    await page.getByLabel('To', { exact: true }).selectOption('now');
  });
});

describe('the corridor map', () => {
  test('a finger on the map moves slider, figure and sentence; the drag is one undo step; keys move it too', async () => {
    await makeSteep();
    await openDrawer(page, 'map');
    await lead()
      .getByText(/needs|Neither/)
      .first()
      .waitFor();
    const sentence = (await twin()).seen;
    const box = (await page.locator('.map-touch').boundingBox())!;
    const pin = (await page.locator('.map-pin').boundingBox())!;
    const past = (await look(page)).past.length;
    await page.mouse.move(pin.x + 14, pin.y + 14);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.6, pin.y + 20, { steps: 3 });
    await page.mouse.move(box.x + box.width * 0.72, pin.y + 4, { steps: 3 });
    await page.mouse.up();
    await drawn(page);
    const after = await look(page);
    expect(after.past).toHaveLength(past + 1);
    expect(after.document.movements.leadWristFlexionDeg).toBeGreaterThan(5);
    expect(await slider(page, 'leadWristFlexion').inputValue()).toBe(
      String(after.document.movements.leadWristFlexionDeg),
    );
    expect(after.drawn).toEqual(after.pose);
    expect((await twin()).seen).not.toBe(sentence);
    expect((await twin()).heard).not.toContain('°');

    await page.locator('.map-pin').focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowUp');
    const keyed = (await look(page)).document.movements;
    expect(keyed.leadWristFlexionDeg).toBe(after.document.movements.leadWristFlexionDeg - 1);
    expect(keyed.rotationDelayMs).toBe(after.document.movements.rotationDelayMs + 1);
    expect(await page.locator('.map-pin').getAttribute('aria-valuetext')).toMatch(/^bowed \d+ degrees?.*on plane\.$/);
  });

  test('where the sentence says one movement alone is enough, it is', async () => {
    await slider(page, 'leadWristFlexion').fill('-10');
    await openDrawer(page, 'map');
    await lead()
      .getByText(/^Wrist alone needs/)
      .first()
      .waitFor();
    await page.waitForFunction(() => !document.querySelector('.map-frame[data-busy]'));
    const needs = Number(/needs (\d+)°/.exec((await twin()).seen)![1]);
    await slider(page, 'leadWristFlexion').fill(String(-10 + needs));
    await page
      .getByText(/^On plane at lead arm parallel and at shaft parallel\.$/)
      .first()
      .waitFor();
    await slider(page, 'leadWristFlexion').fill(String(-10 + needs - 1));
    await lead()
      .getByText(/^Wrist alone needs 1°/)
      .first()
      .waitFor();
  });

  test('dragging never waits for the map: while no answer comes, slider, figure, plates and words follow every step', async () => {
    await openDrawer(page, 'map');
    await page.locator('.map-frame:not([data-busy]) .map-both').waitFor({ state: 'attached' });
    await page.evaluate(() => {
      const post = Object.getOwnPropertyDescriptor(Worker.prototype, 'postMessage')!;
      const letGo = (): unknown => Object.defineProperty(Worker.prototype, 'postMessage', post);
      Object.assign(globalThis, { letGo });
      // The questions are lost on the way: the map stays busy.
      Object.defineProperty(Worker.prototype, 'postMessage', { ...post, value: () => {} });
    });
    const spoken = new Set<string>();
    for (const value of ['-6', '-2', '3', '8']) {
      await slider(page, 'trailSideBend').fill(value);
      await drawn(page);
      const { document: now, pose, drawn: figure, bicepGapCm } = await look(page);
      expect(await page.locator('.map-frame[data-busy]').count()).toBe(1);
      expect(now.movements.trailSideBendDeg).toBe(Number(value));
      expect(figure).toEqual(pose);
      const words = await page.locator('.plate-drawing').first().getAttribute('aria-label');
      expect(words).toContain(bicepGapCm! > 1.5 ? 'Steep' : bicepGapCm! < -1.5 ? 'Over-shallow' : 'On plane');
      spoken.add(await page.locator('.plates').innerText());
    }
    expect(spoken.size).toBeGreaterThan(1);
    await page.evaluate(() => void (globalThis as unknown as { letGo: () => unknown }).letGo());
    await slider(page, 'trailSideBend').fill('0');
    await page.locator('.map-frame:not([data-busy])').waitFor();
  });
});

describe('the change plan', () => {
  for (const name of ['Cupped and too fast', 'Bowed, late and leaning back']) {
    test(`${name}: preview as ghost, use, undo`, async () => {
      await situation(name);
      const before = await look(page);
      await openDrawer(page, 'plan');
      await page.getByRole('button', { name: 'Show as comparison' }).click();
      const previewed = await look(page);
      expect(previewed.document).toEqual(before.document);
      expect(previewed.session.ghost).not.toBeNull();
      // The plates are strips beside an open drawer; their drawings wait.
      await page.locator('.plate-other.is-ghost').first().waitFor({ state: 'attached' });
      const labels = await page.locator('.plan-table tbody th').allInnerTexts();
      for (const row of ['Path', 'Face', 'Attack', 'Head speed', 'Start', 'Curve', 'Ball on the face']) {
        expect(labels).toContain(row);
      }
      expect(await page.locator('.plan-practice').innerText()).toMatch(
        /Feel[\s\S]*Practise[\s\S]*Caution[\s\S]*Warm up first/,
      );
      await page.getByRole('button', { name: 'Use this swing' }).click();
      await page.getByText('On plane at lead arm parallel and at shaft parallel.').first().waitFor();
      const applied = await look(page);
      expect(applied.document.movements).toEqual(previewed.session.ghost);
      await lead().getByText('Both checkpoints are on plane: nothing has to change.').waitFor();
      await page.getByRole('button', { name: /^Undo: Plan/ }).click();
      expect((await look(page)).document).toEqual(before.document);
    });
  }

  test('one tap asks for a sturdier plan, which holds in more of what the coach may have misread', async () => {
    await makeSteep();
    await openDrawer(page, 'plan');
    const holds = page.getByText(/^Lands on plane in \d+ of 100/);
    const counted = async (): Promise<number> => Number(/in (\d+) of/.exec(await holds.innerText())![1]);
    const smallest = await counted();
    await page.getByRole('radio', { name: 'More margin' }).check({ force: true });
    await expect.poll(counted).toBeGreaterThan(smallest);
    await page.getByRole('radio', { name: 'Smallest change' }).check({ force: true });
  });

  test('locked movements are not used; with all locked it says so', async () => {
    await makeSteep();
    await openDrawer(page, 'plan');
    await page.getByRole('button', { name: 'Lead wrist only' }).waitFor();
    const locks = ['Lead wrist', 'Body turn', 'Side bend'];
    await page.getByRole('switch', { name: locks[0] }).click();
    await page.getByRole('button', { name: 'Body turn and side bend' }).waitFor();
    expect(await page.locator('.plan-moves').innerText()).not.toContain('Lead wrist');
    for (const name of locks.slice(1)) await page.getByRole('switch', { name }).click();
    await lead().getByText('Every movement is locked. Unlock at least one.').waitFor();
    for (const name of locks) await page.getByRole('switch', { name }).click();
  });
});

describe('this is what I saw', () => {
  for (const [plate, id, read] of [
    ['Lead arm parallel', 'leadArmParallel', 'bicepGapCm'],
    ['Shaft parallel', 'shaftParallel', 'headDepthCm'],
  ] as const) {
    test(`${plate}: a finger pulls the ring, explanations come, and one of them becomes the swing now`, async () => {
      await pull(plate, 32);
      await lead()
        .getByText(/causes? would look like this/)
        .waitFor();
      const seen = (await look(page)).document.seen[id]!;
      expect(seen.cm).toBeGreaterThan(1);
      expect(seen.plusMinusCm).toBe(3);
      await page.getByText('More than one cause can look the same from one side.').waitFor();
      expect(await page.locator('.seen-hold').innerText()).toMatch(/(Almost certainly|Probably|Too close to call)/);
      await page.locator('.plate-cloud').waitFor();
      await page
        .getByRole('button', { name: /^Use this swing/ })
        .first()
        .click();
      await drawn(page);
      const { [read]: reading, past } = await look(page);
      expect(Math.abs(reading! - seen.cm)).toBeLessThanOrEqual(seen.plusMinusCm);
      expect(past).toHaveLength(2);
    });

    test(`${plate}: by keyboard arrows move the ring and Enter marks; forgetting is undoable`, async () => {
      await ring(plate).focus();
      for (let i = 0; i < 8; i++) await page.keyboard.press('PageUp');
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Clear' }).waitFor();
      const marked = (await look(page)).document.seen[id]!;
      expect(marked.cm).toBeGreaterThan(5);
      await page.getByRole('button', { name: 'Clear' }).click();
      expect((await look(page)).document.seen[id]).toBeNull();
      await page.getByRole('button', { name: 'Undo: Clear what I saw' }).click();
      expect((await look(page)).document.seen[id]).toEqual(marked);
    });
  }

  test('marks and their give or take are typed as well, refused in words where they cannot be', async () => {
    await openDrawer(page, 'seen');
    await page.locator('#mark-shaftParallel').getByLabel('Seen').fill('9');
    await page.keyboard.press('Enter');
    await page.locator('#mark-shaftParallel').getByLabel('Margin').fill('8');
    await page.keyboard.press('Enter');
    expect((await look(page)).document.seen.shaftParallel).toEqual({ cm: 9, plusMinusCm: 8, from: 'typed' });
    await page.locator('#mark-shaftParallel').getByLabel('Margin').fill('0');
    await page.keyboard.press('Enter');
    await page
      .getByRole('alert')
      .getByText(/is outside 0\.1 to 30 cm/)
      .waitFor();
    expect(await page.locator('#mark-shaftParallel').getByLabel('Margin').inputValue()).toBe('0');
    await page.keyboard.press('Escape');
    expect((await look(page)).document.seen.shaftParallel).toEqual({ cm: 9, plusMinusCm: 8, from: 'typed' });
  });

  test('marks that contradict each other are said to do so', async () => {
    await openDrawer(page, 'seen');
    await page.locator('#mark-leadArmParallel').getByLabel('Seen').fill('25');
    await page.keyboard.press('Enter');
    await page.locator('#mark-shaftParallel').getByLabel('Seen').fill('-50');
    await page.keyboard.press('Enter');
    await lead()
      .getByText(/^No swing explains both marks/)
      .waitFor();
    expect(await page.locator('.explanation').count()).toBeGreaterThan(0);
  });
});

describe('guess first and compare', () => {
  test('the figure waits until the player has drawn where the shaft will go, then the gap is drawn and said', async () => {
    await page.locator('#tab-more').click();
    await page.getByRole('switch', { name: 'Guess first' }).click();
    const before = await look(page);
    await slider(page, 'leadWristFlexion').fill('-20');
    await page.getByText(/^Where will the shaft go/).waitFor();
    expect((await look(page)).bicepGapCm).toBe(before.bicepGapCm);
    await ring('Lead arm parallel').focus();
    for (let i = 0; i < 2; i++) await page.keyboard.press('PageUp');
    await page.keyboard.press('Enter');
    await page.locator('.plate-guess').waitFor();
    await page.getByRole('button', { name: 'Show it' }).click();
    await page
      .getByText(/^Lead arm parallel: it went to \d+ cm above, \d+ cm (higher|lower) than you drew\.$/)
      .waitFor();
    expect(await page.locator('.plate-gap text').textContent()).toMatch(/^\d+ cm$/);
    expect((await look(page)).bicepGapCm!).toBeGreaterThan(before.bicepGapCm! + 2);
    expect((await look(page)).document.seen.leadArmParallel).toBeNull();
    expect(await page.locator('.plate-guess-name').textContent()).toBe('your guess');
    // With a drawer in the plates' place a guess is made by steps, and the drawer gives nothing away.
    await slider(page, 'leadWristFlexion').fill('10');
    await openDrawer(page, 'ledger');
    await page.locator('.drawer-body').getByText('This waits until the guess is shown.').waitFor();
    await page.getByRole('button', { name: 'Shaft parallel: farther behind' }).click();
    await page.getByRole('button', { name: 'Show it' }).click();
    await page.getByText(/^Within 2 cm: \d of 2 guesses\.$/).waitFor();
    await page.locator('.drawer-body').getByText('This waits').waitFor({ state: 'hidden' });
    await page.getByRole('button', { name: 'Stop guessing' }).click();
  });

  test('the reference is drawn solid and this swing as ghost, with what differs in numbers', async () => {
    await makeSteep();
    const now = await look(page);
    await openDrawer(page, 'compare');
    await page.getByLabel('Solid').selectOption('reference');
    await page.getByLabel('As comparison').selectOption('now');
    await drawn(page);
    expect(Math.abs((await look(page)).bicepGapCm!)).toBeLessThan(1.5);
    const row = page.getByRole('row', { name: /^Lead arm parallel: shaft over the bicep/ });
    expect(await row.innerText()).toContain(`\u2212${Math.round(now.bicepGapCm!)} cm`);
    await page.getByRole('button', { name: 'Close' }).click();
    expect((await look(page)).bicepGapCm).toBe(now.bicepGapCm);
  });

  test('both plates of both swings stand side by side: level, equally large, named, told apart without colour', async () => {
    await makeSteep();
    await openDrawer(page, 'compare');
    await page.getByLabel('Solid').selectOption({ label: '12 Jan 2026, as seen' });
    await page.getByLabel('As comparison').selectOption({ label: '12 Jan 2026, plan' });
    await page.locator('.pair-plates .plate-drawing').nth(3).waitFor();
    const pictures = page.locator('.pair-picture');
    const boxes = await pictures.evaluateAll((all) =>
      all.map((at) => {
        const { left, top, width, height } = at.getBoundingClientRect();
        const bar = at.querySelector('.plate-axis')!;
        return { left, top, width, height, dash: getComputedStyle(bar).strokeDasharray };
      }),
    );
    for (const [a, b] of [
      [boxes[0], boxes[1]],
      [boxes[2], boxes[3]],
    ]) {
      expect(a.top).toBeCloseTo(b.top, 0);
      expect(a.width).toBeCloseTo(b.width, 0);
      expect(a.height).toBeCloseTo(b.height, 0);
      expect(a.left + a.width).toBeLessThanOrEqual(b.left + 1);
      expect(a.dash).toBe('none');
      expect(b.dash).not.toBe('none');
    }
    expect(await page.locator('.pair-plate figcaption').allInnerTexts()).toEqual(
      [0, 1].flatMap(() => ['Example: Juniper, 12 Jan 2026, as seen', 'Example: Juniper, 12 Jan 2026, plan']),
    );
    for (const drawing of await page.locator('.pair-plates .plate-drawing').all()) {
      expect(await drawing.getAttribute('aria-label')).toMatch(/Juniper.*seen down the line.*computed by the model\.$/);
    }
    await page.getByRole('radio', { name: 'clock' }).check({ force: true });
    await page.getByText(/ms (past|before) lead arm parallel$|At lead arm parallel$/).waitFor();
    expect((await look(page)).session.why.link).toBe('clock');
    await page.getByRole('radio', { name: 'checkpoint' }).check({ force: true });
    await page.getByLabel('Solid').selectOption('now');
    await page.getByLabel('As comparison').selectOption('reference');
  });
});

describe('on every screen', () => {
  test.for(Object.entries(SCREENS))(
    '%s: every drawer opens, nothing runs past its edge, no rule of accessibility is broken, every sentence has its twin',
    async ([name, viewport]) => {
      await page.setViewportSize(viewport);
      await makeSteep();
      for (const id of ['ledger', 'map', 'plan', 'seen', 'compare'] as const) {
        await openDrawer(page, id);
        await page.locator(`.drawer[data-drawer="${id}"] .why-lead`).waitFor();
        await page.waitForFunction(() => !/…/.test(document.querySelector('.why-lead')!.textContent));
        await drawn(page);
        expect((await twin()).heard, id).not.toMatch(/°|%|\b(cm|ms) /);
        const wide = await page.locator('.drawer-body').evaluate((at) => at.scrollWidth - at.clientWidth);
        expect(wide, id).toBe(0);
        expect(await findCrowding(page), id).toEqual([]);
        // The rules look at markup and colours: the wide and the narrow arrangement have all there are.
        if (name === 'upright tablet' || name === 'laptop') continue;
        expect(await findFaults(page, ['#drawer', '.bar']), id).toEqual([]);
      }
    },
  );
});

test('in all of this nothing went wrong in the page, and nothing left it', () => {
  const { witness } = visit;
  expect(witness.errors).toEqual([]);
  expect(witness.violations).toEqual([]);
  expect(offOrigin(witness)).toEqual([]);
});
