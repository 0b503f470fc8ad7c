import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { MATRIX_SIZE, PART } from '../../src/figure/partIds';
import { AT } from '../../src/model/pose';
import { DIALS } from '../../src/model/movements';
import { EDGE_DIALS, type DialId } from '../../src/store';
import type { DeskLook } from '../../src/store/desk/probe';
import { DRAW_NOTHING, drawn, look, openDrawer, showSection, slider } from './deskPage';
import { findEye, NOTE_EYE } from './cameraProbe';
import { shareDesk } from './sharedDesk';
import { SCREENS } from './support';

/** For `init`: keeps the value that the browser gave a slider, before the app rounds it to its steps. */
const KEEP_RAW = (): void =>
  addEventListener(
    'input',
    ({ target }) => Object.assign(globalThis, { rawValue: (target as HTMLInputElement).valueAsNumber }),
    { capture: true },
  );

// What is slid, pressed and typed does what stands beside it.
const shared = shareDesk({ init: [DRAW_NOTHING, NOTE_EYE, KEEP_RAW] });
let page: Page;
beforeAll(() => ({ page } = shared));

/** Presses a slider at two places: the browser puts its thumb there. Answers where the thumb stands for any value, px. */
async function findThumb(id: DialId): Promise<(value: number) => number> {
  const setStep = (step: string) =>
    slider(page, id).evaluate((input: HTMLInputElement, now) => {
      const before = input.step;
      input.step = now;
      return before;
    }, step);
  const step = await setStep('any');
  const { x, y, width, height } = (await slider(page, id).boundingBox())!;
  const pressed: { x: number; value: number }[] = [];
  for (const share of [0.2, 0.8]) {
    await page.mouse.move(x + share * width, y + height / 2);
    await page.mouse.down();
    await page.mouse.up();
    const value = await page.evaluate(() => Reflect.get(globalThis, 'rawValue') as number);
    pressed.push({ x: x + share * width, value });
  }
  await setStep(step);
  const [a, b] = pressed;
  return (value) => a.x + ((value - a.value) * (b.x - a.x)) / (b.value - a.value);
}

/** The edges of every mark on the rule of a dial, px, as they stand for each of the values. */
const marksFor = (id: DialId, values: readonly number[]) =>
  page.locator(`[data-dial="${id}"]`).evaluate((dial, all) => {
    const field = dial.querySelector<HTMLInputElement>('input[type="range"]')!;
    const edges = (kind: string): number[] =>
      [...dial.querySelectorAll(`.rule-${kind}`)].flatMap((mark) => {
        const { left, right } = mark.getBoundingClientRect();
        return [left, right];
      });
    return all.map((value) => {
      field.value = String(value);
      field.dispatchEvent(new Event('input', { bubbles: true }));
      const [left, right] = edges('reference');
      const [usual, beyond, change] = ['usual', 'beyond', 'change'].map(edges);
      return { usual, beyond, change, reference: [(left + right) / 2] };
    });
  }, values);

test('usual range, hatch, wedge and bar of every rule stand where the thumb stands for their values', async () => {
  const wrong: string[] = [];
  // One slider at a time, of all five: on a tablet the second dials have steps and no slider for a finger.
  await page.setViewportSize(SCREENS.phone);
  for (const { id, min, max, step, neutral, usualMin, usualMax } of EDGE_DIALS.slice(0, DIALS.length)) {
    const values = [0.1, 0.3, 0.45, 0.7, 0.95].map((share) => Math.round((min + (max - min) * share) / step) * step);
    await page
      .locator('.pick button')
      .nth(DIALS.findIndex((dial) => dial.id === id))
      .click();
    const thumb = await findThumb(id);
    (await marksFor(id, values)).forEach((marks, i) => {
      const wanted: Record<keyof typeof marks, number[]> = {
        usual: [usualMin, usualMax],
        beyond: [min, usualMin, usualMax, max],
        change: [Math.min(neutral, values[i]), Math.max(neutral, values[i])],
        reference: [neutral],
      };
      for (const kind of ['usual', 'beyond', 'change', 'reference'] as const) {
        const off = wanted[kind].map((value, edge) => Math.abs(marks[kind][edge] - thumb(value)));
        if (!off.every((px) => px < 2)) wrong.push(`${id}, ${kind} at ${values[i]}: off by ${off.join(', ')} px`);
      }
    });
  }
  expect(wrong).toEqual([]);
});

