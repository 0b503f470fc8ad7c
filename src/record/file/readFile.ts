import { FILE_VERSION, FORMAT, OWN_LOOK_KEY, sumOf, type Counts } from './file';
import { migrate } from '../book/migrations';
import { KINDS, LIMITS, type BookRecord, type Kind } from '../book/recordTypes';
import { findObstacle } from './jsonGuard';
import { readRecord } from './validate';

/** A record that could not be taken, and why. */
interface Lost {
  readonly kind: Kind | null;
  readonly why: string;
}

/** What a file holds. `refused`: it was left untouched, in words. */
export type FileReading =
  | { readonly refused: string }
  | {
      readonly records: readonly BookRecord[];
      readonly lost: readonly Lost[];
      /** How many of each kind there should be: what the file says of itself, or what was found in it. */
      readonly expected: Counts;
      /** The file as a whole was sound. */
      readonly sound: boolean;
      /** The coach's own look, as it was kept; to be judged before it is used. Absent where there is none, or the file is damaged. */
      readonly ownLook?: string;
    };

const NEWER = 'A newer Slantwise wrote this file. It is left untouched. Update Slantwise, then try again.';

/** Reads a backup or hand-over file. Each record is taken whole or not at all. */
export function readFile(text: string): FileReading {
  if (text.length > LIMITS.fileText) return { refused: 'This file is too large for a lesson book. Nothing was taken.' };
  const whole = parseSafely(text, LIMITS.fileText);
  const head = whole === undefined ? headOf(text) : (whole as Head);
  const version = typeof head === 'object' && head !== null ? head.version : undefined;
  if (Number.isInteger(version) && (version as number) > FILE_VERSION) return { refused: NEWER };
  const isOurs = typeof head === 'object' && head !== null && head.format === FORMAT;
  const isWhole = whole !== undefined && isOurs && Array.isArray(head.records);
  const listed = isWhole ? (head.records as unknown[]) : undefined;

  const items = listed ?? linesOf(text);
  if (items.length > LIMITS.records) return { refused: 'This file holds too many records. Nothing was taken.' };
  const { records, lost } = readItems(items);
  if (!isOurs && records.length === 0) return { refused: 'This is no lesson book of Slantwise. Nothing was taken.' };
  const ownLook = isWhole ? ownLookOf(head.alongside) : undefined;
  const promised = readCounts(isOurs ? head.holds : undefined);
  return {
    records,
    lost,
    expected: expectedOf(promised, records, lost),
    sound: listed !== undefined && lost.length === 0 && isAllThere(promised, records),
    ...(ownLook !== undefined && { ownLook }),
  };
}

interface Head {
  readonly format?: unknown;
  readonly version?: unknown;
  readonly holds?: unknown;
  readonly records?: unknown;
  readonly alongside?: unknown;
}

function ownLookOf(alongside: unknown): string | undefined {
  if (typeof alongside !== 'object' || alongside === null) return undefined;
  const text = (alongside as Readonly<Record<string, unknown>>)[OWN_LOOK_KEY];
  return typeof text === 'string' ? text : undefined;
}

/** Parsed, or undefined when it is damaged or looks like an attack. */
function parseSafely(text: string, longest: number): unknown {
  if (findObstacle(text, longest, LIMITS.depth) !== undefined) return undefined;
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

/** The head of a damaged file: its first line, closed by hand. */
function headOf(text: string): Head | undefined {
  const first = text.slice(0, 2000).split('\n', 1)[0].trimEnd();
  return parseSafely(first.endsWith('[') ? `${first}]}` : first, 2000) as Head | undefined;
}

/** The records of a damaged file: each line on its own. A line that cannot be parsed stays as text, to be counted. */
function linesOf(text: string): unknown[] {
  const lines = text.split('\n').map((line) => line.trim());
  return lines
    .filter((line) => line.startsWith('{"sum"') || line.includes('"kind"'))
    .map((line) => parseSafely(line.replace(/,$/, ''), LIMITS.recordText) ?? line);
}

function readItems(items: readonly unknown[]): { records: BookRecord[]; lost: Lost[] } {
  const found = new Map<string, BookRecord>();
  const lost: Lost[] = [];
  for (const item of items) {
    const read = readItem(item);
    if ('why' in read) {
      lost.push(read);
      continue;
    }
    const other = found.get(read.id);
    if (!other || other.changedMs < read.changedMs) found.set(read.id, read);
  }
  return { records: [...found.values()], lost };
}

function readItem(item: unknown): BookRecord | Lost {
  if (typeof item !== 'object' || item === null || Array.isArray(item)) {
    return { kind: kindOfText(item), why: 'it is cut off or broken' };
  }
  const { sum, record, ...rest } = item as { sum?: unknown; record?: unknown };
  const kind = kindOf(record);
  if (Object.keys(rest).length > 0) return { kind, why: 'it has fields that do not belong to it' };
  if (sum !== undefined && sum !== sumOf(JSON.stringify(record) ?? '')) return { kind, why: 'its check sum is wrong' };
  const read = readRecord(migrate(record));
  if ('record' in read) return read.record;
  return { kind, why: 'newer' in read ? 'a newer Slantwise wrote it' : `part of it is damaged (${read.damage})` };
}

const isKind = (value: unknown): value is Kind => KINDS.includes(value as Kind);
const kindOf = (record: unknown): Kind | null => {
  const kind = typeof record === 'object' && record !== null ? (record as { kind?: unknown }).kind : undefined;
  return isKind(kind) ? kind : null;
};
const kindOfText = (item: unknown): Kind | null => {
  const named = typeof item === 'string' ? /"kind":"(\w+)"/.exec(item.slice(0, 200))?.[1] : undefined;
  return isKind(named) ? named : null;
};

function readCounts(value: unknown): Counts | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const given = value as Record<string, unknown>;
  const isCount = (n: unknown): n is number => Number.isInteger(n) && (n as number) >= 0 && (n as number) < 1e6;
  // Files from before there were stills do not count them.
  const [player, lesson, swing, still = 0] = KINDS.map((kind) => given[kind]);
  const isWhole = isCount(player) && isCount(lesson) && isCount(swing) && isCount(still);
  return isWhole ? { player, lesson, swing, still } : undefined;
}

const countOf = (kind: Kind, list: readonly { readonly kind: Kind | null }[]): number =>
  list.filter((one) => one.kind === kind).length;

function expectedOf(promised: Counts | undefined, records: readonly BookRecord[], lost: readonly Lost[]): Counts {
  const expect = (kind: Kind): number =>
    Math.max(promised?.[kind] ?? 0, countOf(kind, records) + (promised ? 0 : countOf(kind, lost)));
  return { player: expect('player'), lesson: expect('lesson'), swing: expect('swing'), still: expect('still') };
}

const isAllThere = (promised: Counts | undefined, records: readonly BookRecord[]): boolean =>
  promised === undefined || KINDS.every((kind) => countOf(kind, records) >= promised[kind]);
