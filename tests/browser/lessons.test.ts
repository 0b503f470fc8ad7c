import { AxeBuilder } from '@axe-core/playwright';
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readFile } from '../../src/record/readFile';
import { launch, offOrigin, open, SCREENS, watch, appAddress, type Visit } from './support';

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const openBook = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^Lesson(s| book)$/ }).click();
  await page.getByRole('heading', { level: 2, name: 'Lesson book' }).waitFor();
  await page.locator('.lessons').waitFor();
};
const visit = async (options: Parameters<typeof open>[1] = {}): Promise<Visit> => {
  // What the worker does is looked at in offline.test.ts; here it would only cost time.
  const opened = await open(browser!, { path: '?probe', serviceWorkers: 'block', ...options });
  await openBook(opened.page);
  return opened;
};
const press = (page: Page, name: string | RegExp, exact = true) =>
  page
    .locator('.lessons')
    .getByRole('button', { name, ...(typeof name === 'string' ? { exact } : {}) })
    .click();

async function addPlayer(page: Page, name: string): Promise<void> {
  await page.getByLabel('New player, a nickname will do').fill(name);
  await press(page, 'Add');
}

/** What lies in the store, read behind the app's back. */
const inStore = (page: Page): Promise<{ id: string; kind: string; [field: string]: unknown }[]> =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('slantwise.lesson-book');
        opening.onerror = () => reject(new Error('no store'));
        opening.onsuccess = () => {
          const all = opening.result.transaction('records').objectStore('records').getAll();
          all.onsuccess = () => {
            resolve(all.result as never);
            opening.result.close();
          };
        };
      }),
  );
const download = async (page: Page, start: () => Promise<void>): Promise<{ name: string; text: string }> => {
  const [got] = await Promise.all([page.waitForEvent('download'), start()]);
  return { name: got.suggestedFilename(), text: readFileSync(await got.path(), 'utf8') };
};
const axe = async (page: Page): Promise<string[]> => {
  const { violations } = await new AxeBuilder({ page }).include('#drawer').include('.status').analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
};
const expectClean = ({ witness }: Visit): void => {
  expect(offOrigin(witness)).toEqual([]);
  expect(witness.violations).toEqual([]);
  expect(witness.errors).toEqual([]);
};

describe('the first time', () => {
  test('an example shows what the book is for; one tap removes it for good', async () => {
    const seen = await visit();
    const { page, context } = seen;
    await page.getByRole('button', { name: /Example: Juniper/ }).waitFor();
    await press(page, /Example: Juniper/);
    await page.getByText('An example of our own invention').waitFor();
    await press(page, 'Players');
    await press(page, 'Remove the example');
    await page.getByText('Nobody in the book yet.').waitFor();
    await expect.poll(() => inStore(page)).toEqual([]);
    await page.reload();
    await openBook(page);
    await page.getByText('Nobody in the book yet.').waitFor();
    expectClean(seen);
    await context.close();
  });
});

