import type { Figure } from '../../figure/figure';
import type { PartId } from '../../figure/partIds';
import type { EngravedPart } from './engraving';
import { path, type Matrix, type Shape } from './shape';

/** What a part is made of, as the plates colour it. */
export type Tone = 'beech' | 'walnut' | 'tinted' | 'grip' | 'steel' | 'head';

/** The figure of one player with one club, ready to be drawn on plates. */
export interface PlateFigure {
  readonly figure: Figure;
  readonly engraved: readonly EngravedPart[];
  /** Box and ball around each part in its own axes, m, `BOUND_SIZE` numbers each. What lies off the plate is not drawn. */
  readonly bounds: Float64Array;
}

/**
 * How much care goes into a figure: while everything moves a sketch, whose contours are carried along where that shows no difference;
 * contours drawn for where they stand; the lines of the engraver too.
 */
export type Finish = 'sketch' | 'drawn' | 'engraved';

/**
 * Contour of one part, and its engraving once there is time for it. Paths in tenths of a unit from where the frame puts the middle of
 * the stance: a plate that only slides its frame along draws nothing anew.
 */
export interface Outline {
  readonly contour: string;
  readonly shade: string;
  readonly lit: string;
  readonly isEngraved: boolean;
  /** All of it, ready to be written. */
  readonly shapes: readonly Shape[];
}

/** A part on the plate, ready to be written as a group of its outline. */
export interface DrawnPart extends Shape {
  readonly id: PartId;
  readonly tone: Tone;
  /** Club and hands lie over the pattern, the rest of the figure under it. */
  readonly isInFront: boolean;
  readonly outline: Outline;
  /** Brings an outline that was drawn elsewhere to where the part lies. Nothing for one that was drawn here. */
  readonly matrix: Matrix | undefined;
}

/** One solid's contour and the engraver's lines. The dark board chalks the lit side instead. */
export function outlineShapes(tone: Tone, contour: string, shade: string, lit: string): readonly Shape[] {
  const shapes = [path('contour', `plate-part is-${tone}`, contour)];
  if (shade !== '') shapes.push(path('shade', 'plate-engraving is-shade', shade));
  if (lit !== '') shapes.push(path('lit', 'plate-engraving is-lit', lit));
  return shapes;
}
