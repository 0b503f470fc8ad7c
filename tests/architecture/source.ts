import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative, sep } from 'node:path';
import { parseSync } from 'vite';

/** A syntax node as the parser gives it (ESTree with TypeScript). */
export type Node = {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
};

/** One source file. `path` is relative to `src`, with forward slashes. */
export type Source = { readonly path: string; readonly text: string; readonly root: Node };

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Parses one file; a file that cannot be parsed is an error, not an empty file. */
export function parseSource(path: string, text: string): Source {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0].message}`);
  return { path, text, root: program as unknown as Node };
}

/** Every TypeScript file below a folder. */
export function readSources(folder: string): Source[] {
  return listFiles(folder, /\.tsx?$/).map((path) => parseSource(path, readFileSync(join(folder, path), 'utf8')));
}

/** Paths below a folder that match, relative to it, sorted. */
export function listFiles(folder: string, pattern: RegExp): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && pattern.test(entry.name))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .toSorted();
}

/** Calls `visit` for every node below and including `node`, parents first. */
export function walk(node: Node, visit: (node: Node, parent: Node | undefined) => void, parent?: Node): void {
  visit(node, parent);
  for (const value of Object.values(node)) {
    if (isNode(value)) walk(value, visit, node);
    else if (Array.isArray(value)) for (const item of value) if (isNode(item)) walk(item, visit, node);
  }
}

/** 1-based line of a position. */
export const lineOf = ({ text }: Source, position: number): number => text.slice(0, position).split('\n').length;

/** The text of a string literal or of a template without holes; undefined for anything else. */
export function literalText(node: unknown): string | undefined {
  if (!isNode(node)) return undefined;
  if (node.type === 'Literal' && typeof node['value'] === 'string') return node['value'];
  const quasis = node['quasis'];
  if (node.type === 'TemplateLiteral' && Array.isArray(quasis) && quasis.length === 1) {
    return (quasis[0] as { value: { cooked: string } }).value.cooked;
  }
  return undefined;
}

export type Import = { readonly from: string; readonly line: number };

/**
 * Everything a file takes from elsewhere: imports and re-exports with or without `type`, `import('...')` as value
 * and as type, `new URL('...', import.meta.url)` (workers), `import.meta.glob`. A place that is computed at run time
 * comes back as '(computed)', which no table lists.
 */
export function findImports(source: Source): Import[] {
  const found: Import[] = [];
  const add = (node: Node, from: unknown): void => {
    found.push({ from: literalText(from) ?? '(computed)', line: lineOf(source, node.start) });
  };
  walk(source.root, (node) => {
    switch (node.type) {
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
      case 'ImportExpression':
      case 'TSImportType':
        add(node, node['source']);
        break;
      case 'ExportNamedDeclaration':
        if (node['source']) add(node, node['source']);
        break;
      case 'NewExpression': {
        const [place, base] = node['arguments'] as unknown[];
        if (nameOf(node['callee']) === 'URL' && isNode(base) && textOf(source, base) === 'import.meta.url')
          add(node, place);
        break;
      }
      case 'CallExpression': {
        const callee = node['callee'];
        const [place] = node['arguments'] as unknown[];
        if (isNode(callee) && /^import\.meta\.glob|^require$/.test(textOf(source, callee))) add(node, place);
        break;
      }
    }
  });
  return found;
}

/** Name of an identifier; undefined for anything else. */
export const nameOf = (node: unknown): string | undefined =>
  isNode(node) && node.type === 'Identifier' ? (node['name'] as string) : undefined;

export const textOf = ({ text }: Source, { start, end }: Node): string => text.slice(start, end);

/** Where a relative import leads, relative to `src`; undefined for a package. Leads outside start with '..'. */
export function resolveImport({ path }: Source, from: string): string | undefined {
  if (!from.startsWith('.')) return undefined;
  return normalize(join(dirname(path), from.replace(/[?#].*$/, '')))
    .split(sep)
    .join('/');
}
