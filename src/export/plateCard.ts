import { book, draft, drawSwatch, widthOf, write, type Inks, type Pen, type Rect } from './pen';
import type { CheckpointWords } from '../words';

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

/** Draws a checkpoint plate with its verdict as large as it fits into `room`: upright, or wide where there is little height. */
export function drawPlateCard(pen: Pen, plate: PlatePixels, room: Rect, inks: Inks): void {
  if (room.width / room.height > 1.25) drawWide(pen, plate, room, inks);
  else drawUpright(pen, plate, room, inks);
}

function drawUpright(pen: Pen, plate: PlatePixels, room: Rect, inks: Inks): void {
  const width = Math.min(room.width, room.height / (HEAD + RATIO + FOOT));
  const unit = width / 400;
  const height = width * (HEAD + RATIO + FOOT);
  const card = { x: room.x + (room.width - width) / 2, y: room.y + (room.height - height) / 2, width, height };
  frame(pen, card, unit, inks);
  const top = card.y + HEAD * width;
  if (plate.pixels) pen.drawImage(plate.pixels, card.x + 2, top, width - 4, (width - 4) * RATIO);
  const foot = top + RATIO * width;
  pen.fillStyle = inks.ink;
  pen.fillRect(card.x, foot, width, Math.max(1, 2 * unit));
  const at = { x: card.x + 16 * unit, y: card.y + 33 * unit, width: width - 32 * unit, lead: 0, most: 1 };
  write(pen, plate.title, book(27 * unit, 600), at);
  const { verdict } = plate.words;
  drawSwatch(
    pen,
    { x: card.x + 16 * unit, y: foot + 18 * unit, width: 44 * unit, height: 64 * unit },
    verdict,
    inks,
    unit,
  );
  writeVerdict(pen, plate, { x: card.x + 76 * unit, y: foot + 46 * unit, width: width - 88 * unit }, unit, inks);
}

function drawWide(pen: Pen, plate: PlatePixels, room: Rect, inks: Inks): void {
  const height = Math.min(room.height, (room.width / (1 + BESIDE)) * RATIO);
  const drawing = height / RATIO;
  const width = drawing * (1 + BESIDE);
  const unit = (drawing * BESIDE) / 300;
  const card = { x: room.x + (room.width - width) / 2, y: room.y + (room.height - height) / 2, width, height };
  frame(pen, card, unit, inks);
  if (plate.pixels) pen.drawImage(plate.pixels, card.x + 2, card.y + 2, drawing - 4, height - 4);
  const x = card.x + drawing + 10 * unit;
  const wide = drawing * BESIDE - 24 * unit;
  pen.fillStyle = inks.ink;
  write(pen, plate.title, book(28 * unit, 600), { x, y: card.y + 38 * unit, width: wide, lead: 30 * unit });
  const swatch = { x, y: card.y + height * 0.42, width: wide * 0.5, height: 40 * unit };
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

function writeVerdict(
  pen: Pen,
  { words }: PlatePixels,
  { x, y, width }: { x: number; y: number; width: number },
  unit: number,
  inks: Inks,
): void {
  pen.fillStyle =
    words.verdict === 'steep' ? inks.steepText : words.verdict === 'shallow' ? inks.shallowText : inks.ink;
  write(pen, words.word, book(38 * unit, 700), { x, y, width, lead: 0, most: 1 });
  pen.fillStyle = inks.ink;
  const small = draft(25 * unit);
  const why = widthOf(pen, words.why, small) <= width ? words.why : words.shortWhy;
  write(pen, why, small, { x, y: y + 32 * unit, width, lead: 27 * unit, most: 1 });
}
