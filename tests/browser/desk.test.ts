import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { DeskLook } from '../../src/store/desk/probe';
import {
  DRAW_NOTHING,
  DRAW_ROUGH,
  drawn,
  look,
  openDesk,
  openDrawer,
  plateWords,
  pointOn,
  ready,
  showSection,
  slider,
} from './deskPage';
import { startOver } from './startOver';
import { readSticks, sticksOf } from './stickFigure';
import { launch, offOrigin, open, SCREENS, type Visit } from './support';

/** The smallest window that lays the desk out as on a tablet: less to paint. */
const WINDOW = { width: 1024, height: 700 } as const;

// One page for all, whose frames fill no pixel; where pixels or the time to fill them count, a test opens a page of its own.
let browser: Browser | undefined;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  visit = await openDesk(browser, { viewport: WINDOW, hasTouch: true, init: [DRAW_NOTHING] });
  ({ page } = visit);
});
beforeEach(() => startOver(page));
afterEach(() => {
  expect(visit.witness.errors).toEqual([]);
  expect(offOrigin(visit.witness)).toEqual([]);
});
afterAll(() => browser?.close());

const WINDOW_SIZE = [WINDOW.width, WINDOW.height] as const;

/** A player of one's own is worked out on a busy machine too. */
const LONG_POLL = { timeout: 60_000 } as const;

/** Drags the thumb of a dial with the mouse, in steps. */
async function drag(page: Page, id: string, from: number, to: number): Promise<void> {
  const [start, end] = [await pointOn(page, id, from), await pointOn(page, id, to)];
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 8 });
  await page.mouse.up();
}

