import { FONT_FILES } from '../../look/fontFiles';
import type { Verdict } from '../../reading/verdicts';

/** A canvas on the page, or one in a worker. */
export type Canvas = HTMLCanvasElement | OffscreenCanvas;
export type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

const isOnPage = (): boolean => typeof document !== 'undefined';

/** A canvas that nobody sees. */
export function createCanvas(width: number, height: number): Canvas {
  if (!isOnPage()) return new OffscreenCanvas(width, height);
  return Object.assign(document.createElement('canvas'), { width, height });
}

/** A pen on a canvas without transparency, kept in plain memory because every picture is read back. */
export function penOn(canvas: Canvas): Pen {
  const pen = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  if (!pen) throw new RangeError('There is no room for a picture of this size.');
  return pen;
}

/** What stands on a canvas, as a PNG. */
export async function toPng(canvas: Canvas): Promise<Blob> {
  if ('convertToBlob' in canvas) return canvas.convertToBlob({ type: 'image/png' });
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new RangeError('There is no room for a picture of this size.');
  return blob;
}

/** Colours of the board, read from the page's tokens. */
export interface Inks {
  readonly paper: string;
  readonly plate: string;
  readonly ink: string;
  readonly quiet: string;
  readonly steep: string;
  readonly steepText: string;
  readonly shallow: string;
  readonly shallowText: string;
  readonly ghost: string;
  readonly reference: string;
  readonly brass: string;
}

/** The colours of the page as they stand now, light or dark, for a canvas. */
export function readInks(): Inks {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    paper: token('paper'),
    plate: token('plate'),
    ink: token('ink'),
    quiet: token('ink-2'),
    steep: token('steep'),
    steepText: token('steep-text'),
    shallow: token('shallow'),
    shallowText: token('shallow-text'),
    ghost: token('ghost'),
    reference: token('reference'),
    brass: token('brass'),
  };
}

const BOOK = '"Vollkorn Variable", Georgia, serif';
const DRAFT = '"Sofia Sans Semi Condensed Variable", "Arial Narrow", sans-serif';
/** Nothing smaller than this is drawn, px. */
const SMALLEST = 9;

const bookFont = (px: number, weight = 500, isItalic = false): string =>
  `${isItalic ? 'italic ' : ''}${weight} ${Math.max(SMALLEST, px)}px ${BOOK}`;
const draftFont = (px: number, weight = 500): string => `${weight} ${Math.max(SMALLEST, px)}px ${DRAFT}`;

/** The typefaces, ready to be drawn with: a canvas does not wait for them, and a worker has none of its own. */
export async function loadFonts(): Promise<void> {
  if (isOnPage()) {
    const faces = [bookFont(20), bookFont(20, 700), bookFont(20, 500, true), draftFont(20), draftFont(20, 600)];
    await Promise.all(faces.map((face) => document.fonts.load(face, 'Steep \u22124\u00b0')));
    return;
  }
  const { fonts } = self as unknown as { readonly fonts: FontFaceSet };
  const faces = FONT_FILES.map(
    ({ family, style, weight, url }) => new FontFace(family, `url(${url})`, { style, weight }),
  );
  for (const face of await Promise.all(faces.map((one) => one.load()))) fonts.add(face);
}

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How words are written: in one face, or in the book face with the numbers in the drafting face, as on the board. */
export interface Hand {
  readonly px: number;
  readonly face: 'book' | 'draft';
  readonly weight: number;
  readonly isItalic?: true;
}

/** Lettering in the book face: words. */
export const book = (px: number, weight = 500): Hand => ({ px, face: 'book', weight });

/** Lettering in the drafting face: numbers. */
export const draft = (px: number, weight = 500): Hand => ({ px, face: 'draft', weight });

/** The canvas knows no lining figures: in the book face they would dance. */
function pieces(text: string, { px, face, weight, isItalic }: Hand): { text: string; font: string }[] {
  if (face === 'draft') return [{ text, font: draftFont(px, weight) }];
  return text
    .split(/(\d[\d.,]*(?:\s?[°%])?)/)
    .filter(Boolean)
    .map((piece) => ({
      text: piece,
      font: /\d/.test(piece) ? draftFont(px, weight + 100) : bookFont(px, weight, isItalic),
    }));
}

