import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { preview } from 'vite';
import { browserFlags, resolveBrowser } from '../../.config/browser.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const viteBin = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');

/** Builds the app into a folder of its own, lends it out and throws it away. */
export async function withSite<T>(work: (folder: string) => Promise<T> | T): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'site-'));
  try {
    const built = spawnSync(
      process.execPath,
      [viteBin, 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'],
      { cwd: root },
    );
    if (built.status !== 0) throw new Error(`The build failed: ${built.stderr.toString()}`);
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A tablet's page in a browser, not opened yet, and the address of the app that was built into `folder`. */
export interface Seat {
  readonly folder: string;
  readonly address: string;
  readonly browser: Browser;
  readonly page: Page;
}

/** Builds and serves the app and lends a page to look at it. */
export const withPage = <T>(work: (seat: Seat) => Promise<T>): Promise<T> =>
  withSite(async (folder) => {
    const server = await preview({
      root: folder,
      configFile: false,
      build: { outDir: folder },
      preview: { port: 0 },
      logLevel: 'error',
    });
    const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: [...browserFlags] });
    try {
      const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
      // The loader that runs the benches marks functions with their names by a helper of its own, which the page does not have.
      await page.addInitScript('globalThis.__name = (work) => work');
      return await work({ folder, address: server.resolvedUrls!.local[0], browser, page });
    } finally {
      await browser.close();
      await server.close();
    }
  });