describe('the main job', () => {
  // How soon after opening is measured by the bench, never here: beside another browser the clock says nothing.
  test('right after opening, one drag toward cupped makes both checkpoints steep; it moves picture, plates and numbers together and is one undo step', async () => {
    const { page, context, witness } = await open(browser!, {
      viewport: WINDOW,
      path: '?probe',
      init: [DRAW_ROUGH],
    });
    await slider(page, 'leadWristFlexion').waitFor();
    await drag(page, 'leadWristFlexion', 0, -20);
    await page.getByText('Steep at both checkpoints.').waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await ready(page);
    await drawn(page);
    const stage = page.locator('.stage canvas');
    const before = { words: await plateWords(page), pixels: await stage.screenshot(), look: await look(page) };
    await drag(page, 'leadWristFlexion', 0, -20);
    await drawn(page);
    const after = await look(page);
    expect(after.document.movements.leadWristFlexionDeg).toBe(-20);
    expect(after.bicepGapCm!).toBeGreaterThan(before.look.bicepGapCm!);
    expect(after.headDepthCm!).toBeGreaterThan(before.look.headDepthCm!);
    expect(after.drawn).toEqual(after.pose);
    expect(after.past).toEqual(['Wrist −20°']);
    const words = await plateWords(page);
    expect(words.map((text) => text.split('\n')[0])).toEqual(['Steep', 'Steep']);
    expect(words).not.toEqual(before.words);
    expect((await stage.screenshot()).equals(before.pixels)).toBe(false);
    expect(await page.locator('.path-readout').innerText()).toMatch(/Path \d+° out-to-in/);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await drawn(page);
    expect((await look(page)).drawn).toEqual(before.look.drawn);
    expect(await plateWords(page)).toEqual(before.words);
    expect(witness.errors).toEqual([]);
    await context.close();
  });

  test('a drag is one undo step whatever had the focus before', async () => {
    await page.getByRole('button', { name: 'Side bend: trail side' }).focus();
    await drag(page, 'leadWristFlexion', 0, -20);
    expect((await look(page)).past).toEqual(['Wrist −20°']);
    await slider(page, 'rotationRate').focus();
    await drag(page, 'trailSideBend', 0, 6);
    expect((await look(page)).past).toEqual(['Wrist −20°', 'Side bend 6°']);
    expect((await look(page)).inGesture).toBe(false);
  });

  test('finger, mouse, arrow keys, step button and typed value lead to the same document', async () => {
    const documents: unknown[] = [];
    const keep = async (): Promise<void> => {
      documents.push((await look(page)).document);
      await page.getByRole('button', { name: 'Reset all' }).click();
    };
    const target = await pointOn(page, 'trailSideBend', 6);
    await page.touchscreen.tap(target.x, target.y);
    await keep();
    await drag(page, 'trailSideBend', 0, 6);
    await keep();
    await slider(page, 'trailSideBend').focus();
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
    await keep();
    for (let i = 0; i < 6; i++) await page.getByRole('button', { name: 'Side bend: trail side' }).click();
    await keep();
    await page.getByRole('button', { name: /^Side bend: 0°/ }).click();
    await page.keyboard.type('6');
    await page.keyboard.press('Enter');
    await keep();
    expect(documents[0]).toMatchObject({ movements: { trailSideBendDeg: 6 } });
    for (const document of documents) expect(document).toEqual(documents[0]);
  });

  test('a verdict on the edge of its band stays what it was, and turns once where the reading passes it', async () => {
    const verdict = page.locator('.plate').first();
    const says = (): Promise<string | null> => verdict.getAttribute('data-verdict');
    const wrist = slider(page, 'leadWristFlexion');
    // Step by step toward cupped until it is steep; the upper edge is then typed onto the step before.
    await wrist.focus();
    let onEdge = (await look(page)).bicepGapCm!;
    while ((await says()) !== 'steep') {
      onEdge = (await look(page)).bicepGapCm!;
      await page.keyboard.press('ArrowLeft');
    }
    await openDrawer(page, 'setUp/Bands');
    const edge = page.getByLabel('Highest, above is plus');
    await edge.fill(onEdge.toFixed(4));
    await edge.press('Enter');
    expect((await look(page)).document.bands.leadArmParallel.highCm).toBeCloseTo(onEdge, 4);
    await page.evaluate(() => {
      const turns: string[] = [];
      Object.assign(globalThis, { verdictTurns: turns });
      const plate = document.querySelector<HTMLElement>('.plate')!;
      new MutationObserver(() => turns.push(plate.dataset['verdict']!)).observe(plate, {
        attributeFilter: ['data-verdict'],
      });
    });
    const turns = (): Promise<string[]> =>
      page.evaluate(() => (globalThis as unknown as { verdictTurns: string[] }).verdictTurns);
    const press = async (...keys: string[]): Promise<void> => {
      await wrist.focus();
      for (const key of keys) await page.keyboard.press(key);
      await drawn(page);
    };
    // Back onto the edge from the steep side: less than a hair from it, it stays steep, whatever else is drawn.
    await press('ArrowRight');
    expect(
      Math.abs((await look(page)).bicepGapCm! - (await look(page)).document.bands.leadArmParallel.highCm),
    ).toBeLessThan(0.004);
    await page.getByRole('button', { name: 'To the next position' }).click();
    await drawn(page);
    expect([await says(), await turns()]).toEqual(['steep', []]);
    // One step inside it turns, once; onto the edge again from there it stays on plane; one step beyond it turns, once.
    await press('ArrowRight');
    expect([await says(), await turns()]).toEqual(['onPlane', ['onPlane']]);
    await press('ArrowLeft');
    expect([await says(), await turns()]).toEqual(['onPlane', ['onPlane']]);
    await press('ArrowLeft');
    expect([await says(), await turns()]).toEqual(['steep', ['onPlane', 'steep']]);
  });

  test('a held key and a held button are one undo step each', async () => {
    await slider(page, 'rotationDelay').focus();
    await page.keyboard.down('ArrowLeft');
    for (let i = 0; i < 4; i++) await page.keyboard.down('ArrowLeft');
    await page.keyboard.up('ArrowLeft');
    expect((await look(page)).past).toEqual(['Turn starts −5 ms']);
    const plus = (await page.getByRole('button', { name: 'Hip slide: to target' }).boundingBox())!;
    await page.mouse.move(plus.x + 20, plus.y + 20);
    await page.mouse.down();
    await page.waitForFunction(
      () => Number(document.querySelector<HTMLInputElement>('[data-dial="pelvisShift"] input')!.value) >= 3,
    );
    await page.mouse.up();
    const held = await look(page);
    expect(held.past).toHaveLength(2);
    expect(held.document.movements.pelvisShiftCm).toBeGreaterThanOrEqual(3);
  });

  test('two taps on a slider reset it by touch as by mouse, as one undo step; a drag after a tap does not', async () => {
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints });
    const state = async () => {
      const { document, past } = await look(page);
      return [document.movements.leadWristFlexionDeg, past];
    };
    const [start, other] = [await pointOn(page, 'leadWristFlexion', -12), await pointOn(page, 'leadWristFlexion', 20)];
    const tap = () => [send('touchStart', start), send('touchEnd')];
    await slider(page, 'leadWristFlexion').press('ArrowLeft');
    await Promise.all([...tap(), ...tap()]);
    await expect.poll(state).toEqual([0, ['Wrist −1°', 'Wrist 0°']]);
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await state()).toEqual([-1, ['Wrist −1°']]);
    await Promise.all([...tap(), send('touchStart', start), send('touchMove', other), send('touchEnd')]);
    await expect.poll(state).toEqual([20, ['Wrist −1°', 'Wrist −12°', 'Wrist 20°']]);
    await page.mouse.dblclick(start.x, start.y);
    expect(await state()).toEqual([0, ['Wrist −1°', 'Wrist −12°', 'Wrist 20°', 'Wrist 0°']]);
    await page.mouse.click(start.x, start.y);
    await page.mouse.down({ clickCount: 2 });
    await page.mouse.move(other.x, other.y);
    await page.mouse.up({ clickCount: 2 });
    expect((await state())[0]).toBe(20);
    await touch.detach();
  });

  test('the usual keys undo and redo, and leave a field that is typed in alone', async () => {
    await slider(page, 'leadWristFlexion').press('ArrowLeft');
    const wrist = async (): Promise<number> => (await look(page)).document.movements.leadWristFlexionDeg;
    const after: number[] = [];
    for (const keys of ['Control+z', 'Control+y', 'Meta+z', 'Meta+Shift+Z']) {
      await page.keyboard.press(keys);
      after.push(await wrist());
    }
    expect(after).toEqual([0, -1, 0, -1]);
    await page.locator('[data-dial="leadWristFlexion"] .dial-value').click();
    await page.keyboard.press('Control+z');
    expect(await wrist()).toBe(-1);
    await page.keyboard.press('Escape');
  });

  test('a typed value outside the dial is refused beside the field, and nothing typed is lost', async () => {
    await page.getByRole('button', { name: /^Lead wrist: As reference/ }).click();
    await page.keyboard.type('55');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('Lead wrist: 55 is outside. Enter −40 to 40°.').waitFor();
    // Neither the thumb nor a step is covered by the reason.
    const reason = (await page.locator('.dial-problem').boundingBox())!;
    const dial = page.locator('[data-dial="leadWristFlexion"]');
    for (const part of await dial.locator('.pm, input[type="range"]').all()) {
      const box = (await part.boundingBox())!;
      expect(reason.y + reason.height).toBeLessThanOrEqual(box.y);
    }
    expect(await page.locator('.dial-typing input').inputValue()).toBe('55');
    expect((await look(page)).past).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await page.locator('.dial-typing').count()).toBe(0);
  });
});

