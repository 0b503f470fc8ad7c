import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Top folder of the project. */
export const top = join(dirname(fileURLToPath(import.meta.url)), '..');

/**
 * Runs a command with its output on this terminal and answers its exit status.
 * @param {string} command
 * @param {string[]} args
 */
export function run(command, args) {
  const { status, error } = spawnSync(command, args, {
    cwd: top,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (error) console.error(`${command}: ${error.message}`);
  return status ?? 1;
}

/**
 * @param {string} path
 * @returns {Record<string, {version?: string, optional?: boolean}> | undefined}
 */
function readPackages(path) {
  try {
    return JSON.parse(readFileSync(join(top, path), 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/** Installs the libraries when none are there, and brings them in step when the lock file has moved on. */
export function installWhatIsMissing() {
  const wanted = readPackages('package-lock.json') ?? {};
  const present = readPackages('node_modules/.package-lock.json');
  const missing = Object.entries(wanted).filter(
    ([place, { version, optional }]) => place !== '' && !optional && present?.[place]?.version !== version,
  );
  if (missing.length === 0) return;
  console.log(
    present ? `Installing ${missing.length} libraries that changed ...` : 'Installing the libraries (once) ...',
  );
  // "npm ci" starts by deleting everything; over an existing folder "npm install" only brings what differs.
  const quiet = ['--no-audit', '--no-fund'];
  const status = run('npm', present ? ['install', '--no-save', ...quiet] : ['ci', ...quiet]);
  if (status !== 0) {
    console.error('The libraries could not be installed. Is the npm registry reachable? Try "npm ci" to see why.');
    process.exit(status);
  }
}
