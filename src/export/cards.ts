import { CAUTIONS, SCAN, SCAN_WHY, sayTake } from '../words';
import type { PixelSize } from './formats';
import { book, draft, drawCode, write, type Inks, type Pen } from './pen';
import type { Take } from './takes';

export interface CardOf {
  readonly pen: Pen;
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
  y = write(pen, takes.length > 1 ? 'Two swings' : 'One swing', book(74 * unit, 700), { x, y, width, lead: 80 * unit });
  if (name) y = write(pen, name, book(38 * unit), { x, y, width, lead: 48 * unit, most: 1 });
  pen.fillStyle = inks.quiet;
  y = write(pen, who, book(38 * unit), { x, y, width, lead: 48 * unit }) + 18 * unit;
  pen.fillRect(x, y - 36 * unit, Math.min(width, 260 * unit), 2 * unit);
  pen.fillStyle = inks.ink;
  y += 14 * unit;
  for (const { label, dialled } of takes)
    y = write(pen, sayTake(label, dialled), draft(32 * unit, 600), { x, y, width, lead: 42 * unit });
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
  y = write(pen, SCAN, book(36 * unit, 600), { x: left, y, width, lead: 44 * unit });
  pen.fillStyle = inks.quiet;
  y = write(pen, SCAN_WHY, draft(24 * unit), { x: left, y, width, lead: 32 * unit }) + 14 * unit;
  pen.fillStyle = inks.ink;
  for (const change of changes) y = write(pen, change, draft(27 * unit, 600), { x: left, y, width, lead: 36 * unit });
  pen.fillStyle = inks.quiet;
  y += 10 * unit;
  for (const caution of CAUTIONS.slice(0, 4)) {
    if (y > size.height - 120 * unit) break;
    y = write(pen, caution, draft(22 * unit), { x: left, y, width, lead: 30 * unit });
  }
}