describe('time', () => {
  test('the swing plays at the speed that is written on the button', async () => {
    const speeds = [
      ['1/1', 'Real speed', 1],
      ['1/4', 'Quarter speed', 1 / 4],
      ['1/10', 'Tenth speed', 1 / 10],
    ] as const;
    for (const [text, spoken, share] of speeds) {
      const button = page.getByRole('button', { name: spoken });
      expect(await button.innerText()).toBe(text);
      await button.click();
      expect(await button.getAttribute('aria-pressed')).toBe('true');
      await page.getByRole('slider', { name: 'Time in the swing' }).press('Home');
      // Seconds of the swing in a second of the clock, over a third of a second.
      const rate = await page.evaluate(async () => {
        const { slantwiseProbe } = globalThis as unknown as { slantwiseProbe: () => DeskLook };
        const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));
        const press = (name: string): void => document.querySelector<HTMLElement>(`[aria-label="${name}"]`)!.click();
        press('Play');
        const from = { clock: await frame(), t: slantwiseProbe().session.t };
        let clock = from.clock;
        while (clock - from.clock < 333) clock = await frame();
        const { t, playing } = slantwiseProbe().session;
        press('Pause');
        return playing ? (1000 * (t - from.t)) / (clock - from.clock) : NaN;
      });
      expect(rate, text).toBeGreaterThan(share / 2);
      expect(rate, text).toBeLessThan(share * 2);
    }
  });

  test('on the time rail the right arrow goes on and the left arrow goes back', async () => {
    const rail = page.getByRole('slider', { name: 'Time in the swing' });
    const at = async (key: string): Promise<number> => {
      await rail.press(key);
      return (await look(page)).session.t;
    };
    const start = (await look(page)).session.t;
    const on = [await at('ArrowRight'), await at('ArrowRight')];
    expect(on[0]).toBeGreaterThan(start);
    expect(on[1]).toBeGreaterThan(on[0]);
    const back = [await at('ArrowLeft'), await at('ArrowLeft'), await at('ArrowLeft')];
    expect(back[1]).toBeCloseTo(start, 6);
    expect(back[2]).toBeLessThan(start);
    expect(await at('Home')).toBeLessThan(await at('End'));
  });
});

test('each view is looked at from where its button says', async () => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const from = async (name: string) => {
    await page.getByRole('button', { name, exact: true }).click();
    await drawn(page);
    return findEye(page);
  };
  // From the ball's side, the target to the right.
  const front = await from('Face on');
  expect(front.back[2]).toBeGreaterThan(0.99);
  expect(front.right[0]).toBeGreaterThan(0.99);
  // Against the target, the ball to the right.
  const line = await from('Down the line');
  expect(line.back[0]).toBeLessThan(-0.99);
  expect(line.right[2]).toBeGreaterThan(0.99);
  const above = await from('Overhead');
  expect(above.back[1]).toBeGreaterThan(0.99);
  expect(above.right[0]).toBeGreaterThan(0.99);
  // At address, as one sees it: down at the ball, the target to the left.
  await page.getByRole('slider', { name: 'Time in the swing' }).press('Home');
  const eyes = await from("Player's eyes");
  const head = (await look(page)).drawnFigure.slice(PART.headEgg * MATRIX_SIZE + 9).slice(0, 3);
  // A hand's breadth above and beside his own, so that his hands come into the picture.
  expect(Math.hypot(...eyes.at.map((at, i) => at - head[i]))).toBeLessThan(0.4);
  expect(eyes.back[1]).toBeGreaterThan(0.7);
  expect(eyes.right[0]).toBeLessThan(-0.99);
  // And so all the way down, also where the head comes over the hands.
  for (const plate of ['Lead arm parallel', 'Shaft parallel']) {
    await page.getByRole('button', { name: plate, exact: true }).click();
    await drawn(page);
    expect((await findEye(page)).right[0]).toBeLessThan(-0.99);
  }
  const free = await from('Free');
  expect(free.back[0]).toBeLessThan(-0.5);
  expect(free.back[2]).toBeGreaterThan(0.5);
  await page.emulateMedia({ reducedMotion: null });
});

