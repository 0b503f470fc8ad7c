import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { build } from 'vite';

/** One file of the build: what it holds and what it loads. Modules are listed only where code of theirs is left. */
interface Chunk {
  readonly isEntry: boolean;
  readonly imports: readonly string[];
  readonly modules: readonly string[];
}

const top = join(import.meta.dirname, '../..');
let chunks: ReadonlyMap<string, Chunk>;

/** The package a module comes from; undefined for our own. */
const packageOf = (id: string): string | undefined => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(id)?.[1];

beforeAll(async () => {
  const outDir = mkdtempSync(join(tmpdir(), 'slantwise-ships-'));
  const before = process.env['NODE_ENV'];
  const vitest = process.env['VITEST'];
  process.env['NODE_ENV'] = 'production';
  // The configuration serves the tests' own root while they run; here the page itself is built.
  delete process.env['VITEST'];
  try {
    const built = await build({
      configFile: join(top, 'vite.config.ts'),
      root: join(top, 'src'),
      logLevel: 'error',
      build: { outDir, minify: false },
    });
    const outputs = [built].flat().flatMap((one) => ('output' in one ? one.output : []));
    chunks = new Map(
      outputs.flatMap((file) => {
        if (file.type !== 'chunk') return [];
        const { isEntry, imports, modules } = file;
        const kept = Object.entries(modules).filter(([, module]) => module.renderedLength > 0);
        return [[file.fileName, { isEntry, imports, modules: kept.map(([id]) => id) }] as const];
      }),
    );
  } finally {
    process.env['NODE_ENV'] = before;
    process.env['VITEST'] = vitest;
    rmSync(outDir, { recursive: true, force: true });
  }
}, 120_000);

/** Files that the page waits for: the entry and whatever it imports without `import()`; with the stage, those of its first picture. */
function firstFiles(withStage = false): Set<string> {
  const seen = new Set<string>();
  const visit = (name: string): void => {
    if (seen.has(name)) return;
    seen.add(name);
    for (const next of chunks.get(name)?.imports ?? []) visit(next);
  };
  for (const [name, { isEntry, modules }] of chunks)
    if (isEntry || (withStage && modules.some((id) => id.endsWith('/src/stage/Stage.tsx')))) visit(name);
  return seen;
}
const packagesIn = (files: Iterable<string>): Set<string | undefined> =>
  new Set([...files].flatMap((name) => chunks.get(name)?.modules ?? []).map(packageOf));

describe('what ships', () => {
  test('is a page with an entry that loads something later', () => {
    const first = firstFiles();
    expect(first.size).toBeGreaterThan(0);
    expect(chunks.size).toBeGreaterThan(first.size);
    expect(packagesIn(first)).toContain('react');
  });

  test.each([
    'react',
    'react-dom',
    'three',
    '@react-three/fiber',
    '@react-three/drei',
    'leva',
    'gl-matrix',
    'zustand',
    'valibot',
  ])('holds code of %s', (name) => {
    expect(packagesIn(chunks.keys())).toContain(name);
  });

  test('loads the panel library and its bench only when the bench is opened', () => {
    expect(packagesIn(firstFiles())).not.toContain('leva');
    const modules = [...firstFiles()].flatMap((name) => chunks.get(name)?.modules ?? []);
    expect(modules.filter((id) => /\/src\/panels\/pose\//.test(id))).toEqual([]);
    const all = [...chunks.values()].flatMap(({ modules: held }) => held);
    expect(all.filter((id) => /\/src\/panels\/pose\//.test(id))).not.toEqual([]);
  });

  test('draws its first picture without the swings of other players and the controls that turn it', () => {
    const first = firstFiles(true);
    const modules = [...first].flatMap((name) => chunks.get(name)?.modules ?? []);
    expect(modules.filter((id) => /\/assets\/references\.json/.test(id))).toHaveLength(1);
    expect(modules.filter((id) => /other-references/.test(id))).toEqual([]);
    expect([...packagesIn(first)].filter((name) => /drei|camera-controls|mediabunny|jsqr/.test(name ?? ''))).toEqual(
      [],
    );
    expect(packagesIn(first)).toContain('three');
  });

  test('leaves out what is for developers', () => {
    const all = [...chunks.values()].flatMap(({ modules }) => modules);
    // There is something to leave out.
    expect(readdirSync(join(top, 'src/stage/dev'))).toContain('DevPanel.tsx');
    expect(all.filter((id) => /\/src\/([^?]*\/)?dev\//.test(id))).toEqual([]);
    // Nor is there a file that only its name is left of.
    expect([...chunks.keys()].filter((name) => /DevPanel/.test(name))).toEqual([]);
    expect(all.filter((id) => /\/(tests|\.config)\//.test(id))).toEqual([]);
  });
});
