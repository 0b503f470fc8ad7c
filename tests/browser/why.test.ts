import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { drawn, look, openDesk, openDrawer, slider } from './deskPage';
import { findCrowding } from './geometry';
import { launch, offOrigin, SCREENS } from './support';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Cupped, early and fast, over the lead hip: steep at both checkpoints. */
async function makeSteep(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Situations' }).last().click();
  await page.getByRole('button', { name: 'Cupped and too fast' }).click();
}
const lead = (page: Page) => page.locator('.why-lead');
/** Every sentence has its twin for a screen reader: the same words with the units written out. */
async function twin(page: Page): Promise<{ seen: string; heard: string }> {
  return lead(page).evaluate((at) => {
    const spoken = at.querySelector('.unseen')?.textContent;
    const shown = at.querySelector('[aria-hidden]')?.textContent;
    return { seen: shown ?? at.textContent, heard: spoken ?? at.textContent };
  });
}

describe('the ledger', () => {
  test('leads with a sentence whose numbers add up, in sight and for a screen reader', async () => {
    const { page, context, witness } = await openDesk(browser!);
    await makeSteep(page);
    await openDrawer(page, 'ledger');
    await lead(page)
      .getByText(/^Of \d+ cm too steep/)
      .waitFor();
    const { seen, heard } = await twin(page);
    const [total, ...parts] = (seen.match(/\d+/g) ?? []).map(Number);
    expect(parts.reduce((a, b) => a + b, 0)).toBe(total);
    expect(heard).toBe(seen.replace(' cm ', ' centimetres '));
    const bars = await page.locator('.waterfall-row[data-part] .unseen').allTextContents();
    expect(bars).toHaveLength(2);
    for (const bar of bars) expect(bar).toMatch(/: (plus|minus) [\d.]+ centimetres\. Alone .+, last .+\.$/);
    expect(witness.errors).toEqual([]);
    expect(offOrigin(witness)).toEqual([]);
    await context.close();
  });

  test('a bar plays only its own movement, stops by itself and changes nothing', async () => {
    const { page, context } = await openDesk(browser!);
    await makeSteep(page);
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
    await context.close();
  });
});

interface Probe {
  slantwiseProbe: () => Awaited<ReturnType<typeof look>>;
}

describe('the corridor map', () => {
  test('a finger on the map moves slider, figure and sentence; the drag is one undo step; keys move it too', async () => {
    const { page, context, witness } = await openDesk(browser!);
    await makeSteep(page);
    await openDrawer(page, 'map');
    await lead(page)
      .getByText(/needs|Neither/)
      .first()
      .waitFor();
    const sentence = (await twin(page)).seen;
    const box = (await page.locator('.map-touch').boundingBox())!;
    const pin = (await page.locator('.map-pin').boundingBox())!;
    const past = (await look(page)).past.length;
    await page.mouse.move(pin.x + 14, pin.y + 14);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.6, pin.y + 20, { steps: 6 });
    await page.mouse.move(box.x + box.width * 0.72, pin.y + 4, { steps: 6 });
    await page.mouse.up();
    await drawn(page);
    const after = await look(page);
    expect(after.past).toHaveLength(past + 1);
    expect(after.document.movements.leadWristFlexionDeg).toBeGreaterThan(5);
    expect(await slider(page, 'leadWristFlexion').inputValue()).toBe(
      String(after.document.movements.leadWristFlexionDeg),
    );
    expect(after.drawn).toEqual(after.pose);
    expect((await twin(page)).seen).not.toBe(sentence);
    expect((await twin(page)).heard).not.toContain('°');

    await page.locator('.map-pin').focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowUp');
    const keyed = (await look(page)).document.movements;
    expect(keyed.leadWristFlexionDeg).toBe(after.document.movements.leadWristFlexionDeg - 1);
    expect(keyed.rotationDelayMs).toBe(after.document.movements.rotationDelayMs + 1);
    expect(await page.locator('.map-pin').getAttribute('aria-valuetext')).toMatch(/^bowed \d+ degrees?.*on plane\.$/);
    expect(witness.errors).toEqual([]);
    await context.close();
  });

  test('where the sentence says one movement alone is enough, it is', async () => {
    const { page, context } = await openDesk(browser!);
    await slider(page, 'leadWristFlexion').fill('-10');
    await openDrawer(page, 'map');
    await lead(page)
      .getByText(/^Wrist alone needs/)
      .first()
      .waitFor();
    await page.waitForFunction(() => !document.querySelector('.map-frame[data-busy]'));
    const needs = Number(/needs (\d+)°/.exec((await twin(page)).seen)![1]);
    await slider(page, 'leadWristFlexion').fill(String(-10 + needs));
    await page
      .getByText(/^On plane at lead arm parallel and at shaft parallel\.$/)
      .first()
      .waitFor();
    await slider(page, 'leadWristFlexion').fill(String(-10 + needs - 1));
    await lead(page)
      .getByText(/^Wrist alone needs 1°/)
      .first()
      .waitFor();
    await context.close();
  });
});

