import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { look, openDrawer, plateWords, REFUSE_PICTURE, slider } from './deskPage';
import { findEye, findInPicture, NOTE_EYE } from './cameraProbe';
import { findCrowding } from './geometry';
import { AT } from '../../src/model/pose';
import { startOver } from './startOver';
import { readSticks, sticksOf } from './stickFigure';
import { appAddress, launch, open, SCREENS } from './support';

/** The smallest window that lays the desk out as on a tablet: less to paint. */
const WINDOW = { width: 1024, height: 800 } as const;

// One page for all: every test starts from a desk on which everything was undone, seen from where the camera stands at first.
let browser: Browser | undefined;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  page = await openCounted();
});
beforeEach(async () => {
  await page.setViewportSize(WINDOW);
  await startOver(page);
  await chip(page, 'Free').click();
  await picture(page).press('Home');
  await picture(page).blur();
  await rest(page);
});
afterAll(() => browser?.close());

interface Drawn {
  /** Asked for by the page, drawn or not. */
  asked: number;
  /** That drew. */
  frames: number;
  calls: number;
  triangles: number;
}

/** Counts what is drawn, at the WebGL interface itself: calls and triangles of the last frame that drew, how many did and were asked for. */
async function countDrawing(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const drawn = { asked: 0, frames: 0, calls: 0, triangles: 0 };
    let now = { calls: 0, triangles: 0 };
    Object.assign(globalThis, { drawn });
    const proto = WebGL2RenderingContext.prototype;
    const isPicture = (gl: WebGL2RenderingContext): boolean => (gl.canvas as HTMLCanvasElement).isConnected;
    const add = (gl: WebGL2RenderingContext, mode: number, count: number, instances: number): void => {
      if (!isPicture(gl)) return;
      now.calls += 1;
      if (mode === gl.TRIANGLES) now.triangles += (count / 3) * instances;
    };
    // Where each call says how many vertices and how many instances.
    const places = { drawElements: [1], drawArrays: [2], drawElementsInstanced: [1, 4], drawArraysInstanced: [2, 3] };
    for (const [name, [count, instances]] of Object.entries(places)) {
      const draw = Reflect.get(proto, name) as (...args: number[]) => void;
      Reflect.set(proto, name, function (this: WebGL2RenderingContext, ...args: number[]) {
        add(this, args[0], args[count], instances === undefined ? 1 : args[instances]);
        draw.apply(this, args);
      });
    }
    const request = globalThis.requestAnimationFrame.bind(globalThis);
    globalThis.requestAnimationFrame = (callback) => {
      drawn.asked += 1;
      return request((time) => {
        now = { calls: 0, triangles: 0 };
        callback(time);
        if (now.calls > 0) Object.assign(drawn, now, { frames: drawn.frames + 1 });
      });
    };
    const atRest = async (): Promise<void> => {
      for (let before = -1; drawn.asked !== before;) {
        before = drawn.asked;
        for (let frame = 0; frame < 6; frame++) await new Promise(request);
      }
    };
    Object.assign(globalThis, { atRest });
  });
}

const drawn = (page: Page): Promise<Drawn> =>
  page.evaluate(() => ({ ...(globalThis as unknown as { drawn: Drawn }).drawn }));

const picture = (page: Page) => page.locator('.stage-picture');
/** The picture above the chips. */
async function shoot(page: Page): Promise<Buffer> {
  const { x, y, width, height } = (await picture(page).boundingBox())!;
  return page.screenshot({ clip: { x, y, width, height: height - 72 } });
}
const chip = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const view = (page: Page) => page.locator('[aria-label="View"] .stage-item[aria-pressed="true"]');

/** Opens the app with drawing counted, and waits until it has drawn and come to rest. */
async function openCounted(): Promise<Page> {
  const context = await browser!.newContext({ viewport: WINDOW, reducedMotion: 'reduce', hasTouch: true });
  const opened = await context.newPage();
  await opened.addInitScript(NOTE_EYE);
  await countDrawing(opened);
  await opened.goto(`${appAddress()}?probe`);
  await opened.waitForFunction(() => (globalThis as unknown as { drawn: Drawn }).drawn.frames > 0, null, {
    timeout: 60_000,
  });
  // The names of the views are brass, which counts as wood.
  await opened.addStyleTag({ content: '.stage-item { color: var(--ink) !important }' });
  await rest(opened);
  return opened;
}

