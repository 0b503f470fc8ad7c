import type { Shape } from './shape';

const SVG = 'http://www.w3.org/2000/svg';

interface Painted {
  readonly element: SVGElement;
  shape: Shape;
  /** What stands in it. */
  inside?: Group;
}
/** What was written into a group, so that only what changed is written again. */
interface Group {
  /** In the order they stand in. */
  readonly standing: Painted[];
  /** Those that were taken out too: they may come back. */
  readonly known: Map<string, Painted>;
}
const createGroup = (): Group => ({ standing: [], known: new Map<string, Painted>() });
/** Cache: what was written into an element, for as long as that stands. */
const groups = new WeakMap<SVGElement, Group>();

/** Brings `element` to hold exactly these shapes, in this order. Nothing else may write into it. */
export function paintShapes(element: SVGElement, shapes: readonly Shape[]): void {
  let group = groups.get(element);
  if (!group) groups.set(element, (group = createGroup()));
  paintInto(element, group, shapes);
}

/** `hasText`: the parent's first node is a text of its own, and stays. */
function paintInto(parent: SVGElement, group: Group, shapes: readonly Shape[], hasText = false): void {
  const { standing, known } = group;
  // Usually the same shapes come in the same order; then no DOM siblings need to be read.
  let at = 0;
  while (at < shapes.length && at < standing.length && shapes[at].key === standing[at].shape.key) {
    write(standing[at], shapes[at]);
    at++;
  }
  if (at === shapes.length && at === standing.length) return;
  const last = at === 0 ? (hasText ? parent.firstChild : null) : standing[at - 1].element;
  let next = last ? last.nextSibling : parent.firstChild;
  standing.length = at;
  /** Elements that were skipped: they come later in the order, or have gone. */
  let passed: Set<ChildNode> | undefined;
  for (; at < shapes.length; at++) {
    const shape = shapes[at];
    let one = known.get(shape.key);
    if (one) write(one, shape);
    else known.set(shape.key, (one = create(shape)));
    standing.push(one);
    const { element } = one;
    // If an element moved back, only it is moved, not everything it moved behind.
    if (next && element !== next && element === next.nextSibling) {
      (passed ??= new Set()).add(next);
      next = element;
    }
    if (element === next) next = next.nextSibling;
    else {
      passed?.delete(element);
      parent.insertBefore(element, next);
    }
  }
  passed?.forEach((gone) => gone.remove());
  while (next) {
    const gone = next;
    next = next.nextSibling;
    gone.remove();
  }
}

function create(shape: Shape): Painted {
  const element = document.createElementNS(SVG, shape.tag);
  for (const name of Object.keys(shape.attributes)) element.setAttribute(name, String(shape.attributes[name]));
  if (shape.text !== undefined) element.append(shape.text);
  const one: Painted = { element, shape };
  if (shape.inside) paintInto(element, (one.inside = createGroup()), shape.inside, shape.text !== undefined);
  return one;
}

function write(one: Painted, shape: Shape): void {
  const { element, shape: before } = one;
  if (shape === before) return;
  const { attributes } = shape;
  if (attributes !== before.attributes) {
    for (const name in attributes) {
      const value = attributes[name];
      if (value !== before.attributes[name]) element.setAttribute(name, String(value));
    }
    for (const name in before.attributes) if (!(name in attributes)) element.removeAttribute(name);
  }
  const { text } = shape;
  // Its text is an element's first child.
  if (text !== undefined && text !== before.text) (element.firstChild as Text).data = text;
  if (shape.inside && shape.inside !== before.inside) {
    paintInto(element, (one.inside ??= createGroup()), shape.inside, text !== undefined);
  }
  one.shape = shape;
}
