import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { PNG } from 'pngjs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { validateBytes } from 'gltf-validator';
import { readEmbedded } from '../../src/export/files/embedded';
import { toText } from '../../src/export/link/link';
import { withPngText } from '../../src/export/picture/png';
import { CAUTIONS } from '../../src/words';
import { isServerAway } from './offlineMode';
import { findFaults } from './axe';
import { dropFile, makeByTouch, openClip, type Saved } from './clipPage';
import { STILL_DIALLED } from '../../src/store/document/document';
import { draftPlan } from '../../src/store/plan/draftPlan';
import { DRAW_NOTHING, DRAW_NOTHING_ON_PAGE, exaggerate, look, openDesk, openDrawer, ready } from './deskPage';
import { appAddress, launch, offOrigin, open, type Visit, type Witness } from './support';

let browser: Browser | undefined;
let page: Page;
let context: BrowserContext;
let witness: Witness;

beforeAll(async () => {
  browser = await launch();
  // The smallest window that lays the desk out as on a tablet: a still of it is sixteen times as much to paint.
  ({ page, context, witness } = await openDesk(browser, {
    viewport: { width: 1024, height: 700 },
    hasTouch: true,
    init: [DRAW_NOTHING_ON_PAGE],
  }));
  await page.getByRole('button', { name: 'Typical swings' }).first().tap();
  await page.getByRole('button', { name: 'Cupped wrist' }).tap();
  await openDrawer(page, 'plan');
  await page.getByRole('button', { name: 'Lead wrist only' }).tap();
  await page.getByRole('button', { name: 'Choose this plan' }).tap();
  await openClip(page);
});
afterAll(async () => {
  await context?.close();
  await browser?.close();
});

const flexion = async (): Promise<number> => (await look(page)).document.movements.leadWristFlexionDeg;

/** Whether what stands in the middle of the first such element is a part of it. */
const isInSight = (on: Page, selector: string): Promise<boolean> =>
  on
    .locator(selector)
    .first()
    .evaluate((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      return element.contains(document.elementFromPoint(x + width / 2, y + height / 2));
    });

/** A plan came with it: the player's page shows first, and leaves the desk as it is. */
async function openOnDesk(): Promise<void> {
  await page.locator('.player-verdicts').nth(1).waitFor();
  expect(await flexion()).toBe(0);
  await page.getByRole('button', { name: 'Open the desk' }).click();
  await expect.poll(flexion).toBe(-20);
}

async function reopens(file: Saved): Promise<void> {
  await page.getByRole('button', { name: 'Reset all' }).first().click();
  expect(await flexion()).toBe(0);
  await dropFile(page, file);
  await openOnDesk();
}

test('the drawer has no finding of axe', async () => {
  expect(await findFaults(page, ['#drawer'])).toEqual([]);
});

test('no choice of the form is cut off, on a tablet or on a phone', async () => {
  const cut = (): Promise<string[]> =>
    page.evaluate(() => {
      const pen = document.createElement('canvas').getContext('2d')!;
      return [...document.querySelectorAll<HTMLSelectElement>('.showing select')].flatMap((select) => {
        const style = getComputedStyle(select);
        pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
        const room = select.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight);
        return [...select.options].map(({ text }) => text).filter((text) => pen.measureText(text).width > room);
      });
    });
  expect(await cut()).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.locator('.showing select').first().isVisible()).toBe(true);
  expect(await cut()).toEqual([]);
  await page.setViewportSize({ width: 1024, height: 700 });
});

test('while the desk is exaggerated the drawer says that files are made of the swing as it is', async () => {
  const note = page.getByText('show the swing as it is, not exaggerated');
  expect(await note.count()).toBe(0);
  await exaggerate(page);
  await note.waitFor();
  await exaggerate(page);
  expect(await note.count()).toBe(0);
});

