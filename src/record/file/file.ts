import { crc32 } from '../../math/crc32';
import { toDay } from '../../words/book/days';
import { KINDS, type BookRecord, type Kind } from '../book/recordTypes';
import { toSlug } from '../../checking/text';

/*
 * The backup and hand-over file. JSON, UTF-8, one record a line, so that one damaged line costs one record:
 *
 *   {"format":"slantwise lesson book","version":1,"writtenMs":1764061200000,"holds":{"player":1,"lesson":2,"swing":0,"still":0},"records":[
 *   {"sum":"1c291ca3","record":{"kind":"player", ...}},
 *   {"sum":"5c1f0b7e","record":{"kind":"lesson", ...}}
 *   ]}
 *
 * `sum` is the CRC-32 of the record's JSON without spaces. Whoever edits a file by hand leaves it out. The fields of a
 * record are those of recordTypes.ts, all of them and no others. `alongside` may follow with texts that are kept; of these only
 * the coach's own look is read (`OWN_LOOK_KEY`).
 */
export const FORMAT = 'slantwise lesson book';
export const FILE_VERSION = 1;
/** Where the browser keeps the coach's own look, and under what name it lies in a file with everything. */
export const OWN_LOOK_KEY = 'slantwise.own-look';

export type Counts = { readonly [K in Kind]: number };

/** How many of each kind. */
function countKinds(records: Iterable<{ readonly kind: Kind }>): Counts {
  const counts = { player: 0, lesson: 0, swing: 0, still: 0 };
  for (const { kind } of records) counts[kind]++;
  return counts;
}

/** CRC-32 of a text in UTF-8, as eight hex digits. */
export const sumOf = (text: string): string => crc32(new TextEncoder().encode(text)).toString(16).padStart(8, '0');

/** One line of the file. */
const toLine = (record: unknown): string => {
  const text = JSON.stringify(record);
  return `{"sum":"${sumOf(text)}","record":${text}}`;
};

/** The whole file. Players first, so that a person who reads it finds them. */
export function writeFile(
  records: Iterable<BookRecord>,
  writtenMs: number,
  alongside?: Readonly<Record<string, string>>,
): string {
  const sorted = [...records].toSorted((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind));
  const head = { format: FORMAT, version: FILE_VERSION, writtenMs, holds: countKinds(sorted) };
  const tail = alongside === undefined ? ']}' : `],"alongside":${JSON.stringify(alongside)}}`;
  return `${JSON.stringify(head).slice(0, -1)},"records":[\n${sorted.map(toLine).join(',\n')}\n${tail}\n`;
}

/** "slantwise-lesson-book-2026-11-25.json", or with one player's name in it. */
export const fileName = (nowMs: number, player?: string): string =>
  `slantwise-${player === undefined ? 'lesson-book' : toSlug(player)}-${toDay(nowMs)}.json`;