describe('typed values', () => {
  test('a joint on the bench bends by the degrees typed, and moves by the centimetres', async () => {
    await openDrawer(page, 'joints');
    const type = async (name: string, value: number): Promise<readonly number[]> => {
      await page.getByRole('spinbutton', { name }).fill(String(value));
      await drawn(page);
      return (await look(page)).drawn!;
    };
    const axes = (pose: readonly number[], at: number): readonly number[] => pose.slice(at, at + 9);
    const [open, closed] = [await type('Chest open, degrees', 10), await type('Chest open, degrees', -15)];
    // The trace of a rotation is one and twice the cosine of its angle.
    const a = axes(open, AT.thoraxAxes);
    const trace = axes(closed, AT.thoraxAxes).reduce((sum, value, i) => sum + value * a[i], 0);
    expect((Math.acos((trace - 1) / 2) * 180) / Math.PI).toBeCloseTo(25, 6);
    expect(axes(closed, AT.trunkAxes)).toEqual(axes(open, AT.trunkAxes));
    // Opening takes the lead shoulder away from the ball.
    expect(open[AT.leadShoulder + 2]).toBeLessThan(closed[AT.leadShoulder + 2]);
    const [near, far] = [
      await type('Hips to the target, centimetres', 2),
      await type('Hips to the target, centimetres', 9),
    ];
    expect(far[AT.pelvis] - near[AT.pelvis]).toBeCloseTo(0.07, 9);
    expect(far[AT.pelvis + 1]).toBe(near[AT.pelvis + 1]);
  });

  test('inches, feet, miles and kilometres an hour are taken for what they are', async () => {
    const type = async (label: string | RegExp, text: string): Promise<void> => {
      await page.getByLabel(label, { exact: true }).fill(text);
      await page.getByLabel(label, { exact: true }).press('Enter');
    };
    const choose = (name: string): Promise<void> =>
      page.getByRole('radio', { name, exact: true }).check({ force: true });
    await openDrawer(page, 'setUp/Units');
    await choose('inches');
    await choose('mph');
    await showSection(page, 'Player');
    expect(await page.getByLabel('Height', { exact: true }).inputValue()).toBe(`5'10"`);
    await showSection(page, 'Bands');
    await type('Highest, above is plus', '1');
    await showSection(page, 'Top and tempo');
    await type('Hand depth', '−2');
    const { bands, setUp } = (await look(page)).document;
    expect(bands.leadArmParallel.highCm).toBeCloseTo(2.54, 6);
    expect(setUp.handDepthCm).toBeCloseTo(-5.08, 6);

    await openDrawer(page, 'ball');
    await type('Wind with the shot, against is minus', '10');
    await type('Height above the sea', '1000');
    const { ball } = (await look(page)).document;
    expect(ball.tailWindMps).toBeCloseTo(4.4704, 4);
    expect(ball.altitudeM).toBeCloseTo(304.8, 4);

    await openDrawer(page, 'setUp/Units');
    await choose('km/h');
    // Last: these two have another swing worked out.
    await showSection(page, 'Club');
    await page.getByRole('combobox', { name: 'Club', exact: true }).selectOption({ label: 'My club' });
    await type('Length', '38');
    await showSection(page, 'Player');
    await type('Height', '72');
    const { club, player } = (await look(page)).document;
    expect(club.my!.lengthM).toBeCloseTo(0.9652, 6);
    expect(player.statureM).toBeCloseTo(1.8288, 6);
    await openDrawer(page, 'ball');
    // Meanwhile the drawer may say that there is no swing yet.
    await expect.poll(async () => (await look(page)).status, { timeout: 20_000 }).toBe('ready');
    await type('Wind with the shot, against is minus', '36');
    expect((await look(page)).document.ball.tailWindMps).toBeCloseTo(10, 4);
  });
});
