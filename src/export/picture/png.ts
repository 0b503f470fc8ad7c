import { crc32 } from '../../math/crc32';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Signature and the header chunk, which has to be first. */
const AFTER_HEADER = 33;

/** A PNG with a text chunk (tEXt; keyword and text in Latin letters) put in after its header. */
export function withPngText(png: Uint8Array, keyword: string, text: string): Uint8Array {
  if (!SIGNATURE.every((byte, i) => png[i] === byte)) throw new Error('This browser made a picture that is not a PNG.');
  const data = new TextEncoder().encode(`tEXt${keyword}\0${text}`);
  const out = new Uint8Array(png.length + data.length + 8);
  out.set(png.subarray(0, AFTER_HEADER));
  const view = new DataView(out.buffer);
  view.setUint32(AFTER_HEADER, data.length - 4);
  out.set(data, AFTER_HEADER + 4);
  view.setUint32(AFTER_HEADER + 4 + data.length, crc32(data));
  out.set(png.subarray(AFTER_HEADER), AFTER_HEADER + 8 + data.length);
  return out;
}
