import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { resolveBrowser } from '../../.config/browser.mjs';
import { buildAndServe, type Served } from './serve';

declare module 'vitest' {
  interface ProvidedContext {
    /** Why there is nothing to test, or '' when there is. */
    obstacle: string;
    /** Address of the built app, with its trailing slash. */
    address: string;
    /** Path of the browser that every test launches. */
    browserPath: string;
  }
}

/** A sub-path, because the built files must work from any. */
const BASE = '/any/sub-path/';

/**
 * Finds the browser and builds the app once for all browser tests, then serves the build. When that fails, every
 * browser test fails with the reason and the other tests still run.
 */
export default async function setup({ provide, config }: TestProject): Promise<(() => Promise<void>) | undefined> {
  try {
    provide('browserPath', await resolveBrowser());
    const { address, close } = await serveApp(config.root);
    provide('address', address);
    provide('obstacle', '');
    return close;
  } catch (error) {
    provide('obstacle', error instanceof Error ? error.message : String(error));
    return undefined;
  }
}

/**
 * Each run builds into a folder of its own: `dist` stays what the last build made, and two runs side by side do not
 * pull the files from under each other.
 */
function serveApp(top: string): Promise<Served> {
  const [configFile, root] = [join(top, 'vite.config.ts'), join(top, 'src')];
  const site = { configFile, root, logLevel: 'warn', publicDir: '../assets' } as const;
  return buildAndServe(join(top, 'node_modules/.cache'), site, { base: BASE, preview: { port: 0 } });
}