describe('what stays', () => {
  test('document and undo survive a reload, and the picture after it is the picture before it', async () => {
    await drag(page, 'rotationRate', 1, 1.12);
    await page.getByRole('button', { name: 'Typical swings' }).last().click();
    await page.getByRole('button', { name: 'Stuck behind' }).click();
    await page.locator('.situations').getByRole('button', { name: 'Close' }).click();
    await drawn(page);
    const before = await look(page);
    await page.reload();
    await ready(page);
    const after = await look(page);
    expect(after.document).toEqual(before.document);
    expect(after.past).toEqual(before.past);
    expect(after.drawn).toEqual(before.drawn);
    await page.getByRole('button', { name: 'Undo: Stuck behind' }).click();
    await page.getByRole('button', { name: /^Undo: Body turn/ }).click();
    expect((await look(page)).document.movements.rotationRate).toBe(1);
  });

  test('a damaged document is kept aside and said in words, and the app starts', async () => {
    await page.addInitScript(() => {
      if (sessionStorage.getItem('damaged')) return;
      localStorage.setItem('slantwise.document', '{"version":99}');
      sessionStorage.setItem('damaged', 'once');
    });
    await page.reload();
    await ready(page);
    await page.getByText(/could not be opened: a newer Slantwise wrote it/).waitFor();
    expect(await page.evaluate(() => localStorage.getItem('slantwise.kept-aside.1'))).toBe('{"version":99}');
    const read = page.getByRole('button', { name: 'OK', exact: true });
    let middle = { x: 0, y: 0 };
    for (const [width, height] of [WINDOW_SIZE, [844, 390], [360, 740], [390, 844]] as const) {
      await page.setViewportSize({ width, height });
      const box = (await read.boundingBox())!;
      middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      // A finger at the middle of the button meets the button.
      const met = await page.evaluate(({ x, y }) => document.elementFromPoint(x, y)?.textContent, middle);
      expect(met, `${width} x ${height}`).toBe('OK');
    }
    await page.touchscreen.tap(middle.x, middle.y);
    await read.waitFor({ state: 'detached' });
    await page.setViewportSize(WINDOW);
    expect(await page.getByText(/could not be opened/).count()).toBe(0);
  });

  test('a player who is not shipped is solved in the background; the old figure stays until then', async () => {
    const before = await look(page);
    await page.getByRole('button', { name: 'Player & club' }).click();
    await page.getByLabel('Height', { exact: true }).fill('171.3');
    await page.keyboard.press('Enter');
    const during = await look(page);
    if (during.status === 'solving') expect(during.pose).toEqual(before.pose);
    expect(during.document.player.statureM).toBe(1.713);
    await expect.poll(async () => (await look(page)).status, LONG_POLL).toBe('ready');
    const after = await look(page);
    expect(await page.locator('.status-sentence').innerText()).toMatch(/^On plane/);
    expect(after.pose).not.toEqual(before.pose);
  });

  test('a swing that was not found, or not yet, claims nothing, and says so on a phone too', async () => {
    const shut = await plateWords(page);
    await page.getByRole('button', { name: 'Player & club' }).click();
    const before = await plateWords(page);
    // The search never answers, until it is stopped; how long it may go unmentioned is for the test to say.
    await page.evaluate(() => {
      const wait = globalThis.setTimeout;
      Reflect.set(globalThis, 'setTimeout', (work: () => void, ms: number) => {
        if (ms !== 400) return wait(work, ms);
        return Object.assign(globalThis, { mention: work, setTimeout: wait });
      });
      const post = Reflect.get(Worker.prototype, 'postMessage') as (...message: unknown[]) => void;
      const restore = (): unknown => Reflect.set(Worker.prototype, 'postMessage', post);
      Reflect.set(Worker.prototype, 'postMessage', function (this: Worker, ...message: unknown[]) {
        // The drawers of why have a worker of their own, which may get ready at any time.
        if (!Reflect.has((message[0] as { question: object }).question, 'body')) return post.apply(this, message);
        return Object.assign(globalThis, {
          stopSearch: () => {
            restore();
            this.dispatchEvent(new ErrorEvent('error', { cancelable: true }));
          },
        });
      });
    });
    await page.getByLabel('Height', { exact: true }).fill('166.6');
    await page.keyboard.press('Enter');
    // A search of some tenths of a second goes by without a word.
    expect((await look(page)).status).toBe('solving');
    expect(await plateWords(page)).toEqual(before);
    await page.setViewportSize(SCREENS.phone);
    await page.evaluate(() => (globalThis as unknown as { mention: () => void }).mention());
    const expectNothing = async (word: string, why: RegExp): Promise<void> => {
      await page.getByText(word).first().waitFor();
      expect(await plateWords(page)).toEqual([word, word]);
      await expect.poll(() => page.locator('.slips').innerText()).toMatch(why);
      expect(await page.locator('.slips').innerText()).toMatch(/The figure shows the last swing found\.$/);
      expect((await page.locator('.plate').allInnerTexts()).join(' ')).not.toMatch(/\d/);
      expect(await page.locator('body').innerText()).not.toMatch(/computed by the model|on plane at/i);
      const slip = page.locator('.slip-withheld');
      const isInSight = (element: Element): boolean => {
        const { left, right, top, bottom } = element.getBoundingClientRect();
        const stage = document.querySelector('.stage-place')!.getBoundingClientRect();
        return left >= stage.left && right <= stage.right && top >= stage.top && bottom <= stage.bottom;
      };
      expect(await slip.evaluate(isInSight)).toBe(true);
    };
    await expectNothing('Not yet', /Working out a reference swing/);
    await page.evaluate(() => (globalThis as unknown as { stopSearch: () => void }).stopSearch());
    await expectNothing('No swing', /The search for this reference swing stopped/);
    await page.setViewportSize(WINDOW);
    for (const id of ['ledger', 'map', 'plan', 'ball', 'clip'] as const) {
      await openDrawer(page, id);
      expect(await page.locator('.drawer-body').innerText()).toMatch(
        /^The search for this reference swing stopped\.[^\d]*$/,
      );
    }
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await plateWords(page)).toEqual(shut);
  });

  test('a set-up that cannot be is refused beside the field and kept there to mend', async () => {
    await page.getByRole('button', { name: 'Player & club' }).click();
    await page.getByLabel('Height', { exact: true }).fill('250');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('Height 250 cm is outside 140 to 210 cm.').waitFor();
    expect(await page.getByLabel('Height', { exact: true }).inputValue()).toBe('250');
    await page.keyboard.press('Escape');
    await showSection(page, 'Units');
    await page.getByLabel('inches').check();
    await showSection(page, 'Club');
    await page.getByRole('combobox', { name: 'Club' }).selectOption('my club');
    const length = page.getByLabel('Length', { exact: true });
    // As far down in the drawer as it gets: the reason is brought into sight.
    await length.evaluate((field) => field.scrollIntoView({ block: 'end' }));
    await length.fill('50');
    await page.keyboard.press('Enter');
    const reason = page.getByRole('alert').getByText('Length 50 in is outside 18 to 48 in.');
    const [box, body] = [await reason.boundingBox(), await page.locator('.drawer-body').boundingBox()];
    expect(box!.y + box!.height).toBeLessThanOrEqual(body!.y + body!.height + 1);
    await page.keyboard.press('Escape');
    expect((await look(page)).document.player.statureM).toBe(1.78);
  });
});

