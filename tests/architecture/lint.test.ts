import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
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
  'src/panels/circle.ts': {
    claim: 'a circle of two files that take only types from each other',
    text: `import type { Square } from './square';\nexport type Circle = Square;\n`,
    rule: 'import(no-cycle)',
  },
  'src/panels/square.ts': {
    claim: 'the other half of that circle',
    text: `import type { Circle } from './circle';\nexport type Square = { readonly inside: Circle };\n`,
    rule: 'import(no-cycle)',
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

/** A project of a few files for one run of a tool; the libraries are ours. Outside `node_modules`, where lint follows no import. */
function withProject<T>(texts: Readonly<Record<string, string>>, run: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'slantwise-lint-'));
  try {
    symlinkSync(join(top, 'node_modules'), join(folder, 'node_modules'), 'junction');
    for (const [path, text] of Object.entries(texts)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    return run(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

beforeAll(() => {
  const texts = { ...right, ...Object.fromEntries(Object.entries(wrong).map(([path, { text }]) => [path, text])) };
  const configs = Object.fromEntries(
    ['.oxlintrc.json', 'tsconfig.json'].map((file) => [file, readFileSync(join(top, file), 'utf8')]),
  );
  const oxlint = join(top, 'node_modules/oxlint/bin/oxlint');
  const { stdout, stderr } = withProject({ ...texts, ...configs }, (cwd) =>
    spawnSync(process.execPath, [oxlint, '--type-aware', '--format=json', ...Object.keys(texts)], {
      cwd,
      encoding: 'utf8',
    }),
  );
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

/** A project of a few files, read by the tool for unused exports with a configuration of ours. What it lists, "file: name". */
function findUnused(config: string, flags: readonly string[], texts: Readonly<Record<string, string>>): string[] {
  const files = {
    ...texts,
    '.config/knip.json': readFileSync(join(top, '.config', config), 'utf8'),
    'package.json': '{ "name": "slantwise", "type": "module" }',
  };
  const tool = join(top, 'node_modules/knip/bin/knip.js');
  const { stdout, stderr } = withProject(files, (cwd) =>
    spawnSync(process.execPath, [tool, '--config', '.config/knip.json', '--reporter', 'json', ...flags], {
      cwd,
      encoding: 'utf8',
    }),
  );
  if (!stdout.startsWith('{')) throw new Error(`no answer about unused exports: ${stdout}${stderr}`);
  const { issues } = JSON.parse(stdout) as {
    issues: ({ file: string } & Partial<Record<'files' | 'exports' | 'types', { name: string }[]>>)[];
  };
  return issues.flatMap(({ file, files: whole, exports, types }) =>
    [...(whole ?? []), ...(exports ?? []), ...(types ?? [])].map(({ name }) => `${file}: ${name}`),
  );
}

describe('unused exports', () => {
  const main = `import { used } from './words/a';\nvoid used;\n`;
  const a =
    'const inner = 1;\nexport const used = inner;\nexport const dead = used;\nexport interface Dead {\n  readonly a: 1;\n}\n';

  test('are found: values, types and whole files', () => {
    const texts = { 'src/main.tsx': main, 'src/words/a.ts': a, 'src/words/b.ts': 'export const lost = 1;\n' };
    expect(findUnused('knip.json', [], texts).toSorted()).toEqual([
      'src/words/a.ts: Dead',
      'src/words/a.ts: dead',
      'src/words/b.ts: src/words/b.ts',
    ]);
  });

  test('are found where only tests use them, unless a docstring says that they are for tests', () => {
    const tested = 'export const used = 1;\nexport const probe = 2;\n';
    const texts = {
      'src/main.tsx': main,
      'src/words/a.ts': `${tested}/** Three.\n * @internal Tests read it. */\nexport const third = 3;\n`,
      'tests/unit/a.test.ts': `import { probe, third } from '../../src/words/a';\nvoid [probe, third];\n`,
    };
    expect(findUnused('knip.json', [], texts)).toEqual([]);
    expect(findUnused('knip.shipped.json', ['--production'], texts)).toEqual(['src/words/a.ts: probe']);
  });
});
