import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createPlacement } from '../../src/figure/partIds';
import { createFigure, type Figure } from '../../src/figure/figure';
import { placeFigure } from '../../src/figure/place';
import { heelLiftAt, placeBall } from '../../src/figure/stance';
import { createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { DIALS } from '../../src/model/movements';
import { swingPose } from '../../src/reading/swing';
import { findShipped } from '../../src/solving/reference/shipped';
import { current, currentPose, DEFAULT_DOCUMENT, desk, dialValue, EDGE_DIALS } from '../../src/store';
import type { DeskLook } from '../../src/store/desk/probe';
import { dialWords } from '../../src/words/swing/edgeDials';
import { sayCheckpoint } from '../../src/words';
import { MEASURED } from '../../src/words/numbers/units';
import { createRandom } from '../reference/random';
import { ready } from './deskPage';
import { appAddress, launch, watch } from './support';
import { acts, doAct, readPage, type PageRead } from './fuzzActs';

/** Longer, or a walk again: FUZZ_STEPS=20000 FUZZ_SEED=7 npm run test:browser -- tests/browser/fuzz.test.ts */
const STEPS = Number(process.env['FUZZ_STEPS'] ?? 300);
/** A new walk every time; where changes are let in or not, the same one, so that the answer depends on the change alone. */
const SEED = Number(process.env['FUZZ_SEED'] ?? (process.env['CI'] ? 1 : Date.now() % 1_000_000));
console.log(`fuzz: ${STEPS} steps, FUZZ_SEED=${SEED}`);
/** A longer run is several walks, each with the next seed: undo leads back over so many steps. */
const LONGEST_WALK = 1000;
/**
 * The worst a pose may differ between this engine and the browser's, m or 1. Their sines differ in the last digit. Where a search had
 * a hand in it (a player who is not shipped; the arms from shaft parallel on) a last digit moves where it stops: by how much is
 * tests/property/delivery-noise.test.ts, whose limits these are. Within one engine everything is compared exactly.
 */
const SAME = { computed: 1e-9, searched: 1e-4, closest: 5e-3 } as const;
/** Small windows, cheap to draw: the phone's way of laying out the desk, and the tablet's. */
const WINDOWS = {
  phone: { width: 390, height: 640 },
  tablet: { width: 1024, height: 640 },
} as const;

let browser: Browser | undefined;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/**
 * Takes the painting out of drawing: scene, matrices and frames run as ever, but no pixel is filled. Pixels are other tests'
 * matter, and software that fills them would take nine tenths of this one's time.
 */
function drawNothing(): void {
  for (const name of ['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced', 'clear'])
    Reflect.set(WebGL2RenderingContext.prototype, name, () => {});
}

let figure: { readonly of: unknown; readonly it: Figure } | undefined;
const placement = createPlacement();
const scratch = createPose();
const ball = new Float64Array(3);

/** Where every part of the figure has to stand, by the engine at hand. */
function placeOurs(t: number): Float64Array {
  const { body, club, swing, referenceSwing } = current();
  if (figure?.of !== body) figure = { of: body, it: createFigure(body, club) };
  swingPose(referenceSwing, referenceSwing.reference.times[K.impact], scratch);
  placeBall(club, scratch, ball);
  placeFigure(figure.it, currentPose(), { ballPoint: ball, heelLift: heelLiftAt(swing, t) }, placement);
  return placement;
}

/** The largest difference of two rows of numbers, and infinity when they are not alike at all. */
const apart = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  a.length === b.length ? Math.max(...Array.from(a, (value, i) => Math.abs(value - b[i]))) : Infinity;

/** Slider, drawn pose, shown numbers and stored document, compared with a desk of our own that was given the stored document. */
function compare({ probe, stored, poseOfStored, sliders, values, typing, plates }: PageRead): string[] {
  const wrong: string[] = [];
  const { document, session } = probe;
  if (stored !== JSON.stringify(document)) wrong.push(`stored ${stored}, held ${JSON.stringify(document)}`);
  desk.setState({ document: JSON.parse(stored ?? 'null') as DeskLook['document'], session, gesture: null });

  // Those of the pelvis stand in the set-up, while it turns on its own.
  const isPelvisThere = session.drawer === 'setUp' && document.movements.pelvis !== null;
  const dials = EDGE_DIALS.slice(0, isPelvisThere ? EDGE_DIALS.length : DIALS.length).map(({ id }) => id);
  if (Object.keys(sliders).toSorted().join() !== dials.toSorted().join())
    wrong.push(`sliders of ${Object.keys(sliders).join()}, not of ${dials.join()}`);
  for (const id of dials) {
    const value = dialValue(document.movements, id);
    if (sliders[id] !== value) wrong.push(`slider ${id} ${sliders[id]}, stored ${value}`);
    const { short } = dialWords(id, value, document.units);
    if (values[id] !== short && !typing.includes(id)) wrong.push(`shown ${id} "${values[id]}", not "${short}"`);
  }
  const ours = current();
  if (JSON.stringify(probe.drawn) !== JSON.stringify(poseOfStored)) wrong.push('drawn pose is not the stored one');
  const isAdapted = session.t > (ours.positions.P6 ?? 0);
  const isClosest = 'status' in ours.delivery && ours.delivery.status === 'closest';
  const isShipped = findShipped(ours.body, ours.club) !== undefined;
  const same = SAME[isAdapted && isClosest ? 'closest' : isAdapted || !isShipped ? 'searched' : 'computed'];
  const poses = apart(currentPose(), poseOfStored);
  if (!(poses <= same)) wrong.push(`pose differs from ours by ${poses}`);
  const parts = apart(placeOurs(session.t), probe.drawnFigure);
  if (!(parts <= same)) wrong.push(`drawn figure differs from ours by ${parts}`);
  (['leadArmParallel', 'shaftParallel'] as const).forEach((id, i) => {
    const { word, why, number, unit, where } = sayCheckpoint(id, ours.checkpoints[id], probe.bands, document.units);
    // Word, number and side stand in elements of their own, without a space between them.
    const said = number === '' ? word : `${word}${number} ${unit}${where}`;
    // While a mark of what was seen is being moved on a plate, the mark stands in place of the model's number, and says whose it is.
    const isSeen = plates[i]?.includes(MEASURED) === true;
    if (!plates[i]?.includes(word) || !(isSeen || plates[i].includes(said)))
      wrong.push(`plate says "${plates[i]}", should say "${word}", "${why}"`);
  });
  return wrong.slice(0, 5);
}

async function run(page: Page, steps: number, seed: number): Promise<void> {
  const chance = createRandom(seed);
  const trail: string[] = [];
  for (let i = 0; i < steps; i++) {
    trail.push(await doAct(page, acts[Math.floor(chance() * acts.length)], chance));
    const wrong = compare(await readPage(page));
    if (wrong.length > 0)
      throw new Error(`seed ${seed}, step ${i}: ${wrong.join('; ')}\nafter ${trail.slice(-8).join(' > ')}`);
  }
}

/** One walk from a fresh page and back by undo. */
async function walk(size: keyof typeof WINDOWS, steps: number, seed: number): Promise<void> {
  const context = await browser!.newContext({ viewport: WINDOWS[size], reducedMotion: 'reduce' });
  const page = await context.newPage();
  const witness = await watch(page);
  await page.addInitScript(drawNothing);
  await page.goto(`${appAddress()}?probe`);
  await ready(page);
  await run(page, steps, seed);
  const undoAll = await page.evaluate(async () => {
    const button = document.querySelector<HTMLButtonElement>('.turn')!;
    let count = 0;
    while (button.getAttribute('aria-disabled') !== 'true' && count < 1e5) {
      button.click();
      count++;
      // React shows what a click did when the script pauses.
      await Promise.resolve();
    }
    return count;
  });
  const { probe } = await readPage(page);
  expect(probe.document, `after ${undoAll} undos`).toEqual(DEFAULT_DOCUMENT);
  expect(witness.errors).toEqual([]);
  await context.close();
}

for (let begun = 0; begun < STEPS; begun += LONGEST_WALK) {
  const seed = SEED + begun / LONGEST_WALK;
  const steps = Math.min(LONGEST_WALK, STEPS - begun);
  const onPhone = Math.round(steps * 0.75);
  // Two at a time: a walk spends half of its time waiting for frames. Comparing is done in one go, so they share a desk of our own.
  describe('slider, drawn pose, shown number and stored document agree after each', () => {
    test.concurrent.each([
      [onPhone, 'phone'],
      [steps - onPhone, 'tablet'],
    ] as const)(
      `of %d random actions on a %s (seed ${seed})`,
      (some, size) => walk(size, some, seed),
      Math.max(600_000, steps * 3000),
    );
  });
}
