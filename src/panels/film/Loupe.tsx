import { useEffect, useRef } from 'react';
import type { Pixel } from '../../film/marks';
import type { Glance } from '../../video/frames/glance';
import { useFilm } from './filmStore';

/** Size of the loupe's picture, px of its canvas, and how much it enlarges. */
const SIDE = 280;
const POWER = 4;

/** The same of a glance, one of whose pixels is `step` of the film. */
function drawGlance(pen: CanvasRenderingContext2D, { w, h, pixels }: Glance, at: Pixel, step: number): void {
  const half = SIDE / POWER / 2 / step;
  const [u, v] = [at[0] / step - half, at[1] / step - half];
  const [left, top] = [Math.floor(u), Math.floor(v)];
  const side = Math.ceil(2 * half) + 1;
  const patch = new OffscreenCanvas(side, side);
  patch.getContext('2d')!.putImageData(new ImageData(pixels, w, h), -left, -top);
  pen.drawImage(patch, u - left, v - top, 2 * half, 2 * half, 0, 0, SIDE, SIDE);
}

/** The picture around the finger or the chosen mark, enlarged, with its hairs crossed on the very point. */
export function Loupe() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useFilm((film) => (film.pictureFrame === film.shownFrame ? film.picture : undefined));
  const glance = useFilm((film) => film.glance);
  const info = useFilm((film) => film.video?.info);
  const at = useFilm(
    (film) => film.touch ?? (film.active === undefined ? undefined : film.sheet[film.place]?.points[film.active]?.at),
  );
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    context.clearRect(0, 0, SIDE, SIDE);
    if (!at || !info || !(picture ?? glance)) return;
    const half = SIDE / POWER / 2;
    context.imageSmoothingEnabled = false;
    if (picture) context.drawImage(picture, at[0] - half, at[1] - half, 2 * half, 2 * half, 0, 0, SIDE, SIDE);
    else if (glance) drawGlance(context, glance, at, info.w / glance.w);
    for (const [color, width] of [
      ['#fcf9f1', 6],
      ['#211d18', 2],
    ] as const) {
      context.strokeStyle = color;
      context.lineWidth = width;
      context.beginPath();
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        context.moveTo(SIDE / 2 + 10 * dx, SIDE / 2 + 10 * dy);
        context.lineTo(SIDE / 2 + 44 * dx, SIDE / 2 + 44 * dy);
      }
      context.stroke();
    }
  }, [picture, glance, at, info]);
  // Out of the way of the finger, where the loupe lies over the picture.
  const isAside = info !== undefined && at !== undefined && at[0] > info.w / 2 && at[1] < info.h * 0.45;
  return (
    <canvas
      ref={canvas}
      className="film-loupe"
      data-aside={isAside || undefined}
      data-empty={at === undefined || undefined}
      width={SIDE}
      height={SIDE}
      aria-hidden="true"
    />
  );
}
