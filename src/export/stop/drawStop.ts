import type { CheckpointId } from '../../reading/checkpointTable';
import { judge, type Band, type Verdict } from '../../reading/verdicts';
import { along, type Box, type Frame, type Point, type Segment } from '../../plates/plate/frame';
import { draft, widthOf, writeLine, type Inks, type Pen } from '../picture/canvasPen';
import type { PixelSize } from '../clip/formats';
import { stopGeometry, type StopGeometry } from './geometry';
import type { Pose } from '../../model/chain';

/** Pens, px of a picture whose shorter side is 720. */
const PEN = { shaft: 4.2, paper: 9, tick: 4, dimension: 2, dots: 1.6, hatch: 3.6 } as const;
/** Lines of a pattern stand this far apart, and dots; a tick is half as long as this, px. */
const [HATCH_STEP, DOT_STEP, TICK] = [13, 12, 11] as const;
/** Dimension lines run past their ticks by this much, px. */
const OVERRUN = 27;
/** Squared paper, m, and its share of ink. */
const SQUARE = { size: 0.2, ink: 0.055 } as const;
/** Share of paper between the lines of a pattern, and in the corridor: the body still shows. */
const [UNDER_HATCH, IN_CORRIDOR] = [0.72, 0.6] as const;
const DASHES: Readonly<Record<Verdict, readonly number[]>> = {
  steep: [18, 4, 3, 4],
  shallow: [1.5, 8],
  onPlane: [],
  missing: [],
};
export const GHOST_DASHES = [14, 4, 3, 4, 3, 4] as const;

/** Colour of a verdict's lines. */
export const lineInk = (verdict: Verdict, inks: Inks): string =>
  verdict === 'steep' ? inks.steep : verdict === 'shallow' ? inks.shallow : inks.ink;
/** Colour of a verdict's words and numbers. */
export const textInk = (verdict: Verdict, inks: Inks): string =>
  verdict === 'steep' ? inks.steepText : verdict === 'shallow' ? inks.shallowText : inks.ink;

/** Paper with faint squares of 20 cm, true to the frame. */
export function drawPaper(
  pen: Pen,
  { scale, x0, y0 }: Frame,
  { width, height }: PixelSize,
  inks: Inks,
  unit: number,
): void {
  pen.fillStyle = inks.paper;
  pen.fillRect(0, 0, width, height);
  pen.save();
  pen.globalAlpha = SQUARE.ink;
  pen.fillStyle = inks.ink;
  const step = SQUARE.size * scale;
  const thin = Math.max(1, 2 * unit);
  for (let x = ((x0 % step) + step) % step; x < width; x += step) pen.fillRect(Math.round(x), 0, thin, height);
  for (let y = ((y0 % step) + step) % step; y < height; y += step) pen.fillRect(0, Math.round(y), width, thin);
  pen.restore();
}

/** How much of the drawing is there, 0 to 1 each. */
export interface Revealed {
  readonly line: number;
  readonly hatch: number;
  readonly number: number;
}

export interface StopDrawing {
  readonly id: CheckpointId;
  readonly pose: Pose;
  readonly frame: Frame;
  readonly band: Band;
  /** The reading, m. */
  readonly value: number;
  readonly number: string;
  readonly unit: string;
  /** Where the number stands, and its size, px. */
  readonly box: Box;
  readonly numberPx: number;
}

/** Corridor, pattern, dimension, line and number, on the body. `overPattern` draws what the pattern must not hide. */
export function drawStop(
  pen: Pen,
  of: StopDrawing,
  { line, hatch, number }: Revealed,
  inks: Inks,
  unit: number,
  overPattern: () => void,
): void {
  const verdict = judge(of.value, of.band);
  const lies = stopGeometry(of.id, of.pose, of.frame, of.band);
  pen.save();
  drawCorridor(pen, lies, line, inks, unit);
  if (verdict !== 'onPlane' && hatch > 0) drawZone(pen, lies, verdict, hatch, inks, unit);
  overPattern();
  if (hatch > 0) drawDimension(pen, lies, inks, unit, hatch);
  drawAxis(pen, grown(lies.axis, line), lineInk(verdict, inks), DASHES[verdict], inks, unit);
  drawPin(pen, lies.pin, inks, unit);
  if (number > 0) drawNumber(pen, of, textInk(verdict, inks), number, inks);
  pen.restore();
}

const grown = ({ from, to }: Segment, share: number): Segment => ({
  from,
  to: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
});

