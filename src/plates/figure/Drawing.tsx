import { createElement, useId, type ReactElement } from 'react';
import type { Lettering } from '../annotation/lettering';
import { Patterns } from './Patterns';
import type { PlateDrawing } from '../plate/plateDrawing';
import type { Shape } from './shape';
import { layersOf } from './shapes';

const NAMES: Readonly<Record<string, string>> = {
  class: 'className',
  'text-anchor': 'textAnchor',
  'font-size': 'fontSize',
};

function render({ key, tag, attributes, text, inside }: Shape): ReactElement {
  const own: Record<string, string | number> = {};
  for (let i = 0; i < attributes.length; i += 2) own[NAMES[attributes[i]] ?? attributes[i]] = attributes[i + 1];
  return createElement(tag, { key, ...own }, text, inside?.map(render));
}

interface Props {
  readonly drawing: PlateDrawing;
  readonly letters: Lettering;
  /** What the picture shows, as a sentence. */
  readonly label: string;
}

/** A plate that stands still, as SVG. Everything in it comes worked out; nothing is decided here. */
export function Drawing({ drawing, letters, label }: Props) {
  const patterns = { hatch: useId(), dots: useId() };
  const { view } = drawing.annotation;
  const { under, over } = layersOf(drawing, letters, undefined, patterns);
  return (
    <svg
      className="plate-drawing"
      viewBox={`${view.left} ${view.top} ${view.right - view.left} ${view.bottom - view.top}`}
      role="img"
      aria-label={label}
    >
      <Patterns {...patterns} />
      {under.map(render)}
      {over.map(render)}
    </svg>
  );
}