describe('a lesson', () => {
  test('is written as it is dialled, opens as it was left after a reload, and gives the desk back when closed', async () => {
    const seen = await visit();
    const { page, context } = seen;
    const flexion = (): Promise<number> =>
      page.evaluate(
        () =>
          (
            window as unknown as { slantwiseProbe: () => { document: { movements: { leadWristFlexionDeg: number } } } }
          ).slantwiseProbe().document.movements.leadWristFlexionDeg,
      );
    const slider = page.getByRole('slider', { name: /Lead wrist/ });
    await slider.fill('5');
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await page.getByText('Open: what you dial goes into this lesson.').waitFor();
    await slider.fill('-20');
    await page.getByLabel('Notes').fill('Cups it early.');
    await page.getByLabel('Drills, one a line').fill('Half swings\nStop at P5');
    await expect
      .poll(async () =>
        (await inStore(page)).find(({ kind, notes }) => kind === 'lesson' && notes === 'Cups it early.'),
      )
      .toMatchObject({ now: { movements: { leadWristFlexionDeg: -20 } }, drills: ['Half swings', 'Stop at P5'] });
    await page
      .getByText(/^Saved \d\d:\d\d\. No backup yet\.$/)
      .first()
      .waitFor();

    await page.reload();
    await expect.poll(flexion).toBe(-20);
    await page.getByRole('button', { name: 'Lesson open' }).click();
    await expect.poll(() => page.getByLabel('Notes').inputValue()).toBe('Cups it early.');
    await press(page, 'Close lesson');
    await expect.poll(flexion).toBe(5);
    await press(page, 'Open on the desk');
    await expect.poll(flexion).toBe(-20);
    expectClean(seen);
    await context.close();
  });

  test('takes what the coach saw, with his give or take, and shows it on the plot beside what was computed', async () => {
    const seen = await visit();
    const { page, context } = seen;
    await addPlayer(page, 'Robin');
    for (const [above, date] of [
      ['6', '2026-01-10'],
      ['2', '2026-02-10'],
    ]) {
      await press(page, 'New lesson today');
      const field = page.getByRole('group', { name: /^P5/ }).getByLabel('Seen');
      await field.fill(above);
      await field.press('Enter');
      const give = page.getByRole('group', { name: /^P5/ }).getByLabel('Give or take (±)');
      await give.fill('2');
      await give.press('Enter');
      await page.getByLabel('Date').fill(date);
      await press(page, 'Lead wrist');
      await press(page, 'Robin');
    }
    await press(page, 'Progress');
    await page.getByText('Moved 4 cm toward the band; your own reading error is 3 cm.').waitFor();
    await page.getByText('Nothing seen is noted yet. Note what you see in each lesson.').waitFor();
    const plot = page.getByRole('img', { name: /Lead arm parallel \(P5\) over 2 lessons/ });
    expect(await plot.locator('.plot-seen').count()).toBe(2);
    expect(await plot.locator('.plot-computed').count()).toBe(2);
    expect(await plot.locator('.plot-give').count()).toBe(2);
    const row = page.getByRole('row', { name: /10 Jan 2026/ });
    expect(await row.innerText()).toMatch(/seen 6 cm above ± 2 cm; computed .*/);
    expectClean(seen);
    await context.close();
  });

  test('progress prints alone on its sheet, drawing and numbers', async () => {
    const { page, context } = await visit();
    await press(page, /Example: Juniper/);
    await press(page, 'Progress');
    await page.evaluate(() => {
      window.print = () => window.dispatchEvent(new Event('printed'));
    });
    await press(page, 'Print');
    await page.emulateMedia({ media: 'print' });
    const visible = (selector: string) => page.locator(selector).first().isVisible();
    expect(await Promise.all(['.progress-plot', '.progress-numbers', '.progress-title'].map(visible))).toEqual([
      true,
      true,
      true,
    ]);
    expect(await Promise.all(['.bar', '.plates', '.stage-place', '.drawer-head', '.crumbs'].map(visible))).toEqual([false, false, false, false, false]); // prettier-ignore
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    await context.close();
  });
});

describe('players', () => {
  test('are renamed, duplicated, archived, searched, deleted with undo, and their names are text', async () => {
    const seen = await visit();
    const { page, context } = seen;
    const names = (): Promise<string[]> =>
      page.locator('.lesson-list[aria-label=Players] .lesson-name').allInnerTexts();
    const nasty = '<img src=x onerror="document.title=1"> & \u202eBob';
    await addPlayer(page, nasty);
    expect(await page.locator('.crumb-here').innerText()).toBe('<img src=x onerror="document.title=1"> & Bob');
    await page.getByText('Name, body, clubs, notes').click();
    await page.getByLabel('Name', { exact: true }).fill('Zaunkönig');
    await press(page, 'Duplicate');
    await page.getByText('Zaunkönig 2').first().waitFor();
    await press(page, 'Players');
    await expect.poll(names).toEqual(['Example: Juniper', 'Zaunkönig', 'Zaunkönig 2']);
    await press(page, /Zaunkönig 2/);
    await press(page, 'Archive');
    await press(page, 'Players');
    await expect.poll(names).toEqual(['Example: Juniper', 'Zaunkönig']);
    await press(page, 'Show archived');
    await expect.poll(async () => (await names()).length).toBe(3);
    await press(page, /^Zaunkönig(?! 2)/);
    await press(page, 'Delete');
    await expect.poll(names).toEqual(['Example: Juniper', 'Zaunkönig 2']);
    await press(page, 'Undo: Delete Zaunkönig');
    await expect.poll(async () => (await names()).length).toBe(3);
    for (let more = 0; more < 12; more++) {
      await addPlayer(page, `Player ${more}`);
      await press(page, 'Players');
    }
    await page.getByLabel('Search names, notes and drills').fill('zaunkonig');
    await expect.poll(names).toEqual(['Zaunkönig', 'Zaunkönig 2']);
    await page.getByLabel('Search names, notes and drills').fill('too flat'); // a word from a lesson of the example
    await expect.poll(names).toEqual(['Example: Juniper']);
    expect(await page.title()).toBe('Slantwise');
    expectClean(seen);
    await context.close();
  });

  test('are wiped in two taps, and the store is read back', async () => {
    const { page, context } = await visit();
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await page.getByLabel('Notes').fill('A secret of Robin');
    await expect.poll(async () => JSON.stringify(await inStore(page))).toContain('A secret of Robin');
    await press(page, 'Robin');
    await press(page, 'Wipe from this device …');
    await press(page, 'Wipe for good');
    await page.getByText('Robin: 2 records wiped. Read back: nothing is left here.').waitFor();
    expect(JSON.stringify(await inStore(page))).not.toContain('Robin');
    await context.close();
  });
});

