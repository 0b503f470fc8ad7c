import { expect, test } from 'vitest';
import { toCsv } from '../../src/export/files/csv';
import { COLUMNS, toTable } from '../../src/export/files/table';
import { toDeg } from '../../src/math/angle';
import { createPose, AT } from '../../src/model/chain';
import { createJointVector, JOINTS } from '../../src/model/joints';
import { isReached } from '../../src/reading/checkpoints';
import { swingJoints, swingPose } from '../../src/reading/swing';
import { current, setMovement } from '../../src/store';

/** A reader of comma-separated values written for this test from RFC 4180. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n|$)/gy;
  for (let match = cell.exec(text); match && cell.lastIndex <= text.length; match = cell.exec(text)) {
    rows.at(-1)!.push(match[1].startsWith('"') ? match[1].slice(1, -1).replaceAll('""', '"') : match[1]);
    if (match[2] === '\r\n') rows.push([]);
    if (cell.lastIndex === text.length) break;
  }
  if (rows.at(-1)!.length === 0) rows.pop();
  return rows;
}

setMovement('leadWristFlexion', -20);
const { swing, positions, checkpoints } = current();
const text = toTable([{ name: 'now', swing, positions }]);
const [head, ...rows] = readCsv(text);
const column = (name: string): number => {
  expect(head, name).toContain(name);
  return head.indexOf(name);
};

test('every row has every column, and every number a decimal point', () => {
  expect(head).toEqual(COLUMNS);
  expect(rows.length).toBeGreaterThan(250);
  for (const row of rows) {
    expect(row).toHaveLength(COLUMNS.length);
    for (const cell of row.slice(5)) expect(cell).toMatch(/^(-?\d+\.\d+)?$/);
  }
});

test('every number wears its unit, but for two that are shares', () => {
  for (const name of head.slice(4)) {
    if (name === 'bicepCrossing' || name === 'trailReachRatio') continue;
    expect(name).toMatch(/(Deg|Cm|M|Ms|Mps)$/);
  }
});

test('read back, every joint and the head equal the model to the printed digits', () => {
  const joints = createJointVector();
  const pose = createPose();
  for (const row of rows) {
    const position = row[3] as keyof typeof positions | '';
    const t = position ? positions[position]! : Number(row[4]) / 1000 / swing.tempo;
    expect(Number(row[4])).toBeCloseTo(t * swing.tempo * 1000, 3);
    swingJoints(swing, t, joints);
    JOINTS.forEach(({ field, kind }, i) => {
      const printed = Number(row[column(field)]);
      if (kind === 'angle') expect(Math.abs(printed - toDeg(joints[i]))).toBeLessThanOrEqual(0.5e-4 + 1e-9);
      else expect(Math.abs(printed - joints[i])).toBeLessThanOrEqual(0.5e-6 + 1e-12);
    });
    swingPose(swing, t, pose);
    ['headXM', 'headYM', 'headZM'].forEach((name, axis) => {
      expect(Math.abs(Number(row[column(name)]) - pose[AT.head + axis])).toBeLessThanOrEqual(0.5e-6 + 1e-12);
    });
  }
});

test('the rows of P5 and P6 hold what the plates say', () => {
  const at = (name: string): string[] => rows.find((row) => row[3] === name)!;
  const { leadArmParallel: p5, shaftParallel: p6 } = checkpoints;
  if (!isReached(p5) || !isReached(p6)) throw new Error('A checkpoint is missing.');
  expect(Number(at('P5')[column('bicepGapCm')])).toBeCloseTo(p5.readings.bicepGap * 100, 4);
  expect(Number(at('P6')[column('headDepthCm')])).toBeCloseTo(p6.readings.headDepth * 100, 4);
  expect(Number(at('P6')[column('shaftPitchDeg')])).toBeCloseTo(0, 4);
});

test('time only goes forward, five milliseconds at most from row to row', () => {
  const times = rows.map((row) => Number(row[4]));
  for (let i = 1; i < times.length; i++) {
    expect(times[i]).toBeGreaterThan(times[i - 1]);
    expect(times[i] - times[i - 1]).toBeLessThan(5.0011);
  }
});

test('no text cell can start a formula, and commas, quotes and line ends stay inside their cell', () => {
  // Starts that spreadsheets take for a formula: OWASP, "CSV Injection".
  const attacks = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '  =1', '=HYPERLINK("http://x.invalid","y")', '＝1'];
  const [, ...read] = readCsv(
    toCsv(
      ['a', 'b'],
      attacks.map((attack) => [{ text: attack }, { number: '-1.5' }]),
    ),
  );
  expect(read).toHaveLength(attacks.length);
  read.forEach(([cell, number], i) => {
    expect(cell).toBe(`'${attacks[i]}`);
    expect(number).toBe('-1.5');
  });
  const plain = 'my "old" club, 7\r\nbent';
  expect(readCsv(toCsv(['a'], [[{ text: plain }]]))[1]).toEqual([plain]);
});
