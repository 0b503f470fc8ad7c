import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readFile } from '../../src/record/file/readFile';
import { DOCUMENT_VERSION } from '../../src/store/document/document';
import { findFaults } from './axe';
import { drawn, openDrawer, settled } from './deskPage';
import { addPlayer, download, inStore, openBook, openBookPage, press, startAfresh } from './lessonsPage';
import { appAddress, launch, offOrigin, SCREENS, watch, type Witness } from './support';

let browser: Browser | undefined;
let page: Page;
let witness: Witness;
beforeAll(async () => {
  browser = await launch();
  ({ page, witness } = await openBookPage(browser));
});
afterAll(() => browser?.close());

beforeEach(() => startAfresh(page));
afterEach(() => {
  const { errors, violations } = witness;
  expect([offOrigin(witness), errors.splice(0), violations.splice(0)]).toEqual([[], [], []]);
});

const lessonList = () => page.locator('.lesson-list[aria-label=Players] .lesson-name');
const names = (): Promise<string[]> => lessonList().allInnerTexts();

describe('the first time', () => {
  test('an example shows what the book is for; one tap removes it for good', async () => {
    await press(page, /Example: Juniper/);
    await page.getByText('An example of our own invention').waitFor();
    await press(page, 'Players');
    await press(page, 'Remove the example');
    await page.getByText('Nobody in the book yet.').waitFor();
    await expect.poll(() => inStore(page)).toEqual([]);
    await page.reload();
    await openBook(page);
    await page.getByText('Nobody in the book yet.').waitFor();
  });
});

describe('a lesson', () => {
  test('is written as it is dialled, opens as it was left after a reload, and gives the desk back when closed', async () => {
    type Probed = { slantwiseProbe: () => { document: { movements: { leadWristFlexionDeg: number } } } };
    const flexion = (): Promise<number> =>
      page.evaluate(() => (window as unknown as Probed).slantwiseProbe().document.movements.leadWristFlexionDeg);
    const slider = page.getByRole('slider', { name: /Lead wrist/ });
    await slider.fill('5');
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await page.getByText('Open: what you dial goes into this lesson.').waitFor();
    await slider.fill('-20');
    await page.getByRole('textbox', { name: 'Notes' }).fill('Cups it early.');
    const written = async () => (await inStore(page)).find(({ notes }) => notes === 'Cups it early.');
    await expect.poll(written).toMatchObject({ now: { movements: { leadWristFlexionDeg: -20 } } });
    await page
      .getByText(/^Saved \d\d:\d\d\. No backup yet\.$/)
      .first()
      .waitFor();

    await page.reload();
    await expect.poll(flexion).toBe(-20);
    await page.getByRole('button', { name: 'Lesson open' }).click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Notes' }).inputValue()).toBe('Cups it early.');
    await press(page, 'Close lesson');
    await expect.poll(flexion).toBe(5);
    await press(page, 'Open on the desk');
    await expect.poll(flexion).toBe(-20);
  });

  test('takes what the coach saw, with his give or take, and shows it on the plot beside what was computed', async () => {
    await addPlayer(page, 'Robin');
    for (const [above, date] of [
      ['6', '2026-01-10'],
      ['2', '2026-02-10'],
    ]) {
      await press(page, 'New lesson today');
      const p5 = page.getByRole('group', { name: /^Lead arm parallel:/ });
      await p5.getByLabel('Seen').fill(above);
      await p5.getByLabel('Seen').press('Enter');
      await p5.getByLabel('Margin').fill('2');
      await p5.getByLabel('Margin').press('Enter');
      await page.getByLabel('Date').fill(date);
      await press(page, 'Robin');
    }
    await press(page, 'Progress');
    await page.getByText('Lead arm parallel: moved 4 cm toward the band; your own reading error is 3 cm.').waitFor();
    await page.getByText('Shaft parallel: nothing seen is noted yet. Note what you see in each lesson.').waitFor();
    const plot = page.getByRole('img', { name: /Both checkpoints over 2 lessons/ });
    for (const mark of ['.plot-seen', '.plot-give'])
      expect(await plot.locator(`[data-checkpoint=leadArmParallel] ${mark}`).count()).toBe(2);
    expect(await page.getByRole('row', { name: /10 Jan 2026/ }).innerText()).toMatch(
      /seen 6 cm above ± 2 cm; computed .*/,
    );

    // With a camera placed the number that was seen is another than the one that counts.
    await press(page, 'Robin');
    await press(page, /10 Jan 2026/);
    await press(page, 'Open on the desk');
    await openDrawer(page, 'setUp/Camera');
    const camera = page.getByRole('region', { name: 'Camera' });
    await camera.getByText('Its place in numbers').click();
    await camera.getByLabel('Right of the hand line').fill('60');
    await camera.getByLabel('Right of the hand line').press('Enter');
    await openDrawer(page, 'seen');
    await page.locator('.explanation').first().waitFor();
    const said = (): Promise<string[]> =>
      page
        .locator('#drawer')
        .locator('.seen-honest, .seen-hold, .explanation-name, .explanation .fine, .cause-tell')
        .allInnerTexts();
    const onDesk = await said();
    expect(onDesk[0]).toMatch(/^You saw 6 cm above. Without your camera: \d+ cm (above|below) ± \d+ cm\.$/);
    await openDrawer(page, 'lessons');
    await press(page, 'Close lesson');
    await page.locator('.lessons .explanation').first().waitFor();
    expect(await said()).toEqual(onDesk);
    expect(await page.locator('.explanations button').count()).toBe(0);
    expect(await findFaults(page, ['#drawer'])).toEqual([]);
  });

  test('progress prints alone on its sheet, drawing and numbers', async () => {
    await press(page, /Example: Juniper/);
    await press(page, 'Progress');
    await page.evaluate(() => {
      window.print = () => window.dispatchEvent(new Event('printed'));
    });
    await press(page, 'Print');
    await page.emulateMedia({ media: 'print' });
    const visible = (selectors: readonly string[]) =>
      Promise.all(selectors.map((selector) => page.locator(selector).first().isVisible()));
    const [there, away] = await Promise.all([
      visible(['.progress-plot', '.progress-numbers', '.progress-title']),
      visible(['.bar', '.plates', '.stage-place', '.drawer-head', '.crumbs']),
    ]);
    const pdf = await page.pdf({ format: 'A4' });
    await page.emulateMedia({ media: null });
    expect([there, away]).toEqual([there.map(() => true), away.map(() => false)]);
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  });
});

