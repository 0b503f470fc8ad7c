import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { resolveBrowser } from '../../.config/browser.mjs';

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
    const { address, close } = await serveBuild(config.root);
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
async function serveBuild(top: string): Promise<{ address: string; close: () => Promise<void> }> {
  const cache = join(top, 'node_modules/.cache');
  mkdirSync(cache, { recursive: true });
  const outDir = mkdtempSync(join(cache, 'site-'));
  const remove = (): void => rmSync(outDir, { recursive: true, force: true });
  const site = {
    configFile: join(top, 'vite.config.ts'),
    root: join(top, 'src'),
    logLevel: 'warn',
    build: { outDir },
  } as const;

  // Under vitest NODE_ENV is "test", with which the build would take React's development half.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    await build({ ...site, publicDir: '../assets' });
  } catch (error) {
    remove();
    throw error;
  } finally {
    process.env['NODE_ENV'] = before;
  }

  const server = await preview({ ...site, base: BASE, preview: { port: 0 } });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error('The preview server gave no address.');
  return {
    address,
    close: async () => {
      await server.close();
      remove();
    },
  };
}
