import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readHash } from '../../src/export/link/link';
import { readFile } from '../../src/record/file/readFile';
import type { Document } from '../../src/store';
import { findFaults } from './axe';
import { makeByTouch, playFrames, wishShort } from './clipPage';
import { look, openDrawer } from './deskPage';
import { download, inStore, withoutPicture, type Kept } from './lessonsPage';
import { appAddress, launch, offOrigin, open, SCREENS, type Witness } from './support';

let browser: Browser | undefined;
let page: Page;
let witness: Witness;
beforeAll(async () => {
  browser = await launch();
  // Nothing of the app runs before its picture is refused: the lesson has no need of it.
  const visit = await open(browser, { path: 'manifest.webmanifest', viewport: SCREENS.tablet, hasTouch: true });
  ({ page, witness } = visit);
  await withoutPicture(visit.context);
  await page.goto(new URL('?probe', appAddress()).href);
  await page.locator('#tab-lessons').waitFor();
});
afterAll(() => browser?.close());

/** Every touch, a field that is typed into counting as one. The goal is 25 for a whole lesson. */
let taps = 0;
const MOST_TAPS = 25;
async function tap(name: string | RegExp, at = page.getByRole('button', { name }).first()): Promise<void> {
  taps++;
  await at.tap();
}
async function type(label: string | RegExp, text: string, within = page.locator('#drawer')): Promise<void> {
  taps++;
  const field = within.getByLabel(label).first();
  await field.fill(text);
  await field.blur();
}
/** As after a day: the page is loaded anew, and the drawer opened again. Not a part of the lesson. */
async function reload(drawer: string): Promise<void> {
  // What was changed last is stored by then.
  await expect
    .poll(async () => JSON.stringify((await lessonInStore())?.now))
    .toBe(JSON.stringify((await look(page)).document));
  await page.reload();
  await page.locator('#tab-lessons').waitFor();
  await openDrawer(page, drawer);
}
const lessonInStore = async (): Promise<(Kept & { now: Document }) | undefined> => {
  const own = (await inStore(page)).filter(({ kind, id }) => kind === 'lesson' && !id.startsWith('example'));
  return own[0] as (Kept & { now: Document }) | undefined;
};
const planLines = (): Promise<string[]> => page.locator('.plan-chosen li').allInnerTexts();

async function textOfSheet(): Promise<string> {
  const pdf = await page.pdf({ format: 'A4' });
  const file = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  expect(file.numPages).toBe(1);
  const { items } = await (await file.getPage(1)).getTextContent();
  return (
    items
      .map((item) => ('str' in item ? item.str : ''))
      .join(' ')
      .replace(/\s+/g, ' ')
      // The degree stands in another typeface: a reader of the page sees a gap before it.
      .replaceAll(' °', '°')
  );
}

