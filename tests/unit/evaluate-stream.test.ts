import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { PassThrough, Readable, Writable } from 'node:stream';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { JOINTS } from '../../src/model/joints';
import { createCache } from '../../src/evaluate/cache';
import { createSplitter, LONGEST_LINE_BYTES } from '../../src/evaluate/split';
import { evaluateStream } from '../../src/evaluate/stream';

const root = join(import.meta.dirname, '../..');
const swingLine = (i: number): string =>
  JSON.stringify({
    kind: 'swing',
    player: { statureM: 1.78 },
    club: '7-iron',
    movements: { leadWristFlexionDeg: (i % 61) - 30 },
  });

/** A line whose answer is nearly as long as a swing's, and worked out a hundred times as fast. */
const poseLine = (i: number): string =>
  JSON.stringify({
    kind: 'pose',
    body: { statureM: 1.78 },
    club: '7-iron',
    pose: Object.fromEntries(
      JOINTS.map(({ field, kind }, j) => [field, kind === 'angle' ? ((i + 7 * j) % 61) - 30 : 0.1]),
    ),
  });

/** Runs the command itself, with `input` on its standard input. */
function run(input: string): Promise<{ out: string; status: number | null }> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/evaluate/main.ts'], {
    cwd: root,
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  let out = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stdin.end(input);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ out, status }));
  });
}

describe('lines cut from bytes', () => {
  const cut = (chunks: readonly Buffer[], longest?: number) => {
    const splitter = createSplitter(longest);
    return [...chunks.flatMap((chunk) => [...splitter.push(chunk)]), ...splitter.end()];
  };
  const text = 'eins\nzwei ü\r\n\nvier';

  test('are the same however the bytes are chopped up, also inside a letter', () => {
    const bytes = Buffer.from(text);
    const whole = cut([bytes]);
    expect(whole).toEqual(['eins', 'zwei ü', '', 'vier'].map((line, i) => ({ number: i + 1, text: line })));
    for (let size = 1; size < bytes.length; size++) {
      const chunks: Buffer[] = [];
      for (let at = 0; at < bytes.length; at += size) chunks.push(bytes.subarray(at, at + size));
      expect(cut(chunks)).toEqual(whole);
    }
  });

  test('end with the last newline: no empty line follows it', () => {
    expect(cut([Buffer.from('a\n')])).toEqual([{ number: 1, text: 'a' }]);
    expect(cut([Buffer.alloc(0)])).toEqual([]);
  });

  test('may begin with one byte order mark, however it is chopped up; a second one or a later one stays', () => {
    const mark = '\uFEFF';
    const bytes = Buffer.from(`${mark}a\n${mark}b`);
    const chopped = Array.from(bytes, (_, at) => bytes.subarray(at, at + 1));
    for (const chunks of [[bytes], chopped]) {
      expect(cut(chunks)).toEqual([
        { number: 1, text: 'a' },
        { number: 2, text: `${mark}b` },
      ]);
    }
    expect(cut([Buffer.from(`${mark}${mark}a`)])).toEqual([{ number: 1, text: `${mark}a` }]);
  });

  test('are dropped when too long, and the next one is read', () => {
    expect(cut([Buffer.from('aaaa\nbb'), Buffer.from('bb\nccc\nddddd')], 3)).toEqual([
      { number: 1, tooLong: true },
      { number: 2, tooLong: true },
      { number: 3, text: 'ccc' },
      { number: 4, tooLong: true },
    ]);
  });

  test('a line without end is not kept', () => {
    const splitter = createSplitter(1000);
    const chunk = Buffer.alloc(1 << 20, 'x');
    const before = process.memoryUsage().arrayBuffers;
    for (let i = 0; i < 200; i++) expect([...splitter.push(Buffer.from(chunk))]).toEqual([]);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(150 << 20);
    expect([...splitter.end()]).toEqual([{ number: 1, tooLong: true }]);
  });
});

