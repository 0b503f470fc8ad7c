import { useEffect, useRef } from 'react';
import { useFilm } from './filmStore';

/** Size of the loupe's picture, px of its canvas, and how much it enlarges. */
const SIDE = 280;
const POWER = 4;

/** The picture around the finger or the chosen mark, enlarged, with its hairs crossed on the very point. */
export function Loupe() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useFilm((film) => film.picture);
  const at = useFilm(
    (film) => film.touch ?? (film.active === undefined ? undefined : film.sheet[film.place]?.points[film.active]?.at),
  );
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    context.clearRect(0, 0, SIDE, SIDE);
    if (!picture || !at) return;
    const half = SIDE / POWER / 2;
    context.imageSmoothingEnabled = false;
    context.drawImage(picture, at[0] - half, at[1] - half, 2 * half, 2 * half, 0, 0, SIDE, SIDE);
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
  }, [picture, at]);
  // Out of the way of the finger, where the loupe lies over the picture.
  const isAside =
    picture !== undefined && at !== undefined && at[0] > picture.width / 2 && at[1] < picture.height * 0.45;
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
