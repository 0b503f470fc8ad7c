import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  convertsAnglesInOnePlace,
  explainsItsFunctions,
  hasAPlace,
  importsDownward,
  isPlainComputation,
  isShort,
  leavesSentencesToWords,
  RULES,
  staysOnItsOrigin,
  styleStaysOnItsOrigin,
  type Rule,
} from './rules';
import { crowdedFolders, findCircles, graphOf } from './graph';
import { findImports, listFiles, parseSource, readSources, resolveImport, type Source } from './source';
import { findState } from './state';
import { LAYERS, MOST_FILES } from './table';

const src = join(import.meta.dirname, '../../src');
const sources = readSources(src);

describe('the sources', () => {
  test('are found', () => {
    expect(sources.map(({ path }) => path)).toContain('main.tsx');
    expect(sources.map(({ path }) => path)).toContain('math/angle.ts');
  });

  test.each(Object.entries(RULES))('%s', (_, rule) => {
    expect(sources.flatMap(rule)).toEqual([]);
  });

  test('style sheets and pages load nothing from another origin', () => {
    const files = listFiles(src, /\.(css|html)$/);
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap((path) => styleStaysOnItsOrigin(path, readFileSync(join(src, path), 'utf8')))).toEqual([]);
    expect(readFileSync(join(src, 'index.html'), 'utf8')).not.toMatch(/(src|href)="(https?:)?\/\//);
  });
});

describe('the files', () => {
  test('import each other in no circle, types included', () => {
    expect(findCircles(graphOf(sources))).toEqual([]);
  });

  test(`lie at most ${MOST_FILES} to a folder`, () => {
    expect(crowdedFolders(listFiles(src, /./), MOST_FILES)).toEqual([]);
  });

  test('keep no state outside stores, caches and scratch memory', () => {
    const kept = sources.flatMap((source) =>
      findState(source).map(({ name, line, why }) => `${source.path}:${line}: ${name} is ${why}`),
    );
    expect(kept).toEqual([]);
  });
});

describe('the table', () => {
  test('names only layers it has', () => {
    for (const { layers } of Object.values(LAYERS)) for (const layer of layers) expect(LAYERS).toHaveProperty(layer);
  });

  test('has no circle', () => {
    const reaches = (from: string, to: string): boolean =>
      LAYERS[from].layers.some((next) => next === to || reaches(next, to));
    expect(Object.keys(LAYERS).filter((layer) => reaches(layer, layer))).toEqual([]);
  });

  test('keeps pure layers on pure layers', () => {
    const mixed = Object.entries(LAYERS).filter(
      ([, { pure, layers }]) => pure && layers.some((layer) => !LAYERS[layer].pure),
    );
    expect(mixed).toEqual([]);
  });

  test('never lets stage, plates and panels import each other', () => {
    const siblings = ['stage', 'plates', 'panels'];
    for (const one of siblings) expect(LAYERS[one].layers.filter((layer) => siblings.includes(layer))).toEqual([]);
  });
});

/** Packages that the files of a layer take something from; '' stands for the files directly in `src`. */
function packagesOf(layer: string): Set<string> {
  const own = sources.filter(({ path }) => (path.includes('/') ? path.split('/')[0] : '') === layer);
  const places = own.flatMap((source) =>
    findImports(source).flatMap(({ from }) => (resolveImport(source, from) === undefined ? [from] : [])),
  );
  return new Set(places.map(packageOf));
}
/** The package behind a place: `three/addons/x.js` is three, `node:stream` is node's. */
const packageOf = (place: string): string =>
  place.startsWith('node:') ? 'node:' : place.split('/', place.startsWith('@') ? 2 : 1).join('/');

describe('packages', () => {
  const { dependencies } = JSON.parse(readFileSync(join(src, '../package.json'), 'utf8')) as {
    readonly dependencies: Readonly<Record<string, string>>;
  };

  test.each(Object.entries(LAYERS))('%s uses every package it may use', (layer, { packages }) => {
    expect([...packagesOf(layer)].toSorted()).toEqual(packages.toSorted());
  });

  test('that a layer may use are all in package.json, and nothing there is used by none', () => {
    const allowed = Object.values(LAYERS).flatMap(({ packages }) => packages);
    expect([...new Set(allowed)].filter((name) => name !== 'node:').toSorted()).toEqual(
      Object.keys(dependencies).toSorted(),
    );
    for (const name of packagesOf('')) expect(dependencies).toHaveProperty([name]);
  });
});

