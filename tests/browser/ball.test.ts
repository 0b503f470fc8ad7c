import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { isServerAway } from './offlineMode';
import { findFaults } from './axe';
import { DRAW_NOTHING, drawn, openDesk, openDrawer, ready, settled, slider } from './deskPage';
import { shareDesk } from './sharedDesk';
import { startOver } from './startOver';
import { SCREENS } from './support';

const shared = shareDesk();
let page: Page;
beforeAll(() => ({ page } = shared));

async function openBall(): Promise<void> {
  await page.locator('#tab-ball').click();
  await page.locator('.ball-lead').waitFor();
  await settled(page);
}
const readings = (): Promise<string[]> => page.locator('.ball-rows dd > [aria-hidden]').allTextContents();

describe('the ball', () => {
  test('its tab opens both drawings and the numbers; they follow a slider', async () => {
    await openBall();
    await page.locator('.above svg').nth(1).waitFor();
    const before = { lead: await page.locator('.ball-lead').innerText(), rows: await readings() };
    const strike = await page.locator('.above svg').first().getAttribute('aria-label');
    expect(before.rows.length).toBeGreaterThanOrEqual(18);
    expect(before.rows.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    await slider(page, 'leadWristFlexion').focus();
    for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowLeft');
    await drawn(page);
    expect(await page.locator('.ball-lead').innerText()).toMatch(/curves (hard )?right/);
    expect(await readings()).not.toEqual(before.rows);
    expect(await page.locator('.above svg').first().getAttribute('aria-label')).not.toBe(strike);
  });

  // With the server away the worker brings every part: there none can be missing.
  test.skipIf(isServerAway)(
    'a drawing that cannot be fetched takes only its drawer along, and comes once there is a network',
    async () => {
      const { page: poor, context } = await openDesk(shared.browser, { init: [DRAW_NOTHING] });
      await poor.route('**/BallDrawings*', (route) => route.abort());
      // The page may have fetched the drawings already, while it was quiet.
      await poor.reload();
      await ready(poor);
      await poor.locator('#tab-ball').click();
      await poor.getByRole('heading', { name: 'This drawer did not come' }).waitFor();
      expect(await poor.locator('.plate-word').allInnerTexts()).toEqual(['On plane', 'On plane']);
      await slider(poor, 'leadWristFlexion').press('ArrowLeft');
      const value = poor.locator('[data-dial="leadWristFlexion"] .dial-value');
      expect(await value.innerText()).toMatch(/1°/);
      // The page that works is kept as long as no other would come.
      await context.setOffline(true);
      await poor.getByRole('button', { name: 'Load the page again' }).click();
      await poor.getByText('There is still no answer.').waitFor();
      expect(await value.innerText()).toMatch(/1°/);
      await context.setOffline(false);
      await poor.unroute('**/BallDrawings*');
      await poor.getByRole('button', { name: 'Load the page again' }).click();
      await poor.getByRole('heading', { name: 'This drawer did not come' }).waitFor({ state: 'detached' });
      await poor.locator('#tab-ball').click();
      await poor.locator('.ball-lead').waitFor();
      expect(await value.innerText()).toMatch(/1°/);
      await context.close();
    },
  );

  test('without compensation the drawer says how far the head is off, and undo brings the ball back', async () => {
    await slider(page, 'rotationRate').focus();
    for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
    await openBall();
    await page.getByRole('radio', { name: 'No compensation' }).check();
    await page.getByRole('region', { name: 'How far the head is off' }).waitFor();
    expect(await page.locator('.ball-lead').innerText()).toBe('The head misses the ball.');
    await page.getByRole('button', { name: 'Undo: Ball' }).click();
    await page.locator('.ball-lead strong').waitFor();
  });

  test('the face comes back as far as the set-up says, as one step, and both places say that this is assumed', async () => {
    const assumed = 'Assumed: nothing measured says how far players bring the face back.';
    await slider(page, 'leadWristFlexion').focus();
    for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowLeft');
    await openBall();
    const rule = page.getByRole('region', { name: 'From shaft parallel to the ball' });
    expect(await rule.innerText()).toContain(`The face is drawn half way back to square. ${assumed}`);
    expect(await rule.innerText()).toMatch(/takes \d+° of closing roll and (no|\d+° of) (bow|cup)\./);
    const half = await readings();
    await openDrawer(page, 'setUp/Club');
    const setUp = page.getByRole('region', { name: 'Face at the ball' });
    expect(await setUp.innerText()).toContain(assumed);
    const back = page.getByLabel('Face comes back');
    expect(await back.getAttribute('aria-valuetext')).toBe('half way');
    await back.fill('1');
    expect(await setUp.locator('output').innerText()).toBe('square');
    await openBall();
    expect(await rule.innerText()).toContain('The face is drawn square, or as near as it gets.');
    expect(await readings()).not.toEqual(half);
    await page.getByRole('button', { name: 'Undo: Ball' }).click();
    await drawn(page);
    expect(await readings()).toEqual(half);
  });

  test('wind typed in changes the carry; a storm is refused in words', async () => {
    await openBall();
    const before = await readings();
    const wind = page.getByLabel('Wind with the shot, against is minus');
    await wind.fill('-6');
    await wind.press('Enter');
    expect(await readings()).not.toEqual(before);
    await wind.fill('90');
    await wind.press('Enter');
    await page.getByText(/90 m\/s is outside/).waitFor();
  });

  test('path, face and shot stay in one frame with plates and sliders while the drawer is shut', async () => {
    for (const viewport of Object.values(SCREENS)) {
      await page.setViewportSize(viewport);
      await drawn(page);
      const strip = await page.locator('.path-readout').innerText();
      expect(strip).toMatch(/Path .*\n?.*Face /s);
      for (const part of ['.path-readout', '.plate >> nth=0', '.plate >> nth=1', '[data-dial="leadWristFlexion"]']) {
        const box = (await page.locator(part).boundingBox())!;
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.y).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(viewport.width + 1);
        expect(box.y + box.height).toBeLessThanOrEqual(viewport.height + 1);
      }
    }
  });

  test('the drawer has no accessibility fault and no text below 15 px, on every screen', async () => {
    for (const viewport of Object.values(SCREENS)) {
      await startOver(page);
      await page.setViewportSize(viewport);
      await openBall();
      await page.locator('.above svg').nth(1).waitFor();
      expect(await findFaults(page, ['#drawer'])).toEqual([]);
      const small = await page.locator('#drawer').evaluate((drawer) =>
        [...drawer.querySelectorAll('*')]
          .filter((each) => [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== ''))
          .map((each) => Number.parseFloat(getComputedStyle(each).fontSize))
          .filter((px) => px < 15),
      );
      expect(small).toEqual([]);
    }
  });
});
