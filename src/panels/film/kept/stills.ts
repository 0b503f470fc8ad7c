import { LIMITS } from '../../../record';

/** A picture out of the film as a lesson keeps it. */
export interface Still {
  readonly w: number;
  readonly h: number;
  /** A JPEG, in base64. */
  readonly jpeg: string;
}

/** Qualities that are tried, the best first. */
const QUALITIES = [0.85, 0.7, 0.55, 0.4, 0.25];

/** A frame made smaller and encoded anew; undefined where the browser cannot. Closes nothing. */
export async function makeStill(picture: ImageBitmap): Promise<Still | undefined> {
  const scale = Math.min(1, LIMITS.stillSide / Math.max(picture.width, picture.height));
  const w = Math.max(1, Math.round(picture.width * scale));
  const h = Math.max(1, Math.round(picture.height * scale));
  const canvas = new OffscreenCanvas(w, h);
  const context = canvas.getContext('2d', { alpha: false });
  if (!context) return undefined;
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, w, h);
  for (const quality of QUALITIES) {
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    if (blob.type !== 'image/jpeg') return undefined;
    if (blob.size <= LIMITS.stillBytes) return { w, h, jpeg: toBase64(new Uint8Array(await blob.arrayBuffer())) };
  }
  return undefined;
}

/** Characters that are made in one call, which takes each byte as an argument. */
const CHUNK = 8192;

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += CHUNK) text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(text);
}