/**
 * Resolves when the app has asked for no frame while six went by. A picture that waits for the graphics processor asks for one
 * after the other until it is drawn.
 */
const rest = (of: Page): Promise<void> =>
  of.evaluate(() => (globalThis as unknown as { atRest: () => Promise<void> }).atRest());

test('the canvas sleeps while nothing changes: nothing is drawn and no frame asked for; it wakes for a change', async () => {
  const before = await drawn(page);
  // Five seconds are the claim, not a wait for something.
  await page.waitForTimeout(5000);
  expect(await drawn(page)).toEqual(before);
  await page.locator('[data-dial="leadWristFlexion"] input[type="range"]').focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(async () => (await drawn(page)).frames).toBeGreaterThan(before.frames);
});

test('a frame takes at most 20 draw calls and 110,000 triangles, contour, shadow and the see-through body included', async () => {
  const wrist = page.locator('[data-dial="leadWristFlexion"] input[type="range"]');
  await wrist.press('ArrowRight');
  await rest(page);
  const alone = await drawn(page);
  expect(alone.calls).toBeGreaterThan(5);
  await toggleComparison(page);
  await wrist.press('PageUp');
  await rest(page);
  const compared = await drawn(page);
  // Its depth, its wash and its contour.
  expect(compared.calls - alone.calls).toBe(3);
  expect(compared.triangles - alone.triangles).toBeGreaterThan(10_000);
  await chip(page, "Player's eyes").click();
  await rest(page);
  const own = await drawn(page);
  await chip(page, 'Free').click();
  await toggleComparison(page);
  for (const { calls, triangles } of [compared, own]) {
    expect(calls).toBeLessThanOrEqual(20);
    expect(triangles).toBeLessThan(110_000);
  }
});

/** Keeps the swing for comparison, or lets it go. */
async function toggleComparison(of: Page): Promise<void> {
  const button = of.getByRole('button', { name: /^(Hold ghost|Keep as comparison)$/ });
  if (!(await button.isVisible())) await chip(of, 'Show').click();
  await button.click();
}

/** How wide a band across the shaft differs from the paper beside it, css px: at a place on the shaft, across it. */
async function measureShaft(of: Page): Promise<number> {
  const { drawn: pose } = await look(of);
  const point = (from: number): number[] => pose!.slice(from, from + 3);
  const [grip, head] = [point(AT.leadGrip), point(AT.head)];
  // Between the hands and the head, where nothing else is drawn.
  const middle = grip.map((x, axis) => x + 0.62 * (head[axis] - x));
  const box = (await picture(of).boundingBox())!;
  const inPx = async (place: readonly number[]): Promise<[number, number]> => {
    const [x, y] = await findInPicture(of, place);
    return [x * box.width, y * box.height];
  };
  const [[ax, ay], [bx, by], [mx, my]] = await Promise.all([inPx(grip), inPx(head), inPx(middle)]);
  const size = Math.hypot(bx - ax, by - ay);
  const across = [-(by - ay) / size, (bx - ax) / size];
  const png = (await of.screenshot({ clip: box })).toString('base64');
  return of.evaluate(
    async ({ data, from, way }) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
      Object.assign(pen.canvas, { width: image.width, height: image.height });
      pen.drawImage(image, 0, 0);
      const at = (step: number): number[] => {
        const [x, y] = [from[0] + way[0] * step, from[1] + way[1] * step].map(Math.floor);
        return [...pen.getImageData(x, y, 1, 1).data].slice(0, 3);
      };
      const paper = at(14);
      const isOther = (step: number): boolean => at(step).some((byte, i) => Math.abs(byte - paper[i]) > 24);
      const steps = Array.from({ length: 161 }, (_, i) => (i - 80) / 10).filter(isOther);
      return steps.length === 0 ? 0 : steps.at(-1)! - steps[0];
    },
    { data: png, from: [mx, my], way: across },
  );
}

test('however small the picture, the shaft keeps a least width, on the dark board too', async () => {
  await picture(page).focus();
  for (let i = 0; i < 8; i++) await page.keyboard.press('-');
  await rest(page);
  // 3.5 px of steel and its contour on either side.
  expect(await measureShaft(page)).toBeGreaterThanOrEqual(5);
  await openDrawer(page, 'setUp/Units');
  await page.getByRole('radio', { name: 'Dark' }).check({ force: true });
  await openDrawer(page, 'setUp');
  await rest(page);
  // 4.8 px of steel, whose contour the board swallows.
  expect(await measureShaft(page)).toBeGreaterThanOrEqual(4.3);
  await picture(page).press('Home');
});

