import { fromBase64Url, toBase64Url } from '../checking/base64url';
import { firstOf, toName } from '../checking/text';
import { crc32 } from '../math/crc32';
import { readPractice } from './check';
import { FELT, PRACTICE_LIMITS, type Practice } from './practice';

/*
 * A practice as a short text: "p1." and, in base64 for addresses, four bytes CRC-32 of what follows and then
 * one byte with the number of drills (low two bits) and two bits for each answer (0 not given, then as in `FELT`),
 * one byte with the length of the plan's id and the id in ASCII, the number of days,
 * for each day its distance from the day before times eight plus one bit for each ticked drill, and the count of each drill,
 * and the words in UTF-8. Numbers are written in groups of seven bits, the lowest first, the top bit set where more follow (LEB128).
 * Days are counted in years of 372: twelve months of 31 days.
 */
const VERSION = 1;
const CHECK_BYTES = 4;
/** Longer texts are refused unread. The fullest practice takes about 2,130 letters. */
export const LONGEST_CODE = 2400;

export type ReadPractice = { readonly practice: Practice } | { readonly problem: string };

const DAMAGED = { problem: 'it is damaged' } as const;
const LAST_DAY = 10_000 * 372;

const toNumber = (date: string): number => {
  const [year, month, day] = date.split('-').map(Number);
  return year * 372 + (month - 1) * 31 + day - 1;
};
const padded = (value: number, digits: number): string => String(value).padStart(digits, '0');
const toDate = (days: number): string =>
  `${padded(Math.floor(days / 372), 4)}-${padded((Math.floor(days / 31) % 12) + 1, 2)}-${padded((days % 31) + 1, 2)}`;

function pushNumber(bytes: number[], value: number): void {
  let rest = value;
  for (; rest > 127; rest >>>= 7) bytes.push((rest & 127) | 128);
  bytes.push(rest);
}

/** The practice as a code. The words become one line without doubled spaces. Under 1,500 letters with 30 days and 200 letters of words. */
export function toPracticeCode({ planId, days, felt, words }: Practice): string {
  const answers = felt.reduce((sum, one, i) => sum | ((one === null ? 0 : FELT.indexOf(one) + 1) << (2 + 2 * i)), 0);
  const body: number[] = [felt.length | answers, planId.length, ...new TextEncoder().encode(planId)];
  pushNumber(body, days.length);
  let before = 0;
  for (const { date, done, counts } of days) {
    const at = toNumber(date);
    pushNumber(body, (at - before) * 8 + done.reduce((sum, isDone, i) => sum | (Number(isDone) << i), 0));
    for (const count of counts) pushNumber(body, count);
    before = at;
  }
  body.push(...new TextEncoder().encode(firstOf(toName(words), PRACTICE_LIMITS.words).trim()));
  const bytes = new Uint8Array(CHECK_BYTES + body.length);
  bytes.set(body, CHECK_BYTES);
  new DataView(bytes.buffer).setUint32(0, crc32(bytes.subarray(CHECK_BYTES)));
  return `p${VERSION}.${toBase64Url(bytes)}`;
}

/** Reads such a code, whole or not at all. Spaces and line ends in it, as mails put them in, do not count. */
export function readPracticeCode(text: string): ReadPractice {
  // Room for a line end after every letter: anything longer is not looked at.
  if (text.length > 2 * LONGEST_CODE) return { problem: 'it is too long' };
  const code = text.replace(/\s+/g, '');
  if (code.length > LONGEST_CODE) return { problem: 'it is too long' };
  const [, version, letters] = /^p(\d{1,6})\.([\w-]*)$/.exec(code) ?? [];
  if (version === undefined) return { problem: 'it is no practice code, or part of it is missing' };
  if (Number(version) > VERSION) return { problem: 'a newer Slantwise wrote it' };
  const bytes = fromBase64Url(letters);
  if (!bytes || bytes.length <= CHECK_BYTES) return DAMAGED;
  const body = bytes.subarray(CHECK_BYTES);
  if (crc32(body) !== new DataView(bytes.buffer).getUint32(0)) return DAMAGED;
  const practice = readPractice(unpack(body));
  // One practice has one code: whatever else says the same was not written by us.
  return practice && toPracticeCode(practice) === code ? { practice } : DAMAGED;
}

/** What the bytes say, unchecked; undefined where they end too soon or say what no day or text is. */
function unpack(body: Uint8Array): unknown {
  let at = 0;
  const byte = (): number => body[at++] ?? NaN;
  const number = (): number => {
    let value = 0;
    for (let shift = 0; shift < 28; shift += 7) {
      const part = byte();
      value += (part & 127) << shift;
      if (!(part & 128)) return Number.isNaN(part) ? NaN : value;
    }
    return NaN;
  };
  const text = (length: number): string => {
    const part = body.subarray(at, at + length);
    at += length;
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(part);
  };
  try {
    const head = byte();
    const drills = Array.from({ length: head & 3 }, (_, i) => i);
    const felt = drills.map((i) => FELT[((head >> (2 + 2 * i)) & 3) - 1] ?? null);
    const planId = text(byte());
    const length = number();
    if (!(length <= PRACTICE_LIMITS.days)) return undefined;
    let date = 0;
    const days = Array.from({ length }, () => {
      const step = number();
      date += Math.floor(step / 8);
      if (!(date < LAST_DAY)) throw new RangeError('No such day.');
      return { date: toDate(date), done: drills.map((i) => ((step >> i) & 1) === 1), counts: drills.map(number) };
    });
    return { planId, days, felt, words: text(Math.max(0, body.length - at)) };
  } catch {
    return undefined;
  }
}
