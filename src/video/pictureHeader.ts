import { readImageHeader } from '../checking/imageHeader';

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
 */
export function findPictureSize(bytes: Uint8Array): HeaderSize | undefined {
  const header = readImageHeader(bytes);
  return header && { w: header.width, h: header.height };
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
