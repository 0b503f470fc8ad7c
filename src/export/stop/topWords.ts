import type { Verdict } from '../../reading/verdicts';
import { ILLUSTRATION } from '../../words';
import type { Box } from '../../plates/plate/frame';
import {
  book,
  draft,
  drawSwatch,
  widthOf,
  wrap,
  writeLine,
  type Hand,
  type Inks,
  type Pen,
} from '../picture/canvasPen';
import type { ShapeSizes } from './sizes';

/** What stands at the top of a picture, from above. Whatever is not given is left out. */
export interface TopWords {
  readonly label?: string;
  /** The largest word, with the swatch of its verdict. */
  readonly word?: { readonly text: string; readonly px: number; readonly colour: string; readonly verdict?: Verdict };
  /** A headline that wraps, made smaller until it fits this height, px of the sizes. */
  readonly headline?: { readonly text: string; readonly hand: Hand; readonly colour: string; readonly tall: number };
  readonly sentence?: string;
  /** Smaller than the sentence, below it, a line or two each. */
  readonly notes?: readonly string[];
}

interface Line {
  readonly text: string;
  readonly hand: Hand;
  readonly colour: string;
  readonly x: number;
  /** Base line. */
  readonly y: number;
  readonly box: Box;
}

/** Words, laid out. px of the picture. */
export interface LaidWords {
  readonly lines: readonly Line[];
  readonly swatch: { readonly box: Box; readonly verdict: Verdict } | undefined;
  readonly boxes: readonly Box[];
  readonly bottom: number;
}

export interface Column {
  readonly left: number;
  readonly width: number;
  /** Of sentences, where they are narrower. */
  readonly sentences?: number;
}

/** Letters above and below their base line, share of their size. */
const [RISE, FALL] = [0.74, 0.22] as const;
const SMALLEST_HEADLINE = 0.4;

/** Lays out the words at the top of a picture: source line first. */
export function layWords(
  pen: Pen,
  { label, word, headline, sentence, notes = [] }: TopWords,
  { left, width, sentences = width }: Column,
  sizes: ShapeSizes,
  unit: number,
  inks: Inks,
  /** Where the words begin, px, where the source line stands elsewhere. */
  below?: number,
): LaidWords {
  const lines: Line[] = [];
  let swatch: LaidWords['swatch'];
  const put = (text: string, hand: Hand, colour: string, x: number, y: number): void => {
    const wide = widthOf(pen, text, hand);
    const box = { left: x, right: x + wide, top: y - RISE * hand.px, bottom: y + FALL * hand.px };
    lines.push({ text, hand, colour, x, y, box });
  };
  const { source } = sizes;
  if (below === undefined)
    put(ILLUSTRATION, draft(source.px * unit, 500), inks.quiet, left, (source.top + 0.88 * source.px) * unit);
  let y = below ?? sizes.top * unit;
  const putAll = (text: string, hand: Hand, colour: string, lead: number, wide = width, first = lead): void => {
    for (const [i, line] of balance(pen, text, hand, wide).entries()) {
      y += i === 0 ? first : lead;
      put(line, hand, colour, left, y);
    }
  };
  if (label) {
    const px = sizes.label * unit;
    y += 0.88 * px;
    put(label, draft(px, 600), inks.ink, left, y);
  }
  if (word) {
    let px = word.px * unit;
    const own = (): number => (word.verdict ? px * 0.87 : 0) + widthOf(pen, word.text, book(px, 700));
    while (own() > width && px > 0.5 * word.px * unit) px *= 0.96;
    y += 0.91 * px;
    if (word.verdict) {
      const side = 0.67 * px;
      const box = { left, right: left + side, top: y - 0.6 * px, bottom: y + 0.07 * px };
      swatch = { box, verdict: word.verdict };
    }
    put(word.text, book(px, 700), word.colour, left + (word.verdict ? 0.87 * px : 0), y);
    y += 0.37 * px;
  }
  if (headline) {
    let { hand } = headline;
    const full = hand.px;
    const fits = (): boolean => {
      const found = wrap(pen, headline.text, hand, width);
      return (
        found.length * hand.px * 1.06 <= headline.tall * unit &&
        found.every((line) => widthOf(pen, line, hand) <= width)
      );
    };
    while (!fits() && hand.px > SMALLEST_HEADLINE * full) hand = { ...hand, px: hand.px * 0.96 };
    y += label ? 0.1 * hand.px : -0.12 * hand.px;
    putAll(headline.text, hand, headline.colour, hand.px * 1.06);
    y += 0.3 * hand.px;
  }
  if (sentence) {
    const px = sizes.sentence * unit;
    if (!word && !headline) y += 0.1 * px;
    putAll(sentence, book(px, 500), inks.ink, px * 1.22, sentences, px);
    y += 0.2 * px;
  }
  for (const note of notes) {
    const px = sizes.label * 0.76 * unit;
    putAll(note, draft(px, 600), inks.ink, px * 1.25);
  }
  const boxes = [...lines.map(({ box }) => box), ...(swatch ? [swatch.box] : [])];
  return { lines, swatch, boxes, bottom: Math.max(0, ...boxes.map(({ bottom }) => bottom)) };
}

/** Lines of even length: as few as fit, and no word alone in the last. */
export function balance(pen: Pen, text: string, hand: Hand, width: number): string[] {
  let lines = wrap(pen, text, hand, width);
  for (let narrower = width * 0.96; lines.length > 1 && narrower > width * 0.5; narrower *= 0.96) {
    const next = wrap(pen, text, hand, narrower);
    if (next.length > lines.length || next.some((line) => widthOf(pen, line, hand) > narrower)) break;
    lines = next;
  }
  return lines;
}

/** The same words farther right: beside a left-handed player. */
export function shifted(laid: LaidWords, by: number): LaidWords {
  const moved = (box: Box): Box => ({ ...box, left: box.left + by, right: box.right + by });
  return {
    ...laid,
    lines: laid.lines.map((line) => ({ ...line, x: line.x + by, box: moved(line.box) })),
    swatch: laid.swatch && { ...laid.swatch, box: moved(laid.swatch.box) },
    boxes: laid.boxes.map(moved),
  };
}

/** Draws laid out words, with paper round the letters: whatever lies below, they can be read. */
export function drawWords(pen: Pen, { lines, swatch }: LaidWords, inks: Inks, unit: number): void {
  for (const { text, hand, colour, x, y } of lines) writeLine(pen, text, hand, x, y, colour, inks.paper);
  if (!swatch) return;
  const { left, top, right, bottom } = swatch.box;
  drawSwatch(pen, { x: left, y: top, width: right - left, height: bottom - top }, swatch.verdict, inks, unit * 1.2);
}
