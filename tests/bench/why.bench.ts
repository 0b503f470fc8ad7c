import type { Page } from 'playwright-core';
import { createMeter, dragAlong, nextFrame, type Meter } from './drag';
import { quantile, type Row, type Session } from './table';

export const name = 'why, in the page';

const OPENINGS = 3;
const QUICK_OPENINGS = 1;
/** The drawers of why get ready when a page has stood for a moment, ms. */
const REST_MS = 5000;
const STEPS = 11;
const QUICK_STEPS = 3;
const DRAG_STEPS = 40;
const QUICK_DRAG_STEPS = 12;

/** Runs in the page: what it takes to change a slider and to notice that an answer stands in the document. */
function equip(): void {
  /** Milliseconds from `act` until `isThere` holds, looked at whenever the document changes. */
  const timeUntil = (act: () => void, isThere: () => boolean): Promise<number> =>
    new Promise((done) => {
      const start = performance.now();
      const watch = new MutationObserver(() => {
        if (!isThere()) return;
        watch.disconnect();
        done(performance.now() - start);
      });
      watch.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
      act();
    });
  /** Sets a native slider the way a finger does. React hears only of values that are set past its own setter. */
  const slide = (dial: string, value: number): void => {
    const input = document.querySelector<HTMLInputElement>(`[data-dial="${dial}"] input`)!;
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!.call(input, String(value));
    input.dispatchEvent(new Event('input', { bubbles: true }));
  };
  Object.assign(globalThis, { timeUntil, slide });
}
declare const timeUntil: (act: () => void, isThere: () => boolean) => Promise<number>;
declare const slide: (dial: string, value: number) => void;

/** From the tap on its tab to the first outline, on a page that has stood for `restMs`. */
async function openMap(page: Page, address: string, restMs: number): Promise<number> {
  await page.goto(address);
  await page.locator('canvas').first().waitFor();
  await page.waitForTimeout(restMs);
  await page.locator('#tab-ledger').click();
  await page.locator('#part-map').waitFor();
  return page.evaluate(() =>
    timeUntil(
      () => document.getElementById('part-map')!.click(),
      () => document.querySelector('.map-arm') !== null,
    ),
  );
}

/** After a step of a third slider: the first outline, and the whole map, both from the step on. */
const redrawMap = (page: Page, times: number): Promise<{ first: number; whole: number }[]> =>
  page.evaluate(async (steps) => {
    const outline = (): string | null => document.querySelector('.map-arm')?.getAttribute('d') ?? null;
    const laps: { first: number; whole: number }[] = [];
    for (let i = 0; i < steps; i++) {
      const before = outline();
      let whole: Promise<number> | undefined;
      const first = await timeUntil(
        () => {
          whole = timeUntil(
            () => slide('trailSideBend', i % 2 ? 3 : -3),
            () => outline() !== before && !document.querySelector('.map-frame[data-busy]'),
          );
        },
        () => outline() !== before,
      );
      laps.push({ first, whole: await whole! });
    }
    return laps;
  }, times);

/** From a step of a slider to the new answer of the open drawer. `answer` is what changes when it is there. */
const timeAnswers = (
  page: Page,
  times: number,
  answer: string,
  busy: string,
  dial: string,
  values: readonly [number, number],
) =>
  page.evaluate(
    async ([where, waiting, id, ends, steps]) => {
      const text = (): string => document.querySelector(where)?.textContent ?? '';
      const laps: number[] = [];
      for (let i = 0; i < steps; i++) {
        const before = text();
        laps.push(
          await timeUntil(
            () => slide(id, ends[i % 2]),
            () => text() !== before && (waiting === '' || !document.querySelector(waiting)),
          ),
        );
      }
      return laps;
    },
    [answer, busy, dial, values, times] as const,
  );

