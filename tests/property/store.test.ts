import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import {
  beginGesture,
  current,
  DEFAULT_DOCUMENT,
  desk,
  EDGE_DIALS,
  endGesture,
  loadSituation,
  redo,
  resetAll,
  setBoard,
  setMovement,
  setPelvisAlone,
  setPlayhead,
  setUnits,
  SITUATIONS,
  undo,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import { load, save } from '../../src/store/document/persistence';
import { readDocument } from '../../src/store/document/validate';

startEffects();
beforeEach(() => clearDesk());

const dial = fc.constantFrom(...EDGE_DIALS.map(({ id }) => id));
const hundredths = fc.integer({ min: -5000, max: 5000 }).map((n) => n / 100);
/** Something a user may do to the document, as a function that does it. */
const action: fc.Arbitrary<() => unknown> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.tuple(dial, hundredths).map(
      ([id, value]) =>
        () =>
          setMovement(id, value),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(dial, fc.array(hundredths, { maxLength: 5 })).map(([id, values]) => () => {
      beginGesture();
      for (const value of values) setMovement(id, value);
      endGesture();
    }),
  },
  fc.constantFrom(...SITUATIONS.map(({ id }) => id)).map((id) => () => loadSituation(id)),
  fc.constant(() => resetAll()),
  fc.boolean().map((alone) => () => setPelvisAlone(alone)),
  fc.constantFrom('light' as const, 'dark' as const).map((board) => () => setBoard(board)),
  fc.constantFrom('cm' as const, 'in' as const).map((length) => () => setUnits({ length, speed: 'm/s' })),
  { weight: 2, arbitrary: fc.constant(() => undo()) },
  { weight: 2, arbitrary: fc.constant(() => redo()) },
  hundredths.map((value) => () => setPlayhead(value / 50)),
);
const actions = fc.array(action, { maxLength: 40 });

const shelfOf = (texts = new Map<string, string>()) => ({
  getItem: (key: string) => texts.get(key) ?? null,
  setItem: (key: string, text: string) => void texts.set(key, text),
});

describe('whatever is done', () => {
  test('undoing everything returns to the start, redoing everything to the end', () => {
    fc.assert(
      fc.property(actions, (acts) => {
        clearDesk();
        for (const act of acts) act();
        while (redo() !== undefined);
        const end = desk.getState().document;
        while (undo() !== undefined);
        expect(desk.getState().document).toEqual(DEFAULT_DOCUMENT);
        while (redo() !== undefined);
        expect(desk.getState().document).toEqual(end);
      }),
      { numRuns: 200 },
    );
  });

  test('every document on the way is valid and comes back from the shelf as it went, history included', () => {
    fc.assert(
      fc.property(actions, (acts) => {
        clearDesk();
        for (const act of acts) {
          act();
          const { document } = desk.getState();
          expect(readDocument(JSON.parse(JSON.stringify(document)))).toEqual({ document });
        }
        const shelf = shelfOf();
        const { document, history } = desk.getState();
        save(shelf, document, history);
        expect(load(shelf)).toEqual({ document, history, notice: null });
      }),
      { numRuns: 60 },
    );
  });

  test('what is drawn comes from the document as it stands, however it got there', () => {
    fc.assert(
      fc.property(actions, (acts) => {
        clearDesk();
        for (const act of acts) act();
        const { movements, checkpoints } = current();
        const { document, session } = desk.getState();
        clearDesk();
        desk.setState({ document, session });
        expect(current().movements).toEqual(movements);
        expect(current().checkpoints).toEqual(checkpoints);
      }),
      { numRuns: 60 },
    );
  });
});

describe('reading what is stored', () => {
  test('nothing makes it throw, and nothing that is not a whole document gets in', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect('problem' in readDocument(JSON.parse(text))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test('one leaf of a good document replaced by anything else is either valid by itself or refused', () => {
    const leaves = leavesOf(DEFAULT_DOCUMENT);
    fc.assert(
      fc.property(fc.constantFrom(...leaves), fc.jsonValue(), (path, value) => {
        const changed = replaced(DEFAULT_DOCUMENT, path, value);
        const read = readDocument(changed);
        if ('document' in read) expect(read.document).toEqual(changed);
      }),
      { numRuns: 1000 },
    );
  });
});

/** Paths of all leaves: ['player', 'statureM'] and so on. */
function leavesOf(value: unknown, path: readonly string[] = []): readonly string[][] {
  if (typeof value !== 'object' || value === null) return [[...path]];
  return Object.entries(value).flatMap(([key, inner]) => leavesOf(inner, [...path, key]));
}
function replaced(value: unknown, [key, ...rest]: readonly string[], by: unknown): unknown {
  if (key === undefined) return by;
  const fields = value as Record<string, unknown>;
  return { ...fields, [key]: replaced(fields[key], rest, by) };
}
