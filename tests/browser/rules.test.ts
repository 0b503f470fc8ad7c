import { describe, expect, test } from 'vitest';
import { findFaults } from './axe';
import { look, openDrawer } from './deskPage';
import { shareDesk } from './sharedDesk';
import { SCREENS } from './support';

const desk = shareDesk();
const lead = () => desk.page.locator('.why-lead').first();

describe('the same picture, other bodies', () => {
  test('are laid out, shown as ghost, told apart, and one of them can be taken', async () => {
    const { page } = desk;
    await openDrawer(page, 'family');
    await lead().getByText('Many bodies give').waitFor();
    await expect.poll(() => page.locator('.family-plates li').count()).toBe(9);
    const first = await page.locator('.family-differences li').first().innerText();
    expect(first).toMatch(/^(Face on|Down the line|From above|At the ball)/);
    await page.getByRole('slider', { name: 'Bodies that give this picture' }).fill('8');
    await expect.poll(() => page.locator('.family-plates li').last().getAttribute('data-chosen')).toBe('true');
    const { session } = await look(page);
    expect(session.ghost).not.toBeNull();
    // The others stand on the stage with it, each another body, and none of them the chosen one.
    expect(new Set([session.ghost, ...session.fan].map((one) => JSON.stringify(one))).size).toBe(9);
    await page.getByRole('radio', { name: 'smallest change' }).check({ force: true });
    await page.locator('.family-differences li').first().getByRole('button').click();
    await page.getByRole('button', { name: 'Use this swing' }).click();
    expect((await look(page)).document.movements).not.toMatchObject({ leadWristFlexionDeg: 0, rotationRate: 1 });
    expect(await findFaults(page, ['#drawer'])).toEqual([]);
    await openDrawer(page, 'ledger');
    await expect.poll(async () => (await look(page)).session.fan).toEqual([]);
  });
});

describe('a rule', () => {
  test('that ships says how it came out; tried, it ends with a counterexample that loads on the desk', async () => {
    const { page } = desk;
    await openDrawer(page, 'rule');
    await lead().getByText('It held in every swing tried.').waitFor();
    await page.getByLabel('Rule', { exact: true }).selectOption('A cupped wrist is a steep shaft');
    await lead().getByText('It holds mostly.').waitFor();
    const told = await page.locator('.rule-count').innerText();
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    // The page answers meanwhile: a slider moves at once.
    await page.getByRole('button', { name: 'Load on the desk' }).waitFor({ timeout: 60_000 });
    expect(await page.locator('.rule-count').innerText()).toBe(told);
    await page.getByRole('button', { name: 'Load on the desk' }).click();
    const { document } = await look(page);
    expect(document.movements.leadWristFlexionDeg).toBeLessThan(-10);
    expect(await findFaults(page, ['#drawer'])).toEqual([]);
  }, 90_000);

  test('of one’s own is put together, refused in words while it is empty, and kept', async () => {
    const { page } = desk;
    await openDrawer(page, 'rule');
    await page.getByLabel('Rule', { exact: true }).selectOption('A new rule');
    await page.getByRole('button', { name: 'Try it' }).click();
    await lead().getByText('Nothing is claimed. Say what comes of it.').waitFor();
    await page.getByText('Change the rule').click();
    await page.getByRole('button', { name: 'Add what is expected' }).click();
    await page.getByText('expect the shaft is steep at lead arm parallel.').waitFor();
    await page.getByLabel('Name').fill('Mine');
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByText('Kept in this browser.').waitFor();
    expect(await page.getByLabel('Rule', { exact: true }).inputValue()).toBe('Mine');
  });
});

describe('who gains most', () => {
  test('stands in a table with the player marked, and nothing is wider than a phone', async () => {
    const { page } = desk;
    await page.setViewportSize(SCREENS.phone);
    await openDrawer(page, 'gains');
    await lead().getByText('It moves the head at shaft parallel most').waitFor({ timeout: 30_000 });
    expect(await page.locator('.gains-table').count()).toBe(5);
    expect(await page.locator('.gains-table td[data-own]').count()).toBe(5);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await findFaults(page, ['#drawer'])).toEqual([]);
  });
});