/** What a rule says about a file that exists only here. */
const judge = (rule: Rule, path: string, text: string): string[] => rule(parseSource(path, text));

describe('the checker can fail', () => {
  test.each([
    ['an import upward', 'math/a.ts', `import { x } from '../model/body'`, 'math may not import model'],
    ['a type import upward', 'model/a.ts', `import type { X } from '../reading/x'`, 'model may not import reading'],
    ['an inline type import', 'model/a.ts', `import { type X } from '../store/x'`, 'model may not import store'],
    ['a type taken by import()', 'model/a.ts', `export type Y = import('../store/x').X`, 'model may not import store'],
    ['a re-export', 'reading/a.ts', `export { x } from '../solving/x'`, 'reading may not import solving'],
    ['a re-export of everything', 'reading/a.ts', `export * from '../solving/x'`, 'reading may not import solving'],
    ['a dynamic import', 'plates/a.ts', `void import('../stage/x')`, 'plates may not import stage'],
    ['a dynamic import by template', 'plates/a.ts', 'void import(`../stage/x`)', 'plates may not import stage'],
    [
      'a computed import',
      'plates/a.ts',
      'const p = "x"; void import(`../${p}/x`)',
      'may not import the package (computed)',
    ],
    [
      'a worker',
      'words/a.ts',
      `new Worker(new URL('../store/x.worker.ts', import.meta.url))`,
      'words may not import store',
    ],
    ['a glob', 'words/a.ts', `import.meta.glob('../store/*.ts')`, 'words may not import store'],
    ['a side effect', 'panels/a.ts', `import '../plates/a.css'`, 'panels may not import plates'],
    ['the wiring', 'panels/a.ts', `import { App } from '../App'`, 'panels may not import the wiring'],
    ['a path out of src', 'math/a.ts', `import x from '../../tests/x'`, 'leads out of src'],
    [
      'react below the screen',
      'reading/a.ts',
      `import { useRef } from 'react'`,
      'reading may not import the package react',
    ],
    ['three below the screen', 'figure/a.ts', `import 'three/addons/x.js'`, 'figure may not import the package three'],
    ['three on the plates', 'plates/a.tsx', `import { Group } from 'three'`, 'plates may not import the package three'],
    ['node in the store', 'store/a.ts', `import fs from 'node:fs'`, 'store may not import the package node:fs'],
  ])('%s is noticed', (_, path, text, complaint) => {
    expect(judge(importsDownward, path, text).join()).toContain(complaint);
  });

  test('imports the table allows pass, and words in comments and strings are no imports', () => {
    const text = `import { type Rad } from '../math/angle'; import { contours } from 'd3-contour'; import './own';
      // import x from '../store/x'
      export const text = "import x from '../store/x'";`;
    expect(judge(importsDownward, 'solving/a.ts', text)).toEqual([]);
    expect(judge(importsDownward, 'evaluate/main.ts', `import { createInterface } from 'node:readline'`)).toEqual([]);
    expect(judge(importsDownward, 'App.tsx', `import './panels/x'; import './stage/y'; import 'react'`)).toEqual([]);
  });

  test('an unknown folder and a stray file in src are noticed', () => {
    expect(judge(hasAPlace, 'helpers/a.ts', '')).toEqual([
      'helpers/a.ts: the folder "helpers" is not in the table of layers',
    ]);
    expect(judge(hasAPlace, 'utils.ts', '')).toHaveLength(1);
    expect(judge(hasAPlace, 'main.tsx', '')).toEqual([]);
  });

  test.each([
    'export const t = Date.now()',
    'export const t = new Date()',
    'export const t = performance.now()',
    'export const r = Math.random()',
    `export const r = Math['random']()`,
    'const { random } = Math; export const r = random()',
    'const clock = { Date }; export const t = clock',
    'export const w = window.innerWidth',
    'export const t = (globalThis as any)["performance"]',
    'export type E = HTMLElement',
    'export const c = (x: CanvasRenderingContext2D) => x',
    `void fetch('x.json')`,
  ])('a pure layer with "%s" is noticed, the same line higher up is not', (text) => {
    expect(judge(isPlainComputation, 'solving/a.ts', text)).not.toEqual([]);
    expect(judge(isPlainComputation, 'store/a.ts', text)).toEqual([]);
  });

  test('a pure layer may have fields that share a name with a clock', () => {
    const text = 'export const a = (x: { performance: number }) => ({ Date: x.performance, random: 1 });';
    expect(judge(isPlainComputation, 'reading/a.ts', text)).toEqual([]);
  });

  test.each([
    'export const f = (x: number) => x * Math.PI / 180',
    'export const f = (x: number) => (x / 180) * Math.PI',
    'export const f = (x: number) => x * (Math.PI / 180) + 1',
    'const { PI } = Math; export const f = (x: number) => x * 180 / PI',
    'export const RAD = 0.017453292519943295',
    'export const f = (x: number) => x * 57.29578',
  ])('an angle converted by "%s" is noticed outside the conversion file', (text) => {
    expect(judge(convertsAnglesInOnePlace, 'stage/a.ts', text)).toHaveLength(1);
    expect(judge(convertsAnglesInOnePlace, 'math/angle.ts', text)).toEqual([]);
  });

  test.each([
    `export const A = () => <p>The figure stays as it is.</p>`,
    `export const a = 'The figure stays as it is.'`,
    'export const a = `The figure stays as it is.`',
  ])('a sentence in "%s" is noticed on screen, and not under words', (text) => {
    expect(judge(leavesSentencesToWords, 'panels/a.tsx', text)).toHaveLength(1);
    expect(judge(leavesSentencesToWords, 'words/a.tsx', text)).toEqual([]);
  });

  test('labels and what is thrown are no sentences of the screen', () => {
    const text = `export const A = () => { throw new Error('There is no such part here.'); return <b>Open on the desk</b>; }`;
    expect(judge(leavesSentencesToWords, 'panels/a.tsx', text)).toEqual([]);
  });

  test('a half turn and the number 180 alone are no conversions', () => {
    const text = 'export const a = Math.PI / 2; export const b = 180 / 2; export const c = Math.PI * 2 + 180;';
    expect(judge(convertsAnglesInOnePlace, 'stage/a.ts', text)).toEqual([]);
  });

  test('another origin is noticed in strings, templates and style sheets; name spaces and links pass', () => {
    expect(judge(staysOnItsOrigin, 'stage/a.ts', `void fetch('https://example.org/x.hdr')`)).toHaveLength(1);
    expect(judge(staysOnItsOrigin, 'stage/a.ts', 'const x = 1; void fetch(`https://example.org/${x}`)')).toHaveLength(
      1,
    );
    expect(judge(staysOnItsOrigin, 'stage/a.ts', `void fetch('//example.org/x')`)).toHaveLength(1);
    expect(
      judge(staysOnItsOrigin, 'stage/a.tsx', `export const a = <img src="https://example.org/x.png" />`),
    ).toHaveLength(1);
    expect(judge(staysOnItsOrigin, 'panels/a.tsx', `export const a = <a href="https://example.org/">x</a>`)).toEqual(
      [],
    );
    expect(judge(staysOnItsOrigin, 'plates/a.ts', `export const ns = 'http://www.w3.org/2000/svg'`)).toEqual([]);
    expect(
      styleStaysOnItsOrigin('a.css', `@import 'https://example.org/a.css'; a { background: url(//example.org/b.png) }`),
    ).toHaveLength(2);
    expect(styleStaysOnItsOrigin('a.css', `a { background: url('./b.png') }`)).toEqual([]);
  });

  const project = (texts: Readonly<Record<string, string>>): Source[] =>
    Object.entries(texts).map(([path, text]) => parseSource(path, text));

  test.each([
    ['two files', { 'a/a.ts': `import { b } from './b'`, 'a/b.ts': `import { a } from './a'` }],
    ['types', { 'a/a.ts': `import type { B } from './b'`, 'a/b.ts': `export type B = import('./a').A` }],
    ['a worker and its page', { 'a/a.ts': `new Worker(new URL('./b.ts', import.meta.url))`, 'a/b.ts': `import './a'` }],
    ['an index', { 'a/index.ts': `export * from './b'`, 'a/b.ts': `import { a } from '../a'` }],
    ['three', { 'a/a.ts': `import './b'`, 'a/b.ts': `import './c'`, 'a/c.tsx': `import './a'` }],
  ])('a circle of %s is noticed', (_, texts) => {
    expect(findCircles(graphOf(project(texts)))).toEqual([Object.keys(texts).toSorted()]);
  });

  test('two ways to the same file are no circle', () => {
    const texts = { 'a/a.ts': `import './b'; import './c'`, 'a/b.ts': `import './c'`, 'a/c.ts': `import 'react'` };
    expect(findCircles(graphOf(project(texts)))).toEqual([]);
  });

  test('one file too many in a folder is noticed; subfolders count for themselves', () => {
    expect(crowdedFolders(['a/1.ts', 'a/2.css', 'a/b/1.ts', 'a/b/2.ts'], 2)).toEqual([]);
    expect(crowdedFolders(['a/1.ts', 'a/2.css', 'a/3.ts', 'a/b/1.ts'], 2)).toEqual(['a: 3']);
  });

  test.each([
    'let count = 0;',
    'export let count: number | undefined;',
    '/** Cache: of nothing. */ let last = 1;',
    'const known = new Map<string, number>();',
    'export const seen: WeakSet<object> = new WeakSet();',
    'const list: string[] = [];',
    'const held: { a?: number } = {};',
    'const state = { x: 0 }; export const go = () => { state.x = 1; };',
    'const state = { deep: { x: 0 } }; export const go = () => { state.deep.x++; };',
    'const list = [1]; export const add = (n: number) => list.push(n);',
    '/* Cache: no docstring. */ const known = new Map();',
  ])('"%s" is noticed as state', (text) => {
    expect(findState(parseSource('panels/a.ts', text))).toHaveLength(1);
  });

  test.each([
    'const one = 1; export const list = [1, 2]; export const table = { a: 1 };',
    `const names: ReadonlyMap<string, number> = new Map([['a', 1]]);`,
    'export const NONE: readonly string[] = []; const NOTHING: Readonly<Record<string, number>> = {};',
    '/** Cache: outlines by figure. */ const outlines = new WeakMap<object, string>();',
    '/** Scratch: a point. */ const at = { x: 0 }; export const go = () => { at.x = 1; };',
    'const scratch = new Float64Array(3); export const go = () => { scratch[0] = 1; };',
    'export function f() { let n = 0; const list: number[] = []; list.push(n++); return new Map(); }',
    'declare const BUILD: string;',
  ])('"%s" is none', (text) => {
    expect(findState(parseSource('panels/a.ts', text))).toEqual([]);
  });

  test('line 301 is noticed', () => {
    expect(judge(isShort, 'math/a.ts', '\n'.repeat(300))).toEqual([]);
    expect(judge(isShort, 'math/a.ts', '\n'.repeat(301))).toHaveLength(1);
  });

  test.each([
    'export function f() {}',
    'export const f = () => 1',
    'export default function () {}',
    'function f() {} export { f }',
    'export class F {}',
    'export const F = memo(function F() { return null; })',
    '/** Of something else. */ export const x = 1; export function f() {}',
    '/* Not a docstring. */ export function f() {}',
    '// Not a docstring.\nexport function f() {}',
  ])('"%s" without a docstring is noticed', (text) => {
    expect(judge(explainsItsFunctions, 'math/a.ts', text)).toHaveLength(1);
    expect(judge(explainsItsFunctions, 'panels/a.tsx', text)).toHaveLength(1);
  });

  test('a docstring, one for all overloads, and functions that stay inside pass', () => {
    const text = `/** m. */ export function f(a: number): number; export function f(a: string): number; export function f(a: unknown) { return a as number; }
      /** rad. */ export const g = () => 1;
      const h = () => 2; export const size = h();`;
    expect(judge(explainsItsFunctions, 'math/a.ts', text)).toEqual([]);
  });
});
