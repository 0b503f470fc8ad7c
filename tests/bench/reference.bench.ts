import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { solveReference } from '../../src/solving/reference/reference';
import type { Session } from './table';

export const name = 'reference';

/** Players and clubs that do not ship solved. */
const CASES: readonly (readonly [number, ClubId])[] = [
  [1.4, 'driver'],
  [1.43, '5-iron'],
  [1.55, 'driver'],
  [1.66, '9-iron'],
  [1.71, '7-iron'],
  [1.83, '5-iron'],
  [1.87, 'sand wedge'],
  [1.97, '5-wood'],
  [2.1, 'sand wedge'],
];

const median = (sorted: readonly number[]): number => sorted[Math.floor(sorted.length / 2)];

/** Seconds of the first search of a process that has just started, by the clock (what a coach waits for) and in processor time. */
function firstOf([statureM, id]: readonly [number, ClubId]): readonly [number, number] {
  const script = fileURLToPath(new URL('./firstReference.ts', import.meta.url));
  const args = ['--import', 'tsx', script, String(statureM), id];
  return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' })) as [number, number];
}

const rising = (values: readonly number[]): number[] => values.toSorted((a, b) => a - b);

export function run({ quick, put }: Session): void {
  const cases = quick ? CASES.filter((_, i) => i % 4 === 0) : CASES;
  const of = cases.length;
  const both = cases.map(firstOf);
  const first = rising(both.map(([clock]) => clock));
  const processor = rising(both.map(([, cpu]) => cpu));
  put(
    { what: `first reference swing of a process, median of ${of} players`, value: median(first), unit: 's' },
    {
      what: `first reference swing of a process, slowest of ${of}`,
      value: first[of - 1],
      unit: 's',
      goal: 'at most 0.6',
    },
    { what: 'the same in processor time, median', value: median(processor), unit: 's' },
    { what: 'the same in processor time, slowest', value: processor[of - 1], unit: 's' },
  );
  const again = cases
    .map(([statureM, id]) => {
      const body = bodyOf({ statureM, handed: 'right' });
      const club = clubOf(CLUBS[id]);
      solveReference(body, club);
      const start = performance.now();
      solveReference(body, club);
      return (performance.now() - start) / 1000;
    })
    .toSorted((a, b) => a - b);
  put(
    { what: `reference swing once more, median of ${of}`, value: median(again), unit: 's' },
    { what: `reference swing once more, slowest of ${of}`, value: again[of - 1], unit: 's', goal: 'at most 0.6' },
  );
}
