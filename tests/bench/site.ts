import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium, type Browser, type Page } from 'playwright-core';
import { browserFlags, resolveBrowser } from '../../.config/browser.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const viteBin = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');

function buildSite(): string {
  const folder = mkdtempSync(join(tmpdir(), 'site-'));
  const built = spawnSync(
    process.execPath,
    [viteBin, 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'],
    { cwd: root },
  );
  if (built.status === 0) return folder;
  rmSync(folder, { recursive: true, force: true });
  throw new Error(`The build failed: ${built.stderr.toString()}`);
}

/** Builds the app into a folder of its own, lends it out and throws it away. */
export async function withSite<T>(work: (folder: string) => Promise<T> | T): Promise<T> {
  const folder = buildSite();
  try {
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
  /** A page in a context of its own, which has never seen the app. Close its context when done. */
  readonly newVisitor: () => Promise<Page>;
}
export type WithPage = <T>(work: (seat: Seat) => Promise<T>) => Promise<T>;

/** The app, built and served when a page is asked for the first time. */
export interface Site {
  readonly withPage: WithPage;
  readonly close: () => Promise<void>;
}

export function createSite(): Site {
  let served: Promise<{ folder: string; address: string; server: Server }> | undefined;
  const serve = async () => {
    const folder = buildSite();
    const server = createServer(packedFiles(folder));
    await new Promise<void>((resolve) => server.listen(0, 'localhost', resolve));
    const place = server.address();
    if (place === null || typeof place === 'string') throw new Error('The server has no port.');
    return { folder, address: `http://localhost:${place.port}/`, server };
  };
  return {
    async withPage(work) {
      const { folder, address } = await (served ??= serve());
      const browser = await chromium.launch({ executablePath: await resolveBrowser(), args: [...browserFlags] });
      const newVisitor = async (): Promise<Page> => {
        const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
        // The loader that runs the benches marks functions with their names by a helper of its own, which the page does not have.
        await page.addInitScript('globalThis.__name = (work) => work');
        return page;
      };
      try {
        return await work({ folder, address, browser, page: await newVisitor(), newVisitor });
      } finally {
        await browser.close();
      }
    },
    async close() {
      if (!served) return;
      const { folder, server } = await served;
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};
/** Packed already. */
const AS_IT_IS = new Set(['.png', '.woff2']);

/** Answers with the files of a folder, packed as a server on the net packs them. Each is packed once. */
function packedFiles(folder: string): (...of: Parameters<Parameters<typeof createServer>[1] & object>) => void {
  const packed = new Map<string, Buffer>();
  return (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const path = join(folder, normalize(pathname.endsWith('/') ? `${pathname}index.html` : pathname));
    if (!path.startsWith(folder) || !existsSync(path)) {
      response.writeHead(404).end();
      return;
    }
    const kind = extname(path);
    const isPacked = !AS_IT_IS.has(kind);
    let body = packed.get(path);
    if (!body) packed.set(path, (body = isPacked ? gzipSync(readFileSync(path), { level: 9 }) : readFileSync(path)));
    response.writeHead(200, {
      'content-type': TYPES[kind] ?? 'application/octet-stream',
      'content-length': body.length,
      ...(isPacked && { 'content-encoding': 'gzip' }),
    });
    response.end(body);
  };
}