describe('backup and hand-over', () => {
  test('a backup opens on another device after saying what it will do, and opening it twice adds nothing', async () => {
    const { page, context } = await visit();
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await press(page, 'Players');
    await press(page, 'Backup and hand-over');
    const backup = await download(page, () => press(page, 'Save a backup'));
    expect(backup.name).toMatch(/^slantwise-lesson-book-\d{4}-\d\d-\d\d\.json$/);
    await page.getByText('Backup less than a day old.').first().waitFor();
    await context.close();

    const other = await visit();
    await press(other.page, 'Remove the example');
    await expect.poll(() => inStore(other.page)).toEqual([]);
    await press(other.page, 'Backup and hand-over');
    const choose = (text: string): Promise<void> =>
      other.page
        .getByLabel('Lesson book file')
        .setInputFiles({ name: backup.name, mimeType: 'application/json', buffer: Buffer.from(text) });
    await choose(backup.text);
    await other.page.getByText('Adds 2 players and 5 lessons.').waitFor();
    expect(await inStore(other.page)).toEqual([]);
    await press(other.page, 'Take over');
    await expect.poll(async () => (await inStore(other.page)).length).toBe(7);
    await choose(backup.text);
    await other.page.getByText('7 records are here already.').waitFor();
    await press(other.page, 'Close');
    await choose(backup.text.replace('"version":1', '"version":9'));
    await other.page.getByText(/A newer Slantwise wrote this file/).waitFor();
    await choose('{"not":"ours"}');
    await other.page.getByText(/no lesson book of Slantwise/).waitFor();
    const lines = backup.text.split('\n');
    await choose([...lines.slice(0, 1), lines[1].slice(0, 80), ...lines.slice(2)].join('\n'));
    await other.page.getByText('1 of 2 players recovered.').waitFor();
    expectClean(other);
    await other.context.close();
  });

  test('one player is handed over as a file of his own', async () => {
    const { page, context } = await visit();
    await addPlayer(page, 'Robin O.');
    const file = await download(page, () => press(page, 'Hand over as a file'));
    expect(file.name).toMatch(/^slantwise-robin-o-\d/);
    const reading = readFile(file.text);
    expect('records' in reading && reading.records.map((record) => 'name' in record && record.name)).toEqual([
      'Robin O.',
    ]);
    await context.close();
  });
});

describe('what leaves this device', () => {
  test('nothing: requests, lock, storage and computation are proven on the spot', async () => {
    const seen = await visit();
    const { page, context } = seen;
    await press(page, 'What leaves this device');
    await page.getByText('requests, every one to this address').waitFor();
    expect(await page.locator('.proof-word').allInnerTexts()).toEqual([
      expect.stringMatching(/^\d+ requests, every one to this address$/),
      'The browser blocks every other address',
      'Written, read back and removed again',
      '33 of 33 stored reference numbers met',
    ]);
    expect(await page.locator('.proof-word[data-holds=false]').count()).toBe(0);
    expectClean(seen);
    await context.close();
  });
});

test('when a part of the program crashes, everything can still be saved, and the file opens', async () => {
  const { page, context } = await visit();
  await addPlayer(page, 'Robin');
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.evaluate(() => {
    HTMLElement.prototype.focus = () => {
      throw new Error('broken on purpose');
    };
  });
  await page.getByRole('button', { name: 'Lesson book' }).click();
  await page.getByRole('heading', { name: 'Something broke' }).waitFor();
  const { name, text } = await download(page, () => page.getByRole('button', { name: 'Save everything' }).click());
  expect(name).toMatch(/^slantwise-everything-/);
  const reading = readFile(text);
  expect(
    'records' in reading &&
      reading.sound &&
      reading.records.some((record) => 'name' in record && record.name === 'Robin'),
  ).toBe(true);
  expect(JSON.parse(text)).toMatchObject({ alongside: { desk: expect.stringContaining('"version":1') as string } });
  await context.close();
});

