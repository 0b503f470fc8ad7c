import { CAUTIONS, SCAN, SCAN_WHY, sayTake } from '../../words';
import type { ClipJob } from '../clip/clipJob';
import type { PixelSize } from '../clip/formats';
import { book, draft, drawCode, wrap, write, type Hand, type Inks, type Pen } from './canvasPen';
import type { ShownSwing } from '../task/exportSnapshot';

export interface CardOf {
  readonly pen: Pen;
  readonly size: PixelSize;
  readonly unit: number;
  readonly inks: Inks;
  /** Where the strip begins, px. */
  readonly bottom: number;
}

const MARGIN = 64;
/** Size of the code, share of the shorter side. */
const CODE = { wide: 0.56, tall: 0.5, square: 0.42 } as const;

/** The first card: what is shown, of whom if that was chosen, and with which club. */
export function drawTitle(
  { pen, size, unit, inks }: CardOf,
  { title, who, name }: Pick<ClipJob, 'title' | 'who' | 'name'>,
  takes: readonly ShownSwing[],
): void {
  const x = MARGIN * unit;
  const width = size.width - 2 * x;
  let y = size.height * 0.26;
  pen.fillStyle = inks.ink;
  y = write(pen, title, book(74 * unit, 700), { x, y, width, lead: 80 * unit, most: 3 });
  if (name) y = write(pen, `For ${name}`, book(38 * unit), { x, y, width, lead: 48 * unit, most: 1 });
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
  { pen, size, unit, inks, bottom }: CardOf,
  squares: readonly (readonly boolean[])[],
  { changes, feel }: Pick<ClipJob, 'changes' | 'feel'>,
): void {
  const shape = size.width > size.height * 1.2 ? 'wide' : size.height > size.width * 1.2 ? 'tall' : 'square';
  const x = (shape === 'square' ? 0.6 : 1) * MARGIN * unit;
  const code = Math.min(size.width, size.height) * CODE[shape];
  drawCode(pen, squares, { x, y: x, width: code, height: code });
  let left = shape === 'tall' ? x : x + code + 36 * unit;
  let y = shape === 'tall' ? x + code + 56 * unit : x + 44 * unit;
  /** Writes whole texts only: none runs into the strip. */
  const put = (text: string, hand: Hand, lead: number): void => {
    const width = size.width - left - x;
    const lines = wrap(pen, text, hand, width).length;
    if (y + (lines - 1) * lead < bottom - 8 * unit) y = write(pen, text, hand, { x: left, y, width, lead });
  };
  pen.fillStyle = inks.ink;
  put(SCAN, book(36 * unit, 600), 44 * unit);
  pen.fillStyle = inks.quiet;
  put(SCAN_WHY, draft(24 * unit), 32 * unit);
  y += 14 * unit;
  if (shape === 'square') [left, y] = [x, Math.max(y, x + code + 34 * unit)];
  pen.fillStyle = inks.ink;
  for (const change of changes) put(change, book(32 * unit, 600), 40 * unit);
  if (feel !== '') put(feel, book(32 * unit, 500), 40 * unit);
  pen.fillStyle = inks.quiet;
  if (shape !== 'square') y += 10 * unit;
  for (const caution of CAUTIONS.slice(0, 4)) put(caution, draft(22 * unit), 28 * unit);
}
