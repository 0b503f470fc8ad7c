/** An SVG element as plain data: a still plate renders it, a plate that is drawn again and again writes what changed of it. */
export interface Shape {
  /** Which element of its group this is, from one drawing to the next. */
  readonly key: string;
  readonly tag: 'path' | 'text' | 'tspan' | 'circle' | 'g';
  readonly attributes: Readonly<Record<string, string | number>>;
  /** Comes before what is `inside`. */
  readonly text?: string;
  readonly inside?: readonly Shape[];
}

/** An SVG matrix: the images of (1, 0) and (0, 1), then of the origin. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** A matrix as the attribute `transform`. */
export const transformOf = (matrix: Matrix): string => `matrix(${matrix.join(' ')})`;

/** A path of one class. */
export const path = (key: string, name: string, d: string): Shape => ({
  key,
  tag: 'path',
  attributes: { class: name, d },
});
