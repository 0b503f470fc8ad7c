import { expect, test } from 'vitest';
import { measureAll, meetsGoal, quantile, toLine, type Bench, type Session } from '../bench/table';

const row = { what: 'pose', value: 341, unit: 'ns' };

test('a number meets "at most" from below and "at least" from above', () => {
  expect(meetsGoal({ ...row, goal: 'at most 341' })).toBe(true);
  expect(meetsGoal({ ...row, goal: 'at most 340.9' })).toBe(false);
  expect(meetsGoal({ ...row, goal: 'at least 342' })).toBe(false);
  expect(meetsGoal(row)).toBeUndefined();
});

test('a goal that cannot be read is an error, not a pass', () => {
  expect(() => meetsGoal({ ...row, goal: 'under 400' })).toThrow('Write "at most 50"');
});

test('a line says whether its goal is met, in columns that line up', () => {
  const lines = [
    toLine({ ...row, goal: 'at most 300' }),
    toLine({ what: 'lines', value: 12345.6, unit: '1/s', goal: 'at least 10000' }),
    toLine(row),
  ];
  expect(lines.map((line) => line.trim().split(/ {2,}/))).toEqual([
    ['pose', '341 ns', 'at most 300', 'MISSED'],
    ['lines', '12346 1/s', 'at least 10000', 'MET'],
    ['pose', '341 ns'],
  ]);
  expect(lines[0].indexOf('MISSED')).toBe(lines[1].indexOf('MET'));
});

test('the median is the middle value, and p95 one that nineteen of twenty stay below', () => {
  const values = Array.from({ length: 20 }, (_, i) => 20 - i);
  expect(quantile([3, 1, 2], 0.5)).toBe(2);
  expect(quantile(values, 0.95)).toBe(20);
});

const withPage: Session['withPage'] = () => Promise.reject(new Error('no page here'));
const bench = (name: string, run: Bench['run']) => ({ file: `${name}.bench.ts`, load: () => ({ name, run }) });

test('every row is printed before the next is measured', async () => {
  const printed: string[] = [];
  const seen: boolean[] = [];
  await measureAll(
    [
      bench('chain', ({ put }) => {
        put(row);
        seen.push(printed.some((line) => line.includes('341')));
      }),
    ],
    { quick: false, withPage },
    (line) => printed.push(line),
  );
  expect(seen).toEqual([true]);
});

test('a quick run prints the goals alone', async () => {
  const printed: string[] = [];
  const rows = [row, { ...row, what: 'readings', goal: 'at most 400' }];
  const benches = [bench('chain', ({ put }) => put(...rows))];
  expect(await measureAll(benches, { quick: true, withPage }, (line) => printed.push(line))).toEqual({
    met: 1,
    missed: 0,
    failures: 0,
  });
  expect(printed.at(-1)).toMatch(/1 goals MET.* \d+ s in all$/);
  expect(printed.filter((line) => line.includes('341')).map((line) => line.trim().split(' ')[0])).toEqual(['readings']);
});

test('a quick run leaves out what has no goal at all', async () => {
  let runs = 0;
  const { file } = bench('frame', () => undefined);
  const load = (): Bench => ({ name: 'frame', hasGoals: false, run: ({ put }) => (runs++, put(row)) });
  for (const quick of [true, false])
    expect(await measureAll([{ file, load }], { quick, withPage }, () => {})).toMatchObject({ failures: 0 });
  expect(runs).toBe(1);
});

test('a bench that throws or measures nothing is a failure and does not stop the next; a missed goal is none', async () => {
  const printed: string[] = [];
  const summary = await measureAll(
    [
      bench('throws', () => Promise.reject(new Error('no club'))),
      bench('empty', () => undefined),
      bench('works', ({ put }) => put({ ...row, goal: 'at most 300' })),
    ],
    { quick: false, withPage },
    (line) => printed.push(line.trim()),
  );
  expect(printed).toContain('FAILED throws.bench.ts: no club');
  expect(printed).toContain('FAILED empty.bench.ts: measured nothing');
  expect(summary).toEqual({ met: 0, missed: 1, failures: 2 });
});
