import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { fileName, sumOf, writeFile } from '../../src/record/file/file';
import { migrate } from '../../src/record/book/migrations';
import { planImport } from '../../src/record/file/importPlan';
import { LIMITS, RECORD_VERSION, type BookRecord } from '../../src/record/book/recordTypes';
import { readFile, type FileReading } from '../../src/record/file/readFile';
import { toDay } from '../../src/words/book/days';
import { sayPlan, sayRecovered } from '../../src/words/book/import';
import { readRecord } from '../../src/record/file/validate';
import { DEFAULT_DOCUMENT } from '../../src/store/document/document';
import { makeLesson, makePlan, makePlayer } from './record-stand';

type Opened = Exclude<FileReading, { refused: string }>;
const opened = (text: string): Opened => {
  const reading = readFile(text);
  if ('refused' in reading) throw new Error(reading.refused);
  return reading;
};
const refusal = (text: string): string => {
  const reading = readFile(text);
  return 'refused' in reading ? reading.refused : 'opened';
};
const asMap = (records: readonly BookRecord[]) => new Map(records.map((record) => [record.id, record]));

const eightPlayers = Array.from({ length: 8 }, (_, at) => makePlayer({ name: `Player ${at}` }));
const eight = writeFile(eightPlayers, 1000);

describe('a backup file', () => {
  test('brings back exactly what was in the book', () => {
    const player = makePlayer({ name: 'Zoë "Z" \\ \u2014 \u{1F426}', notes: 'line one\nline two' });
    const lesson = makeLesson(player.id, { now: { ...DEFAULT_DOCUMENT, plan: makePlan() } });
    const reading = opened(writeFile([lesson, player], 1000));
    expect(asMap(reading.records)).toEqual(asMap([player, lesson]));
    expect(reading.sound).toBe(true);
    expect(sayRecovered(reading)).toEqual([]);
  });

  test('is JSON that any program reads, players first', () => {
    const player = makePlayer();
    const whole = JSON.parse(writeFile([makeLesson(player.id), player], 1000)) as {
      records: { record: BookRecord }[];
    };
    expect(whole).toMatchObject({
      format: 'slantwise lesson book',
      version: 1,
      holds: { player: 1, lesson: 1, swing: 0 },
    });
    expect(whole.records.map(({ record }) => record.kind)).toEqual(['player', 'lesson']);
  });

  test('its check sum is the CRC-32 of zlib', () => {
    for (const text of ['', '123456789', 'Zoë \u{1F426}', eight]) {
      expect(sumOf(text)).toBe(crc32(text).toString(16).padStart(8, '0'));
    }
  });

  test('reformatted by another program it opens all the same', () => {
    const pretty = JSON.stringify(JSON.parse(eight) as unknown, undefined, 2);
    expect(opened(pretty).records).toHaveLength(8);
  });

  test('edited by hand, without check sums, it opens; with the old sum the edited record is refused', () => {
    const edited = eight.replace('"name":"Player 3"', '"name":"Pip"');
    const reading = opened(edited);
    expect(sayRecovered(reading)).toEqual([
      'This file is damaged.',
      '7 of 8 players recovered.',
      'One player was left out: its check sum is wrong.',
    ]);
    const noSums = edited.replace(/"sum":"[0-9a-f]{8}",/g, '');
    expect(opened(noSums).records.map((record) => 'name' in record && record.name)).toContain('Pip');
    expect(opened(noSums).sound).toBe(true);
  });

  test('one broken line costs one player: 7 of 8 recovered', () => {
    const lines = eight.split('\n');
    lines[3] = lines[3].slice(0, 60);
    const reading = opened(lines.join('\n'));
    expect(reading.records).toHaveLength(7);
    expect(sayRecovered(reading)).toContain('7 of 8 players recovered.');
    expect(sayRecovered(reading).join(' ')).toContain('cut off or broken');
  });

  test('cut in the middle it says how many of all are there', () => {
    const reading = opened(eight.slice(0, Math.floor(eight.length * 0.6)));
    expect(reading.records.length).toBeGreaterThan(2);
    expect(sayRecovered(reading)[1]).toBe(`${reading.records.length} of 8 players recovered.`);
  });

  test('of a newer version it is refused politely and nothing is taken', () => {
    const newer = eight.replace('"version":1', '"version":2');
    expect(refusal(newer)).toMatch(/^A newer Slantwise wrote this file\. It is left untouched/);
    expect(refusal(newer.slice(0, -30))).toMatch(/newer/);
  });

  test('a record of a newer version is left out and said so; the others come', () => {
    const [first, ...rest] = eightPlayers;
    const mixed = writeFile([...rest, { ...first, version: RECORD_VERSION + 1 } as unknown as BookRecord], 1000);
    expect(sayRecovered(opened(mixed))).toContain('One player was left out: a newer Slantwise wrote it.');
    expect(opened(mixed).records).toHaveLength(7);
  });

  test.each([
    ['nothing', ''],
    ['a list', '[]'],
    ['another JSON file', '{"name":"x"}'],
    ['a picture', '\u0089PNG\r\n\u001a\n\0\0\0'],
    ['a number', '7'],
    ['null', 'null'],
  ])('%s is no lesson book', (_, text) => {
    expect(refusal(text)).toMatch(/no lesson book/);
  });

  test('too long a file, and 100,000 brackets, are refused before anything parses them', () => {
    expect(refusal(' '.repeat(LIMITS.fileText + 1))).toMatch(/too large/);
    const deep = `{"format":"slantwise lesson book","version":1,"records":${'['.repeat(1e5)}${']'.repeat(1e5)}}`;
    expect(refusal(deep)).toMatch(/no lesson book/);
    const inOne = eight.replace('"notes":""', `"notes":${'['.repeat(1e5)}${']'.repeat(1e5)}`);
    expect(opened(inOne).records).toHaveLength(7);
  });

  test.each([
    ['a field called __proto__', '"notes":"","__proto__":{"archived":true}'],
    ['the same hidden by an escape', '"notes":"","\\u005f_proto__":{"archived":true}'],
    ['a field twice', '"notes":"","notes":"x"'],
    ['half a character', '"notes":"\\ud83d"'],
    ['a text for a number', '"notes":"","createdMs":"1"'],
    ['a missing field', '"noted":""'],
    ['a list for a text', '"notes":[]'],
    ['null for a text', '"notes":null'],
    ['a number without end', '"notes":"","changedMs":1e999'],
    ['a mark that turns the writing round', '"notes":"\\u202e"'],
  ])('a record with %s is left out, the others come', (_, part) => {
    const noSums = eight.replace(/"sum":"[0-9a-f]{8}",/g, '').replace('"notes":""', part);
    const reading = opened(noSums);
    expect(reading.records).toHaveLength(7);
    expect(({} as { archived?: unknown }).archived).toBeUndefined();
    expect(sayRecovered(reading)).toContain('7 of 8 players recovered.');
  });
});

