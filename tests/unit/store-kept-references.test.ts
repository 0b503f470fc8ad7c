import { beforeEach, expect, test, vi } from 'vitest';
import type { ReferenceFit } from '../../src/solving/reference/reference';
import type { Shelf } from '../../src/store/document/persistence';

const searches = vi.hoisted(() => ({
  count: 0,
  done: new Map<string, ReferenceFit>(),
  /** Answers every search at once, where a test asks for many and looks at none. */
  instead: undefined as ReferenceFit | undefined,
}));
// Every search is counted; the same search is worked out once for all tests, for it takes its tenths of a second.
vi.mock(import('../../src/solving/reference/reference'), async (original) => {
  const { solveReference, ...rest } = await original();
  const counted: typeof solveReference = (...given) => {
    searches.count++;
    const key = JSON.stringify(given);
    const fit = searches.instead ?? searches.done.get(key) ?? solveReference(...given);
    searches.done.set(key, fit);
    return fit;
  };
  return { ...rest, solveReference: counted };
});

const KEY = 'slantwise-references';
let texts: Map<string, string>;
let shelf: Shelf;
beforeEach(() => {
  searches.count = 0;
  searches.instead = undefined;
  texts = new Map();
  shelf = { getItem: (key) => texts.get(key) ?? null, setItem: (key, text) => void texts.set(key, text) };
});

/** A page that has just been opened: nothing is in memory. */
async function openPage(on: Shelf = shelf) {
  vi.resetModules();
  const { referenceSearch } = await import('../../src/store/effects/referenceSearch');
  const { desk, deskBases } = await import('../../src/store/desk/desk');
  const { solveReference } = await import('../../src/solving/reference/reference');
  referenceSearch.searchHere(solveReference);
  referenceSearch.follow(on);
  return (statureM: number, trunk?: number) => {
    const player = { statureM, handed: 'right', ...(trunk ? { segmentsM: { trunk } } : {}) } as const;
    const club = { id: '7-iron', my: null } as const;
    referenceSearch.want({ player, club });
    const ground = deskBases.groundOf(player, club, desk.getState().references);
    if ('problem' in ground) throw new Error(ground.problem);
    return ground.reference;
  };
}

test('a player who was solved once is not solved again after a reload, and swings to the last digit as before', async () => {
  const first = (await openPage())(1.777);
  const again = (await openPage())(1.777);
  expect(again).toEqual(first);
  expect(searches.count).toBe(1);
});

test('the usual player, who is at hand, takes no room', async () => {
  (await openPage())(1.78);
  expect(texts.size).toBe(0);
});

test('another body, or another model, is solved anew', async () => {
  (await openPage())(1.777);
  (await openPage())(1.777, 0.53);
  expect(searches.count).toBe(2);
  texts.set(KEY, texts.get(KEY)!.replace(/"model":"[^"]*"/, '"model":"0:0"'));
  (await openPage())(1.777);
  expect(searches.count).toBe(3);
});

test('a swing that was damaged is solved anew: cut short, no numbers, or numbers that miss the ball', async () => {
  (await openPage())(1.777);
  const good = texts.get(KEY)!;
  const { model, swings } = JSON.parse(good) as { model: string; swings: { values: number[]; times: number[] }[] };
  const [swing] = swings;
  const bad = [
    good.slice(0, -40),
    'null',
    '[]',
    JSON.stringify({ model, swings: [null, 7] }),
    JSON.stringify({ model, swings: [{ ...swing, values: swing.values.slice(1) }] }),
    JSON.stringify({ model, swings: [{ ...swing, times: swing.times.toReversed() }] }),
    JSON.stringify({ model, swings: [{ ...swing, values: swing.values.map(() => 'x') }] }),
    JSON.stringify({ model, swings: [{ ...swing, values: swing.values.map((value) => value + 0.02) }] }),
  ];
  for (const [i, text] of bad.entries()) {
    texts.set(KEY, text);
    (await openPage())(1.777);
    expect(searches.count, text.slice(0, 60)).toBe(2 + i);
  }
  // Solving it again has put it right.
  (await openPage())(1.777);
  expect(searches.count).toBe(1 + bad.length);
});

test('twenty are kept, the oldest goes first', async () => {
  const { keepReference, findKept, MOST_KEPT } = await import('../../src/store/effects/keptReferences');
  const { bodyOf } = await import('../../src/model/body');
  const { CLUBS, clubOf } = await import('../../src/model/club');
  const reference = (await openPage())(1.777);
  const [body, club] = [bodyOf({ statureM: 1.777, handed: 'right' }), clubOf(CLUBS['7-iron'])];
  for (let i = 0; i < MOST_KEPT + 3; i++) keepReference(shelf, `k${i}`, reference);
  const { swings } = JSON.parse(texts.get(KEY)!) as { swings: { key: string }[] };
  expect(swings.map(({ key }) => key)).toEqual(Array.from({ length: MOST_KEPT }, (_, i) => `k${i + 3}`));
  expect(findKept(shelf, 'k2', body, club)).toBeUndefined();
  expect(findKept(shelf, 'k22', body, club)).toEqual(reference);
  expect(texts.get(KEY)!.length).toBeLessThan(120_000);
});

test('a shelf that is full or forbidden costs a search and nothing else', async () => {
  const refuse = (): never => {
    throw new Error('no');
  };
  const ask = await openPage({ getItem: refuse, setItem: refuse });
  expect(ask(1.777).values.length).toBeGreaterThan(0);
});

test('a page that stays open for weeks keeps the 32 players asked for last, and looks for an older one again', async () => {
  const page = await openPage({ getItem: () => null, setItem: () => undefined });
  page(1.777);
  [searches.instead] = searches.done.values();
  searches.count = 0;
  const ask = (player: number): unknown => page(1.6005 + player / 1000);
  for (let player = 0; player < 32; player++) ask(player);
  expect(searches.count).toBe(32);
  ask(0);
  expect(searches.count).toBe(32);
  // One more: of all of them the second has not been asked for the longest.
  ask(32);
  for (const kept of [0, 2, 31, 32]) ask(kept);
  expect(searches.count).toBe(33);
  ask(1);
  expect(searches.count).toBe(34);
});
