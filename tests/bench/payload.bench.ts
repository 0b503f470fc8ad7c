import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Row } from './table';

export const name = 'payload';

const root = fileURLToPath(new URL('../../', import.meta.url));
const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');

/** What the page itself asks for before anything is tapped: scripts, their static imports, style sheets. */
function initialFiles(folder: string): string[] {
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const found = new Set<string>([...page.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)].map(([, file]) => file));
  for (const file of found) {
    if (!file.endsWith('.js')) continue;
    const code = readFileSync(join(folder, file), 'utf8');
    for (const [, place] of code.matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g))
      found.add(join(dirname(file), place));
  }
  return [...found];
}

const sizeOf = (files: readonly string[], folder: string): number =>
  files.reduce((sum, file) => sum + gzipSync(readFileSync(join(folder, file)), { level: 9 }).length, 0) / 1000;

export function run(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'payload-'));
  try {
    const built = spawnSync(
      process.execPath,
      [vite, 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'],
      { cwd: root },
    );
    if (built.status !== 0) throw new Error(`The build failed: ${built.stderr.toString()}`);
    const files = initialFiles(folder);
    const scripts = files.filter((file) => file.endsWith('.js'));
    if (scripts.length === 0) throw new Error('The built page asks for no script.');
    return Promise.resolve([
      {
        what: 'scripts and style sheets at the start, gzip',
        value: sizeOf(files, folder),
        unit: 'kB',
        goal: 'at most 480',
      },
      { what: 'of that, scripts', value: sizeOf(scripts, folder), unit: 'kB' },
    ]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