describe('the change plan', () => {
  for (const situation of ['Cupped and too fast', 'Bowed, late and leaning back']) {
    test(`${situation}: preview as ghost, apply, undo`, async () => {
      const { page, context, witness } = await openDesk(browser!);
      await page.getByRole('button', { name: 'Situations' }).last().click();
      await page.getByRole('button', { name: situation }).click();
      const before = await look(page);
      await openDrawer(page, 'plan');
      await page.getByRole('button', { name: 'Apply' }).waitFor();
      await page.getByRole('button', { name: 'Show as ghost' }).click();
      const previewed = await look(page);
      expect(previewed.document).toEqual(before.document);
      expect(previewed.session.ghost).not.toBeNull();
      await page.locator('.plate-other.is-ghost').first().waitFor();
      for (const row of ['Path', 'Face', 'Attack', 'Head speed', 'Ball on the face']) {
        await page.locator('.plan-table').getByRole('rowheader', { name: row, exact: true }).waitFor();
      }
      expect(await page.locator('.plan-practice').innerText()).toMatch(
        /Feel[\s\S]*Practise[\s\S]*Caution[\s\S]*Warm up first/,
      );
      await page.getByRole('button', { name: 'Apply' }).click();
      await page.getByText('On plane at lead arm parallel and at shaft parallel.').first().waitFor();
      const applied = await look(page);
      expect(applied.document.movements).toEqual(previewed.session.ghost);
      await lead(page).getByText('Both checkpoints are on plane: nothing has to change.').waitFor();
      await page.getByRole('button', { name: /^Undo: Plan/ }).click();
      expect((await look(page)).document).toEqual(before.document);
      expect(witness.errors).toEqual([]);
      await context.close();
    });
  }

  test('locked movements are not used; with all locked it says so', async () => {
    const { page, context } = await openDesk(browser!);
    await makeSteep(page);
    await openDrawer(page, 'plan');
    await page.getByRole('button', { name: 'Lead wrist only' }).waitFor();
    await page.getByRole('switch', { name: 'Lead wrist' }).click();
    await page.getByRole('button', { name: 'Rotation and side tilt' }).waitFor();
    expect(await page.locator('.plan-moves').innerText()).not.toContain('Lead wrist');
    await page.getByRole('switch', { name: 'Rotation' }).click();
    await page.getByRole('switch', { name: 'Side tilt' }).click();
    await lead(page).getByText('Every movement is locked. Unlock at least one.').waitFor();
    await context.close();
  });

  test('dragging stays one frame while maps and plans are worked out', async () => {
    const { page, context } = await openDesk(browser!);
    await openDrawer(page, 'plan');
    const longest = await page.evaluate(async () => {
      const input = document.querySelector<HTMLInputElement>('[data-dial="trailTilt"] input')!;
      // React hears only of values that are set past its own setter.
      const { set } = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value') as {
        set: (this: HTMLInputElement, value: string) => void;
      };
      const spent: number[] = [];
      for (let i = 0; i < 24; i++) {
        const start = performance.now();
        set.call(input, String(i % 2 ? 4 : -4));
        input.dispatchEvent(new Event('input', { bubbles: true }));
        spent.push(performance.now() - start);
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
      return spent.toSorted((a, b) => a - b)[12];
    });
    // A plan takes a tenth of a second or more: were it solved here, every change would take as long.
    expect(longest).toBeLessThan(50);
    await context.close();
  });
});

describe('this is what I saw', () => {
  test('a finger pulls the ring: explanations come, and one of them becomes the swing now', async () => {
    const { page, context, witness } = await openDesk(browser!, { hasTouch: true });
    const ring = page.getByRole('slider', { name: 'Lead arm parallel: what you saw' });
    const box = (await ring.boundingBox())!;
    const client = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number): Promise<unknown> =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await touch('touchStart', x, y);
    for (let i = 1; i <= 8; i++) await touch('touchMove', x + i * 4, y);
    await touch('touchEnd', x + 32, y);
    await lead(page)
      .getByText(/explanations? would look like this/)
      .waitFor();
    const seen = (await look(page)).document.seen.leadArmParallel!;
    expect(seen.cm).toBeGreaterThan(1);
    expect(seen.plusMinusCm).toBe(3);
    await page.getByText('Several bodies can look alike from one side.').waitFor();
    expect(await page.locator('.seen-hold').innerText()).toMatch(/holds in (\d+|more than 99) of 100\.$/);
    await page.locator('.plate-cloud').waitFor();
    await page
      .getByRole('button', { name: /^Make it the swing now/ })
      .first()
      .click();
    await drawn(page);
    const { bicepGapCm, past } = await look(page);
    expect(Math.abs(bicepGapCm! - seen.cm)).toBeLessThanOrEqual(seen.plusMinusCm);
    expect(past).toHaveLength(2);
    expect(witness.errors).toEqual([]);
    await context.close();
  });

  test('by keyboard: arrows move the ring, Enter marks; give or take is typed; forgetting is undoable', async () => {
    const { page, context } = await openDesk(browser!);
    await page.getByRole('slider', { name: 'Shaft parallel: what you saw' }).focus();
    for (let i = 0; i < 12; i++) await page.keyboard.press('PageUp');
    await page.keyboard.press('Enter');
    await lead(page)
      .getByText(/explanations? would look like this/)
      .waitFor();
    const marked = (await look(page)).document.seen.shaftParallel!;
    expect(marked.cm).toBeGreaterThan(5);
    await page.getByLabel('Give or take').fill('8');
    await page.keyboard.press('Enter');
    expect((await look(page)).document.seen.shaftParallel).toEqual({ ...marked, plusMinusCm: 8 });
    await page.getByLabel('Give or take').fill('0');
    await page.keyboard.press('Enter');
    await page
      .getByRole('alert')
      .getByText(/is outside 0\.1 to 30 cm/)
      .waitFor();
    expect(await page.getByLabel('Give or take').inputValue()).toBe('0');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Forget' }).click();
    expect((await look(page)).document.seen.shaftParallel).toBeNull();
    await page.getByRole('button', { name: 'Undo: Forget what I saw' }).click();
    expect((await look(page)).document.seen.shaftParallel).toEqual({ ...marked, plusMinusCm: 8 });
    await context.close();
  });

  test('marks that contradict each other are said to do so', async () => {
    const { page, context } = await openDesk(browser!);
    await openDrawer(page, 'seen');
    await page.getByLabel(/^Shaft line/).fill('25');
    await page.keyboard.press('Enter');
    await page.getByLabel(/^Head, behind/).fill('-50');
    await page.keyboard.press('Enter');
    await lead(page)
      .getByText(/^Nothing looks like both marks/)
      .waitFor();
    expect(await page.locator('.explanation').count()).toBeGreaterThan(0);
    await context.close();
  });
});

