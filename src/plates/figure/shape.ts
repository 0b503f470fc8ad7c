/** An SVG element as plain data: a still plate renders it, a plate that is drawn again and again writes what changed of it. */
export interface Shape {
  /** Which element of its group this is, from one drawing to the next. */
  readonly key: string;
  readonly tag: 'path' | 'text' | 'tspan' | 'circle' | 'g';
  readonly attributes: Attributes;
  /** Comes before what is `inside`. */
  readonly text?: string;
  readonly inside?: readonly Shape[];
}

/**
 * Names and values in turn: `['class', 'plate-axis', 'd', path]`. Looked up by name, the values made Chromium optimise the painting loop
 * and discard it again every few steps of a slider (DEVELOPERS.md).
 */
export type Attributes = readonly (string | number)[];

/** An SVG matrix: the images of (1, 0) and (0, 1), then of the origin. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

const rounded = (value: number, perUnit: number): number => Math.round(value * perUnit) / perUnit;
/** A matrix as the attribute `transform`, to a hundredth of what it moves and to a hundred-thousandth of what it turns and scales. */
export const transformOf = ([a, b, c, d, e, f]: Matrix): string =>
  `matrix(${rounded(a, 1e5)} ${rounded(b, 1e5)} ${rounded(c, 1e5)} ${rounded(d, 1e5)} ${rounded(e, 100)} ${rounded(f, 100)})`;

/** A path of one class. */
export const path = (key: string, name: string, d: string): Shape => ({
  key,
  tag: 'path',
  attributes: ['class', name, 'd', d],
});
