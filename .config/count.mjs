// Reads the test report and prints one line with its counts. Fails when a test failed or when none ran.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { top } from './install.mjs';

/** @typedef {{status: string, message?: string, assertionResults: {status: string}[]}} File */

/** @returns {File[]} */
function readReport() {
  try {
    return JSON.parse(readFileSync(join(top, 'node_modules/.cache/report.json'), 'utf8')).testResults;
  } catch {
    return [];
  }
}

const files = readReport();
const states = files.flatMap(({ assertionResults }) => assertionResults.map(({ status }) => status));
// A file that could not be loaded, or whose set-up failed, has no failed test to count: it counts as one.
const broken = files.filter(
  ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
).length;
const passed = states.filter((state) => state === 'passed').length;
const failed = states.filter((state) => state === 'failed').length + broken;
const skipped = states.length - passed - (failed - broken);

console.log(`tests: ${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
