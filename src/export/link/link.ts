import { deflateSync, inflateSync } from 'fflate';
import type { Document } from '../../store';
import { USUAL_CAMERAS } from '../../store/document/cameras';
import { readDocument, type Read } from '../../store/document/validate';
import { fromBase64Url, toBase64Url } from '../../checking/base64url';
import { DICTIONARY_1, DICTIONARY_2 } from './dictionaries';
import { crc32 } from '../../math/crc32';
import { fitsCode } from '../picture/qrCode';

/*
 * A document as a short text: "s1." or "s2." and, in base64 for addresses, four bytes CRC-32 of the JSON followed by the JSON,
 * deflated against a dictionary. The link, the pictures and the clips all carry this text.
 */

/** Each version's dictionary. A document with a plan is written in version 2, any other in version 1. */
const DICTIONARIES: ReadonlyMap<number, Uint8Array> = new Map(
  [DICTIONARY_1, DICTIONARY_2].map((text, at) => [at + 1, new TextEncoder().encode(text)] as const),
);
const NEWEST = 2;

/** Longer texts are refused unread. A document with everything set takes a tenth, one with a plan in the longest words about half. */
export const LONGEST_TEXT = 16_000;
/** Inflating stops at this many bytes, before anything is parsed. */
const LARGEST_JSON = 20_000;
const CHECK_BYTES = 4;

/** The document as text. Cameras where they usually stand are left out: reading puts them back. */
export function toText({ camera, ...document }: Document): string {
  const isUsual = JSON.stringify(camera) === JSON.stringify(USUAL_CAMERAS);
  return packJson(JSON.stringify(isUsual ? document : { ...document, camera }), document.plan ? NEWEST : 1);
}

/** Any JSON as such a text; only a document's will be read. */
export function packJson(text: string, version = 1): string {
  const json = new TextEncoder().encode(text);
  const packed = deflateSync(json, { level: 9, dictionary: DICTIONARIES.get(version)! });
  const bytes = new Uint8Array(CHECK_BYTES + packed.length);
  new DataView(bytes.buffer).setUint32(0, crc32(json));
  bytes.set(packed, CHECK_BYTES);
  return `s${version}.${toBase64Url(bytes)}`;
}

const DAMAGED = { problem: 'it is damaged' } as const;

/** Reads such a text. What is unknown, damaged or too large comes back as a problem in words, whole or not at all. */
export function readText(text: string): Read {
  const unpacked = unpackJson(text);
  return 'problem' in unpacked ? unpacked : readJson(unpacked.json);
}

/** The JSON of such a text as bytes, unread, or what is wrong with it in words. */
export function unpackJson(text: string): { readonly json: Uint8Array } | { readonly problem: string } {
  if (text.length > LONGEST_TEXT) return { problem: 'it is too long' };
  const [, version, body] = /^s(\d{1,6})\.([\w-]*)$/.exec(text) ?? [];
  if (version === undefined) return DAMAGED;
  const dictionary = DICTIONARIES.get(Number(version));
  if (!dictionary)
    return { problem: Number(version) > NEWEST ? 'a newer Slantwise wrote it' : 'its version is unknown' };
  const bytes = fromBase64Url(body);
  if (!bytes || bytes.length <= CHECK_BYTES) return DAMAGED;
  const json = unfold(bytes.subarray(CHECK_BYTES), dictionary);
  if (json === undefined) return DAMAGED;
  if (json.length > LARGEST_JSON) return { problem: 'it is too large' };
  return crc32(json) === new DataView(bytes.buffer).getUint32(0) ? { json } : DAMAGED;
}

/** At most one byte more than is allowed comes out. Undefined when the bytes are no deflate stream. */
function unfold(packed: Uint8Array, dictionary: Uint8Array): Uint8Array | undefined {
  try {
    return inflateSync(packed, { out: new Uint8Array(LARGEST_JSON + 1), dictionary });
  } catch {
    return undefined;
  }
}

function readJson(bytes: Uint8Array): Read {
  try {
    const json = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    const plain = json.replace(/\\u([\da-f]{4})/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
    if (/"__proto__"\s*:/.test(plain)) return DAMAGED;
    return readDocument(JSON.parse(json));
  } catch {
    return DAMAGED;
  }
}

/** The address that opens this document: nothing is sent anywhere, what follows # stays in the browser. */
export function toAddress(document: Document, base: string): string {
  const url = new URL(base);
  url.hash = toText(document);
  url.search = '';
  return url.href;
}

/**
 * The address that goes into a code. One too long for a code leaves out what is only said, the longest first; what moves and where it leads always
 * goes along. `isWhole`: nothing was left out.
 */
export function toCodeAddress(
  document: Document,
  base: string,
): { readonly address: string; readonly isWhole: boolean } {
  const { plan } = document;
  const shorter: readonly (typeof plan)[] = plan
    ? [
        { ...plan, words: '' },
        { ...plan, words: '', drills: plan.drills.map(({ name }) => ({ name, how: '', often: '' })) },
        { ...plan, words: '', feel: '', drills: [], cautions: [], names: { player: null, coach: null } },
      ]
    : [];
  const [whole, ...others] = [plan, ...shorter].map((one) => toAddress({ ...document, plan: one }, base));
  const fitting = [whole, ...others].find(fitsCode) ?? toAddress({ ...document, plan: null }, base);
  return { address: fitting, isWhole: fitting === whole };
}

/** What the end of an address says: nothing when it carries no document. */
export function readHash(hash: string): Read | undefined {
  const text = hash.replace(/^#/, '');
  return /^s\d/.test(text) ? readText(text) : undefined;
}