describe('an import', () => {
  const player = makePlayer({ name: 'Wren', changedMs: 5000 });
  const lesson = makeLesson(player.id);
  const book = asMap([player, lesson]);
  const plan = (records: BookRecord[], policy: 'newer' | 'ours' | 'theirs' = 'newer') =>
    planImport(book, opened(writeFile(records, 1000)), policy);

  test('says what it will add and change before it does', () => {
    const newcomer = makePlayer({ name: 'Robin' });
    const later = { ...player, notes: 'new', changedMs: 6000 };
    const found = plan([newcomer, later, lesson, makeLesson(newcomer.id)]);
    expect(sayPlan(found)).toEqual(['Adds 1 player and 1 lesson.', 'Changes 1 player.', '1 record is here already.']);
    expect(found.changed[0].fields).toEqual(['notes']);
  });

  test('where both differ: the newer, mine, or the one of the file, as chosen', () => {
    const older = { ...player, notes: 'old', changedMs: 4000 };
    expect(plan([older]).changed).toEqual([]);
    expect(plan([older]).left).toHaveLength(1);
    expect(plan([older], 'theirs').changed).toHaveLength(1);
    expect(plan([{ ...older, changedMs: 9000 }], 'ours').changed).toEqual([]);
  });

  test('lessons whose player was lost get one, so that they can be found', () => {
    const lost = makePlayer();
    const found = plan([makeLesson(lost.id), makeLesson(lost.id)]);
    expect(found.madeUp).toHaveLength(1);
    expect(readRecord(found.madeUp[0])).toEqual({ record: found.madeUp[0] });
    expect(sayPlan(found)).toContain('Makes 1 player for lessons without one.');
  });
});