describe('guess first and compare', () => {
  test('the figure waits until the player has drawn where the shaft will go, then the gap is said', async () => {
    const { page, context } = await openDesk(browser!);
    await page.locator('#tab-more').click();
    await page.getByRole('switch', { name: 'Guess first' }).click();
    const before = await look(page);
    await slider(page, 'leadWristFlexion').fill('-20');
    await page.getByText(/^Where will the shaft go/).waitFor();
    expect((await look(page)).bicepGapCm).toBe(before.bicepGapCm);
    await page.getByRole('slider', { name: 'Lead arm parallel: what you saw' }).focus();
    for (let i = 0; i < 2; i++) await page.keyboard.press('PageUp');
    await page.keyboard.press('Enter');
    await page.locator('.plate-guess').waitFor();
    await page.getByRole('button', { name: 'Show it' }).click();
    await page.getByText(/^P5: it went to \d+ cm above, \d+ cm (higher|lower) than you drew\.$/).waitFor();
    await page.locator('.plate-gap').waitFor();
    expect((await look(page)).bicepGapCm!).toBeGreaterThan(before.bicepGapCm! + 2);
    expect((await look(page)).document.seen.leadArmParallel).toBeNull();
    await page.getByRole('button', { name: 'Stop guessing' }).click();
    await context.close();
  });

  test('the reference is drawn solid and this swing as ghost, with what differs in numbers', async () => {
    const { page, context } = await openDesk(browser!);
    await makeSteep(page);
    const now = await look(page);
    await openDrawer(page, 'compare');
    await page.getByLabel('Solid').selectOption('reference');
    await page.getByLabel('As ghost').selectOption('now');
    await drawn(page);
    expect(Math.abs((await look(page)).bicepGapCm!)).toBeLessThan(1.5);
    const row = page.getByRole('row', { name: /^P5, shaft line over the bicep/ });
    expect(await row.innerText()).toContain(`\u2212${Math.round(now.bicepGapCm!)} cm`);
    await page.getByRole('radio', { name: 'clock' }).check({ force: true });
    expect((await look(page)).session.why.link).toBe('clock');
    await page.getByRole('button', { name: 'Close' }).click();
    expect((await look(page)).bicepGapCm).toBe(now.bicepGapCm);
    await context.close();
  });
});

describe('on every screen', () => {
  for (const [name, viewport] of Object.entries(SCREENS)) {
    test(`${name}: every drawer opens without an accessibility violation and nothing runs past its edge`, async () => {
      const { page, context, witness } = await openDesk(browser!, { viewport });
      await makeSteep(page);
      for (const id of ['ledger', 'map', 'plan', 'seen', 'compare'] as const) {
        await openDrawer(page, id);
        await lead(page).waitFor();
        await page.waitForFunction(() => !/…/.test(document.querySelector('.why-lead')!.textContent));
        await drawn(page);
        const { violations } = await new AxeBuilder({ page }).include('#drawer').include('.bar').analyze();
        expect(
          violations.map(({ id: rule, nodes }) => `${rule}: ${nodes.map(({ html }) => html).join()}`),
          id,
        ).toEqual([]);
        const wide = await page.locator('.drawer-body').evaluate((at) => at.scrollWidth - at.clientWidth);
        expect(wide, id).toBe(0);
        expect(await findCrowding(page), id).toEqual([]);
      }
      expect(witness.errors).toEqual([]);
      expect(witness.violations).toEqual([]);
      await context.close();
    });
  }
});
