import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { afterEach, expect } from 'vitest';
import { isServerAway, visitOnce } from './offlineMode';

/** What any page of any test did against the rules: asked another host, or ran into the content policy. */
const strays: string[] = [];

/** Takes what has been noted: for the tests that break the rules on purpose. Anything left over fails the test. */
export const takeStrays = (): string[] => strays.splice(0);

afterEach(() => {
  expect(takeStrays(), 'requests to other hosts and violations of the content policy').toEqual([]);
});

/**
 * Watches every page of every context that this browser opens, whoever opens it. The worker that fills the offline cache stays out
 * unless asked for: it would fetch the whole app once more beside every test.
 */
export function guard(browser: Browser): Browser {
  const open = browser.newContext.bind(browser);
  browser.newContext = async (options: BrowserContextOptions = {}) => {
    const context = await open({
      serviceWorkers: 'block',
      ...options,
      ...(isServerAway ? { serviceWorkers: 'allow' } : {}),
    });
    await watchOver(context);
    await visitOnce(context);
    return context;
  };
  return browser;
}

async function watchOver(context: BrowserContext): Promise<void> {
  context.on('request', (request) => {
    const url = request.url();
    if (/^(http|ws)s?:/.test(url) && new URL(url).hostname !== 'localhost') strays.push(url);
  });
  await context.exposeBinding('noteStray', (_, text: string) => void strays.push(text));
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) => {
      const { noteStray } = globalThis as unknown as { noteStray: (text: string) => void };
      noteStray(`${effectiveDirective}: ${blockedURI}`);
    });
  });
}
