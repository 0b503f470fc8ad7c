import { FIRST_CLUB_PART } from '../../../film/outline';

/** Pen and canvas of the page, or of a picture that is being made. */
type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** How a contour is drawn: over any film, so its colours are those of the light board, with a light edge. */
export interface ContourStyle {
  readonly ink: string;
  /** Dashes in pens' widths; empty: solid. */
  readonly dash: readonly number[];
}
export const SOLID: ContourStyle = { ink: '#211d18', dash: [] };
export const DASHED = {
  plan: { ink: '#7d2f63', dash: [5, 1.5, 1, 1.5, 1, 1.5] },
  reference: { ink: '#0a5844', dash: [5, 2.5] },
} as const satisfies Record<string, ContourStyle>;
const EDGE = '#fcf9f1';
const BODY = '236 214 176';
/** How strongly the parts inside a body are drawn. */
const INNER = 0.45;

/**
 * The outer contour of a figure, alone on its canvas of `w` by `h` px: every part's outline, then what lies inside taken away, and the club. `body`: how solid it
 * is filled, 0 to 1. A left-handed player's is mirrored.
 */
export function paintContour(
  pen: Pen,
  parts: readonly Float64Array[] | undefined,
  { w, h, isLeft }: { readonly w: number; readonly h: number; readonly isLeft: boolean },
  { ink, dash }: ContourStyle,
  body = 0,
): void {
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.globalCompositeOperation = 'source-over';
  pen.clearRect(0, 0, w, h);
  if (!parts) return;
  if (isLeft) pen.setTransform(-1, 0, 0, 1, w, 0);
  const paths = parts.map(toPath);
  pen.lineJoin = 'round';
  pen.strokeStyle = EDGE;
  pen.lineWidth = h / 110;
  pen.setLineDash([]);
  for (const path of paths) pen.stroke(path);
  pen.strokeStyle = ink;
  pen.lineWidth = h / 260;
  pen.setLineDash(dash.map((each) => (each * h) / 260));
  for (const path of paths) pen.stroke(path);
  pen.setLineDash([]);
  pen.globalCompositeOperation = 'destination-out';
  for (const path of paths) pen.fill(path);
  // With the film faded out the figure is a body, not a hole.
  if (body > 0) {
    pen.globalCompositeOperation = 'destination-over';
    pen.fillStyle = `rgb(${BODY} / ${body})`;
    for (const path of paths) pen.fill(path);
  }
  pen.globalCompositeOperation = 'source-over';
  pen.strokeStyle = ink;
  // A body alone would be a flat shape.
  pen.globalAlpha = body * INNER;
  pen.lineWidth = h / 900;
  for (const path of paths) pen.stroke(path);
  pen.globalAlpha = 1;
  paintClub(pen, parts, h, ink);
}

/** The club alone, which crosses the body where a contour would lose it, on what stands there already. */
export function paintClub(pen: Pen, parts: readonly Float64Array[], h: number, ink: string): void {
  pen.strokeStyle = ink;
  pen.lineWidth = h / 700;
  for (const part of parts.slice(FIRST_CLUB_PART)) pen.stroke(toPath(part));
}

function toPath(points: Float64Array): Path2D {
  const path = new Path2D();
  for (let i = 0; i < points.length; i += 2) path.lineTo(points[i], points[i + 1]);
  path.closePath();
  return path;
}
