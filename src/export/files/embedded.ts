import type { Document } from '../../store';
import type { Read } from '../../store/document/validate';
import { LONGEST_TEXT, readText, toText } from '../link/link';

/** Stands before the document's text inside pictures, clips and model files, and ends it. */
const MARK = 'slantwise:';
const END = ';';

/** The document as it stands inside a file. */
export const toMarked = (document: Document): string => MARK + toText(document) + END;

/** The mark is looked for in this many bytes at the start and at the end of a file. */
const SEARCHED = 4_000_000;

/** What a file carries: a document, a problem in words, or nothing of ours. */
export function readEmbedded(bytes: Uint8Array): Read | undefined {
  const comment = isGif(bytes) ? gifComment(bytes) : undefined;
  const places = comment
    ? [comment]
    : bytes.length <= 2 * SEARCHED
      ? [bytes]
      : [bytes.subarray(0, SEARCHED), bytes.subarray(-SEARCHED)];
  for (const place of places) {
    const from = findMark(place);
    if (from < 0) continue;
    let to = from;
    while (to < place.length && to - from <= LONGEST_TEXT && place[to] !== END.charCodeAt(0)) to++;
    return readText(String.fromCharCode(...place.subarray(from, to)));
  }
  return undefined;
}

const MARK_BYTES = new TextEncoder().encode(MARK);

/** Index after the mark, or -1. */
function findMark(bytes: Uint8Array): number {
  for (let at = bytes.indexOf(MARK_BYTES[0]); at >= 0; at = bytes.indexOf(MARK_BYTES[0], at + 1)) {
    if (MARK_BYTES.every((byte, i) => bytes[at + i] === byte)) return at + MARK_BYTES.length;
  }
  return -1;
}

const isGif = (bytes: Uint8Array): boolean => bytes[0] === 0x47 && bytes[1] === 0x49 && bytes[2] === 0x46;

/** The bytes of the comment that stands right after the header, its blocks joined; GIF cuts texts into blocks of 255. */
function gifComment(bytes: Uint8Array): Uint8Array | undefined {
  let at = afterGifHeader(bytes);
  if (bytes[at] !== 0x21 || bytes[at + 1] !== 0xfe) return undefined;
  at += 2;
  const blocks: number[] = [];
  while (bytes[at] > 0 && blocks.length <= LONGEST_TEXT + MARK.length) {
    blocks.push(...bytes.subarray(at + 1, at + 1 + bytes[at]));
    at += 1 + bytes[at];
  }
  return Uint8Array.from(blocks);
}

/** Header, screen descriptor and the colours that follow it. */
const afterGifHeader = (bytes: Uint8Array): number => 13 + (bytes[10] & 0x80 ? 3 * 2 ** ((bytes[10] & 7) + 1) : 0);

/** A GIF with a comment put in after its header (GIF89a, section 24). */
export function withGifComment(gif: Uint8Array, text: string): Uint8Array {
  const from = afterGifHeader(gif);
  const comment: number[] = [0x21, 0xfe];
  for (let at = 0; at < text.length; at += 255) {
    const block = text.slice(at, at + 255);
    comment.push(block.length, ...new TextEncoder().encode(block));
  }
  comment.push(0);
  const out = new Uint8Array(gif.length + comment.length);
  out.set(gif.subarray(0, from));
  out.set(comment, from);
  out.set(gif.subarray(from), from + comment.length);
  return out;
}
