import { describe, expect, test } from 'vitest';
import { SetupError } from '../../src/model/body';
import { CLUB_LIMITS, CLUBS, clubOf, type ClubId, type ClubSpec } from '../../src/model/club';

const INCH_M = 0.0254;
const own = (change: Partial<ClubSpec>): ClubSpec => ({
  name: 'own',
  kind: 'iron',
  lengthM: 0.94,
  lieDeg: 62,
  loftDeg: 34,
  ...change,
});

// R&A / USGA Equipment Rules, mark A: 18 in to 48 in; the shaft leans at least 10 deg from vertical in the toe-heel plane.
describe('the equipment rules', () => {
  test('a club is 18 to 48 inches long', () => {
    expect(CLUB_LIMITS.lengthM.min).toBeCloseTo(18 * INCH_M, 3);
    expect(CLUB_LIMITS.lengthM.max).toBeCloseTo(48 * INCH_M, 3);
  });

  test('the lie is at most 80 deg', () => expect(CLUB_LIMITS.lieDeg.max).toBe(90 - 10));

  test.each([
    ['lengthM', 0.456],
    ['lengthM', 1.22],
    ['lieDeg', 80.1],
    ['loftDeg', 71],
    ['lengthM', NaN],
  ] as const)('a club with %s %d is refused, in words that say what is legal', (field, value) => {
    const make = (): unknown => clubOf(own({ [field]: value }));
    expect(make).toThrow(SetupError);
    expect(make).toThrow(/outside [\d.]+ to [\d.]+ .* Enter a value inside/);
  });

  test.each([
    ['lengthM', 0.457],
    ['lengthM', 1.219],
    ['lengthM', 48 * INCH_M],
    ['lieDeg', 80],
  ] as const)('a club with %s %d is just legal', (field, value) => {
    expect(() => clubOf(own({ [field]: value }))).not.toThrow();
  });
});

// Typical clubs: lengths and lofts mark B, lies mark M (from memory, spread of 2 deg): the lies below are shown, not judged.
test.each([
  ['driver', 45, 10.5],
  ['5-wood', 42, 18],
  ['5-iron', 38, 27],
  ['7-iron', 37, 34],
  ['9-iron', 36, 41],
  ['pitching wedge', 35.5, 46],
  ['sand wedge', 35.25, 55],
] as const satisfies (readonly [ClubId, number, number])[])(
  'a %s is %d in long and has %d deg of loft',
  (id, inches, loftDeg) => {
    expect(CLUBS[id].lengthM).toBeCloseTo(inches * INCH_M, 3);
    expect(CLUBS[id].loftDeg).toBe(loftDeg);
    expect(() => clubOf(CLUBS[id])).not.toThrow();
  },
);

test('the shorter the club, the more upright it lies and the more loft it has', () => {
  const row = Object.values(CLUBS).toSorted((a, b) => b.lengthM - a.lengthM);
  for (let i = 1; i < row.length; i++) {
    expect(row[i].lieDeg).toBeGreaterThanOrEqual(row[i - 1].lieDeg);
    expect(row[i].loftDeg).toBeGreaterThan(row[i - 1].loftDeg);
  }
});
