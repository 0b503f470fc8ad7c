import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { writeFile } from '../../src/record/file/file';
import { KINDS, type BookRecord } from '../../src/record/book/recordTypes';
import { readFile } from '../../src/record/file/readFile';
import { readRecord } from '../../src/record/file/validate';
import { createRandom } from '../reference/random';
import { DEFAULT_DOCUMENT } from '../../src/store/document/document';
import { makeLesson, makePlan, makePlayer } from '../unit/record-stand';

/** How many damaged files are tried, every cut among them; `RECORD_MUTATIONS=10000 npm test -- record-import` tries fewer. */
const MUTATIONS = Number(process.env['RECORD_MUTATIONS'] ?? 8_000);
const SEED = Number(process.env['SEED'] ?? 20261125);

vi.setConfig({ testTimeout: 600_000 });

const frozen = readFileSync(join(import.meta.dirname, '../fixtures/lesson-book-file-v1.json'), 'utf8');

/** Ten files, small and different, with letters of one to four bytes. */
const files = Array.from({ length: 10 }, (_, at) => {
  if (at === 0) return frozen;
  const player = makePlayer({ name: `Wren ${'é鷺🪶'.repeat(at % 3)}${at}`, notes: 'n'.repeat(at * 7) });
  const lessons = Array.from({ length: at % 4 }, () =>
    makeLesson(player.id, { now: { ...DEFAULT_DOCUMENT, plan: makePlan() } }),
  );
  return writeFile([player, ...lessons, makePlayer({ archived: true })], 1000 + at);
});
const originals = new Map<string, string>();
for (const text of files) {
  const reading = readFile(text);
  if ('refused' in reading || !reading.sound) throw new Error('a sound file was not read');
  for (const record of reading.records) originals.set(record.id, JSON.stringify(record));
}

/** As `expect`, but quick enough to be asked a million times. */
function must(holds: boolean, what: string, text: string): void {
  if (!holds) throw new Error(`${what}: ${text.slice(0, 3000)}`);
}

/** Whatever comes in: no crash, and nothing that is not exactly a record somebody wrote. */
function readUnharmed(text: string): readonly BookRecord[] | string {
  const reading = readFile(text);
  must(Object.keys(Object.prototype).length === 0, 'every object has got a new field', text);
  if ('refused' in reading) {
    must(/^[A-Z].+\.$/.test(reading.refused), 'refused without a sentence', text);
    return reading.refused;
  }
  for (const record of reading.records)
    must(JSON.stringify(record) === originals.get(record.id), `a half-accepted record, ${record.id}`, text);
  return reading.records;
}

/** How the mutations are shared out: a quarter cut, a quarter with a flipped bit, the rest changed in structure. */
const random = createRandom(SEED);
const draw = (below: number): number => Math.floor(random() * below);
const pick = <T>(list: readonly T[]): T => list[draw(list.length)];

test(`files cut anywhere give back every record whose line is whole (seed ${SEED})`, () => {
  const all = MUTATIONS >= 50_000;
  for (const text of files) {
    const bytes = Buffer.from(text);
    const lines = text.split('\n');
    const step = all ? 1 : Math.ceil((bytes.length * files.length) / (MUTATIONS / 4));
    for (let cut = all ? 0 : draw(step); cut < bytes.length; cut += step) {
      const part = bytes.subarray(0, cut).toString('utf8');
      const found = readUnharmed(part);
      const whole = part.split('\n').slice(1, -1).length;
      const expected = Math.min(whole, lines.length - 3);
      must(typeof found === 'string' ? expected <= 0 : found.length >= expected, `cut at byte ${cut}`, text);
    }
  }
});

