import {
  findImports,
  isNode,
  lineOf,
  literalText,
  nameOf,
  resolveImport,
  textOf,
  walk,
  type Node,
  type Source,
} from './source';
import { LAYERS, LONGEST_FILE, WIRING } from './table';

/** A rule looks at one file and says what is wrong, one sentence each, with file and line. */
export type Rule = (source: Source) => string[];

/** A folder imported by its own name means its index. */
const layerOf = (path: string): string | undefined =>
  path.includes('/') ? path.slice(0, path.indexOf('/')) : path in LAYERS ? path : undefined;
const isPure = ({ path }: Source): boolean => LAYERS[layerOf(path) ?? '']?.pure === true;

/** The file lies in a folder of the table, or is one of the wiring files. */
export const hasAPlace: Rule = ({ path }) => {
  const layer = layerOf(path);
  if (layer === undefined)
    return WIRING.includes(path) || path.endsWith('.d.ts')
      ? []
      : [`${path}: only ${WIRING.join(', ')} lie directly in src`];
  return layer in LAYERS ? [] : [`${path}: the folder "${layer}" is not in the table of layers`];
};

/** Imports follow the table. */
export const importsDownward: Rule = (source) => {
  const from = layerOf(source.path);
  const layer = LAYERS[from ?? ''];
  return findImports(source).flatMap(({ from: place, line }) => {
    const at = `${source.path}:${line}`;
    const target = resolveImport(source, place);
    if (target === undefined) {
      const allowed =
        !layer ||
        layer.packages.some((name) => place === name || place.startsWith(name.endsWith(':') ? name : `${name}/`));
      return allowed ? [] : [`${at}: ${from} may not import the package ${place}`];
    }
    if (target.startsWith('../assets/')) return [];
    if (target.startsWith('..')) return [`${at}: ${place} leads out of src`];
    const to = layerOf(target);
    if (to === undefined) return from === undefined ? [] : [`${at}: ${from} may not import the wiring (${place})`];
    if (from === undefined || to === from || layer?.layers.includes(to)) return [];
    return [`${at}: ${from} may not import ${to}`];
  });
};

const CLOCK_AND_CHANCE = [
  'Date',
  'performance',
  'crypto',
  'setTimeout',
  'setInterval',
  'requestAnimationFrame',
  'queueMicrotask',
];
const SCREEN = [
  'window',
  'document',
  'navigator',
  'localStorage',
  'indexedDB',
  'fetch',
  'self',
  'process',
  'globalThis',
];
const isDomType = (name: string): boolean =>
  /^(HTML|SVG|WebGL|Canvas)\w*(Element|Context|2D)?$/.test(name) && /[a-z]/.test(name);

