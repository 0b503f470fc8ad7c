import type { DrawnPart } from './body';

const SVG = 'http://www.w3.org/2000/svg';
/** What was written last, so that only what changed is written again. */
interface Painted {
  readonly group: SVGGElement;
  readonly paths: readonly [contour: SVGPathElement, shade: SVGPathElement, lit: SVGPathElement];
  part: DrawnPart | undefined;
}
const painted = new WeakMap<SVGGElement, Map<string, Painted>>();

/** Brings `group` to show those solids that lie in front (or behind): one group each, in the order they are drawn. */
export function paintParts(group: SVGGElement, parts: readonly DrawnPart[], inFront: boolean): void {
  const known = painted.get(group) ?? new Map<string, Painted>();
  painted.set(group, known);
  let next = group.firstChild;
  for (const part of parts) {
    if (part.isInFront !== inFront) continue;
    let solid = known.get(part.id);
    if (!solid) known.set(part.id, (solid = createSolid()));
    write(solid, part);
    if (solid.group === next) next = next.nextSibling;
    else group.insertBefore(solid.group, next);
  }
  while (next) {
    const gone = next;
    next = next.nextSibling;
    gone.remove();
  }
}

function createSolid(): Painted {
  const group = document.createElementNS(SVG, 'g');
  const create = (name: string): SVGPathElement => {
    const path = document.createElementNS(SVG, 'path');
    path.setAttribute('class', name);
    return path;
  };
  const paths = [create(''), create('plate-engraving is-shade'), create('plate-engraving is-lit')] as const;
  group.append(paths[0]);
  return { group, paths, part: undefined };
}

function write(solid: Painted, part: DrawnPart): void {
  const { part: before, paths } = solid;
  if (part === before) return;
  const [contour, shade, lit] = paths;
  if (part.tone !== before?.tone) contour.setAttribute('class', `plate-part is-${part.tone}`);
  if (part.contour !== before?.contour) contour.setAttribute('d', part.contour);
  engrave(solid.group, shade, part.shade, before?.shade ?? '');
  engrave(solid.group, lit, part.lit, before?.lit ?? '');
  solid.part = part;
}

/** A solid that is not engraved has no path for it. */
function engrave(group: SVGGElement, path: SVGPathElement, lines: string, before: string): void {
  if (lines === before) return;
  if (lines === '') path.remove();
  else {
    path.setAttribute('d', lines);
    if (before === '') group.append(path);
  }
}