describe('players', () => {
  test('are renamed, duplicated, archived, searched, deleted with undo, and their names are text', async () => {
    await addPlayer(page, '<img src=x onerror="document.title=1"> & \u202eBob');
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
    for (let more = 0; more < 6; more++) {
      await addPlayer(page, `Player ${more}`);
      await press(page, 'Players');
    }
    await page.getByLabel('Search names, notes and drills').fill('zaunkonig');
    await expect.poll(names).toEqual(['Zaunkönig', 'Zaunkönig 2']);
    await page.getByLabel('Search names, notes and drills').fill('too flat'); // a word from a lesson of the example
    await expect.poll(names).toEqual(['Example: Juniper']);
    expect(await page.title()).toBe('Slantwise');
  });

  test('keep swings, which are renamed, laid out, deleted and brought back', async () => {
    await addPlayer(page, 'Robin');
    await page.getByText('Saved swings').click();
    await page.getByLabel('Keep the swing on the desk as').fill('Good one');
    await press(page, 'Keep');
    await press(page, 'Rename Good one');
    await page.getByLabel('New name for Good one').fill('Best so far');
    await page.getByLabel('New name for Good one').press('Enter');
    await press(page, 'Lay out Best so far');
    await press(page, 'Delete Best so far');
    await press(page, 'Undo: Delete Best so far');
    await press(page, 'Undo: Rename swing');
    await page.locator('.lesson-swing').getByText('Good one').waitFor();
    const kept = async () => (await inStore(page)).filter(({ kind }) => kind === 'swing').map((swing) => swing['name']);
    await expect.poll(kept).toEqual(['Good one']);
  });

  test('are wiped in two taps, and the store is read back', async () => {
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await page.getByRole('textbox', { name: 'Notes' }).fill('A secret of Robin');
    await expect.poll(async () => JSON.stringify(await inStore(page))).toContain('A secret of Robin');
    await press(page, 'Robin');
    await press(page, 'Delete permanently …');
    await press(page, 'Delete permanently');
    await page.getByText('Robin: 2 records wiped. Read back: nothing is left here.').waitFor();
    expect(JSON.stringify(await inStore(page))).not.toContain('Robin');
  });
});

