import { createElement, useId, type ReactElement } from 'react';
import type { DrawnPart } from './body';
import type { Lettering } from './lettering';
import { Patterns } from './Patterns';
import type { PlateDrawing } from './plateDrawing';
import { layersOf, placeOfSolids, type Shape } from './shapes';

const NAMES: Readonly<Record<string, string>> = {
  class: 'className',
  'text-anchor': 'textAnchor',
  'font-size': 'fontSize',
};

function render({ key, tag, attributes, text, inside }: Shape): ReactElement {
  const own = Object.entries(attributes).map(([name, value]) => [NAMES[name] ?? name, value]);
  return createElement(tag, { key, ...Object.fromEntries(own) }, text, inside?.map(render));
}

/** One solid: its contour and the engraver's lines. The dark board chalks the lit side instead. */
const PartShape = ({ tone, contour, shade, lit }: DrawnPart) => (
  <>
    <path className={`plate-part is-${tone}`} d={contour} />
    {shade && <path className="plate-engraving is-shade" d={shade} />}
    {lit && <path className="plate-engraving is-lit" d={lit} />}
  </>
);

interface Props {
  readonly drawing: PlateDrawing;
  readonly letters: Lettering;
  /** What the picture shows, as a sentence. */
  readonly label: string;
}

/** A plate that stands still, as SVG. Everything in it comes worked out; nothing is decided here. */
export function Drawing({ drawing: { frame, parts, annotation }, letters, label }: Props) {
  const patterns = { hatch: useId(), dots: useId() };
  const { view } = annotation;
  const { corridor, zone, lines, over } = layersOf(annotation, letters, undefined, patterns);
  const solids = (inFront: boolean): ReactElement => (
    <g transform={placeOfSolids(frame)}>
      {parts.map((part) => part.isInFront === inFront && <PartShape key={part.id} {...part} />)}
    </g>
  );
  return (
    <svg
      className="plate-drawing"
      viewBox={`${view.left} ${view.top} ${view.right - view.left} ${view.bottom - view.top}`}
      role="img"
      aria-label={label}
    >
      <Patterns {...patterns} />
      {corridor.map(render)}
      {solids(false)}
      {zone.map(render)}
      {solids(true)}
      {lines.map(render)}
      {over.map(render)}
    </svg>
  );
}
