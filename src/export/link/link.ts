import { deflateSync, inflateSync } from 'fflate';
import type { Document } from '../../store';
import { USUAL_CAMERAS } from '../../store/document/cameras';
import { readDocument, type Read } from '../../store/document/validate';
import { fromBase64Url, toBase64Url } from './base64url';
import { crc32 } from '../../math/crc32';

/**
 * A document as a short text: "s1." and, in base64 for addresses, four bytes CRC-32 of the JSON followed by the JSON,
 * deflated against a dictionary. The link, the pictures and the clips all carry this text.
 */
const VERSION = 1;

/** Part of format version 1: never change it, existing links depend on it. */
const DICTIONARY = new TextEncoder().encode(
  '"segmentsM":{"upperArm":0."forearm":0."hand":0."trunk":0."thigh":0."shank":0."my":{"name":"my club","kind":"driver","wood","iron","wedge",' +
    '"gripInsetM":0.1,"handGapM":0.085,"gripAngleDeg":52,"gripTurnDeg":0}"pelvis":{"rate":1.,"delayMs":-1.5-wood5-iron9-iron"pitching wedge"sand wedge' +
    '"handed":"left""length":"in","speed":"km/h""mph""dark""nothing adapts""seen":{"leadArmParallel":{"valueCm":,"plusMinusCm":' +
    '{"version":1,"player":{"statureM":1.78,"handed":"right"},"club":{"id":"7-iron","my":null},"movements":{"leadWristFlexionDeg":0,' +
    '"rotationRate":1,"rotationDelayMs":0,"trailTiltDeg":0,"pelvisShiftCm":0,"pelvis":null},"setUp":{"handDepthCm":0,"handHeightCm":0,' +
    '"turnDeg":0,"wristSetDeg":0,"downswingMs":250},"bands":{"leadArmParallel":{"lowCm":-1.5,"highCm":1.5},"shaftParallel":{"lowCm":-10,' +
    '"highCm":2}},"checkpointArmDeg":-10,"ball":{"rule":"held plane","tailWindMps":0,"crossWindMps":0,"altitudeM":0},' +
    '"units":{"length":"cm","speed":"m/s"},"board":"light","seen":{"leadArmParallel":null,"shaftParallel":null}}',
);

/** Longer texts are refused unread. A document with everything set takes a tenth. */
export const LONGEST_TEXT = 6000;
/** Inflating stops at this many bytes, before anything is parsed. */
const LARGEST_JSON = 20_000;
const CHECK_BYTES = 4;

/** The document as text. Cameras where they usually stand are left out: reading puts them back. */
export function toText({ camera, ...document }: Document): string {
  const isUsual = JSON.stringify(camera) === JSON.stringify(USUAL_CAMERAS);
  return packJson(JSON.stringify(isUsual ? document : { ...document, camera }));
}

/** Any JSON as such a text; only a document's will be read. */
export function packJson(text: string): string {
  const json = new TextEncoder().encode(text);
  const packed = deflateSync(json, { level: 9, dictionary: DICTIONARY });
  const bytes = new Uint8Array(CHECK_BYTES + packed.length);
  new DataView(bytes.buffer).setUint32(0, crc32(json));
  bytes.set(packed, CHECK_BYTES);
  return `s${VERSION}.${toBase64Url(bytes)}`;
}

const DAMAGED = { problem: 'it is damaged' } as const;

/** Reads such a text. What is unknown, damaged or too large comes back as a problem in words, whole or not at all. */
export function readText(text: string): Read {
  if (text.length > LONGEST_TEXT) return { problem: 'it is too long' };
  const [, version, body] = /^s(\d{1,6})\.([\w-]*)$/.exec(text) ?? [];
  if (version === undefined) return DAMAGED;
  if (Number(version) !== VERSION)
    return { problem: Number(version) > VERSION ? 'a newer Slantwise wrote it' : 'its version is unknown' };
  const bytes = fromBase64Url(body);
  if (!bytes || bytes.length <= CHECK_BYTES) return DAMAGED;
  const json = unfold(bytes.subarray(CHECK_BYTES));
  if (json === undefined) return DAMAGED;
  if (json.length > LARGEST_JSON) return { problem: 'it is too large' };
  if (crc32(json) !== new DataView(bytes.buffer).getUint32(0)) return DAMAGED;
  return readJson(json);
}

/** At most one byte more than is allowed comes out. Undefined when the bytes are no deflate stream. */
function unfold(packed: Uint8Array): Uint8Array | undefined {
  try {
    return inflateSync(packed, { out: new Uint8Array(LARGEST_JSON + 1), dictionary: DICTIONARY });
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

/** What the end of an address says: nothing when it carries no document. */
export function readHash(hash: string): Read | undefined {
  const text = hash.replace(/^#/, '');
  return /^s\d/.test(text) ? readText(text) : undefined;
}
