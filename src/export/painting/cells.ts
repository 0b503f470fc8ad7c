import type { PixelSize } from '../clip/formats';
import type { Rect } from '../picture/canvasPen';

/** Divides a frame into equal cells for `count` swings: side by side, or one above the other where it is upright. */
export function cellsOf({ width, height }: PixelSize, count: number): readonly Rect[] {
  const isRow = width >= height;
  const all = Math.max(1, count);
  return Array.from({ length: all }, (_, i): Rect => {
    const w = isRow ? Math.floor(width / all) : width;
    const h = isRow ? height : Math.floor(height / all);
    return { x: isRow ? i * w : 0, y: isRow ? 0 : i * h, width: w, height: h };
  });
}
