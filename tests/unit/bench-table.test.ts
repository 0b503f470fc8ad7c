import { expect, test } from 'vitest';
import { measureAll, meetsGoal, toTable, type Bench } from '../bench/table';

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

test('the table lines its columns up and says which goals are missed', () => {
  const rows = [
    { ...row, goal: 'at most 300' },
    { what: 'lines', value: 12345.6, unit: '1/s' },
  ];
  expect(toTable([{ name: 'chain', rows }]).split('\n')).toEqual([
    'bench  what   value  unit  goal',
    'chain  pose     341  ns    at most 300  MISSED',
    'chain  lines  12346  1/s',
  ]);
});

test('a bench that throws or measures nothing is a failure and does not stop the next', async () => {
  const bench = (name: string, run: Bench['run']) => ({ file: `${name}.bench.ts`, bench: { name, run } });
  const { sections, failures } = await measureAll([
    bench('throws', () => Promise.reject(new Error('no club'))),
    bench('empty', () => Promise.resolve([])),
    bench('works', () => Promise.resolve([row])),
  ]);
  expect(failures).toEqual(['throws.bench.ts: no club', 'empty.bench.ts: measured nothing']);
  expect(sections).toEqual([{ name: 'works', rows: [row] }]);
});
