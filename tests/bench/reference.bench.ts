import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { solveReference } from '../../src/solving/reference';
import type { Row } from './table';

export const name = 'reference';

/** Players and clubs that do not ship solved. */
const CASES: readonly (readonly [number, ClubId])[] = [
  [1.55, 'driver'],
  [1.66, '9-iron'],
  [1.71, '7-iron'],
  [1.83, '5-iron'],
  [1.87, 'sand wedge'],
  [1.97, '5-wood'],
];

export function run(): Promise<Row[]> {
  const seconds = CASES.map(([statureM, id]) => {
    const body = bodyOf({ statureM, handed: 'right' });
    const club = clubOf(CLUBS[id]);
    solveReference(body, club);
    const start = performance.now();
    solveReference(body, club);
    return (performance.now() - start) / 1000;
  }).toSorted((a, b) => a - b);
  return Promise.resolve([
    { what: 'reference swing, median of 6 players', value: seconds[CASES.length / 2], unit: 's' },
    { what: 'reference swing, slowest of 6', value: seconds[seconds.length - 1], unit: 's', goal: 'at most 0.5' },
  ]);
}
