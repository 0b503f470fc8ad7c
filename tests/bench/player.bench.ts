import { planText } from '../browser/planLink';
import { SLOW, slowDown } from './slowed';
import { quantile, type Session } from './table';

export const name = 'player';

const OPENINGS = { full: 3, quick: 1 } as const;
const PATIENCE_MS = 60_000;

/** Runs in the page before anything else: when the first figure stood on it, and when the 3D picture took its place, ms. */
function lookForFigures(): void {
  const seen: { sticks?: number; picture?: number } = {};
  Object.assign(globalThis, { seen });
  const look = new MutationObserver(() => {
    if (seen.sticks === undefined && document.querySelector('.twins-sticks svg path'))
      requestAnimationFrame(() => (seen.sticks = performance.now()));
    if (document.querySelector('.twins-canvas canvas') && !document.querySelector('.twins-sticks')) {
      look.disconnect();
      requestAnimationFrame(() => (seen.picture = performance.now()));
    }
  });
  look.observe(document, { subtree: true, childList: true });
}

interface Seen {
  readonly sticks: number;
  readonly picture: number;
}

/** The player's page from a link, on a slow phone. */
export const run = ({ quick, withPage, put }: Session): Promise<void> =>
  withPage(async ({ address, newVisitor, page: first }) => {
    await first.context().close();
    const all: Seen[] = [];
    for (let i = 0; i < OPENINGS[quick ? 'quick' : 'full']; i++) {
      const page = await newVisitor();
      await page.setViewportSize({ width: 390, height: 844 });
      await slowDown(page);
      await page.addInitScript(lookForFigures);
      await page.goto(`${address}#${planText()}`, { waitUntil: 'commit' });
      await page.waitForFunction(
        (what) => (globalThis as unknown as { seen: Partial<Seen> }).seen[what] !== undefined,
        quick ? ('sticks' as const) : ('picture' as const),
        { timeout: PATIENCE_MS },
      );
      all.push(await page.evaluate(() => (globalThis as unknown as { seen: Seen }).seen));
      await page.context().close();
    }
    const median = (of: keyof Seen): number =>
      quantile(
        all.map((one) => one[of]),
        0.5,
      );
    put({
      what: `${SLOW}: first picture of the player's page`,
      value: median('sticks'),
      unit: 'ms',
      goal: 'at most 3000',
    });
    if (!quick) put({ what: 'the same, until both figures stand in 3D', value: median('picture'), unit: 'ms' });
  });