for (const name of ['tablet', 'phone'] as const) {
  test(`a write that fails is said in words within 1 s, whatever is open, and a copy can be saved (${name})`, async () => {
    const { page, context } = await visit({ viewport: SCREENS[name] });
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await expect.poll(async () => (await inStore(page)).some(({ kind, id }) => kind === 'lesson' && !id.startsWith('example'))).toBe(true); // prettier-ignore
    const waitedMs = await page.evaluate(async () => {
      IDBDatabase.prototype.transaction = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
      const field = [...document.querySelectorAll('textarea')].at(-1)!;
      Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')!.set!.call(field, 'not lost');
      const start = performance.now();
      field.dispatchEvent(new Event('input', { bubbles: true }));
      const said = (): boolean =>
        document.querySelector('.save-status')!.textContent.includes('Not saved. The device is full.');
      while (!said() && performance.now() - start < 5000) await new Promise((resolve) => setTimeout(resolve, 20));
      return performance.now() - start;
    });
    expect(waitedMs).toBeLessThan(1000);
    const offer = page.getByRole('button', { name: 'Save a copy' });
    await offer.waitFor();
    const { text } = await download(page, () => offer.click());
    const reading = readFile(text);
    expect('records' in reading && reading.records.some((record) => record.kind === 'lesson' && record.notes === 'not lost')).toBe(true); // prettier-ignore
    await context.close();
  });
}

test('of two tabs one writes; the other reads along, takes over when asked, and the first steps back', async () => {
  const first = await visit();
  await addPlayer(first.page, 'Robin');
  const page = await first.context.newPage();
  const witness = await watch(page);
  await page.goto(`${appAddress()}?probe`);
  await openBook(page);
  await page.getByText('Another tab writes the lesson book. Here you can read.').waitFor();
  await page.getByRole('button', { name: /Robin/ }).waitFor();
  await press(first.page, 'Players');
  await addPlayer(first.page, 'Wren');
  await page.getByRole('button', { name: /Wren/ }).waitFor();
  await press(page, 'Write here');
  await page.getByLabel('New player, a nickname will do').waitFor();
  await first.page.getByText('Another tab writes the lesson book. Here you can read.').waitFor();
  await addPlayer(page, 'Heron');
  await expect.poll(async () => (await inStore(page)).filter(({ kind }) => kind === 'player').length).toBe(4);
  expect(witness.errors).toEqual([]);
  expectClean(first);
  await first.context.close();
});

for (const [name, viewport] of Object.entries(SCREENS)) {
  test(`every page of the book is accessible, its targets 48 px, nothing cut (${name}), light and dark`, async () => {
    const { page, context } = await visit({ viewport });
    const look = async (): Promise<void> => {
      // The checker sees structure and colour, which the two middle sizes share with these.
      if (name === 'tablet' || name === 'phone') expect(await axe(page)).toEqual([]);
      const small = await page.locator('.lessons').evaluate((book) =>
        [...book.querySelectorAll('button, input:not(.unseen, [type=radio]), textarea, summary, .choice-options label')]
          .filter((target) => target.checkVisibility() && (target.getBoundingClientRect().height < 46 || target.getBoundingClientRect().width < 46))
          .map((target) => target.outerHTML.slice(0, 80)),
      ); // prettier-ignore
      expect(small).toEqual([]);
      expect(await page.locator('.drawer-body').evaluate((body) => body.scrollWidth - body.clientWidth)).toBe(0);
    };
    await look();
    await press(page, /Example: Juniper/);
    await page
      .locator('.lessons details > summary')
      .evaluateAll((all) => all.forEach((one) => (one as HTMLElement).click()));
    await look();
    await press(page, 'Progress');
    await look();
    await page.evaluate(() => (document.documentElement.dataset['board'] = 'dark'));
    await look();
    await press(page, 'Example: Juniper');
    await press(page, /23 Feb 2026/);
    await look();
    await page.evaluate(() => (document.documentElement.dataset['board'] = 'light'));
    await press(page, 'Players');
    await press(page, 'Backup and hand-over');
    await look();
    await press(page, 'Players');
    await press(page, 'What leaves this device');
    await page.getByText('stored reference numbers met').waitFor();
    await look();
    await context.close();
  });
}
