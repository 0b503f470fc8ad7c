import { CAUTIONS, SCAN, SCAN_WHY, sayTake } from '../words';
import type { PixelSize } from './formats';
import { bookFont, draftFont, drawCode, write, type Inks } from './pen';
import type { Take } from './takes';

export interface CardOf {
  readonly pen: CanvasRenderingContext2D;
  readonly size: PixelSize;
  readonly unit: number;
  readonly inks: Inks;
}

const MARGIN = 64;

/** The first card: what is shown, of whom if that was chosen, and with which club. */
export function drawTitle({ pen, size, unit, inks }: CardOf, who: string, name: string, takes: readonly Take[]): void {
  const x = MARGIN * unit;
  const width = size.width - 2 * x;
  let y = size.height * 0.26;
  pen.fillStyle = inks.ink;
  pen.font = bookFont(74 * unit, 700);
  y = write(pen, takes.length > 1 ? 'Two swings' : 'One swing', { x, y, width, lead: 80 * unit });
  pen.font = bookFont(38 * unit);
  if (name) y = write(pen, name, { x, y, width, lead: 48 * unit, most: 1 });
  pen.fillStyle = inks.quiet;
  y = write(pen, who, { x, y, width, lead: 48 * unit }) + 18 * unit;
  pen.fillRect(x, y - 36 * unit, Math.min(width, 260 * unit), 2 * unit);
  pen.fillStyle = inks.ink;
  pen.font = draftFont(32 * unit, 600);
  y += 14 * unit;
  for (const { label, dialled } of takes) y = write(pen, sayTake(label, dialled), { x, y, width, lead: 42 * unit });
}

/** The last card: a code that opens the swing, what to change, and what to mind. */
export function drawEnd(
  { pen, size, unit, inks }: CardOf,
  squares: readonly (readonly boolean[])[],
  changes: readonly string[],
): void {
  const isWide = size.width > size.height * 1.2;
  const x = MARGIN * unit;
  const code = Math.min(size.width, size.height) * (isWide ? 0.56 : 0.5);
  drawCode(pen, squares, { x, y: x, width: code, height: code });
  const left = isWide ? x + code + 48 * unit : x;
  const width = size.width - left - x;
  let y = isWide ? x + 44 * unit : x + code + 56 * unit;
  pen.fillStyle = inks.ink;
  pen.font = bookFont(36 * unit, 600);
  y = write(pen, SCAN, { x: left, y, width, lead: 44 * unit });
  pen.font = draftFont(24 * unit);
  pen.fillStyle = inks.quiet;
  y = write(pen, SCAN_WHY, { x: left, y, width, lead: 32 * unit }) + 14 * unit;
  pen.fillStyle = inks.ink;
  pen.font = draftFont(27 * unit, 600);
  for (const change of changes) y = write(pen, change, { x: left, y, width, lead: 36 * unit });
  pen.fillStyle = inks.quiet;
  pen.font = draftFont(22 * unit);
  y += 10 * unit;
  for (const caution of CAUTIONS.slice(0, 4)) {
    if (y > size.height - 120 * unit) break;
    y = write(pen, caution, { x: left, y, width, lead: 30 * unit });
  }
}
