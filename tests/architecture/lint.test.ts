import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';

const top = join(import.meta.dirname, '../..');
const pureLayers = ['math', 'model', 'figure', 'reading', 'flight', 'solving'];

const lines = (count: number): string => 'export {};\n' + '// a line\n'.repeat(count - 1);
const forgotten =
  'const later = (): Promise<number> => Promise.resolve(1);\nexport const go = (): void => {\n  later();\n};\n';

/** Files that exist only for this test: what is wrong with each, and the one rule that has to say so. */
const wrong: Record<string, { claim: string; text: string; rule: string }> = {
  'src/panels/forgotten.ts': {
    claim: 'a promise nobody waits for (needs types)',
    text: forgotten,
    rule: 'typescript(no-floating-promises)',
  },
  'src/panels/waits.ts': {
    claim: 'waiting for something that is no promise (needs types)',
    text: 'export const f = async (n: number): Promise<void> => {\n  await n;\n};\n',
    rule: 'typescript(await-thenable)',
  },
  'src/panels/any.ts': {
    claim: 'any',
    text: 'export const f = (a: any): unknown => a as unknown;\n',
    rule: 'typescript(no-explicit-any)',
  },
  'src/panels/unused.ts': {
    claim: 'a name nobody uses',
    text: 'const unused = 1;\nexport {};\n',
    rule: 'eslint(no-unused-vars)',
  },
  'src/words/long.ts': { claim: 'line 301 of a source file', text: lines(301), rule: 'eslint(max-lines)' },
};

const impure = {
  clock: { text: 'export const now = (): number => Date.now();\n', rule: 'eslint(no-restricted-globals)' },
  stopwatch: { text: 'export const now = (): number => performance.now();\n', rule: 'eslint(no-restricted-globals)' },
  chance: { text: 'export const chance = (): number => Math.random();\n', rule: 'eslint(no-restricted-properties)' },
  react: {
    text: `import { useRef } from 'react';\nexport const use = useRef;\n`,
    rule: 'eslint(no-restricted-imports)',
  },
};
for (const [name, { text, rule }] of Object.entries(impure)) {
  for (const layer of pureLayers) wrong[`src/${layer}/${name}.ts`] = { claim: `${name} in ${layer}`, text, rule };
}

/** Files with nothing wrong: next door to the wrong ones. */
const right: Record<string, string> = {
  'src/panels/waited.ts': forgotten.replace('  later()', '  void later()'),
  'src/words/short.ts': lines(300),
  ...Object.fromEntries(Object.entries(impure).map(([name, { text }]) => [`src/panels/${name}.ts`, text])),
};

/** The rules that complained, by file, of one run with the project's own configuration. */
const complaints = new Map<string, string[]>();

beforeAll(() => {
  const cache = join(top, 'node_modules/.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'lint-'));
  for (const file of ['.oxlintrc.json', 'tsconfig.json']) copyFileSync(join(top, file), join(folder, file));
  const texts = { ...right, ...Object.fromEntries(Object.entries(wrong).map(([path, { text }]) => [path, text])) };
  for (const [path, text] of Object.entries(texts)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const oxlint = join(top, 'node_modules/oxlint/bin/oxlint');
  const { stdout, stderr } = spawnSync(
    process.execPath,
    [oxlint, '--type-aware', '--format=json', ...Object.keys(texts)],
    {
      cwd: folder,
      encoding: 'utf8',
    },
  );
  rmSync(folder, { recursive: true });
  if (!stdout.startsWith('{')) throw new Error(`oxlint did not answer: ${stdout}${stderr}`);
  const answer = JSON.parse(stdout) as { number_of_files: number; diagnostics: { code: string; filename: string }[] };
  expect(answer.number_of_files).toBe(Object.keys(texts).length);
  for (const { code, filename } of answer.diagnostics) {
    complaints.set(filename, [...(complaints.get(filename) ?? []), code]);
  }
});

describe('lint finds', () => {
  test.each(Object.entries(wrong).map(([path, { claim, rule }]) => ({ path, claim, rule })))(
    '$claim',
    ({ path, rule }) => {
      expect(complaints.get(path)).toEqual([rule]);
    },
  );
});

describe('lint lets pass', () => {
  test.each(Object.keys(right))('%s', (path) => {
    expect(complaints.get(path)).toBeUndefined();
  });
});
