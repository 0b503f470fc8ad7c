// npm test: types, lint, then every test. Arguments go to vitest: npm test -- --project unit tests/unit/angle.test.ts
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { installWhatIsMissing, run, top } from './install.mjs';

installWhatIsMissing();

const report = 'node_modules/.cache/report.json';
rmSync(join(top, report), { force: true });

/** @type {[name: string, command: string, args: string[]][]} */
const steps = [
  ['types', 'npm', ['run', '--silent', 'typecheck']],
  ['lint', 'npm', ['run', '--silent', 'lint']],
  [
    'tests',
    'npx',
    [
      '--no-install',
      'vitest',
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...process.argv.slice(2),
    ],
  ],
];

// All three run even when one fails: one look shows everything there is to mend.
const failed = steps.filter(([name, command, args]) => {
  console.log(`\n== ${name}`);
  return run(command, args) !== 0;
});

if (failed.length > 0) {
  console.error(`\nFailed: ${failed.map(([name]) => name).join(', ')}.`);
  process.exit(1);
}
console.log('\nTypes, lint and tests pass.');
