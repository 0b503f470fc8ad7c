import type { Matrix, Shape } from './shapes';

const SVG = 'http://www.w3.org/2000/svg';

interface Painted {
  readonly element: SVGElement;
  shape: Shape;
  /** What places a group by its matrix. */
  placed?: SVGTransform;
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
  /** Elements that were stepped over: they come later in the order, or not at all. */
  let passed: Set<ChildNode> | undefined;
  for (const shape of shapes) {
    let one = known.get(shape.key);
    if (one) write(one, shape);
    else known.set(shape.key, (one = create(shape)));
    const { element } = one;
    // One that moved back is moved, not all that it moved behind.
    if (next && element !== next && element === next.nextSibling) {
      (passed ??= new Set()).add(next);
      next = element;
    }
    if (element === next) next = next.nextSibling;
    else {
      passed?.delete(element);
      group.insertBefore(element, next);
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
  if (shape.inside) paintShapes(element, shape.inside, null);
  const one = { element, shape };
  if (shape.matrix) place(one, shape.matrix);
  return one;
}

function write(one: Painted, shape: Shape): void {
  const { element, shape: before } = one;
  if (shape === before) return;
  for (const name in shape.attributes) {
    const value = shape.attributes[name];
    if (value !== before.attributes[name]) element.setAttribute(name, String(value));
  }
  if (shape.matrix !== before.matrix) place(one, shape.matrix);
  const { text } = shape;
  // Its text is an element's first child.
  if (text !== undefined && text !== before.text) (element.firstChild as Text).data = text;
  if (shape.inside && shape.inside !== before.inside) {
    paintShapes(element, shape.inside, text === undefined ? element.firstChild : element.firstChild!.nextSibling);
  }
  one.shape = shape;
}

let shared: SVGMatrix | undefined;

/** Numbers handed over as numbers: written as text they would be read again for every part of every step. */
function place(one: Painted, matrix: Matrix | undefined): void {
  const list = (one.element as SVGGElement).transform.baseVal;
  if (!matrix) {
    list.clear();
    delete one.placed;
    return;
  }
  shared ??= document.createElementNS(SVG, 'svg').createSVGMatrix();
  shared.a = matrix[0];
  shared.b = matrix[1];
  shared.c = matrix[2];
  shared.d = matrix[3];
  shared.e = matrix[4];
  shared.f = matrix[5];
  if (one.placed) one.placed.setMatrix(shared);
  else one.placed = list.initialize(list.createSVGTransformFromMatrix(shared));
}
