import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';

/** Builds the page of a folder as the app is built, and serves it until it is closed. */
export async function serveFolder(root: string): Promise<{ address: string; close: () => Promise<void> }> {
  const outDir = mkdtempSync(join(tmpdir(), 'page-'));
  const remove = (): void => rmSync(outDir, { recursive: true, force: true });
  const site = { configFile: false, root, logLevel: 'error', build: { outDir } } as const;
  try {
    await build({ ...site, build: { outDir, emptyOutDir: true, target: 'esnext' }, worker: { format: 'es' } });
    const server = await preview({ ...site, preview: { port: 0, host: 'localhost' } });
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
  }
}
