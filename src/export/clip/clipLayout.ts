import type { PixelSize } from './formats';
import type { Rect } from '../picture/canvasPen';

/** Where things stand in a frame, px. */
interface Cell {
  readonly picture: Rect;
  /** Room for a plate beside or below the picture. */
  readonly plate: Rect | null;
}
export interface ClipLayout {
  /** px for a unit of lettering. */
  readonly unit: number;
  readonly cells: readonly Cell[];
  readonly strip: Rect;
}

/** A cell wider than this has its plate beside the picture, a narrower one below it. */
const WIDE = 0.95;
/** Share of the cell that the picture keeps. */
const KEPT = { beside: 0.58, below: 0.56 } as const;
const STRIP = { landscape: 112, upright: 128 } as const;
/** Upright and square pictures are watched on phones, where their width is the phone's: larger letters. */
const UPRIGHT_LETTERS = 1.25;

/** Divides a frame: pictures of `count` swings, with room for plates or without, over a strip for words. */
export function layOut({ width, height }: PixelSize, count: number, hasPlates: boolean): ClipLayout {
  const isWide = width > height;
  const unit = (Math.min(width, height) / 720) * (isWide ? 1 : UPRIGHT_LETTERS);
  const tall = Math.round((isWide ? STRIP.landscape : STRIP.upright) * unit);
  const strip = { x: 0, y: height - tall, width, height: tall };
  const room = height - tall;
  const isRow = width >= height;
  const cells = Array.from({ length: count }, (_, i): Cell => {
    const w = isRow ? Math.floor(width / count) : width;
    const h = isRow ? room : Math.floor(room / count);
    const cell = { x: isRow ? i * w : 0, y: isRow ? 0 : i * h, width: w, height: h };
    if (!hasPlates) return { picture: cell, plate: null };
    if (w / h > WIDE) {
      const kept = Math.round(w * KEPT.beside);
      return {
        picture: { ...cell, width: kept },
        plate: { ...cell, x: cell.x + kept, width: w - kept },
      };
    }
    const kept = Math.round(h * KEPT.below);
    return { picture: { ...cell, height: kept }, plate: { ...cell, y: cell.y + kept, height: h - kept } };
  });
  return { unit, cells, strip };
}
