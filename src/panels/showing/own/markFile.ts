import { readImageHeader } from '../../../checking/imageHeader';
import { MARK_TOO_LARGE, NO_MARK_PICTURE, sayMarkPixels } from '../../../words/showing/forms';

/** Limits of a file that is taken as a mark: bytes, px of a side, and px in all. */
export const MARK_LIMITS = { bytes: 5_000_000, side: 6000, area: 24_000_000 } as const;
/** Largest picture that is kept, px: three times what a clip of 720p shows. */
const KEPT_MARK = { width: 516, height: 272 } as const;

/** Why a file is not taken as a mark, in words; nothing when it may be decoded. `bytes`: all of it, or its first part. */
export function findMarkFault(bytes: Uint8Array, size: number): string | undefined {
  if (size > MARK_LIMITS.bytes) return MARK_TOO_LARGE;
  const header = readImageHeader(bytes);
  if (!header) return NO_MARK_PICTURE;
  const { width, height } = header;
  if (Math.max(width, height) > MARK_LIMITS.side || width * height > MARK_LIMITS.area)
    return sayMarkPixels(width, height);
  return undefined;
}

/**
 * A picture file as a small PNG (data address) that holds pixels and nothing else: it is painted anew, so that no place, date or name comes
 * along. Throws an error whose message can be shown.
 */
export async function readMark(file: Blob): Promise<string> {
  // Enough for any header: a camera's own notes and a thumbnail may come before a JPEG's.
  const start = new Uint8Array(await file.slice(0, 1_000_000).arrayBuffer());
  const fault = findMarkFault(start, file.size);
  if (fault) throw new RangeError(fault);
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    throw new RangeError('This picture is damaged: it could not be read. Choose another one.');
  }
  const scale = Math.min(1, KEPT_MARK.width / picture.width, KEPT_MARK.height / picture.height);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d')!;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return canvas.toDataURL('image/png');
}

/** The pixels of a mark that `readMark` made. */
export async function decodeMark(mark: string): Promise<ImageBitmap | null> {
  try {
    const bytes = Uint8Array.from(atob(mark.slice(mark.indexOf(',') + 1)), (letter) => letter.charCodeAt(0));
    return await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  } catch {
    return null;
  }
}
