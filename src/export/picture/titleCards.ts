import { SCAN } from '../../words';
import { SCAN_PRACTICE, SHORT_CAUTION } from '../../words/showing/handout';
import type { ClipJob, OwnLook } from '../clip/clipJob';
import type { PixelSize } from '../clip/formats';
import type { ShapeSizes } from '../stop/sizes';
import { balance, drawWords, layWords, type TopWords } from '../stop/topWords';
import { book, draft, drawCode, widthOf, writeLine, type Hand, type Inks, type Pen } from './canvasPen';

export interface CardOf {
  readonly pen: Pen;
  readonly size: PixelSize;
  readonly sizes: ShapeSizes;
  readonly unit: number;
  readonly inks: Inks;
}

/** Room for a mark of the coach's own, px of a picture whose shorter side is 720: 1.9 to 1. */
const MARK = { width: 172, height: 90.5 } as const;
/** Widest line of the last card, share of the width; sizes of its lines, px. */
const END_WIDTH = 0.86;
const END = { scan: 44, task: 32, caution: 28 } as const;

/** The first card: the task, and for whom. */
export const titleWords = (
  { title, who, name, own, inks }: Pick<ClipJob, 'title' | 'who' | 'name' | 'own' | 'inks'>,
  sizes: ShapeSizes,
): TopWords => ({
  headline: {
    text: title,
    hand: book(sizes.title, 700),
    colour: own.colour ?? inks.ink,
    tall: sizes.isBeside.title ? 400 : 360,
  },
  sentence: name ? `For ${name}, ${who}` : who,
});

/** The coach's own mark, as large as its box holds it, its upper left corner (or middle) at a place. */
export function drawOwnMark(
  pen: Pen,
  { mark }: OwnLook,
  { x, y }: { readonly x: number; readonly y: number },
  unit: number,
  isCentred = false,
): void {
  if (!mark) return;
  const scale = Math.min((MARK.width * unit) / mark.width, (MARK.height * unit) / mark.height);
  const [width, height] = [mark.width * scale, mark.height * scale];
  pen.save();
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(mark, isCentred ? x - width / 2 : x, y, width, height);
  pen.restore();
}

/** The last card: a code that opens the swing, the task once more, what to mind, and the coach's own mark. */
export function drawEnd(
  { pen, size, sizes, unit, inks }: CardOf,
  squares: readonly (readonly boolean[])[],
  { title, isPlan, own }: Pick<ClipJob, 'title' | 'isPlan' | 'own'>,
): void {
  const source = layWords(pen, {}, { left: sizes.left * unit, width: size.width }, sizes, unit, inks);
  drawWords(pen, source, inks, unit);
  const middle = size.width / 2;
  const isWide = size.width > size.height * 1.2;
  const isUpright = size.height > size.width * 1.2;
  const code = sizes.code * unit;
  const top = isUpright ? size.height * 0.17 : source.bottom + (isWide ? 8 : 4) * unit;
  const whole = Math.max(1, Math.floor(code / squares.length)) * squares.length;
  drawCode(pen, squares, { x: middle - whole / 2, y: top, width: code, height: code });
  let y = top + whole + 12 * unit;
  const put = (text: string, hand: Hand, colour: string): void => {
    for (const line of balance(pen, text, hand, size.width * END_WIDTH)) {
      y += hand.px * 1.14;
      writeLine(pen, line, hand, middle - widthOf(pen, line, hand) / 2, y, colour, inks.paper);
    }
    y += hand.px * 0.22;
  };
  put(isPlan ? SCAN_PRACTICE : SCAN, book(END.scan * unit, 700), inks.ink);
  if (isPlan) put(title, book(END.task * unit, 600), own.colour ?? inks.ink);
  put(SHORT_CAUTION, draft(END.caution * unit, 600), inks.quiet);
  if (isWide) drawOwnMark(pen, own, { x: size.width - (sizes.left + MARK.width) * unit, y: sizes.top * unit }, unit);
  else drawOwnMark(pen, own, { x: middle, y: y + 14 * unit }, unit, true);
}
