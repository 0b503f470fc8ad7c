import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { browserFlags } from '../../.config/browser.mjs';
import { awayAddress, isLookForWorker, prepareAway } from './offlineMode';
import { guard } from './guard';

/** The four sizes every screen is looked at, in CSS pixels. */
export const SCREENS = {
  tablet: { width: 1180, height: 820 },
  'upright tablet': { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
  laptop: { width: 1440, height: 900 },
} as const;

/** What a page did that a test may object to, collected from before its first byte. */
export type Witness = {
  /** Console errors and uncaught exceptions, in order. */
  readonly errors: string[];
  /** Every address the page asked for, answered or not. */
  readonly requests: string[];
  /** Violations of the content security policy: directive and what was blocked. */
  readonly violations: string[];
};

export type Visit = {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly witness: Witness;
};

/** Address of the built app, with its trailing slash. */
export const appAddress = (): string => awayAddress() ?? inject('address');

/** Starts the browser that the set-up found. Close it in `afterAll`: `() => browser?.close()`, for when it never started. */
export async function launch(flags: readonly string[] = []): Promise<Browser> {
  const obstacle = inject('obstacle');
  if (obstacle) throw new Error(`There is nothing to test in a browser. ${obstacle}`);
  await prepareAway();
  return guard(
    await chromium.launch({
      executablePath: inject('browserPath'),
      args: [...browserFlags, ...flags],
    }),
  );
}

/**
 * Opens the built app (or `path` below it) in a fresh context: nothing stored, tablet size unless said otherwise. `init` run in
 * the page before anything of it.
 * Resolves when the page has loaded; wait for what you need to see yourself. Close `context` when done.
 */
export async function open(
  browser: Browser,
  options: BrowserContextOptions & {
    path?: string;
    init?: readonly (() => void)[];
  } = {},
): Promise<Visit> {
  const { path = '', init = [], ...contextOptions } = options;
  const context = await browser.newContext({
    viewport: SCREENS.tablet,
    ...contextOptions,
  });
  const page = await context.newPage();
  const witness = await watch(page);
  for (const script of init) await page.addInitScript(script);
  await page.goto(new URL(path, appAddress()).href);
  return { page, context, witness };
}

/** Starts collecting on a page that has not navigated yet. */
export async function watch(page: Page): Promise<Witness> {
  const witness: Witness = { errors: [], requests: [], violations: [] };
  page.on('console', (message) => {
    if (message.type() !== 'error' || isLookForWorker(message.text(), message.location().url)) return;
    witness.errors.push(`${message.text()} at ${message.location().url}`);
  });
  page.on('pageerror', (error) => witness.errors.push(error.stack ?? error.message));
  page.on('crash', () => witness.errors.push('the page crashed'));
  page.context().on('request', (request) => witness.requests.push(request.url()));
  page.on('websocket', (socket) => witness.requests.push(socket.url()));
  await page.exposeFunction('reportViolation', (text: string) => void witness.violations.push(text));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) => {
      const { reportViolation } = globalThis as unknown as {
        reportViolation: (text: string) => void;
      };
      reportViolation(`${effectiveDirective}: ${blockedURI}`);
    });
  });
  return witness;
}

/** The requests that left the app's own origin. data: and blob: never leave the page. */
export const offOrigin = ({ requests }: Witness): string[] => {
  const { origin } = new URL(appAddress());
  return requests.filter((url) => !/^(data|blob):/.test(url) && new URL(url).origin !== origin);
};
