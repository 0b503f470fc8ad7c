import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { DRAW_NOTHING, openDesk } from './deskPage';
import { startOver } from './startOver';
import { launch, SCREENS } from './support';

/** The browser and the page that the tests of a file share. Both are there once the first of them begins. */
export interface SharedDesk {
  readonly browser: Browser;
  readonly page: Page;
}

/**
 * One page for all tests of a file: each starts on a tablet's desk on which everything was undone and no drawer is open, and none may
 * leave an error. Its frames fill no pixel.
 */
export function shareDesk(options: Partial<Parameters<typeof openDesk>[1]> = {}): SharedDesk {
  let browser: Browser | undefined;
  let visit: Awaited<ReturnType<typeof openDesk>>;
  beforeAll(async () => {
    browser = await launch();
    visit = await openDesk(browser, { init: [DRAW_NOTHING], ...options });
  });
  beforeEach(async () => {
    await visit.page.setViewportSize(SCREENS.tablet);
    await startOver(visit.page);
  });
  afterEach(() => expect(visit.witness.errors).toEqual([]));
  afterAll(() => browser?.close());
  return {
    get browser() {
      return browser!;
    },
    get page() {
      return visit.page;
    },
  };
}
