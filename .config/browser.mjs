import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = join(dirname(fileURLToPath(import.meta.url)), '..');
const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

/**
 * Flags every launch uses. WebGL comes from the software renderer, so that pictures do not depend on the machine's
 * graphics; everything a browser asks the network for by itself is off.
 */
export const browserFlags = [
  '--no-sandbox',
  '--enable-unsafe-swiftshader',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--disable-domain-reliability',
  '--no-first-run',
  '--no-pings',
];

/** @param {string} path */
function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** @returns {string | undefined} */
function findInstalled() {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter(Boolean);
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isExecutable);
}

/**
 * The Chromium that comes inside a registry package, unpacked once per version. It is unpacked beside its final place
 * and moved there whole, so that a second run never starts half a browser.
 * @returns {Promise<string | undefined>}
 */
async function unpackBundled() {
  const home = join(top, 'node_modules/@sparticuz/chromium');
  if (!existsSync(home)) return undefined;
  const { version } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
  const cache = join(top, 'node_modules/.cache');
  const place = join(cache, `chromium-${version}`);
  const executable = join(place, 'chromium');
  if (isExecutable(executable)) return executable;

  mkdirSync(cache, { recursive: true });
  const draft = mkdtempSync(join(cache, 'chromium-unpacking-'));
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = draft; // the package unpacks into the temporary folder and offers no other choice
  try {
    const { default: bundled } = await import('@sparticuz/chromium');
    await bundled.executablePath();
    if (!isExecutable(executable)) renameSync(draft, place);
  } catch (error) {
    if (!isExecutable(executable)) throw error; // otherwise another run was faster
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
    rmSync(draft, { recursive: true, force: true });
  }
  return executable;
}

/**
 * Path of the browser for tests: CHROME_PATH, then one installed on PATH, then the one in the registry package.
 * Call it once, before workers start. None is an error with instructions: browser tests are never skipped.
 * @returns {Promise<string>}
 */
export async function resolveBrowser() {
  const asked = process.env['CHROME_PATH'];
  if (asked) {
    if (isExecutable(asked)) return asked;
    throw new Error(
      `CHROME_PATH is "${asked}", which is not an executable file. Point it at Chrome or Chromium, or unset it.`,
    );
  }
  const found = findInstalled() ?? (await unpackBundled());
  if (!found) {
    throw new Error(
      'No browser for the tests. Install Chrome or Chromium, or set CHROME_PATH to one, or run "npm ci", which brings @sparticuz/chromium.',
    );
  }
  const answer = spawnSync(found, ['--version', '--no-sandbox'], { encoding: 'utf8', timeout: 30_000 });
  if (answer.status !== 0) {
    throw new Error(
      `The browser ${found} does not start: ${answer.error?.message ?? answer.stderr.trim()}. Set CHROME_PATH to a Chrome or Chromium that does.`,
    );
  }
  return found;
}
