import type { FilmState } from '../filmStore';

/** Draws what is there of the shown frame: its picture at full size, or the glance at it. */
export function showFrame(
  canvas: HTMLCanvasElement,
  { picture, pictureFrame, glance, shownFrame }: Pick<FilmState, 'picture' | 'pictureFrame' | 'glance' | 'shownFrame'>,
): void {
  const whole = pictureFrame === shownFrame ? picture : undefined;
  if (!whole && !glance) return;
  const [width, height] = whole ? [whole.width, whole.height] : [glance!.w, glance!.h];
  // Setting a size clears the canvas and costs.
  if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  const pen = canvas.getContext('2d', { alpha: false });
  if (!pen) return;
  if (whole) pen.drawImage(whole, 0, 0);
  else pen.putImageData(new ImageData(glance!.pixels, width, height), 0, 0);
  canvas.dataset['frame'] = String(shownFrame);
  canvas.dataset['whole'] = String(whole !== undefined);
}