describe('still', () => {
  test('a still is four times the picture on screen, is read by another library, and opens again', async () => {
    const size = await page.evaluate(() => {
      const { clientWidth, clientHeight } = document.querySelector('.stage-picture')!;
      return { clientWidth, clientHeight };
    });
    const file = await makeByTouch(page, 'Still, four times');
    const png = PNG.sync.read(file.bytes, { checkCRC: true });
    expect(png.width).toBe(size.clientWidth * 4);
    expect(png.height).toBe((size.clientHeight + 64) * 4);
    expect(file.said).toContain(`PNG, ${png.width} × ${png.height}`);
    // Paper in the corner, where it is least lit, and a figure: far more than one colour.
    const corner = [0xf0, 0xe8, 0xd6];
    expect(Math.max(...corner.map((byte, i) => Math.abs(png.data[i] - byte)))).toBeLessThan(6);
    const colours = new Set<number>();
    for (let i = 0; i < png.data.length; i += 4 * 101) colours.add(png.data.readUIntBE(i, 3));
    expect(colours.size).toBeGreaterThan(500);
    await reopens(file);
  });

  test('a still with numbers has both checkpoints on the body and the coach\u2019s own mark, and carries the swing', async () => {
    // A mark of one green, with a word hidden in its file.
    const mark = new PNG({ width: 900, height: 300 });
    for (let i = 0; i < mark.data.length; i += 4) mark.data.set([0, 170, 85, 255], i);
    const buffer = Buffer.from(withPngText(new Uint8Array(PNG.sync.write(mark)), 'Comment', 'taken at 51.5N 0.1W'));
    const kept = (): Promise<string | null> => page.evaluate(() => localStorage.getItem('slantwise.own-look'));
    const chooses = page.getByLabel(/^Choose (a|another) mark$/);
    for (const [name, bytes, words] of [
      ['drawn.svg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'This is no PNG, JPEG or WebP picture.'],
      ['cut.png', buffer.subarray(0, 200), 'This picture is damaged'],
    ] as const) {
      await chooses.setInputFiles({ name, mimeType: 'image/png', buffer: bytes });
      await page.locator('.own-look [role=alert]').getByText(words).waitFor();
      expect(await kept()).toBeNull();
    }
    await chooses.setInputFiles({ name: 'mark.png', mimeType: 'image/png', buffer });
    await page.getByAltText('Your mark').waitFor();
    const { mark: url } = JSON.parse((await kept())!) as { mark: string };
    const own = Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
    // Painted anew, smaller, with nothing of the file but its pixels.
    expect(own.includes('51.5N')).toBe(false);
    expect(PNG.sync.read(own)).toMatchObject({ width: 516, height: 172 });

    const file = await makeByTouch(page, 'Numbers on the body, 4:5');
    const png = PNG.sync.read(file.bytes, { checkCRC: true });
    expect([png.width, png.height]).toEqual([1080, 1350]);
    const count = (r: number, g: number, b: number, from: number, to: number): number => {
      let found = 0;
      for (let i = from * 1080 * 4; i < to * 1080 * 4; i += 4) {
        const off = Math.abs(png.data[i] - r) + Math.abs(png.data[i + 1] - g) + Math.abs(png.data[i + 2] - b);
        if (off < 12) found++;
      }
      return found;
    };
    // Steep in pattern and words over the bodies; the mark in the foot alone.
    expect(count(0xd5, 0x5e, 0x00, 200, 1271)).toBeGreaterThan(4000);
    expect(count(0x82, 0x37, 0x00, 200, 1271)).toBeGreaterThan(4000);
    expect(count(0, 170, 85, 0, 1271)).toBe(0);
    expect(count(0, 170, 85, 1271, 1350)).toBeGreaterThan(2000);

    await page.getByRole('button', { name: 'Remove the mark' }).tap();
    expect(await kept()).toBeNull();
    expect(readEmbedded(file.bytes)).toMatchObject({ document: { movements: { leadWristFlexionDeg: -20 } } });
  });

  test('the plates come as one SVG that stands alone: typefaces inside, no class, no link, and it opens again', async () => {
    const file = await makeByTouch(page, 'Plates as SVG');
    const text = file.bytes.toString('utf8');
    expect(text).toContain('Lead arm parallel');
    expect(text).toContain('Steep');
    expect(text).toContain('Illustration from a model, not a recording');
    expect(text.match(/@font-face/g)).toHaveLength(3);
    expect(text).not.toMatch(/var\(--|class="|url\((?!data:|["']?#|&quot;#)/);
    expect(text).not.toMatch(/https?:\/\/(?!www\.w3\.org)/);
    // A reader of XML takes it, and a browser paints it.
    const painted = await page.evaluate(async (svg) => {
      const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
      if (parsed.querySelector('parsererror')) return 'not XML';
      const image = new Image();
      image.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
      await image.decode();
      return `${image.naturalWidth} x ${image.naturalHeight}`;
    }, text);
    expect(painted).toBe('680 x 426');
    await reopens(file);
  });
});

test('the 3D model passes the validator of glTF as the page makes it, and opens again', async () => {
  const file = await makeByTouch(page, '3D model');
  const { issues } = await validateBytes(new Uint8Array(file.bytes));
  expect(issues.messages.filter(({ severity }) => severity === 0)).toEqual([]);
  await reopens(file);
  // And where nothing can be dropped: through the button.
  await page.getByRole('button', { name: 'Reset all' }).first().click();
  await page
    .getByLabel('Open a picture, clip or model')
    .setInputFiles({ name: file.name, mimeType: 'model/gltf-binary', buffer: file.bytes });
  await openOnDesk();
});

test('the table names two swings, and its numbers have points whatever the language', async () => {
  const file = await makeByTouch(page, 'Table');
  const [head, ...rows] = file.bytes.toString('utf8').trimEnd().split('\r\n');
  expect(head).toMatch(/^swing,club,source,position,timeMs,pelvisSwayM,/);
  expect(new Set(rows.map((row) => row.split(',')[0])).size).toBe(2);
  expect(rows[0]).toMatch(/,-?\d+\.\d+/);
});

describe('practice sheet', () => {
  const textOf = async (pdf: Buffer): Promise<{ pages: number; text: string }> => {
    const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
    const content = await (await document.getPage(1)).getTextContent();
    const text = content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
    return { pages: document.numPages, text: text.replace(/\s+/g, ' ') };
  };

  beforeAll(async () => {
    await page.getByRole('button', { name: 'Practice sheet', exact: true }).tap();
    await page.locator('.sheet-page').waitFor();
  });
  afterAll(() => page.locator('.sheet-acts').getByRole('button', { name: 'Close' }).tap());

  for (const format of ['A4', 'Letter'] as const) {
    test(`it is one page of ${format}, and another reader finds its words`, async () => {
      const { pages, text } = await textOf(await page.pdf({ format }));
      expect(pages).toBe(1);
      for (const words of [
        'Practice sheet',
        '7-iron, 1.78 m',
        'Now',
        'After the change',
        '4 cm above the trail bicep',
        'On plane from 1.5 cm below to 1.5 cm above',
        'What to change',
        'Bow the lead wrist',
        'Feel',
        'Ruler on the wrist',
        'Take care',
        'Illustration from a model, not a recording',
        String(new Date().getFullYear()),
        ...CAUTIONS,
      ]) {
        expect(text).toContain(words);
      }
      // The desk behind it stays off the paper.
      expect(text).not.toContain('Typical swings');
    });
  }

  test('its code is read by another library and opens the swing', async () => {
    // Drawn in lines, it is read at the size a phone sees it from a hand's breadth.
    await page
      .locator('.sheet-code svg')
      .evaluate((svg: SVGElement) => (svg.style.cssText = 'width: 500px; height: 500px'));
    const shot = PNG.sync.read(await page.locator('.sheet-code svg').screenshot());
    await page.locator('.sheet-code svg').evaluate((svg: SVGElement) => (svg.style.cssText = ''));
    const read = jsQR(new Uint8ClampedArray(shot.data), shot.width, shot.height);
    expect(read?.data).toMatch(/#s2\./);
    expect(readEmbedded(new TextEncoder().encode(`slantwise:${new URL(read!.data).hash.slice(1)};`))).toMatchObject({
      document: { movements: { leadWristFlexionDeg: -20 } },
    });
  });

  test('without colour the verdicts still differ: by word, and by lines that are drawn one by one', async () => {
    const swatches = await page
      .locator('.sheet-plates figure')
      .evaluateAll((figures) =>
        figures.map((figure) => [
          figure.querySelector('strong')!.textContent,
          figure.querySelector('.sheet-swatch path')!.getAttribute('d')!.split('M').length - 1,
        ]),
      );
    expect(swatches.map(([word]) => word)).toEqual(['Steep', 'On plane', 'Steep', 'On plane']);
    expect([0, 2].map((at) => Number(swatches[at][1]) > 3)).toEqual([true, true]);
    expect([1, 3].map((at) => swatches[at][1])).toEqual([1, 1]);
  });
});

test('the longest sheet, every movement changed, is still one page of Letter', async () => {
  const { document } = await look(page);
  const from = {
    leadWristFlexionDeg: -20,
    rotationRate: 1.2,
    rotationDelayMs: -20,
    trailSideBendDeg: -8,
    pelvisShiftCm: 4,
    pelvis: null,
  };
  const targetCm = { leadArmParallel: 0, shaftParallel: 0 };
  const drafted = draftPlan('longestplan1', { from, movements: STILL_DIALLED, targetCm }, null);
  const longest = {
    ...drafted,
    words: 'Small swings first, then half, then whole ones. '.repeat(5).trim(),
    nextDate: '2026-12-13',
    names: { player: 'Robin', coach: null },
  };
  await dropFile(page, {
    name: 'longest.svg',
    bytes: Buffer.from(`slantwise:${toText({ ...document, plan: longest })};`),
  });
  await page.getByRole('button', { name: 'Open the desk' }).click();
  await expect.poll(async () => (await look(page)).document.plan?.id).toBe(longest.id);
  await page.getByRole('button', { name: 'Practice sheet', exact: true }).click();
  await page.locator('.sheet-page').waitFor();
  const pdf = await getDocument({
    data: new Uint8Array(await page.pdf({ format: 'Letter' })),
    verbosity: 0,
  }).promise;
  expect(pdf.numPages).toBe(1);
  expect(await page.locator('.sheet-columns section').first().locator('p').count()).toBe(5);
  await page.locator('.sheet-acts').getByRole('button', { name: 'Close' }).tap();
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  expect((await look(page)).document).toEqual(document);
});

describe('on another device', () => {
  let address: string;
  let other: Visit;
  /** Opens the app there with this behind its address, and nothing stored. */
  const visit = async (hash: string): Promise<void> => {
    await other.page.goto(`${appAddress()}manifest.webmanifest`);
    await other.page.evaluate(() => localStorage.clear());
    await other.page.goto(`${appAddress()}?probe${hash}`);
  };
  beforeAll(async () => {
    other = await open(browser!, {
      path: 'manifest.webmanifest',
      init: [DRAW_NOTHING],
      viewport: { width: 1024, height: 700 },
      hasTouch: true,
    });
  });
  afterAll(() => other?.context.close());

  test('the link shown opens the same swing on another device, and leaves the address', async () => {
    address = await page.getByRole('textbox', { name: 'Link' }).inputValue();
    expect(address.length).toBeLessThan(1500);
    await visit(new URL(address).hash);
    await other.page.getByRole('button', { name: 'Open the desk' }).click();
    await expect.poll(async () => (await look(other.page)).document.movements.leadWristFlexionDeg).toBe(-20);
    expect(new URL(other.page.url()).hash).toBe('');
    expect((await look(other.page)).past).toEqual(['Opened the link']);
    expect(other.witness.requests.filter((url) => /s\d+\./.test(url))).toEqual([]);
    expect(offOrigin(other.witness)).toEqual([]);
  });

  test('a damaged link and one of a newer version say so and change nothing', async () => {
    const { hash } = new URL(address);
    for (const [broken, words] of [
      [`${hash.slice(0, -2)}`, 'it is damaged'],
      [hash.replace(/s\d+\./, 's99.'), 'a newer Slantwise wrote it'],
    ]) {
      await visit(broken);
      await ready(other.page);
      await expect
        .poll(async () => (await look(other.page)).notice)
        .toBe(`The link could not be opened: ${words}. Nothing was changed.`);
      const { document, past } = await look(other.page);
      expect(document.movements.leadWristFlexionDeg).toBe(0);
      expect(past).toEqual([]);
    }
  });

  // With the server away the worker brings every part: there none can be missing.
  test.skipIf(isServerAway)('a button whose part does not arrive says so, and the desk goes on', async () => {
    await visit('');
    const { page: poor } = other;
    await openClip(poor);
    await poor.route(/\/(table|sheet|makeClip|openDocument)-[^/]*\.js/, (route) => route.abort());
    for (const button of ['Practice sheet', 'Table']) {
      await poor.getByRole('button', { name: button, exact: true }).tap();
      await poor.locator('.work-excuse').waitFor();
      expect(await poor.locator('.work-excuse').innerText()).toMatch(/makes it .* did not arrive\. No file was made\./);
      // In sight, however far the drawer is scrolled.
      expect(await isInSight(poor, '.work-excuse')).toBe(true);
    }
    await poor.getByRole('button', { name: 'Storyboard' }).tap();
    await poor.locator('.preview output').getByText('did not arrive').waitFor();
    await poor
      .getByLabel('Open a picture, clip or model')
      .setInputFiles({ name: 'any.png', mimeType: 'image/png', buffer: Buffer.from('any') });
    await poor.getByText(/opens it .* did not arrive\. Nothing was changed\./).waitFor();
    expect(await isInSight(poor, '[role=alert]')).toBe(true);
    const value = poor.locator('[data-dial="leadWristFlexion"] .dial-value');
    await poor.getByRole('slider', { name: 'Lead wrist', exact: true }).press('ArrowLeft');
    expect(await value.innerText()).toMatch(/1°/);
  });
});

test('a picture of somebody else carries no swing, and says so', async () => {
  const before = await look(page);
  await dropFile(page, { name: 'holiday.png', bytes: PNG.sync.write(new PNG({ width: 4, height: 4 })) });
  await expect.poll(async () => (await look(page)).notice).toMatch(/^The file carries no swing/);
  expect((await look(page)).document).toEqual(before.document);
});

test('what was made comes into sight, however far down its button stands', async () => {
  const files = page.locator('.files li');
  const before = await files.count();
  await page.getByRole('button', { name: 'Table', exact: true }).tap();
  await expect.poll(() => files.count()).toBe(before + 1);
  await expect.poll(() => isInSight(page, '.files li')).toBe(true);
});

test('nothing went wrong on the page, and nothing was sent anywhere', () => {
  expect(witness.errors).toEqual([]);
  expect(witness.violations).toEqual([]);
  expect(offOrigin(witness)).toEqual([]);
  expect(witness.requests.every((url) => !url.startsWith('http') || url.startsWith(appAddress()))).toBe(true);
});
