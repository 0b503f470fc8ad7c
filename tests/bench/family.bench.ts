import type { Page } from 'playwright-core';
import { rad } from '../../src/math/angle';
import { DEFAULT_ARM_ANGLE } from '../../src/reading/checkpoints';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { solveFamily } from '../../src/solving/family/family';
import { createReferenceBook } from '../../src/solving/rule/players';
import { solveRule } from '../../src/solving/rule/solveRule';
import type { Rule } from '../../src/solving/rule/rule';
import { createRandom } from '../reference/random';
import { fullReadings, randomMovements, randomReference } from '../reference/solvingPlayers';
import { withMovements } from '../../src/reading/swing';
import { createMeter, dragAlong, nextFrame } from './drag';
import { quantile, type Row, type Session } from './table';

export const name = 'families and rules';

const COUNT = 24;
const random = createRandom(81);
const pictures = Array.from({ length: COUNT }, () => {
  const swing = randomReference(random);
  const [gap, depth] = fullReadings(withMovements(swing, randomMovements(random)));
  return {
    swing,
    seen: { leadArmParallel: { value: gap, plusMinus: 0.015 }, shaftParallel: { value: depth, plusMinus: 0.02 } },
  };
});

const rule: Rule = {
  who: {},
  when: [{ kind: 'verdict', at: 'leadArmParallel', verdict: 'steep' }],
  change: [{ id: 'leadWristFlexion', by: rad(10) }],
  expect: [{ kind: 'verdict', at: 'leadArmParallel', verdict: 'onPlane' }],
};
const TRIALS = 10_000;

export async function run({ put, quick, withPage }: Session): Promise<void> {
  for (const picture of pictures) solveFamily({ ...picture, count: 9 });
  const times = pictures
    .map((picture) => {
      const start = performance.now();
      solveFamily({ ...picture, count: 9 });
      return performance.now() - start;
    })
    .toSorted((a, b) => a - b);
  put(
    { what: 'family of nine', value: times[COUNT >> 1], unit: 'ms', goal: 'at most 150' },
    { what: 'family of nine, a slow one', value: times[Math.floor(0.95 * COUNT)], unit: 'ms' },
  );
  const seconds = (trials: number): number => {
    const start = performance.now();
    solveRule({ of: rule, seed: 1, bands: DEFAULT_BANDS, armAngle: DEFAULT_ARM_ANGLE, trials }, createReferenceBook());
    return (performance.now() - start) / 1000;
  };
  // One processor does what the page gives to two workers. In the quick bench the page's row stands for both.
  if (!quick) {
    put(
      { what: 'a rule tried 10,000 times', value: seconds(TRIALS), unit: 's', goal: 'at most 10' },
      { what: 'a rule tried 1,000 times', value: seconds(TRIALS / 10), unit: 's' },
    );
  }
  await withPage(async ({ address, page }) => put(...(await measureInPage(page, address))));
}

/** About as many as the trials last. */
const DRAG_STEPS = 8;

/** Ten thousand trials by two workers, and a slider that is dragged meanwhile: from each step to its frame. */
async function measureInPage(page: Page, address: string): Promise<Row[]> {
  await page.goto(address);
  await page.locator('canvas').first().waitFor();
  await page.evaluate(() => document.getElementById('tab-rule')!.click());
  await page.getByLabel('Rule', { exact: true }).selectOption('On plane at lead arm is on plane at shaft');
  const slider = page.locator('[data-dial="leadWristFlexion"] input[type=range]');
  const meter = await createMeter(page);
  const shares = Array.from({ length: DRAG_STEPS }, (_, i) => 0.5 + 0.25 * Math.sin(i / 4));
  const trials = page.evaluate(async () => {
    const done = (): boolean =>
      document.querySelector('.rule-result')?.textContent.includes('Load on the desk') ?? false;
    const start = performance.now();
    document.querySelector<HTMLElement>('.rule-try')!.click();
    while (done() || document.querySelector('.rule-try')) await new Promise((next) => setTimeout(next, 20));
    while (!document.querySelector('.rule-try')) await new Promise((next) => setTimeout(next, 20));
    return (performance.now() - start) / 1000;
  });
  const { clock } = await dragAlong(slider, meter, shares, () => nextFrame(slider));
  return [
    { what: 'a slider dragged meanwhile, nine of ten', value: quantile(clock, 0.9), unit: 'ms', goal: 'at most 50' },
    { what: 'a rule tried 10,000 times in the page', value: await trials, unit: 's', goal: 'at most 10' },
  ];
}