/** Pure layers know no clock, no chance, no screen. A worker's entry file (*.worker.ts) may speak through `self`. */
export const isPlainComputation: Rule = (source) => {
  if (!isPure(source)) return [];
  const wrong: string[] = [];
  const object = (node: Node, parent: Node | undefined): boolean =>
    !(parent?.type === 'MemberExpression' && parent['property'] === node && parent['computed'] !== true) &&
    !(/Property/.test(parent?.type ?? '') && parent?.['key'] === node && parent['shorthand'] !== true);
  walk(source.root, (node, parent) => {
    const name = nameOf(node);
    const at = `${source.path}:${lineOf(source, node.start)}`;
    if (name !== undefined && object(node, parent)) {
      if (CLOCK_AND_CHANCE.includes(name)) wrong.push(`${at}: ${name} in a pure layer (no clock, no chance)`);
      const speaks = name === 'self' && source.path.endsWith('.worker.ts');
      if ((SCREEN.includes(name) && !speaks) || isDomType(name))
        wrong.push(`${at}: ${name} in a pure layer (no screen, no network)`);
    }
    if (node.type === 'MemberExpression' && /^Math\s*(\.\s*random|\[['"`]random['"`]\])$/.test(textOf(source, node))) {
      wrong.push(`${at}: Math.random in a pure layer (take a seed)`);
    }
    const declared =
      node.type === 'VariableDeclarator' && nameOf(node['init']) === 'Math' && isNode(node['id'])
        ? node['id']
        : undefined;
    if (declared && /\brandom\b/.test(textOf(source, declared)))
      wrong.push(`${at}: Math.random in a pure layer (take a seed)`);
  });
  return wrong;
};

const CONVERSION_FILE = 'math/angle.ts';
const FACTORS = [Math.PI / 180, 180 / Math.PI, Math.PI / 360, 360 / Math.PI];

/** Factors of a product or quotient, parentheses and nesting removed. */
function factorsOf(node: unknown): Node[] {
  if (!isNode(node)) return [];
  if (node.type === 'ParenthesizedExpression') return factorsOf(node['expression']);
  if (node.type === 'BinaryExpression' && (node['operator'] === '*' || node['operator'] === '/')) {
    return [...factorsOf(node['left']), ...factorsOf(node['right'])];
  }
  return [node];
}

/** Degrees become radians, and back, in one file only. */
export const convertsAnglesInOnePlace: Rule = (source) => {
  if (source.path === CONVERSION_FILE) return [];
  const wrong: string[] = [];
  const complain = (node: Node): void => {
    wrong.push(
      `${source.path}:${lineOf(source, node.start)}: "${textOf(source, node)}" converts an angle; only ${CONVERSION_FILE} does that`,
    );
  };
  walk(source.root, (node, parent) => {
    if (node.type === 'BinaryExpression' && parent?.type !== 'BinaryExpression') {
      walk(node, (part) => {
        const factors = part.type === 'BinaryExpression' ? factorsOf(part) : [];
        const hasPi = factors.some((factor) => /^(Math\.)?(PI|TAU)$/i.test(textOf(source, factor)));
        const has180 = factors.some(
          (factor) => factor.type === 'Literal' && (factor['value'] === 180 || factor['value'] === 360),
        );
        if (hasPi && has180 && !wrong.some((text) => text.includes(textOf(source, part)))) complain(part);
      });
    }
    const value = node.type === 'Literal' ? node['value'] : undefined;
    if (typeof value === 'number' && FACTORS.some((factor) => Math.abs(value / factor - 1) < 1e-4)) complain(node);
  });
  return wrong;
};

/** Nothing names another origin, except a name space and a link that a reader may follow. */
export const staysOnItsOrigin: Rule = (source) => {
  const wrong: string[] = [];
  walk(source.root, (node, parent) => {
    const text = node.type === 'TemplateElement' ? (node['value'] as { raw: string }).raw : literalText(node);
    if (text === undefined || node.type === 'TemplateLiteral') return;
    const isLink = parent?.type === 'JSXAttribute' && isNode(parent['name']) && parent['name']['name'] === 'href';
    if (/^\s*(https?:|wss?:)?\/\/\w/i.test(text) && !text.startsWith('http://www.w3.org/') && !isLink) {
      wrong.push(`${source.path}:${lineOf(source, node.start)}: "${text}" names another origin`);
    }
  });
  return wrong;
};

/** Style sheets load nothing from elsewhere. */
export const styleStaysOnItsOrigin = (path: string, text: string): string[] =>
  [...text.matchAll(/(?:url\(|@import)\s*['"]?((?:https?:)?\/\/[^'")\s]+)/gi)].map(
    ([, place]) => `${path}: "${place}" names another origin`,
  );

export const isShort: Rule = ({ path, text }) => {
  const lines = text.replace(/\n$/, '').split('\n').length;
  return lines > LONGEST_FILE ? [`${path}: ${lines} lines; ${LONGEST_FILE} is the most`] : [];
};

const FUNCTIONS = [
  'FunctionDeclaration',
  'TSDeclareFunction',
  'FunctionExpression',
  'ArrowFunctionExpression',
  'ClassDeclaration',
  'ClassExpression',
];
/** The function itself, or the one that is handed to `memo(...)` and the like. */
const bodyOf = (node: unknown): unknown =>
  isNode(node) && node.type === 'CallExpression' ? ((node['arguments'] as unknown[])[0] ?? node) : node;

/** Exported functions, components and classes say what their signature cannot. Overloads share one docstring. */
export const explainsItsFunctions: Rule = (source) => {
  const exported = new Set<string>();
  const functions: { name: string; line: number; explained: boolean }[] = [];
  const explained = (node: Node): boolean => /\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*$/.test(source.text.slice(0, node.start));
  for (const statement of source.root['body'] as Node[]) {
    for (const specifier of (statement['specifiers'] as Node[] | undefined) ?? []) {
      if (statement.type === 'ExportNamedDeclaration' && !statement['source'])
        exported.add(nameOf(specifier['local']) ?? '');
    }
    const isExport = statement.type === 'ExportNamedDeclaration' || statement.type === 'ExportDefaultDeclaration';
    const inner = isExport ? statement['declaration'] : statement;
    if (!isNode(inner)) continue;
    const declared = inner.type === 'VariableDeclaration' ? (inner['declarations'] as Node[]) : [inner];
    for (const node of declared) {
      const body = node.type === 'VariableDeclarator' ? bodyOf(node['init']) : node;
      if (!isNode(body) || !FUNCTIONS.includes(body.type)) continue;
      const name = nameOf(node['id']) ?? 'default';
      if (isExport) exported.add(name);
      functions.push({ name, line: lineOf(source, statement.start), explained: explained(statement) });
    }
  }
  return functions
    .filter(
      ({ name, explained: own }) =>
        exported.has(name) && !own && !functions.some((other) => other.name === name && other.explained),
    )
    .map(
      ({ name, line }) =>
        `${source.path}:${line}: ${name} is exported without a docstring (unit, zero, sense, frame, edge, source)`,
    );
};

/** Every rule that looks at a source file, by the claim it checks. */
/** What is on screen, and says nothing of its own. */
const ON_SCREEN = /^(panels|plates|player|stage)\//;
/** Three words and more that end in a full stop. */
const SENTENCE = /^[A-Z"“][^\s]*(\s+[^\s]+){2,}\.$/;

/** Sentences of the screen stand under words: labels of a control may stand with it. What is thrown is for developers. */
export const leavesSentencesToWords: Rule = (source) => {
  if (!ON_SCREEN.test(source.path)) return [];
  const wrong: string[] = [];
  walk(source.root, (node, parent) => {
    const isThrown = parent?.type === 'NewExpression';
    if (isThrown || !/^(Literal|JSXText|TemplateElement)$/.test(node.type)) return;
    const of = node['value'];
    const value = node.type === 'TemplateElement' ? (of as { readonly cooked?: unknown }).cooked : of;
    if (typeof value !== 'string') return;
    const text = value.trim();
    if (SENTENCE.test(text)) wrong.push(`${source.path}:${lineOf(source, node.start)}: "${text}" belongs under words`);
  });
  return wrong;
};

export const RULES: Readonly<Record<string, Rule>> = {
  'every file lies in a folder of the table': hasAPlace,
  'every import follows the table': importsDownward,
  'pure layers know no clock, no chance, no screen': isPlainComputation,
  'degrees are converted in one file': convertsAnglesInOnePlace,
  'no source names another origin': staysOnItsOrigin,
  'no source file is over 300 lines': isShort,
  'exported functions, components and classes have docstrings': explainsItsFunctions,
  'sentences of the screen stand under words': leavesSentencesToWords,
};
