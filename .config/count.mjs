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

const sum = { passed: 0, failed: 0, skipped: 0 };
for (const { status, assertionResults } of readReport()) {
  const states = assertionResults.map((test) => test.status);
  const failed = states.filter((state) => state === 'failed').length;
  const passed = states.filter((state) => state === 'passed').length;
  const others = states.length - failed - passed;
  // A file that could not be loaded or set up has no failed test: those it kept from running failed, not fewer than one.
  const kept = status === 'failed' && failed === 0;
  sum.passed += passed;
  sum.failed += kept ? Math.max(1, others) : failed;
  sum.skipped += kept ? 0 : others;
}

console.log(`tests: ${sum.passed} passed, ${sum.failed} failed, ${sum.skipped} skipped`);
process.exitCode = sum.failed > 0 || sum.passed === 0 ? 1 : 0;