/** How much wood is in the picture, px, and where its middle is. */
async function findWood(page: Page): Promise<{ amount: number; x: number; y: number }> {
  const png = (await shoot(page)).toString('base64');
  return page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    Object.assign(canvas, { width: image.width, height: image.height });
    const pen = canvas.getContext('2d')!;
    pen.drawImage(image, 0, 0);
    const { data: bytes } = pen.getImageData(0, 0, image.width, image.height);
    let [amount, x, y] = [0, 0, 0];
    for (let i = 0; i < bytes.length; i += 4) {
      if (bytes[i] - bytes[i + 2] < 50 || bytes[i] < 90) continue;
      amount += 1;
      x += (i / 4) % image.width;
      y += Math.floor(i / 4 / image.width);
    }
    return { amount, x: x / amount, y: y / amount };
  }, png);
}

type Finger = readonly [number, number];

/** Real touch points: fingers go evenly from where they are put down to where they are lifted, or are taken away by the system. */
async function touch(page: Page, from: readonly Finger[], to: readonly Finger[], end: 'lift' | 'cancel' = 'lift') {
  const session = await page.context().newCDPSession(page);
  const points = (share: number) =>
    from.map(([x, y], id) => ({ id, x: x + (to[id][0] - x) * share, y: y + (to[id][1] - y) * share }));
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: points(0) });
  for (const share of [0.25, 0.5, 0.75, 1]) {
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(share) });
  }
  await session.send('Input.dispatchTouchEvent', {
    type: end === 'lift' ? 'touchEnd' : 'touchCancel',
    touchPoints: [],
  });
  await session.detach();
  await rest(page);
}

test('a canvas of another size is drawn anew', async () => {
  const before = await findWood(page);
  expect(before.amount).toBeGreaterThan(1000);
  // In the same layout: nothing else on the page asks for a frame.
  await page.setViewportSize({ ...WINDOW, height: WINDOW.height + 12 });
  await expect.poll(async () => (await findWood(page)).amount).toBeGreaterThan(0.9 * before.amount);
});

test('with fingers: one turns the picture, two pinch and move it, a chip shows another view and gives it back', async () => {
  const { x, y, width, height } = (await picture(page).boundingBox())!;
  const [cx, cy] = [x + width / 2, y + height / 2];
  const first = await shoot(page);
  const fitted = await findWood(page);

  await touch(page, [[cx, cy]], [[cx - 90, cy + 10]]);
  const turned = await findWood(page);
  expect((await shoot(page)).equals(first)).toBe(false);
  expect(turned.amount / fitted.amount).toBeGreaterThan(0.6);
  expect(turned.amount / fitted.amount).toBeLessThan(1.6);
  expect(Math.hypot(turned.x - fitted.x, turned.y - fitted.y)).toBeLessThan(60);

  const apart: readonly Finger[] = [
    [cx - 80, cy - 40],
    [cx + 80, cy + 40],
  ];
  const close: readonly Finger[] = [
    [cx - 50, cy - 25],
    [cx + 50, cy + 25],
  ];
  await touch(page, apart, close);
  const far = await findWood(page);
  // Fingers at five eighths of their distance: five eighths in each direction.
  expect(far.amount / turned.amount).toBeGreaterThan(0.3);
  expect(far.amount / turned.amount).toBeLessThan(0.5);

  await touch(
    page,
    close,
    close.map(([px, py]) => [px + 60, py + 24] as const),
  );
  const moved = await findWood(page);
  expect(moved.amount / far.amount).toBeGreaterThan(0.9);
  expect(moved.amount / far.amount).toBeLessThan(1.1);
  expect(moved.x - far.x).toBeGreaterThan(50);
  expect(moved.x - far.x).toBeLessThan(70);
  expect(moved.y - far.y).toBeGreaterThan(16);
  expect(moved.y - far.y).toBeLessThan(32);

  const own = await shoot(page);
  await chip(page, 'Face on').tap();
  await rest(page);
  expect(await view(page).textContent()).toBe('Face on');
  expect((await shoot(page)).equals(own)).toBe(false);
  await chip(page, 'Free').tap();
  await rest(page);
  expect((await shoot(page)).equals(own)).toBe(true);

  // Taken away by the system in the middle of a pinch: it stays as it was then, and the next finger starts afresh.
  await touch(page, close, apart, 'cancel');
  const held = await shoot(page);
  expect(held.equals(own)).toBe(false);
  await touch(page, [[cx - 120, cy - 60]], [[cx - 120, cy - 60]]);
  expect((await shoot(page)).equals(held)).toBe(true);
});

