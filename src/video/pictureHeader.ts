/** Width and height that a picture file says it has, px. */
export interface HeaderSize {
  readonly w: number;
  readonly h: number;
}

/** How much of a file is enough to find its size in: beyond the largest preview a camera puts in front. */
export const HEADER_BYTES = 512 * 1024;

/**
 * Size of a JPEG, PNG or WebP by its header, before anything is decoded; undefined for any other file. A camera's note to turn the picture is
 * not looked at: width and height may be the other way round.
 * Sources: PNG (ISO/IEC 15948) 11.2.2, JPEG (ITU-T T.81) B.2.2, WebP container specification.
 */
export function findPictureSize(bytes: Uint8Array): HeaderSize | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length > 24 && view.getUint32(0) === 0x89504e47) return { w: view.getUint32(16), h: view.getUint32(20) };
  if (bytes.length > 4 && view.getUint16(0) === 0xffd8) return findJpegSize(view);
  if (bytes.length > 30 && view.getUint32(0) === 0x52494646 && view.getUint32(8) === 0x57454250)
    return findWebpSize(view);
  return undefined;
}

/** Brands of photographs that look like a film from outside: ISO/IEC 23008-12, B.4, and the AV1 image file format, 8. */
const PHOTO_BRANDS: Readonly<Record<string, string>> = {
  heic: 'HEIC',
  heix: 'HEIC',
  heim: 'HEIC',
  heis: 'HEIC',
  mif1: 'HEIC',
  msf1: 'HEIC',
  avif: 'AVIF',
  avis: 'AVIF',
};

/** The format of a photograph that is not opened, by the start of its file; undefined for any other. */
export function findPhotoFormat(bytes: Uint8Array): string | undefined {
  const read = (from: number): string => String.fromCharCode(...bytes.subarray(from, from + 4));
  return read(4) === 'ftyp' ? PHOTO_BRANDS[read(8)] : undefined;
}

/** From segment to segment until a frame header: C0 to CF without the three that are none. */
function findJpegSize(view: DataView): HeaderSize | undefined {
  let at = 2;
  while (at + 9 < view.byteLength) {
    if (view.getUint8(at) !== 0xff) return undefined;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      return { w: view.getUint16(at + 7), h: view.getUint16(at + 5) };
    }
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}

function findWebpSize(view: DataView): HeaderSize | undefined {
  const kind = view.getUint32(12);
  // VP8X: 24 bits each, less one. VP8L: 14 bits each, less one. VP8: 14 bits each.
  if (kind === 0x56503858) {
    const read = (at: number): number => view.getUint16(at, true) + view.getUint8(at + 2) * 65536 + 1;
    return { w: read(24), h: read(27) };
  }
  if (kind === 0x5650384c) {
    const bits = view.getUint32(21, true);
    return { w: (bits & 0x3fff) + 1, h: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (kind === 0x56503820) return { w: view.getUint16(26, true) & 0x3fff, h: view.getUint16(28, true) & 0x3fff };
  return undefined;
}