describe('backup and hand-over', () => {
  test('a backup opens on another device after saying what it will do, and opening it twice adds nothing', async () => {
    await addPlayer(page, 'Robin');
    await press(page, 'New lesson today');
    await press(page, 'Players');
    await press(page, 'Backup and hand-over');
    const backup = await download(page, () => press(page, 'Save a backup'));
    expect(backup.name).toMatch(/^slantwise-lesson-book-\d{4}-\d\d-\d\d\.json$/);
    await page.getByText('Backup less than a day old.').first().waitFor();

    await startAfresh(page);
    await press(page, 'Remove the example');
    await expect.poll(() => inStore(page)).toEqual([]);
    await press(page, 'Backup and hand-over');
    const choose = (text: string): Promise<void> =>
      page
        .getByLabel('Lesson book file')
        .setInputFiles({ name: backup.name, mimeType: 'application/json', buffer: Buffer.from(text) });
    await choose(backup.text);
    await page.getByText('Adds 2 players and 5 lessons.').waitFor();
    expect(await inStore(page)).toEqual([]);
    await press(page, 'Take over');
    await expect.poll(async () => (await inStore(page)).length).toBe(7);
    await choose(backup.text);
    await page.getByText('7 records are here already.').waitFor();
    await press(page, 'Close');
    await choose(backup.text.replace('"version":1', '"version":9'));
    await page.getByText(/A newer Slantwise wrote this file/).waitFor();
    await choose('{"not":"ours"}');
    await page.getByText(/no lesson book of Slantwise/).waitFor();
    const lines = backup.text.split('\n');
    await choose([...lines.slice(0, 1), lines[1].slice(0, 80), ...lines.slice(2)].join('\n'));
    await page.getByText('1 of 2 players recovered.').waitFor();

    const everything = readFileSync(join(import.meta.dirname, '../fixtures/everything-v3.json'), 'utf8');
    const kept = (): Promise<string | null> => page.evaluate(() => localStorage.getItem('slantwise.own-look'));
    // A picture whose pixels are missing: its header is sound.
    await choose(everything.replace(/(data:image\/png;base64,.{64})[^"\\]*/, '$1'));
    await press(page, 'Take colour and mark');
    await page.getByText('The mark in this file is damaged. Choose your picture again under Show and send.').waitFor();
    expect(await kept()).toBeNull();
    await choose(everything);
    await press(page, 'Take colour and mark');
    await page.getByText('Your own colour and mark are here as in the file.').waitFor();
    const look = JSON.parse((await kept())!) as { readonly colour: string; readonly mark: string };
    expect(look.colour).toBe('#0b3d91');
    const { width, height } = PNG.sync.read(Buffer.from(look.mark.split(',')[1], 'base64'));
    expect([width, height]).toEqual([12, 8]);
  });

  test('one player is handed over as a file of his own', async () => {
    await addPlayer(page, 'Robin O.');
    const file = await download(page, () => press(page, 'Export player'));
    expect(file.name).toMatch(/^slantwise-robin-o-\d/);
    const reading = readFile(file.text);
    expect('records' in reading && reading.records.map((record) => 'name' in record && record.name)).toEqual([
      'Robin O.',
    ]);
  });
});

test('what leaves this device: nothing; requests, lock, storage and computation are proven on the spot', async () => {
  await press(page, 'What leaves this device');
  await page.getByText('requests, every one to this address').waitFor();
  expect(await page.locator('.proof-word').allInnerTexts()).toEqual([
    expect.stringMatching(/^\d+ requests, every one to this address$/),
    'The browser blocks every other address',
    'Written, read back and removed again',
    '33 of 33 stored reference numbers met',
  ]);
  expect(await page.locator('.proof-word[data-holds=false]').count()).toBe(0);
});

test('when a part of the program crashes, everything can still be saved, and the file opens', async () => {
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
  if ('refused' in reading) throw new Error(reading.refused);
  expect(reading.sound).toBe(true);
  expect(reading.records.map((record) => 'name' in record && record.name)).toContain('Robin');
  const desk = expect.stringContaining(`"version":${DOCUMENT_VERSION}`) as string;
  expect(JSON.parse(text)).toMatchObject({ alongside: { desk } });
  expect(witness.errors.splice(0).join()).toContain('broken on purpose');
});

test('when the program cannot even start, the book can still be saved', async () => {
  await addPlayer(page, 'Robin');
  await expect.poll(async () => (await inStore(page)).some((record) => record['name'] === 'Robin')).toBe(true);
  const other = await page.context().newPage();
  await other.addInitScript(() => {
    Storage.prototype.getItem = () => {
      throw new DOMException('broken on purpose', 'SecurityError');
    };
  });
  await other.goto(appAddress());
  await other.getByRole('heading', { name: 'Something broke' }).waitFor();
  const { text } = await download(other, () => other.getByRole('button', { name: 'Save everything' }).click());
  const reading = readFile(text);
  if ('refused' in reading) throw new Error(reading.refused);
  expect(reading.records.map((record) => 'name' in record && record.name)).toContain('Robin');
  await other.close();
});

/** What a store can do wrong, done to the browser's own; each answers how to take it back. Runs in the page. */
function breakStore(fault: string): void {
  const [database, store] = [IDBDatabase.prototype, IDBObjectStore.prototype];
  const transaction = Reflect.get<IDBDatabase, 'transaction'>(database, 'transaction');
  const put = Reflect.get<IDBObjectStore, 'put'>(store, 'put');
  Object.assign(globalThis, {
    mendStore: () => Object.assign(database, { transaction }) && Object.assign(store, { put }),
  });
  const callOff = ({ transaction: under }: IDBObjectStore): void => {
    try {
      under.abort();
    } catch {
      // It has been called off already.
    }
  };
  const refuse = (name: string) => (): never => {
    throw new DOMException('on purpose', name);
  };
  if (fault === 'quota') database.transaction = refuse('QuotaExceededError');
  if (fault === 'connection lost') database.transaction = refuse('InvalidStateError');
  if (fault === 'unknown') store.put = refuse('UnknownError');
  if (fault === 'never settling')
    store.put = () =>
      Object.create(IDBRequest.prototype, { addEventListener: { value: () => {} } }) as IDBRequest<IDBValidKey>;
  // Called off from outside, a transaction ends with null for an error.
  if (fault === 'null')
    store.put = function (...args) {
      queueMicrotask(() => callOff(this));
      return put.apply(this, args);
    };
  if (fault === 'abort')
    store.put = function (...args) {
      const request = put.apply(this, args);
      request.addEventListener('success', () => callOff(this));
      return request;
    };
}
const FAULTS = ['quota', 'abort', 'unknown', 'null', 'never settling', 'connection lost'] as const;

test(`a write that fails is said in words over whatever is open, a copy needs no store, and it is caught up later (${FAULTS.join(', ')})`, async () => {
  await startAfresh(page, 'phone');
  await addPlayer(page, 'Robin');
  await press(page, 'New lesson today');
  const notes = page.getByRole('textbox', { name: 'Notes' });
  const kept = async (text: string): Promise<boolean> =>
    (await inStore(page)).some((record) => record['notes'] === text);
  const said = page.locator('.save-status output');
  for (const fault of FAULTS) {
    await page.evaluate(breakStore, fault);
    const text = `not lost: ${fault}`;
    await notes.fill(text);
    await page.getByRole('button', { name: 'Save a copy' }).waitFor();
    expect(await said.innerText()).toBe(
      { quota: 'Not saved. The device is full.', 'never settling': 'Not saved. The device does not answer.' }[
        fault as string
      ] ?? 'Not saved. The device refused to write.',
    );
    const copy = await download(page, () => page.getByRole('button', { name: 'Save a copy' }).click());
    const reading = readFile(copy.text);
    expect('records' in reading && reading.records.map((record) => 'notes' in record && record.notes)).toContain(text);
    if (fault === 'connection lost') {
      await page.setViewportSize(SCREENS.tablet);
      expect(await said.isVisible()).toBe(true);
    }
    await page.evaluate(() => (globalThis as unknown as { mendStore: () => void }).mendStore());
    await expect.poll(() => kept(text), { timeout: 20_000 }).toBe(true);
    await page.locator('.save-status[data-alarm=false]').waitFor({ state: 'attached' });
  }
});

test('of two tabs one writes; the other reads along, takes over when asked, and the first steps back', async () => {
  await addPlayer(page, 'Robin');
  const other = await page.context().newPage();
  const otherWitness = await watch(other);
  await other.goto(`${appAddress()}?probe`);
  await openBook(other);
  await other.getByText('Another tab writes the lesson book. Here you can read.').waitFor();
  await other.getByRole('button', { name: /Robin/ }).waitFor();
  await press(page, 'Players');
  await addPlayer(page, 'Wren');
  await other.getByRole('button', { name: /Wren/ }).waitFor();
  await press(other, 'Write here');
  await other.getByLabel('New player, a nickname will do').waitFor();
  await page.getByText('Another tab writes the lesson book. Here you can read.').waitFor();
  await addPlayer(other, 'Heron');
  await expect.poll(async () => (await inStore(other)).filter(({ kind }) => kind === 'player').length).toBe(4);
  expect(otherWitness.errors).toEqual([]);
  await other.close();
});

describe('every page of the book', () => {
  /** One after the other: a page, and how to get there from the one before. */
  const PAGES: readonly (readonly [string, () => Promise<unknown>])[] = [
    ['the players', () => Promise.resolve()],
    [
      'a player, everything unfolded',
      async () => {
        await press(page, /Example: Juniper/);
        for (const summary of await page.locator('.lessons details > summary').all()) await summary.click();
      },
    ],
    ['progress', () => press(page, 'Progress')],
    [
      'a lesson',
      async () => {
        await press(page, 'Example: Juniper');
        await press(page, /23 Feb 2026/);
      },
    ],
    [
      'backup',
      async () => {
        await press(page, 'Players');
        await press(page, 'Backup and hand-over');
      },
    ],
    [
      'what leaves this device',
      async () => {
        await press(page, 'Players');
        await press(page, 'What leaves this device');
        await page.getByText('stored reference numbers met').waitFor();
      },
    ],
  ];

  const findSmall = (): Promise<string[]> =>
    page.locator('.lessons').evaluate((book) => {
      const body = book.closest('.drawer-body')!;
      const targets = 'button, input:not(.unseen, [type=radio]), textarea, summary, .choice-options label';
      const small = [...book.querySelectorAll(targets)].filter((target) => {
        const { width, height } = target.getBoundingClientRect();
        return target.checkVisibility() && (height < 46 || width < 46);
      });
      const cut = body.scrollWidth > body.clientWidth ? [`cut by ${body.scrollWidth - body.clientWidth} px`] : [];
      return [...cut, ...small.map((target) => target.outerHTML.slice(0, 80))];
    });
  const findBroken = (): Promise<string[]> => findFaults(page, ['#drawer', '.status']);

  test('is accessible, light and dark, its targets 48 px, nothing cut, on all four screens', async () => {
    const wrong: string[] = [];
    const note = (where: string, found: readonly string[]): void =>
      void wrong.push(...found.map((what) => `${where}: ${what}`));
    /** What is still there when everything has come to rest after a change of size. */
    const atRest = async (find: () => Promise<readonly string[]>): Promise<readonly string[]> => {
      let found = await find();
      for (let look = 0; look < 5 && found.length > 0; look++) {
        await drawn(page);
        await settled(page);
        found = await find();
      }
      return found;
    };
    for (const [name, reach] of PAGES) {
      await reach();
      for (const [size, viewport] of Object.entries(SCREENS)) {
        await page.setViewportSize(viewport);
        note(`${name}, ${size}`, await atRest(findSmall));
        // The checker sees structure and colour, which the two middle sizes share with these.
        if (size === 'phone') note(`${name}, ${size}`, await atRest(findBroken));
      }
      await page.evaluate(() => (document.documentElement.dataset['board'] = 'dark'));
      await page.setViewportSize(SCREENS.tablet);
      note(`${name}, tablet, dark`, await atRest(findBroken));
      await page.evaluate(() => (document.documentElement.dataset['board'] = 'light'));
    }
    expect(wrong).toEqual([]);
  });
});