describe('names', () => {
  test.each([
    ['Zoë Ångström', 'slantwise-zoe-angstrom-2026-11-25.json'],
    ['../../etc/passwd', 'slantwise-etc-passwd-2026-11-25.json'],
    ['鷺', 'slantwise-player-2026-11-25.json'],
    ['<b>A</b>\0.exe', 'slantwise-b-a-b-exe-2026-11-25.json'],
  ])('of files are plain letters: %s', (name, expected) => {
    expect(fileName(new Date(2026, 10, 25, 14, 2).getTime(), name)).toBe(expected);
  });
  test('the day is the day where the device is', () => {
    expect(toDay(new Date(2026, 0, 1, 0, 5).getTime())).toBe('2026-01-01');
  });
});

describe('what was written long ago', () => {
  const fixture = (name: string): string => readFileSync(join(import.meta.dirname, '../fixtures', name), 'utf8');

  test('the file of version 1 opens whole', () => {
    const reading = opened(fixture('lesson-book-file-v1.json'));
    expect(reading.sound).toBe(true);
    expect(reading.expected).toEqual({ player: 2, lesson: 2, swing: 1, still: 0 });
    expect(asMap(reading.records).get('f1f1f1f1-0000-4000-8000-000000000003')).toMatchObject({
      date: '2025-11-25',
      now: { movements: { leadWristFlexionDeg: -20 }, club: { my: { name: 'Hickory' } }, board: 'dark' },
      notes: expect.stringContaining('Worked on: lead wrist, body turn.') as string,
    });
  });

  test('the file with documents of version 2 opens whole, as it was written but for its version and its plans', () => {
    const text = fixture('lesson-book-file-v2.json');
    const reading = opened(text);
    expect(reading.sound).toBe(true);
    expect(reading.expected).toEqual({ player: 2, lesson: 2, swing: 1, still: 0 });
    const written = JSON.parse(text) as { records: { record: BookRecord }[] };
    expect(reading.records.map(({ id, createdMs }) => [id, createdMs])).toEqual(
      written.records.map(({ record: { id, createdMs } }) => [id, createdMs]),
    );
  });

  test.each(['lesson-book-file-v3.json', 'lesson-book-file-v3-film.json'])(
    'the file with plans of version 3 opens just as it was written, but for its version: %s',
    (name) => {
      const text = fixture(name);
      const reading = opened(text);
      expect(reading.sound).toBe(true);
      const written = JSON.parse(text) as { records: { record: BookRecord }[] };
      expect(reading.records).toEqual(written.records.map(({ record }) => ({ ...record, version: 3 })));
    },
  );

  test.each([1, 2])('the stored records of version %d are all read', (version) => {
    const { records } = JSON.parse(fixture(`lesson-book-store-v${version}.json`)) as { records: unknown[] };
    expect(records.map((record) => Object.keys(readRecord(migrate(record))))).toEqual(records.map(() => ['record']));
  });

  test('records are brought forward step by step, whatever their age', () => {
    const steps = [
      (old: Record<string, unknown>) => ({ ...old, version: 2, hat: 'none' }),
      (old: Record<string, unknown>) => ({ ...old, version: 3, hat: [old['hat']] }),
    ];
    expect(migrate({ version: 1, a: 1 }, steps, 3)).toEqual({ version: 3, a: 1, hat: ['none'] });
    expect(migrate({ version: 2, hat: 'cap' }, steps, 3)).toEqual({ version: 3, hat: ['cap'] });
    expect(migrate({ version: 3, hat: 7 }, steps, 3)).toEqual({ version: 3, hat: 7 });
    for (const odd of [null, 7, 'x', [], {}, { version: -1 }, { version: 0.5 }, { version: 4 }, { version: NaN }]) {
      expect(migrate(odd, steps, 3)).toBe(odd);
    }
  });
});