test('a whole lesson by touch takes at most 25 taps, and its one plan is the same on screen, in store, sheet, clip, link and export', async () => {
  await tap('', page.locator('#tab-lessons'));
  const form = page.locator('.lesson-new');
  taps++;
  await form.getByLabel('New player, a nickname will do').fill('Robin');
  taps++;
  await form.getByLabel('Height').fill('178');
  await tap('', form.getByRole('radio', { name: 'Left' }));
  await tap('', form.getByRole('radio', { name: 'Right' }));
  // A list of the device's own: one tap to open it, one to choose.
  taps += 2;
  await form.getByLabel('Club').selectOption('driver');
  await tap('Start a lesson', form.getByRole('button', { name: 'Start a lesson' }));
  await page.locator('#drawer[data-drawer="seen"]').waitFor();
  expect(await page.locator('.lesson-mark').innerText()).toMatch(/Robin[\s\S]*driver, \d+ \w+ \d{4}/);

  await type('Seen', '6', page.locator('#mark-leadArmParallel'));
  await type('Seen', '12', page.locator('#mark-shaftParallel'));
  await page.locator('.explanation').first().waitFor();
  await reload('seen');
  const seen = (await look(page)).document.seen;
  expect(seen).toEqual({
    leadArmParallel: { cm: 6, plusMinusCm: 3, from: 'typed' },
    shaftParallel: { cm: 12, plusMinusCm: 3, from: 'typed' },
  });
  await page.locator('.cause-tell').first().waitFor();
  expect(await findFaults(page, ['#drawer'])).toEqual([]);
  await tap(/^Use this swing/);
  const start = (await look(page)).document.movements;
  await tap('Next: why');
  await tap('Next: what to change');
  await tap('Choose this plan');
  const chosen = (await look(page)).document.plan!;
  expect(chosen.from).toEqual(start);
  expect((await look(page)).document).toMatchObject({ seen, movements: start });
  await tap('', page.getByText('Feel, drills, your words, next lesson'));
  await type('Your own words to the player', 'Small swings first.');
  taps++;
  await page.getByLabel('Next lesson').fill('2026-12-13');
  await type(/^Player’s name on hand-outs/, 'Robin');
  await reload('plan');
  // Using the planned swing changes the desk, and nothing else.
  await page.locator('.plan-moves').waitFor();
  await page.getByRole('button', { name: 'Use this swing' }).tap();
  const plan = (await look(page)).document.plan!;
  expect(plan).toEqual({
    ...chosen,
    words: 'Small swings first.',
    nextDate: '2026-12-13',
    names: { player: 'Robin', coach: null },
  });
  const { document } = await look(page);
  expect([document.seen, document.movements]).toEqual([seen, plan.movements]);
  const lines = await planLines();
  expect(lines.length).toBeGreaterThan(0);

  await tap('Next: show and send');
  const address = await page.locator('.link input').inputValue();
  const sent = readHash(new URL(address).hash);
  expect(sent && 'document' in sent && sent.document.plan).toEqual(plan);
  await tap('Practice sheet', page.getByRole('button', { name: 'Practice sheet', exact: true }));
  await page.locator('.sheet-page').waitFor();
  const sheet = await textOfSheet();
  const words = [...lines, plan.feel, ...plan.drills.map(({ name }) => name), plan.words, '13 Dec 2026'];
  for (const part of ['Practice sheet for Robin', ...words]) expect(sheet).toContain(part);
  await tap('Close', page.locator('.sheet-acts').getByRole('button', { name: 'Close' }));
  // A clip too, of which the lesson has no need: the code in its last frames holds the same plan.
  await wishShort(page);
  await page.getByLabel('Format').selectOption('best');
  await page.getByLabel('End card with code').setChecked(true);
  const clip = await makeByTouch(page, 'Make the clip');
  const [card] = await playFrames(page, clip, 'video/mp4', [3.5], 25);
  const { data: shown } = jsQR(new Uint8ClampedArray(card.data), card.width, card.height)!;
  const filmed = readHash(new URL(shown).hash);
  expect(filmed && 'document' in filmed && filmed.document.plan).toEqual(plan);
  await tap('Next: save the lesson');
  await expect.poll(planLines).toEqual(lines);
  await expect.poll(async () => (await lessonInStore())?.now.plan).toEqual(plan);
  await tap('Save and finish');
  await page.getByText('The lesson is saved.').waitFor();
  expect(taps).toBeLessThanOrEqual(MOST_TAPS);

  const file = await download(page, () =>
    page.getByRole('button', { name: /^(Export player|Hand over as a file)$/ }).tap(),
  );
  const reading = readFile(file.text);
  if ('refused' in reading) throw new Error(reading.refused);
  const lesson = reading.records.find(({ kind }) => kind === 'lesson');
  expect(lesson?.kind === 'lesson' && lesson.now.plan).toEqual(plan);

  const fresh = await open(browser!, { path: 'manifest.webmanifest', viewport: SCREENS.phone });
  await withoutPicture(fresh.context);
  await fresh.page.goto(address.replace('#', '?probe#'));
  // The player sees his own page first, in the same words; one button opens the sandbox with all of it.
  await fresh.page.locator('.player-task li').first().waitFor();
  expect(await fresh.page.locator('.player-task li').allInnerTexts()).toEqual(lines);
  for (const part of [plan.feel, ...plan.drills.map(({ name }) => name), plan.words, '13 Dec 2026', 'For Robin'])
    expect(await fresh.page.locator('.player').innerText()).toContain(part);
  expect((await look(fresh.page)).document.plan).toBeNull();
  await fresh.page.getByRole('button', { name: 'Open the desk' }).click();
  await expect.poll(async () => (await look(fresh.page)).document.plan).toEqual(plan);
  await fresh.context.close();
  const { errors, violations } = witness;
  expect([offOrigin(witness), errors, violations]).toEqual([[], [], []]);
});
