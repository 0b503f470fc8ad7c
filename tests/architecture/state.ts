import { isNode, lineOf, nameOf, textOf, walk, type Node, type Source } from './source';

const COLLECTIONS = ['Map', 'Set', 'WeakMap', 'WeakSet'];
const CHANGING = [
  'push',
  'pop',
  'shift',
  'unshift',
  'splice',
  'sort',
  'reverse',
  'set',
  'add',
  'delete',
  'clear',
  'fill',
];
const isReadonlyType = (type: string): boolean => /^:?\s*(readonly\b|Readonly(Map|Set|Array)?<)/.test(type);

/** The object at the bottom of `a.b[c].d`. */
function rootOf(node: unknown): string | undefined {
  let at = node;
  while (isNode(at) && at.type === 'MemberExpression') at = at['object'];
  return nameOf(at);
}

/** Names whose contents a file changes: `a.b = 1`, `a[i]++`, `delete a.b`, `a.push(x)`. */
function changedNames({ root }: Source): Set<string> {
  const changed = new Set<string>();
  const note = (node: unknown): void => {
    const name = isNode(node) && node.type === 'MemberExpression' ? rootOf(node) : undefined;
    if (name !== undefined) changed.add(name);
  };
  walk(root, (node) => {
    if (node.type === 'AssignmentExpression') note(node['left']);
    if (node.type === 'UpdateExpression' || (node.type === 'UnaryExpression' && node['operator'] === 'delete'))
      note(node['argument']);
    const callee = node.type === 'CallExpression' ? node['callee'] : undefined;
    if (isNode(callee) && callee.type === 'MemberExpression' && CHANGING.includes(nameOf(callee['property']) ?? ''))
      note(callee);
  });
  return changed;
}

/**
 * What a module keeps from one call to the next, "name (why)", with its line. State is: a `let` or `var` at the top; a Map, Set, WeakMap
 * or WeakSet there that no type makes read-only; an object or array literal there that is empty and not read-only, or that the file
 * changes. Not state: typed arrays, which are scratch memory of the hot paths and hold nothing between calls; stores
 * (`createStore`), which exist to be looked at; and a `const` whose docstring starts with "Cache:" (what it keeps, keyed by what) or
 * "Scratch:" (every call fills it before it reads it).
 */
export function findState(source: Source): { readonly name: string; readonly line: number; readonly why: string }[] {
  const changed = changedNames(source);
  const found: { name: string; line: number; why: string }[] = [];
  for (const statement of source.root['body'] as Node[]) {
    const inner = statement.type === 'ExportNamedDeclaration' ? statement['declaration'] : statement;
    if (!isNode(inner) || inner.type !== 'VariableDeclaration' || inner['declare'] === true) continue;
    const isOwned =
      inner['kind'] === 'const' &&
      /\/\*\*\s*(\*\s*)?(Cache|Scratch):(?:(?!\*\/)[\s\S])*\*\/\s*$/.test(source.text.slice(0, statement.start));
    for (const one of inner['declarations'] as Node[]) {
      const id = one['id'] as Node;
      const why = isOwned ? undefined : stateOf(source, inner, one, changed);
      if (why) found.push({ name: nameOf(id) ?? textOf(source, id), line: lineOf(source, one.start), why });
    }
  }
  return found;
}

function stateOf(source: Source, list: Node, one: Node, changed: ReadonlySet<string>): string | undefined {
  if (list['kind'] !== 'const') return `a top-level ${String(list['kind'])}`;
  const id = one['id'] as Node;
  const type = isNode(id['typeAnnotation']) ? textOf(source, id['typeAnnotation']) : '';
  const value = one['init'];
  if (!isNode(value) || isReadonlyType(type)) return undefined;
  const callee = value.type === 'NewExpression' ? (nameOf(value['callee']) ?? '') : '';
  if (COLLECTIONS.includes(callee)) return `a ${callee} that can change`;
  const contents = (value['elements'] ?? value['properties']) as readonly unknown[] | undefined;
  if (value.type !== 'ArrayExpression' && value.type !== 'ObjectExpression') return undefined;
  if (changed.has(nameOf(id) ?? '')) return 'a literal that is changed';
  return contents?.length === 0 ? 'an empty literal that can change' : undefined;
}