/** From letting go of a mark on the first plate, three or four centimetres above the line, to what would look like it. */
const timeSightings = (page: Page, times: number): Promise<number[]> =>
  page.evaluate(async (steps) => {
    const text = (): string => document.querySelector('.explanations')?.textContent ?? '';
    const press = (key: string): boolean =>
      document
        .querySelector('.plate-sight-handle')!
        .dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    const mark = (cm: number): void => {
      for (let i = 0; i < cm; i++) press('PageUp');
    };
    const laps: number[] = [];
    // The first opens the drawer.
    for (let i = 0; i <= steps; i++) {
      const before = text();
      mark(3 + (i % 2));
      const lap = await timeUntil(
        () => press('Enter'),
        () => text() !== '' && text() !== before,
      );
      if (i > 0) laps.push(lap);
    }
    return laps;
  }, times);

/**
 * A step of a slider while every step starts the map anew: the side tilt is on neither of its axes. The next step comes two
 * frames later, in the middle of the work.
 */
const dragOverMap = async (page: Page, meter: Meter, steps: number): Promise<number[]> => {
  const slider = page.locator('[data-dial="trailSideBend"] input[type=range]');
  const shares = Array.from({ length: steps }, (_, i) => 0.5 + 0.25 * Math.sin(i / 4));
  const { clock } = await dragAlong(slider, meter, shares, () => nextFrame(slider));
  return clock;
};

const open = (page: Page, tab: string): Promise<void> =>
  page.evaluate((id) => document.getElementById(id)!.click(), tab);

/** The median and the value that nine of ten stay below, ms; the goal is for the median. */
const spread = (what: string, values: readonly number[], goal?: string): Row[] => [
  { what: `${what}, median`, value: quantile(values, 0.5), unit: 'ms', goal },
  { what: `${what}, nine of ten`, value: quantile(values, 0.9), unit: 'ms' },
];

export const run = ({ quick, withPage, put }: Session): Promise<void> =>
  withPage(async ({ address, page }) => {
    const steps = quick ? QUICK_STEPS : STEPS;
    const dragSteps = quick ? QUICK_DRAG_STEPS : DRAG_STEPS;
    const openings = async (restMs: number): Promise<number[]> => {
      const laps: number[] = [];
      for (let i = 0; i < (quick ? QUICK_OPENINGS : OPENINGS); i++) laps.push(await openMap(page, address, restMs));
      return laps;
    };
    await page.addInitScript(equip);
    if (!quick) put(...spread('map, first outline after a tap on its tab before anything else', await openings(0)));
    put(...spread('map, first outline after a tap on its tab', await openings(REST_MS), 'at most 100'));
    await page.locator('.map-frame:not([data-busy]) .map-arm').waitFor({ state: 'attached' });
    const maps = await redrawMap(page, steps);
    const [first, whole] = [maps.map((lap) => lap.first), maps.map((lap) => lap.whole)];
    put(
      ...spread('map, first outline after a step of a slider', first, 'at most 100'),
      ...spread('map, all 64 x 64 after a step of a slider', whole, 'at most 600'),
    );
    const meter = await createMeter(page);
    const firstDrag = await dragOverMap(page, meter, dragSteps);
    put(...spread('script a slider step while the map is worked out, first drag', firstDrag, 'at most 16'));
    const drag = await dragOverMap(page, meter, dragSteps);
    put(...spread('script a slider step while the map is worked out', drag, 'at most 16'));
    await open(page, 'tab-ledger');
    if (!quick) put(...spread('the same step with no drawer open', await dragOverMap(page, meter, dragSteps)));
    if (!quick) {
      await open(page, 'tab-ledger');
      await page.locator('.why-lead').waitFor();
      const ledger = await timeAnswers(page, steps, '.why-lead', '', 'leadWristFlexion', [-20, 20]);
      put(...spread('ledger after a step of a slider', ledger));
    }
    // A swing with something to change.
    await page.evaluate(() => {
      slide('trailSideBend', 0);
      slide('leadWristFlexion', -20);
    });
    await open(page, 'tab-plan');
    await page.locator('.plan-table').waitFor();
    const busy = '.change-plan[data-busy]';
    const plan = await timeAnswers(page, steps, '.plan-moves', busy, 'leadWristFlexion', [-24, -20]);
    put(...spread('change plan after a step of a slider', plan, 'at most 120'));
    put(...spread('explanations after a mark on a plate', await timeSightings(page, steps), 'at most 120'));
  });
