import type { Attributes, Shape } from './shape';

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
  const { attributes } = shape;
  for (let i = 0; i < attributes.length; i += 2) element.setAttribute(String(attributes[i]), String(attributes[i + 1]));
  if (shape.text !== undefined) element.append(shape.text);
  const one: Painted = { element, shape };
  if (shape.inside) paintInto(element, (one.inside = createGroup()), shape.inside, shape.text !== undefined);
  return one;
}

function write(one: Painted, shape: Shape): void {
  const { element, shape: before } = one;
  if (shape === before) return;
  if (shape.attributes !== before.attributes) writeAttributes(element, before.attributes, shape.attributes);
  const { text } = shape;
  // Its text is an element's first child.
  if (text !== undefined && text !== before.text) (element.firstChild as Text).data = text;
  if (shape.inside && shape.inside !== before.inside) {
    paintInto(element, (one.inside ??= createGroup()), shape.inside, text !== undefined);
  }
  one.shape = shape;
}

function writeAttributes(element: SVGElement, before: Attributes, attributes: Attributes): void {
  // An attribute that has only changed its place in the list is written again below.
  for (let i = 0; i < before.length; i += 2)
    if (before[i] !== attributes[i]) element.removeAttribute(String(before[i]));
  for (let i = 0; i < attributes.length; i += 2) {
    if (attributes[i] !== before[i] || attributes[i + 1] !== before[i + 1])
      element.setAttribute(String(attributes[i]), String(attributes[i + 1]));
  }
}
