import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');

/** Builds the app into a folder of its own, lends it out and throws it away. */
export async function withSite<T>(work: (folder: string) => Promise<T> | T): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'site-'));
  try {
    const built = spawnSync(
      process.execPath,
      [vite, 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'],
      { cwd: root },
    );
    if (built.status !== 0) throw new Error(`The build failed: ${built.stderr.toString()}`);
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