function trace(pen: Pen, points: readonly Point[]): void {
  pen.beginPath();
  points.forEach(({ x, y }, i) => (i === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
}

function drawCorridor(pen: Pen, { corridor, edges }: StopGeometry, share: number, inks: Inks, unit: number): void {
  trace(pen, corridor);
  pen.globalAlpha = IN_CORRIDOR * share;
  pen.fillStyle = inks.plate;
  pen.fill();
  pen.globalAlpha = share;
  pen.strokeStyle = inks.ink;
  pen.lineCap = 'butt';
  pen.lineWidth = PEN.dots * unit;
  pen.setLineDash([PEN.dots * unit, 4.4 * unit]);
  for (const { from, to } of edges) {
    trace(pen, [from, to]);
    pen.stroke();
  }
  pen.setLineDash([]);
  pen.globalAlpha = 1;
}

/** What is measured, in the verdict's pattern: it grows from the body to the line. */
function drawZone(
  pen: Pen,
  { zone: [a, b, c, d], along: up }: StopGeometry,
  verdict: Verdict,
  share: number,
  inks: Inks,
  unit: number,
): void {
  const part = (from: Point, to: Point): Point => grown({ from, to }, share).to;
  const shown = [a, b, part(b, c), part(a, d)];
  pen.save();
  trace(pen, shown);
  pen.closePath();
  pen.clip();
  pen.globalAlpha = UNDER_HATCH;
  pen.fillStyle = inks.plate;
  pen.fill();
  pen.globalAlpha = 1;
  const xs = [a, b, c, d].map(({ x }) => x);
  const ys = [a, b, c, d].map(({ y }) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  if (verdict === 'steep') {
    pen.strokeStyle = inks.steep;
    pen.lineWidth = PEN.hatch * unit;
    const step = HATCH_STEP * unit * Math.SQRT2;
    for (let at = left - (bottom - top); at < right; at += step) {
      trace(pen, [
        { x: at, y: bottom },
        { x: at + (bottom - top), y: top },
      ]);
      pen.stroke();
    }
  } else {
    pen.fillStyle = inks.shallow;
    const step = (DOT_STEP * unit) / 2;
    for (let row = 0; top + row * step < bottom + step; row++) {
      for (let x = left + (row % 2) * step; x < right + step; x += 2 * step) {
        pen.beginPath();
        pen.arc(x, top + row * step, 2.6 * unit, 0, 2 * Math.PI);
        pen.fill();
      }
    }
  }
  pen.restore();
  pen.strokeStyle = lineInk(verdict, inks);
  pen.lineWidth = 1.2 * unit;
  trace(pen, shown);
  pen.closePath();
  pen.stroke();
  pen.strokeStyle = inks.ink;
  pen.lineWidth = PEN.dimension * unit;
  trace(pen, [a, along(b, up, 6 * unit)]);
  pen.stroke();
}

function drawDimension(
  pen: Pen,
  { dimension: { from, to }, across, extension }: StopGeometry,
  inks: Inks,
  unit: number,
  share: number,
): void {
  pen.globalAlpha = share;
  pen.strokeStyle = inks.ink;
  pen.lineWidth = PEN.dimension * unit;
  trace(pen, [extension.from, extension.to]);
  pen.stroke();
  const way = (to.x - from.x) * across.x + (to.y - from.y) * across.y < 0 ? -1 : 1;
  const out = { x: across.x * way, y: across.y * way };
  trace(pen, [along(from, out, -OVERRUN * unit), along(to, out, OVERRUN * unit)]);
  pen.stroke();
  pen.lineWidth = PEN.tick * unit;
  const t = { x: (across.x - across.y) * Math.SQRT1_2, y: (across.x + across.y) * Math.SQRT1_2 };
  // Oblique, rising to the right as a draughtsman sets them.
  const tick = t.x * t.y > 0 ? { x: -t.y, y: t.x } : t;
  for (const p of [from, to]) {
    trace(pen, [along(p, tick, -TICK * unit), along(p, tick, TICK * unit)]);
    pen.stroke();
  }
  pen.globalAlpha = 1;
}

/** A line over everything, on a strip of paper. */
export function drawAxis(
  pen: Pen,
  { from, to }: Segment,
  colour: string,
  dashes: readonly number[],
  inks: Inks,
  unit: number,
): void {
  if (from.x === to.x && from.y === to.y) return;
  trace(pen, [from, to]);
  pen.lineCap = 'butt';
  pen.strokeStyle = inks.paper;
  pen.lineWidth = PEN.paper * unit;
  pen.stroke();
  pen.strokeStyle = colour;
  pen.lineWidth = PEN.shaft * unit;
  pen.lineCap = dashes[0] < 2 ? 'round' : 'butt';
  pen.setLineDash(dashes.map((length) => length * 1.5 * unit));
  pen.stroke();
  pen.setLineDash([]);
  pen.lineCap = 'butt';
}

function drawPin(pen: Pen, { x, y }: Point, inks: Inks, unit: number): void {
  pen.strokeStyle = inks.ink;
  pen.fillStyle = inks.brass;
  pen.lineWidth = PEN.dimension * unit;
  pen.beginPath();
  pen.arc(x, y, 9 * unit, 0, 2 * Math.PI);
  pen.fill();
  pen.stroke();
  for (const [dx, dy] of [
    [17, 0],
    [0, 17],
  ]) {
    trace(pen, [
      { x: x - dx * unit, y: y - dy * unit },
      { x: x + dx * unit, y: y + dy * unit },
    ]);
    pen.stroke();
  }
}

/** The unit's letters, share of the number's; between the two, and how tall a digit is. */
const [UNIT_SHARE, GAP, DIGIT] = [0.5, 0.13, 0.67] as const;

/** Size of a number with its unit, px. */
export function numberSize(pen: Pen, number: string, unit: string, px: number): { width: number; height: number } {
  const width = widthOf(pen, number, draft(px, 800)) + GAP * px + widthOf(pen, unit, draft(px * UNIT_SHARE, 700));
  return { width, height: DIGIT * px };
}

function drawNumber(pen: Pen, of: StopDrawing, colour: string, share: number, inks: Inks): void {
  const { box, number, unit, numberPx: px } = of;
  pen.globalAlpha = share;
  const own = numberSize(pen, number, unit, px);
  // In the middle of its place: while it counts it gets narrower.
  const x = (box.left + box.right - own.width) / 2;
  const large = draft(px, 800);
  writeLine(pen, number, large, x, box.bottom, colour, inks.paper);
  writeLine(
    pen,
    unit,
    draft(px * UNIT_SHARE, 700),
    x + widthOf(pen, number, large) + GAP * px,
    box.bottom,
    colour,
    inks.paper,
  );
  pen.globalAlpha = 1;
}