describe('the picture', () => {
  test('a lost context leaves a stick figure and every number; the picture returns with it', async () => {
    await slider(page, 'trailSideBend').focus();
    await page.keyboard.press('ArrowRight');
    await drawn(page);
    const [before, numbers] = [await look(page), await plateWords(page)];
    await page.evaluate(() => {
      const gl = document.querySelector<HTMLCanvasElement>('.stage canvas')!.getContext('webgl2')!;
      const extension = gl.getExtension('WEBGL_lose_context')!;
      Object.assign(window, { extension });
      extension.loseContext();
    });
    await page.locator('.stage[data-drawing="lost"]').waitFor();
    expect((await look(page)).document).toEqual(before.document);
    const shown = async () => ({ sticks: await readSticks(page), numbers: await plateWords(page) });
    const lost = await shown();
    expect(lost.sticks).toEqual(sticksOf(await look(page)));
    expect(lost.numbers).toEqual(numbers);
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowRight');
    await drawn(page);
    expect((await look(page)).document.movements.trailSideBendDeg).toBe(7);
    const tilted = await shown();
    expect(tilted.sticks).toEqual(sticksOf(await look(page)));
    expect(tilted.sticks).not.toEqual(lost.sticks);
    for (const [i, words] of tilted.numbers.entries()) {
      expect(words).toMatch(/\d/);
      expect(words).not.toBe(numbers[i]);
    }
    expect(await page.locator('.path-readout').innerText()).toMatch(/Path\s+\d+°[^]*Face\s+\d+°/);
    await page.evaluate(() => (globalThis as unknown as { extension: WEBGL_lose_context }).extension.restoreContext());
    await page.locator('.stage[data-drawing="drawing"]').waitFor();
    await drawn(page);
    const after = await look(page);
    expect(after.drawn).toEqual(after.pose);
  });

  test('play stops by itself, and reduced motion shows stepped poses', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.getByRole('button', { name: 'Tenth speed' }).click();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const seen = await page.evaluate(async () => {
      const { slantwiseProbe } = globalThis as unknown as { slantwiseProbe: () => DeskLook };
      const times = new Set<number>();
      for (let now = slantwiseProbe(); now.session.playing; now = slantwiseProbe()) {
        times.add(now.session.t);
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
      return times.size;
    });
    await page.emulateMedia({ reducedMotion: null });
    expect(seen).toBeGreaterThan(1);
    expect(seen).toBeLessThanOrEqual(6);
  });

  test('the joints bench shows a bent joint on the figure and lets go', async () => {
    const before = await look(page);
    await openDrawer(page, 'joints');
    await page.getByRole('slider', { name: 'Lead arm rolled' }).focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
    await drawn(page);
    const bent = await look(page);
    expect(bent.drawn).not.toEqual(before.drawn);
    expect(bent.document).toEqual(before.document);
    await page.getByText('Bench pose').waitFor();
    await page.getByRole('button', { name: 'Back to swing' }).first().click();
    await drawn(page);
    expect((await look(page)).drawn).toEqual(before.drawn);
  });
});
