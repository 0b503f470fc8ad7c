import type { Point } from '../plate/frame';
import type { Fitting, PlateDrawing } from '../plate/plateDrawing';
import type { Size } from '../useSize';

/** Where the ring stands in the picture, css px, and how a metre of the reading moves it. */
export interface HandlePlace {
  readonly at: Point;
  readonly perMetre: Point;
  /** The reading there, m. */
  readonly value: number;
}

/** Half a finger: the touch area stays inside the picture, off the title above it. */
const HALF_TARGET = 24;
const within = (at: number, size: number): number =>
  Math.max(HALF_TARGET, Math.min(Math.max(HALF_TARGET, size - HALF_TARGET), at));

/** Where the ring stands in the picture and how a metre of the reading moves it, css px. `pulled` in m. */
export function handleOn(
  { annotation: { handle } }: PlateDrawing,
  pulled: number,
  size: Size,
  { view, pxPerUnit }: Fitting,
): Omit<HandlePlace, 'value'> {
  const { at, direction, perMetre } = handle;
  const x = at.x + pulled * perMetre * direction.x - (view.left + view.right) / 2;
  const y = at.y + pulled * perMetre * direction.y - (view.top + view.bottom) / 2;
  return {
    at: {
      x: within(size.width / 2 + x * pxPerUnit, size.width),
      y: within(size.height / 2 + y * pxPerUnit, size.height),
    },
    perMetre: { x: direction.x * perMetre * pxPerUnit, y: direction.y * perMetre * pxPerUnit },
  };
}
