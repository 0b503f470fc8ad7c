import type { RunOptions } from 'axe-core';
import axe from 'axe-core';
import type { Page } from 'playwright-core';

/**
 * What the checker finds wrong in these parts of a page: each broken rule with what breaks it. The checker comes into a page once,
 * and runs there alone: no page of the app has frames whose findings would have to be gathered.
 */
export async function findFaults(page: Page, parts: readonly string[], options: RunOptions = {}): Promise<string[]> {
  if (page.frames().length > 1) throw new Error('The checker does not look into frames.');
  const isThere = await page.evaluate(() => 'axe' in globalThis);
  // With a value of its own at the end: what the source itself ends with would be sent over.
  if (!isThere) await page.evaluate(`${axe.source}; true`);
  return page.evaluate(
    async ({ include, how }) => {
      const { axe: checker } = globalThis as unknown as { axe: typeof axe };
      const { violations } = await checker.run({ include }, { ...how, resultTypes: ['violations'] });
      return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`));
    },
    { include: parts.map((part) => [part]), how: options },
  );
}
