import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { resolveBrowser } from '../../.config/browser.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, with its trailing slash. */
    address: string;
    /** Path of the browser that every test launches. */
    browserPath: string;
  }
}

/** A sub-path, because the built files must work from any. */
const BASE = '/any/sub-path/';

/**
 * Finds the browser and builds the app once for all browser tests, then serves the build. Each run has a folder of
 * its own: `dist` stays what the last build made, and two runs side by side do not pull the files from under each other.
 */
export default async function setup({ provide, config }: TestProject): Promise<() => Promise<void>> {
  provide('browserPath', await resolveBrowser());

  const cache = join(config.root, 'node_modules/.cache');
  mkdirSync(cache, { recursive: true });
  const outDir = mkdtempSync(join(cache, 'site-'));
  const root = join(config.root, 'src');
  const configFile = join(config.root, 'vite.config.ts');
  // Under vitest NODE_ENV is "test", with which the build would take React's development half.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({ configFile, root, publicDir: '../assets', mode: 'production', logLevel: 'warn', build: { outDir } });
  process.env['NODE_ENV'] = before;
  const server = await preview({
    configFile,
    root,
    base: BASE,
    logLevel: 'warn',
    build: { outDir },
    preview: { port: 0 },
  });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error('The preview server gave no address.');
  provide('address', address);

  return async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
}
