import type { fitContour } from './contour';

/** Ink and the paper at both sides of it, css px. */
const INK = 1.25;
const CASING = 3;

/**
 * Draws a contour that stands just outside the body: ink between two edges of paper. What lies inside is left clear, or filled with
 * `fill`.
 */
export function drawContour(
  context: CanvasRenderingContext2D,
  { groups, ball }: NonNullable<ReturnType<typeof fitContour>>,
  { ink, paper, fill }: { ink: string; paper: string; fill?: string },
): void {
  context.lineJoin = 'round';
  const rings = [
    [2 * (CASING + INK + CASING), paper],
    [2 * (CASING + INK), ink],
    [2 * CASING, paper],
  ] as const;
  const draw = (paths: readonly Path2D[]): void => {
    context.globalCompositeOperation = 'source-over';
    for (const [width, color] of rings) {
      context.lineWidth = width;
      context.strokeStyle = color;
      for (const path of paths) context.stroke(path);
    }
    context.globalCompositeOperation = fill === undefined ? 'destination-out' : 'source-over';
    context.fillStyle = fill ?? ink;
    for (const path of paths) context.fill(path);
  };
  for (const hulls of groups) draw(hulls.map(pathOf));
  const circle = new Path2D();
  circle.arc(ball.at[0], ball.at[1], ball.radius, 0, 2 * Math.PI);
  draw([circle]);
  context.globalCompositeOperation = 'source-over';
}

function pathOf(hull: Float64Array): Path2D {
  const path = new Path2D();
  for (let i = 0; i < hull.length; i += 2) path.lineTo(hull[i], hull[i + 1]);
  path.closePath();
  return path;
}
