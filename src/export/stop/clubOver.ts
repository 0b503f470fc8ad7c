import type { Figure } from '../../figure/figure';
import { createPlacement, MATRIX_SIZE, PART, type PartId } from '../../figure/partIds';
import { placeFigure, type Stance } from '../../figure/place';
import type { Pose } from '../../model/pose';
import { HullFinder } from '../../plates/figure/hull';
import type { Frame } from '../../plates/plate/frame';
import type { Canvas, Pen } from '../picture/canvasPen';

const CLUB: readonly PartId[] = ['shaft', 'sleeve', 'clubHead'];
/** Round the club's outline, so that its contour line is not cut in half, px of the picture. */
const CONTOUR = 1.5;
/** Scratch: where the parts stand, and the outline of one. */
const placement = createPlacement();
const hull = new HullFinder();

/**
 * Draws the club of a picture once more, over what was drawn on it: at shaft parallel the pattern lies between hands and clubhead, and would
 * hide the very head it measures. `body`: figure with club, alone on nothing, in this frame.
 */
export function drawClubOver(pen: Pen, body: Canvas, figure: Figure, pose: Pose, stance: Stance, frame: Frame): void {
  placeFigure(figure, pose, stance, placement);
  pen.save();
  pen.beginPath();
  for (const id of CLUB) {
    const part = figure.parts.findIndex((one) => one.id === id);
    if (part < 0) continue;
    const count = hull.find(figure.parts[part].rings, placement, PART[id] * MATRIX_SIZE, frame);
    traceGrown(pen, count);
  }
  pen.clip();
  pen.drawImage(body, 0, 0);
  pen.restore();
}

/** The hull last found, a little larger, as one more closed path: all turn the same way, so that what two of them hold is inside. */
function traceGrown(pen: Pen, count: number): void {
  if (count < 3) return;
  let [x, y] = [0, 0];
  for (let i = 0; i < count; i++) {
    x += hull.points[2 * i] / 10 / count;
    y += hull.points[2 * i + 1] / 10 / count;
  }
  for (let i = 0; i < count; i++) {
    const [px, py] = [hull.points[2 * i] / 10, hull.points[2 * i + 1] / 10];
    const out = 1 + CONTOUR / Math.max(1, Math.hypot(px - x, py - y));
    const [gx, gy] = [x + (px - x) * out, y + (py - y) * out];
    if (i === 0) pen.moveTo(gx, gy);
    else pen.lineTo(gx, gy);
  }
  pen.closePath();
}
