/**
 * Runs every test that draws its cases, with a seed that was never used: `npm run properties [seed]`. The seed is printed, so that
 * what was found can be found again.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const seed = process.argv[2] ?? String(Math.floor(Date.now() % 2 ** 31));
const files = ['unit', 'reference', 'property']
  .flatMap((folder) => readdirSync(join('tests', folder)).map((name) => join('tests', folder, name)))
  .filter((name) => /\.test\.tsx?$/.test(name) && readFileSync(name, 'utf8').includes('fc.assert'));
console.log(`seed ${seed}`);
const { status } = spawnSync('npx', ['vitest', 'run', '--project', 'unit', ...files], {
  stdio: 'inherit',
  env: { ...process.env, PROPERTY_SEED: seed },
});
process.exitCode = status ?? 1;