describe('a stream of lines', () => {
  /** Takes its time over every write and says how much ever waited in it. */
  const slowWriter = () => {
    const lines: string[] = [];
    let rest = '';
    let most = 0;
    const output = new Writable({
      highWaterMark: 1 << 14,
      write(chunk: Buffer, _, done) {
        most = Math.max(most, output.writableLength);
        rest += chunk.toString();
        const parts = rest.split('\n');
        rest = parts.pop()!;
        lines.push(...parts);
        setImmediate(done);
      },
    });
    return { output, lines, most: () => most };
  };

  test('is answered in order, one line each, and the bad ones are counted', async () => {
    const { output, lines } = slowWriter();
    const input = Array.from({ length: 300 }, (_, i) => (i % 10 === 3 ? `{"bad":${i}}` : swingLine(i)));
    const failures = await evaluateStream(Readable.from([Buffer.from(input.join('\n'))]), output);
    expect(failures).toBe(30);
    expect(lines).toHaveLength(300);
    lines.forEach((line, i) => {
      const parsed = JSON.parse(line) as { error?: { line: number }; kind?: string };
      if (i % 10 === 3) expect(parsed.error?.line).toBe(i + 1);
      else expect(parsed.kind).toBe('swing');
    });
    expect(lines[4]).toBe(lines[65]);
  });

  test('answers a line while the next one has not come: a reader may wait for it', async () => {
    const input = new PassThrough();
    const output = new PassThrough({ encoding: 'utf8' });
    const done = evaluateStream(input, output);
    for (const i of [0, 1]) {
      input.write(`${swingLine(i)}\n`);
      const [text] = (await once(output, 'data', { signal: AbortSignal.timeout(20_000) })) as [string];
      expect(JSON.parse(text)).toMatchObject({ kind: 'swing' });
    }
    input.end();
    expect(await done).toBe(0);
  });

  test('waits for a slow reader: 10,000 answers never pile up', async () => {
    const { output, lines, most } = slowWriter();
    let made = 0;
    const source = function* (): Generator<Buffer> {
      for (let chunk = 0; chunk < 100; chunk++) {
        yield Buffer.from(Array.from({ length: 100 }, () => `${poseLine(made++)}\n`).join(''));
      }
    };
    expect(await evaluateStream(Readable.from(source(), { objectMode: true, highWaterMark: 1 }), output)).toBe(0);
    expect(lines).toHaveLength(10_000);
    // One batch of 64 ki characters and the line that filled it; all answers together are many times as much.
    expect(most()).toBeLessThan(1 << 17);
    expect(lines.reduce((sum, { length }) => sum + length, 0)).toBeGreaterThan(40 << 17);
  });
});

describe('the command', () => {
  test('answers good and bad lines in order and ends with status 1', async () => {
    const { out, status } = await run(`${swingLine(0)}\n\n{"kind":"pose"}\n${swingLine(1)}`);
    const lines = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as { kind?: string; error?: { line: number; field: string } });
    expect(lines.map(({ kind, error }) => kind ?? `${error?.line} ${error?.field}`)).toEqual([
      'swing',
      '2 ',
      '3 body',
      'swing',
    ]);
    expect(status).toBe(1);
  });

  test('ends with status 0 when every line was good, and on no lines at all', async () => {
    expect((await run(`${swingLine(5)}\n`)).status).toBe(0);
    expect(await run('')).toEqual({ out: '', status: 0 });
  });

  test('answers a line over 1 MB with an error and goes on', async () => {
    const { out, status } = await run(`${' '.repeat(LONGEST_LINE_BYTES + 1)}\n${swingLine(2)}\n`);
    expect(out.split('\n')[0]).toContain('"line":1,"field":"","message":"The line is longer than 1048576 bytes."');
    expect(out.split('\n')[1]).toContain('"kind":"swing"');
    expect(status).toBe(1);
  });
});

test('a cache keeps its size and forgets what was not asked for the longest', () => {
  const cache = createCache<object>(2);
  const made: string[] = [];
  const ask = (key: string): object => cache(key, () => (made.push(key), {}));
  const a = ask('a');
  ask('b');
  expect(ask('a')).toBe(a);
  ask('c');
  ask('a');
  ask('b');
  expect(made).toEqual(['a', 'b', 'c', 'b']);
});
