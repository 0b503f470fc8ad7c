import { afterEach, expect, test, vi } from 'vitest';

const searches = vi.hoisted(() => ({ count: 0 }));
vi.mock(import('../../src/solving/reference/reference'), async (original) => {
  const { solveReference, ...rest } = await original();
  const counted: typeof solveReference = (...given) => {
    searches.count++;
    return solveReference(...given);
  };
  return { ...rest, solveReference: counted };
});
const { answerLine } = await import('../../src/evaluate/answer');

afterEach(() => {
  searches.count = 0;
});

/** A small player with a driver's length at an iron's lie and a wedge's loft. */
const HOPELESS = { lengthM: 1.219, lieDeg: 50, loftDeg: 60 };
const line = (number: number, statureM: number, club: unknown, movements = {}) =>
  answerLine({ number, text: JSON.stringify({ kind: 'swing', player: { statureM }, club, movements }) });

test('a player for whom no swing is found is searched for once, however many lines ask, and each line says so', () => {
  for (const number of [1, 2, 3, 4]) {
    const { text, failed } = line(number, 1.4, HOPELESS, { leadWristFlexionDeg: number });
    expect(failed).toBe(true);
    expect(JSON.parse(text)).toEqual({
      error: {
        line: number,
        field: 'player',
        message: 'No swing meets the ball with this body and club. Check lengths and lie.',
      },
    });
  }
  expect(searches.count).toBe(1);
});

test('a player who is found is searched for once as well', () => {
  for (const number of [1, 2, 3]) expect(line(number, 1.777, '7-iron').failed).toBe(false);
  expect(searches.count).toBe(1);
});

test('lengths no body can have are refused before anything is searched for, and take no place among those kept', () => {
  for (const number of [1, 2]) expect(line(number, 3, '7-iron').failed).toBe(true);
  expect(searches.count).toBe(0);
});