test('the picture opens up with the playhead after impact, and no dial moves the camera', async () => {
  const time = page.getByRole('slider', { name: 'Time in the swing' });
  const wrist = page.locator('[data-dial="leadWristFlexion"] input[type="range"]');
  await chip(page, 'Face on').click();
  const eye = async (): Promise<unknown> => {
    await rest(page);
    return findEye(page);
  };
  await time.press('Home');
  const early = await eye();
  await time.press('End');
  const late = await eye();
  expect(late).not.toEqual(early);
  await wrist.press('PageDown');
  expect(await eye()).toEqual(late);
  await time.press('Home');
  expect(await eye()).toEqual(early);
});

describe('the camera', () => {
  test('a chip shows another view and gives back the free view where it was left', async () => {
    const box = (await picture(page).boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2 - 20, { steps: 3 });
    await page.mouse.up();
    await rest(page);
    const own = await shoot(page);
    await chip(page, 'Down the line').click();
    await rest(page);
    expect(await view(page).textContent()).toBe('Down the line');
    expect((await shoot(page)).equals(own)).toBe(false);
    await chip(page, 'Free').click();
    await rest(page);
    expect((await shoot(page)).equals(own)).toBe(true);
  });

  test('a drag in a fixed view makes it the free view; the arrow keys turn it too', async () => {
    await chip(page, 'Face on').click();
    await rest(page);
    const before = await shoot(page);
    await picture(page).focus();
    await page.keyboard.press('ArrowLeft');
    await rest(page);
    expect(await view(page).textContent()).toBe('Free');
    expect((await shoot(page)).equals(before)).toBe(false);
  });

  test('a cancelled pointer ends the drag where it is', async () => {
    const send = (type: string, x: number): Promise<void> =>
      page
        .locator('canvas')
        .dispatchEvent(type, { pointerId: 7, pointerType: 'touch', clientX: x, clientY: 200, isPrimary: true });
    await send('pointerdown', 200);
    await send('pointermove', 240);
    await send('pointercancel', 240);
    await rest(page);
    const held = await shoot(page);
    await send('pointermove', 320);
    await rest(page);
    expect((await shoot(page)).equals(held)).toBe(true);
  });

  test('on a phone one button opens the views, each at least 48 px tall', async () => {
    await page.setViewportSize(SCREENS.phone);
    await chip(page, 'View').click();
    for (const name of ['Down the line', 'Face on', 'Overhead', "Player's eyes", 'Free']) {
      const box = (await chip(page, name).boundingBox())!;
      expect(box.height).toBeGreaterThanOrEqual(48);
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(SCREENS.phone.width);
    }
    await chip(page, 'Overhead').click();
    expect(await chip(page, 'View').getAttribute('aria-expanded')).toBe('false');
  });
});

test('the picture has words: a sentence with the club and the verdict, and captions of at least 15 px', async () => {
  const sentence = await page.getByRole('img', { name: /wooden figure/i }).getAttribute('aria-label');
  expect(sentence).toMatch(/7-iron/);
  expect(sentence).toMatch(/plane|steep|shallow/i);
  const sizes = await page
    .locator('.stage-caption, .stage-legend')
    .evaluateAll((nodes) => nodes.map((node) => parseFloat(getComputedStyle(node).fontSize)));
  expect(sizes.length).toBe(5);
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(15);
});

test('the paper under the figure is the paper of the page: lit in the middle, a little darker in the corners', async () => {
  // From here the ground does not reach up to the corner.
  await chip(page, 'Face on').click();
  await rest(page);
  const box = (await picture(page).boundingBox())!;
  const png = (await page.screenshot({ clip: box })).toString('base64');
  const { corner, lit, paper } = await page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
    Object.assign(pen.canvas, { width: image.width, height: image.height });
    pen.drawImage(image, 0, 0);
    const at = (x: number, y: number): number[] =>
      [...pen.getImageData(x * image.width, y * image.height, 1, 1).data].slice(0, 3);
    const hex = getComputedStyle(document.documentElement).getPropertyValue('--paper').trim();
    return {
      corner: at(0.995, 0.005),
      // Between the trace and the upper edge nothing is drawn.
      lit: at(0.72, 0.3),
      paper: [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16)),
    };
  }, png);
  const off = (seen: number[]): number[] => seen.map((byte, i) => byte - paper[i]);
  expect(Math.max(...off(corner).map(Math.abs))).toBeLessThan(16);
  expect(Math.max(...off(lit).map(Math.abs))).toBeLessThan(16);
  const sum = (bytes: number[]): number => bytes.reduce((all, byte) => all + byte, 0);
  expect(sum(off(corner))).toBeLessThan(0);
  expect(sum(off(lit))).toBeGreaterThan(0);
});

