/** What decides how a shape looks, and a letter on top of that. */
const OF_SHAPES = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
] as const;
const OF_LETTERS = [
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
  'font-variant-numeric',
  'text-anchor',
  'paint-order',
] as const;
/** Values that need not be said. */
const USUAL: Readonly<Record<string, string>> = {
  'fill-opacity': '1',
  stroke: 'none',
  'stroke-width': '1px',
  'stroke-opacity': '1',
  'stroke-dasharray': 'none',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
};

/**
 * Writes the look of an SVG that stands on the page into the SVG itself, so that it looks the same anywhere: style sheets and
 * tokens stay behind. What is not shown is taken out.
 */
export function inlineLook(svg: SVGSVGElement): void {
  const looks: { element: Element; look: [string, string][] }[] = [];
  const hidden: Element[] = [];
  for (const element of svg.querySelectorAll('path, circle, rect, line, text, tspan')) {
    const style = getComputedStyle(element);
    if (style.display === 'none') {
      hidden.push(element);
      continue;
    }
    const isLetter = element instanceof SVGTextContentElement;
    const names = isLetter ? [...OF_SHAPES, ...OF_LETTERS] : OF_SHAPES;
    const look = names
      .map((name): [string, string] => [name, style.getPropertyValue(name)])
      .filter(([name, value]) => value !== USUAL[name]);
    looks.push({ element, look });
  }
  for (const element of hidden) element.remove();
  for (const { element, look } of looks) {
    if (element instanceof SVGTextContentElement) {
      element.setAttribute('style', look.map(([name, value]) => `${name}:${value}`).join(';'));
    } else {
      for (const [name, value] of look) element.setAttribute(name, value.replace(/px$/, ''));
    }
  }
  for (const element of [svg, ...svg.querySelectorAll('[class]')]) element.removeAttribute('class');
}
