import type { Pixel } from '../../film/marks';
import type { Grey } from '../../film/refineLine';

/** Room around the two taps, px. */
const MARGIN = 64;

/** Brightness of the part of a picture around two taps, and where that part lies, px. */
export function greyAround(
  picture: ImageBitmap,
  a: Pixel,
  b: Pixel,
): { readonly grey: Grey; readonly left: number; readonly top: number } {
  const left = Math.max(0, Math.floor(Math.min(a[0], b[0]) - MARGIN));
  const top = Math.max(0, Math.floor(Math.min(a[1], b[1]) - MARGIN));
  const width = Math.max(2, Math.min(picture.width, Math.ceil(Math.max(a[0], b[0]) + MARGIN)) - left);
  const height = Math.max(2, Math.min(picture.height, Math.ceil(Math.max(a[1], b[1]) + MARGIN)) - top);
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  context.drawImage(picture, left, top, width, height, 0, 0, width, height);
  const { data } = context.getImageData(0, 0, width, height);
  const grey = new Float32Array(width * height);
  // Luma of ITU-R BT.601.
  for (let i = 0; i < grey.length; i++)
    grey[i] = 0.299 * data[4 * i] + 0.587 * data[4 * i + 1] + 0.114 * data[4 * i + 2];
  return { grey: { width, height, data: grey }, left, top };
}
