import { widthOf, wrap, writeLine, type Hand, type Pen, type Rect } from './canvasPen';

const LEAD = 1.07;
const STEP = 0.97;
const SMALLEST = 0.4;

/** Writes a text into a box from its top, as large as its lettering unless it has to be smaller to fit. */
export function drawWordsOf(pen: Pen, text: string, hand: Hand, colour: string, box: Rect, paper: string): void {
  let own = hand;
  const fits = (): boolean => {
    const lines = wrap(pen, text, own, box.width);
    return lines.length * own.px * LEAD <= box.height && lines.every((line) => widthOf(pen, line, own) <= box.width);
  };
  while (!fits() && own.px > SMALLEST * hand.px) own = { ...own, px: own.px * STEP };
  wrap(pen, text, own, box.width).forEach((line, i) => {
    writeLine(pen, line, own, box.x, box.y + own.px * (0.86 + i * LEAD), colour, paper);
  });
}
