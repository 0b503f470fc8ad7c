import type { Point, Segment } from '../plate/frame';

/** Rounded to a tenth of a unit: half of that is below what any screen shows. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** A segment as an SVG path. */
export const linePath = ({ from, to }: Segment): string =>
  `M${tenth(from.x)} ${tenth(from.y)}L${tenth(to.x)} ${tenth(to.y)}`;

/** The area between points as a closed SVG path. */
export const areaPath = (points: readonly Point[]): string =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`).join('L')}Z`;
