import type { Shape } from './shapes';

const SVG = 'http://www.w3.org/2000/svg';

interface Painted {
  readonly element: SVGElement;
  shape: Shape;
}
/** What was written last into each group, so that only what changed is written again. */
const painted = new WeakMap<SVGElement, Map<string, Painted>>();

/** Brings `group` to hold exactly these shapes, in this order. Nothing else may write into it. */
export function paintShapes(
  group: SVGElement,
  shapes: readonly Shape[],
  from: ChildNode | null = group.firstChild,
): void {
  let known = painted.get(group);
  if (!known) painted.set(group, (known = new Map<string, Painted>()));
  let next = from;
  for (const shape of shapes) {
    let one = known.get(shape.key);
    if (one) write(one, shape);
    else known.set(shape.key, (one = create(shape)));
    if (one.element === next) next = next.nextSibling;
    else group.insertBefore(one.element, next);
  }
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
  if (shape.inside) paintShapes(element, shape.inside, null);
  return { element, shape };
}

function write(one: Painted, shape: Shape): void {
  const { element, shape: before } = one;
  if (shape === before) return;
  for (const name in shape.attributes) {
    const value = shape.attributes[name];
    if (value !== before.attributes[name]) element.setAttribute(name, String(value));
  }
  const { text } = shape;
  // Its text is an element's first child.
  if (text !== undefined && text !== before.text) (element.firstChild as Text).data = text;
  if (shape.inside && shape.inside !== before.inside) {
    paintShapes(element, shape.inside, text === undefined ? element.firstChild : element.firstChild!.nextSibling);
  }
  one.shape = shape;
}
