import { book, draft, drawSwatch, widthOf, write, type Hand, type Inks, type Pen, type Rect } from './canvasPen';
import type { CheckpointWords } from '../../words';

/** A plate as pixels; none where its checkpoint was not reached. */
export interface PlatePixels {
  readonly title: string;
  readonly words: CheckpointWords;
  readonly pixels: ImageBitmap | undefined;
}

/** Height of a drawing for its width. */
const RATIO = 292 / 320;
/** Room for words of an upright card, shares of its width, and of a wide one beside the drawing, share of the drawing's width. */
const HEAD = 0.11;
const FOOT = 0.25;
const BESIDE = 0.72;
/** The same where the words would be too small: more room for them, and how much smaller than `smallest` they may get. */
const BESIDE_SMALL = 0.95;
const LEAST = 0.85;
/** Height of the words beside a drawing, card units. */
const COLUMN = 214;
/** The number of a verdict, card units. */
const BIG = 58;
/** The reason under a verdict, card units. */
const SMALL = 25;

/**
 * Draws a checkpoint plate with its verdict as large as it fits into `room`: upright, or wide where there is little height. The reason
 * is written no smaller than `smallest` px (on a wide one nearly so), in its short form if it has to be.
 */
export function drawPlateCard(pen: Pen, plate: PlatePixels, room: Rect, inks: Inks, smallest: number): void {
  if (room.width / room.height > 1.25) drawWide(pen, plate, room, inks, smallest);
  else drawUpright(pen, plate, room, inks, smallest);
}

function drawUpright(pen: Pen, plate: PlatePixels, room: Rect, inks: Inks, smallest: number): void {
  const width = Math.min(room.width, room.height / (HEAD + RATIO + FOOT));
  const unit = width / 400;
  const foot = FOOT * width + Math.max(0, 3 * (smallest - SMALL * unit));
  const height = Math.min(room.height, (HEAD + RATIO) * width + foot);
  const card = { x: room.x + (room.width - width) / 2, y: room.y + (room.height - height) / 2, width, height };
  frame(pen, card, unit, inks);
  const top = card.y + HEAD * width;
  if (plate.pixels) pen.drawImage(plate.pixels, card.x + 2, top, width - 4, (width - 4) * RATIO);
  const line = top + RATIO * width;
  pen.fillStyle = inks.ink;
  pen.fillRect(card.x, line, width, Math.max(1, 2 * unit));
  const x = card.x + 16 * unit;
  write(pen, plate.title, book(27 * unit, 600), {
    x,
    y: card.y + 33 * unit,
    width: width - 32 * unit,
    lead: 0,
    most: 1,
  });
  drawSwatch(pen, { x, y: line + 18 * unit, width: 44 * unit, height: 64 * unit }, plate.words.verdict, inks, unit);
  const at = { x: card.x + 76 * unit, y: line + 46 * unit, width: width - 88 * unit };
  writeVerdict(pen, plate, at, unit, inks, smallest);
}

function drawWide(pen: Pen, plate: PlatePixels, room: Rect, inks: Inks, smallest: number): void {
  const least = (LEAST * smallest) / SMALL;
  const isSmall = (room.width / (1 + BESIDE)) * (BESIDE / 300) < least;
  const beside = isSmall ? BESIDE_SMALL : BESIDE;
  const drawing = Math.min(room.height / RATIO, room.width / (1 + beside));
  const unit = Math.max((drawing * BESIDE) / 300, least);
  const [width, height] = [drawing * (1 + beside), Math.min(room.height, Math.max(drawing * RATIO, COLUMN * unit))];
  const card = { x: room.x + (room.width - width) / 2, y: room.y + (room.height - height) / 2, width, height };
  frame(pen, card, unit, inks);
  const [high, middle] = [(drawing - 4) * RATIO, card.y + height / 2];
  if (plate.pixels) pen.drawImage(plate.pixels, card.x + 2, middle - high / 2, drawing - 4, high);
  const x = card.x + drawing + 10 * unit;
  const wide = drawing * beside - 24 * unit;
  pen.fillStyle = inks.ink;
  write(pen, plate.title, book(28 * unit, 600), { x, y: card.y + 38 * unit, width: wide, lead: 30 * unit });
  const swatch = { x, y: Math.max(card.y + 84 * unit, card.y + height * 0.42), width: wide * 0.5, height: 40 * unit };
  drawSwatch(pen, swatch, plate.words.verdict, inks, unit);
  writeVerdict(pen, plate, { x, y: swatch.y + 84 * unit, width: wide }, unit, inks);
}

function frame(pen: Pen, { x, y, width, height }: Rect, unit: number, inks: Inks): void {
  pen.fillStyle = inks.plate;
  pen.fillRect(x, y, width, height);
  pen.strokeStyle = inks.ink;
  pen.lineWidth = Math.max(1, 2 * unit);
  pen.strokeRect(x, y, width, height);
}

/** The verdict's word, its number as the largest thing on the card, and where that is, each said once. */
function writeVerdict(
  pen: Pen,
  { words }: PlatePixels,
  { x, y, width }: { x: number; y: number; width: number },
  unit: number,
  inks: Inks,
  smallest = 0,
): void {
  const number = words.number === '' ? '' : `${words.number} ${words.unit}`;
  const large = draft(BIG * unit, 700);
  const taken = number === '' ? 0 : Math.min(width * 0.5, widthOf(pen, number, large));
  pen.fillStyle =
    words.verdict === 'steep' ? inks.steepText : words.verdict === 'shallow' ? inks.shallowText : inks.ink;
  writeLine(pen, words.word, book(38 * unit, 700), { x, y, width: width - taken - (taken && 12 * unit) });
  if (taken > 0) writeLine(pen, number, large, { x: x + width - taken, y, width: taken });
  pen.fillStyle = inks.ink;
  const px = Math.max(SMALL * unit, smallest);
  const where = words.where || words.why;
  const why = widthOf(pen, where, draft(px)) <= width ? where : words.shortWhy;
  writeLine(pen, why, draft(px), { x, y: y + 7 * unit + px, width });
}

/** One line, smaller where it would be too long. */
function writeLine(pen: Pen, text: string, hand: Hand, { x, y, width }: { x: number; y: number; width: number }): void {
  const px = hand.px * Math.min(1, width / widthOf(pen, text, hand));
  write(pen, text, { ...hand, px }, { x, y, width: Infinity, lead: 0 });
}