test(`one flipped bit costs at most the lines it touches (seed ${SEED})`, () => {
  for (let turn = 0; turn < MUTATIONS / 4; turn++) {
    const text = pick(files);
    const bytes = Buffer.from(text);
    bytes[draw(bytes.length)] ^= 1 << draw(8);
    const found = readUnharmed(bytes.toString('utf8'));
    const whole = text.split('\n').length - 3;
    // The version in the head may have become a newer one: then the file is left untouched.
    const holds = typeof found === 'string' ? /newer|no lesson book/.test(found) : found.length >= whole - 2;
    must(holds, `a flipped bit in ${String(found.length)} of ${whole}`, bytes.toString('utf8'));
  }
});

const deep = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
const ODD = [
  'null', 'true', '[]', '{}', '""', '"x"', '-0', '0', '-1', '0.5', '1e999', '-1e999', '1e308', 'NaN', 'Infinity', 'undefined', '"\\ud800"',
  '"\\udc00\\ud800"', '"\\u0000"', '"\\u202e"', '{"__proto__":{"x":1}}', '{"constructor":{"prototype":{"x":1}}}', '{"toJSON":1}',
  `"${'y'.repeat(5000)}"`, '"2026-02-30"', '"player"', '2', deep(20), deep(1e5), '{"a":'.repeat(1e4) + '1' + '}'.repeat(1e4),
]; // prettier-ignore
/** Everything after a key in one text: a value, up to the comma or bracket that ends it, brackets and all. */
const KEY = /"(?:\w+)":/g;

function mutate(text: string): string {
  const lines = text.split('\n');
  const line = 1 + draw(lines.length - 3);
  const keys = [...lines[line].matchAll(KEY)];
  const key = pick(keys);
  const at = key.index + key[0].length;
  const before = lines[line].slice(0, at);
  const after = lines[line].slice(at);
  const value = /^(?:"(?:[^"\\]|\\.)*"|[^,{}[\]"]+|[[{])/.exec(after)?.[0] ?? '';
  switch (draw(5)) {
    case 0: // another value in its place
      lines[line] = before + pick(ODD) + after.slice(value.length);
      break;
    case 1: // the key twice
      lines[line] = `${lines[line].slice(0, key.index)}${key[0]}${pick(ODD)},${lines[line].slice(key.index)}`;
      break;
    case 2: // a key nobody knows
      lines[line] =
        `${lines[line].slice(0, key.index)}"${pick(['__proto__', 'constructor', 'x', '\\u005f_proto__'])}":${pick(ODD)},${lines[line].slice(key.index)}`;
      break;
    case 3: // the key gone
      lines[line] = lines[line].slice(0, key.index) + after.slice(value.length).replace(/^,/, '');
      break;
    default: // two lines change places in the middle
      lines[line] = lines[line].slice(0, at) + pick(lines).slice(draw(200));
  }
  return lines.join('\n');
}

describe(`records changed in structure (seed ${SEED})`, () => {
  test('with their check sums, none gets in that is not as it was written', () => {
    for (let turn = 0; turn < MUTATIONS / 4; turn++) readUnharmed(mutate(pick(files)));
  });

  test('without check sums, what gets in is a whole and valid record', () => {
    let refused = 0;
    for (let turn = 0; turn < MUTATIONS / 4; turn++) {
      const reading = readFile(mutate(pick(files).replace(/"sum":"[0-9a-f]{8}",/g, '')));
      if ('refused' in reading) continue;
      refused += reading.lost.length;
      for (const record of reading.records) {
        const text = JSON.stringify(record);
        must(!/__proto__|constructor|toJSON/.test(text), 'a stranger got in', text);
        must(KINDS.includes(record.kind), 'an unknown kind', text);
        // Compared as text: a minus in front of a zero is no difference worth having.
        must(JSON.stringify(readRecord(JSON.parse(text))) === `{"record":${text}}`, 'reads back differently', text);
        must(Object.getPrototypeOf(record) === Object.prototype, 'no plain object', text);
      }
    }
    expect(refused).toBeGreaterThan(MUTATIONS / 8);
  });
});
