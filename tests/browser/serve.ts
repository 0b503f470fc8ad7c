import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview, type InlineConfig } from 'vite';

/** A page that is served until it is closed. */
export interface Served {
  /** With its trailing slash. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Builds `site` into a new folder in `parent` and serves that, as `serving` says, until it is closed; then the folder goes. */
export async function buildAndServe(parent: string, site: InlineConfig, serving: InlineConfig): Promise<Served> {
  mkdirSync(parent, { recursive: true });
  const outDir = mkdtempSync(join(parent, 'site-'));
  const remove = (): void => rmSync(outDir, { recursive: true, force: true });
  // Under vitest NODE_ENV is "test", with which the build would take React's development half.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    await build({ ...site, build: { ...site.build, outDir } });
    const server = await preview({ ...site, ...serving, build: { outDir } });
    const address = server.resolvedUrls?.local[0];
    if (!address) throw new Error('The preview server gave no address.');
    return {
      address,
      close: async () => {
        await server.close();
        remove();
      },
    };
  } catch (error) {
    remove();
    throw error;
  } finally {
    process.env['NODE_ENV'] = before;
  }
}

/** Builds the page of a folder as the app is built, and serves it until it is closed. */
export function serveFolder(root: string): Promise<Served> {
  const build = { emptyOutDir: true, target: 'esnext' } as const;
  const site = { configFile: false, root, logLevel: 'error', build, worker: { format: 'es' } } as const;
  return buildAndServe(tmpdir(), site, { preview: { port: 0, host: 'localhost' } });
}