test('path and face have a halo of paper, whatever is behind them', async () => {
  const { halo, paper } = await page.evaluate(() => {
    const swatch = document.createElement('i');
    swatch.style.background = 'var(--paper)';
    document.body.append(swatch);
    const paper = getComputedStyle(swatch).backgroundColor;
    swatch.remove();
    return { halo: getComputedStyle(document.querySelector('.path-readout')!).textShadow, paper };
  });
  expect(halo).toContain(`${paper} 0px 0px`);
});

test('a caption keeps clear of the slips, or goes together with its leader', async () => {
  await page.setViewportSize(SCREENS.tablet);
  await page.locator('[data-dial="rotationDelay"] input').press('Home');
  await page.locator('.slip-caution').waitFor();
  await rest(page);
  const wrong = await page.evaluate(() => {
    const slips = [...document.querySelectorAll('.slips > :not([hidden])')].map((slip) => slip.getBoundingClientRect());
    return [...document.querySelectorAll<HTMLElement>('.stage-caption')].flatMap((label) => {
      const leader = document.querySelector<SVGElement>(`[data-caption="${label.dataset['caption']}Leader"]`)!;
      if (label.style.visibility !== leader.style.visibility)
        return [`${label.textContent}: a leader without its words`];
      const box = label.getBoundingClientRect();
      const isCovered = slips.some(
        ({ left, top, right, bottom }) => box.left < right && box.right > left && box.top < bottom && box.bottom > top,
      );
      return label.style.visibility !== 'hidden' && isCovered ? [`${label.textContent}: under a slip`] : [];
    });
  });
  expect(wrong).toEqual([]);
  await page.locator('.turn').first().click();
  await page.setViewportSize(WINDOW);
});

describe('without WebGL', () => {
  test('a refused picture becomes a stick figure with a note, and everything else works', async () => {
    const { page: poor, context } = await open(browser!, { path: '?probe', init: [REFUSE_PICTURE] });
    await poor.getByText('This browser draws no 3D picture').waitFor();
    for (const size of ['phone', 'upright tablet', 'tablet'] as const) {
      await poor.setViewportSize(SCREENS[size]);
      // The edges that words take are measured after the screen has changed.
      await expect.poll(() => findCrowding(poor), { message: size }).toEqual([]);
    }
    const still = { sticks: await readSticks(poor), numbers: await plateWords(poor) };
    expect(still.sticks).toEqual(sticksOf(await look(poor)));
    await slider(poor, 'leadWristFlexion').focus();
    for (let i = 0; i < 6; i++) await poor.keyboard.press('ArrowRight');
    await expect.poll(() => readSticks(poor)).not.toEqual(still.sticks);
    expect(await readSticks(poor)).toEqual(sticksOf(await look(poor)));
    for (const [i, words] of (await plateWords(poor)).entries()) {
      expect(words).toMatch(/\d/);
      expect(words).not.toBe(still.numbers[i]);
    }
    await openDrawer(poor, 'setUp');
    await poor.getByRole('radio', { name: 'Left-handed' }).check({ force: true });
    await expect.poll(() => readSticks(poor)).toEqual(sticksOf(await look(poor)));
    expect(await poor.locator('.stage-sticks figure').count()).toBe(2);
    await context.close();
  });

  test('a lost picture shows the stick figure, and comes back as it was with the context', async () => {
    const before = await shoot(page);
    await page.evaluate(() => {
      const lose = document.querySelector('canvas')!.getContext('webgl2')!.getExtension('WEBGL_lose_context')!;
      Object.assign(globalThis, { lose });
      lose.loseContext();
    });
    await page.locator('.stage-sticks').waitFor();
    await page.evaluate(() => (globalThis as unknown as { lose: WEBGL_lose_context }).lose.restoreContext());
    await page.locator('.stage-sticks').waitFor({ state: 'detached' });
    await rest(page);
    expect((await shoot(page)).equals(before)).toBe(true);
  });
});
