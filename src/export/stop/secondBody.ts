import { createCanvas, type Canvas, type Pen } from '../picture/canvasPen';
import type { PixelSize } from '../clip/formats';

/** A body as the stage draws it, on nothing: solid, or in contour. Valid until the next is asked for. */
export type DrawAlone = (which: 'first' | 'second', how: 'solid' | 'contour') => Canvas;

/** Shares of its colour in a second body: outside the first, over it, and its wash. */
const SHARE = { outside: 0.8, over: 0.42, wash: 0.2 } as const;
/** Contours closer together than this are one, px of a picture whose shorter side is 720. */
const SAME = 3;
const AROUND = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4);

function blank({ width, height }: PixelSize): { canvas: Canvas; pen: Pen } {
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) throw new RangeError('There is no room for a picture of this size.');
  return { canvas, pen };
}

/**
 * A second body as a layer to be laid over the first: its contour, only where it parts from the first body's, strong outside the wood and
 * faint over it; and a wash of its colour where it does not cover the first.
 */
export function layerSecond(draw: DrawAlone, size: PixelSize, unit: number, colour: string, hasWash: boolean): Canvas {
  const take = (which: 'first' | 'second', how: 'solid' | 'contour') => {
    const copy = blank(size);
    copy.pen.drawImage(draw(which, how), 0, 0);
    return copy;
  };
  const tint = ({ pen }: { pen: Pen }): void => {
    pen.globalCompositeOperation = 'source-in';
    pen.fillStyle = colour;
    pen.fillRect(0, 0, size.width, size.height);
  };
  const wood = take('first', 'solid').canvas;
  const known = take('first', 'contour').canvas;
  const lines = take('second', 'contour');
  tint(lines);
  // Where lines part: without what the first body's contour covers already.
  lines.pen.globalCompositeOperation = 'destination-out';
  for (const angle of AROUND) {
    lines.pen.drawImage(known, Math.cos(angle) * SAME * unit, Math.sin(angle) * SAME * unit);
  }
  lines.pen.drawImage(known, 0, 0);
  const layer = blank(size);
  const lay = (from: Canvas, keep: 'destination-in' | 'destination-out', share: number): void => {
    const part = blank(size);
    part.pen.drawImage(from, 0, 0);
    part.pen.globalCompositeOperation = keep;
    part.pen.drawImage(wood, 0, 0);
    layer.pen.globalAlpha = share;
    layer.pen.drawImage(part.canvas, 0, 0);
  };
  if (hasWash) {
    const wash = take('second', 'solid');
    tint(wash);
    lay(wash.canvas, 'destination-out', SHARE.wash);
  }
  lay(lines.canvas, 'destination-out', SHARE.outside);
  lay(lines.canvas, 'destination-in', SHARE.over);
  return layer.canvas;
}