/** Width of a text in this lettering, in the canvas's units. */
export function widthOf(pen: Pen, text: string, hand: Hand): number {
  let width = 0;
  for (const piece of pieces(text, hand)) {
    pen.font = piece.font;
    width += pen.measureText(piece.text).width;
  }
  return width;
}

/** Lines of a text that fit a width. A number stays with the word in front of it: "cupped 3°". */
export function wrap(pen: Pen, text: string, hand: Hand, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/ (?![\u2212\d])/)) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && widthOf(pen, longer, hand) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

export interface Place {
  readonly x: number;
  /** Base line of the first line. */
  readonly y: number;
  readonly width: number;
  /** From line to line. */
  readonly lead: number;
  readonly most?: number;
}

/** Writes a text in lines. Answers the base line after the last. */
export function write(pen: Pen, text: string, hand: Hand, { x, y, width, lead, most = 9 }: Place): number {
  const lines = wrap(pen, text, hand, width).slice(0, most);
  lines.forEach((line, i) => {
    let at = x;
    for (const piece of pieces(line, hand)) {
      pen.font = piece.font;
      pen.fillText(piece.text, at, y + i * lead);
      at += pen.measureText(piece.text).width;
    }
  });
  return y + lines.length * lead;
}

/** One line in a colour, with paper round its letters: whatever lies below, it can be read. */
export function writeLine(
  pen: Pen,
  text: string,
  hand: Hand,
  x: number,
  y: number,
  colour: string,
  paper: string,
): void {
  pen.save();
  pen.lineJoin = 'round';
  pen.lineWidth = Math.max(2, hand.px * 0.13);
  pen.strokeStyle = paper;
  pen.fillStyle = colour;
  for (const draws of ['strokeText', 'fillText'] as const) {
    let at = x;
    for (const piece of pieces(text, hand)) {
      pen.font = piece.font;
      pen[draws](piece.text, at, y);
      at += pen.measureText(piece.text).width;
    }
  }
  pen.restore();
}

/** A swatch of a verdict: rising hatch, dots, or one solid line, as under the plates. */
export function drawSwatch(pen: Pen, { x, y, width, height }: Rect, verdict: Verdict, inks: Inks, unit: number): void {
  pen.save();
  pen.beginPath();
  pen.rect(x, y, width, height);
  pen.clip();
  pen.fillStyle = verdict === 'shallow' ? inks.shallow : inks.ink;
  pen.strokeStyle = inks.steep;
  pen.lineWidth = 3 * unit;
  if (verdict === 'steep') {
    for (let at = -height; at < width + height; at += 7 * 1.414 * unit) {
      pen.beginPath();
      pen.moveTo(x + at, y + height);
      pen.lineTo(x + at + height, y);
      pen.stroke();
    }
  } else if (verdict === 'shallow') {
    const step = 4 * unit;
    for (let row = 0; row * step < height; row++) {
      for (let column = row % 2; column * step < width; column += 2) {
        pen.beginPath();
        pen.arc(x + (column + 0.5) * step, y + (row + 0.5) * step, 1.7 * unit, 0, 2 * Math.PI);
        pen.fill();
      }
    }
  } else if (verdict === 'onPlane') {
    pen.fillRect(x, y + height / 2 - 1.5 * unit, width, 3 * unit);
  }
  pen.restore();
  pen.strokeStyle = inks.ink;
  pen.lineWidth = 1.5 * unit;
  pen.strokeRect(x, y, width, height);
}

/** A code in whole pixels a square, dark on white, filling at most `rect`. */
export function drawCode(pen: Pen, squares: readonly (readonly boolean[])[], rect: Rect): void {
  const size = Math.max(1, Math.floor(Math.min(rect.width, rect.height) / squares.length));
  const [left, top] = [Math.round(rect.x), Math.round(rect.y)];
  pen.fillStyle = '#fff';
  pen.fillRect(left, top, size * squares.length, size * squares.length);
  pen.fillStyle = '#000';
  squares.forEach((row, y) =>
    row.forEach((isDark, x) => {
      if (isDark) pen.fillRect(left + x * size, top + y * size, size, size);
    }),
  );
}
