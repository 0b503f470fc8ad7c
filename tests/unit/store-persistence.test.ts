import { beforeEach, describe, expect, test, vi } from 'vitest';
import {
  beginGesture,
  DEFAULT_DOCUMENT,
  desk,
  endGesture,
  setMovement,
  setPlayer,
  startDesk,
  undo,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { DOCUMENT_KEY, HISTORY_KEY, load, save, type Shelf } from '../../src/store/document/persistence';
import { NO_HISTORY } from '../../src/store/document/history';

function createShelf(start: Record<string, string> = {}) {
  const texts = new Map(Object.entries(start));
  return {
    texts,
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
  };
}
const storedDocument = (shelf: { texts: Map<string, string> }): unknown => JSON.parse(shelf.texts.get(DOCUMENT_KEY)!);
const storedWrist = (shelf: { texts: Map<string, string> }): number =>
  (storedDocument(shelf) as typeof DEFAULT_DOCUMENT).movements.leadWristFlexionDeg;

beforeEach(() => {
  clearDesk();
  vi.useFakeTimers();
});

describe('saving', () => {
  test('a change is on the shelf within 350 ms, however fast the changes come', () => {
    const shelf = createShelf();
    startDesk(shelf);
    for (let i = 1; i <= 30; i++) {
      setMovement('leadWristFlexion', i);
      vi.advanceTimersByTime(20);
      const madeBy350MsAgo = i - Math.floor(350 / 20);
      if (madeBy350MsAgo > 0) expect(storedWrist(shelf)).toBeGreaterThanOrEqual(madeBy350MsAgo);
    }
    vi.advanceTimersByTime(350);
    expect(storedDocument(shelf)).toEqual(desk.getState().document);
  });

  test('while a slider is held its changes are on the shelf within 1.05 s, and all of them 350 ms after it is let go', () => {
    const shelf = createShelf();
    startDesk(shelf);
    const gesture = beginGesture();
    for (let i = 1; i <= 30; i++) {
      setMovement('leadWristFlexion', i);
      vi.advanceTimersByTime(100);
      if (i > 11) expect(storedWrist(shelf)).toBeGreaterThanOrEqual(i - 11);
    }
    endGesture(gesture);
    vi.advanceTimersByTime(350);
    expect(storedDocument(shelf)).toEqual(desk.getState().document);
    expect(JSON.parse(shelf.getItem(HISTORY_KEY)!)).toMatchObject({ past: [{ label: 'Wrist 30°' }] });
  });

  test('undo survives a reload', () => {
    const shelf = createShelf();
    const flush = startDesk(shelf);
    setMovement('leadWristFlexion', -8);
    setPlayer({ statureM: 1.62, handed: 'left' });
    flush();
    clearDesk();
    startDesk(shelf);
    expect(desk.getState().document.player).toEqual({ statureM: 1.62, handed: 'left' });
    expect(undo()).toBe('Player');
    expect(undo()).toBe('Wrist −8°');
    expect(desk.getState().document).toEqual(DEFAULT_DOCUMENT);
  });

  test('of more than 300 steps each way the nearest to what is shown survive a reload', () => {
    const shelf = createShelf();
    const steps = (count: number) =>
      Array.from({ length: count }, (_, at) => ({
        label: String(at),
        before: { checkpointArmDeg: -(at % 20) },
        after: { checkpointArmDeg: -((at + 1) % 20) },
      }));
    save(shelf, DEFAULT_DOCUMENT, { past: steps(301), future: steps(301) });
    const { past, future } = load(shelf).history;
    expect([past.length, past[0].label, past.at(-1)!.label]).toEqual([300, '1', '300']);
    expect([future.length, future[0].label, future.at(-1)!.label]).toEqual([300, '0', '299']);
  });

  test('a full shelf is said in words and nothing breaks', () => {
    const shelf: Shelf = {
      getItem: () => null,
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    startDesk(shelf);
    setMovement('leadWristFlexion', -8);
    vi.advanceTimersByTime(350);
    expect(desk.getState().notice).toMatch(/no room to save/);
    expect(desk.getState().document.movements.leadWristFlexionDeg).toBe(-8);
  });

  test('a browser that forbids saving is said in words', () => {
    startDesk(undefined);
    expect(desk.getState().notice).toMatch(/forbids saving/);
  });
});

describe('loading', () => {
  test('an empty shelf gives the reference swing and nothing to say', () => {
    expect(load(createShelf())).toEqual({ document: DEFAULT_DOCUMENT, history: NO_HISTORY, notice: null });
  });

  const broken: Record<string, string> = {
    'text that is no JSON': '{"version":1,',
    'a list': '[]',
    nothing: 'null',
    'a newer version': JSON.stringify({ ...DEFAULT_DOCUMENT, version: 4 }),
    'no version': JSON.stringify({ ...DEFAULT_DOCUMENT, version: undefined }),
    'a stature of nine metres': JSON.stringify({ ...DEFAULT_DOCUMENT, player: { statureM: 9, handed: 'right' } }),
    'a third hand': JSON.stringify({ ...DEFAULT_DOCUMENT, player: { statureM: 1.78, handed: 'both' } }),
    'a dial past its end': JSON.stringify({
      ...DEFAULT_DOCUMENT,
      movements: { ...DEFAULT_DOCUMENT.movements, trailSideBendDeg: 13 },
    }),
    'a band upside down': JSON.stringify({
      ...DEFAULT_DOCUMENT,
      bands: { ...DEFAULT_DOCUMENT.bands, shaftParallel: { lowCm: 3, highCm: 2 } },
    }),
    'an unknown field': JSON.stringify({ ...DEFAULT_DOCUMENT, colour: 'red' }),
    'a field called __proto__': '{"version":1,"__proto__":{}}',
    'a club longer than the rules': JSON.stringify({
      ...DEFAULT_DOCUMENT,
      club: { id: 'my club', my: { name: 'x', kind: 'iron', lengthM: 1.3, lieDeg: 62, loftDeg: 34 } },
    }),
  };
  for (const [what, text] of Object.entries(broken)) {
    test(`${what} is kept aside, said in words, and the app starts`, () => {
      const shelf = createShelf({ [DOCUMENT_KEY]: text });
      const { document, notice } = load(shelf);
      expect(document).toEqual(DEFAULT_DOCUMENT);
      expect(notice).toMatch(/could not be opened: .+ kept aside as "slantwise\.kept-aside\.1"/);
      expect(shelf.texts.get('slantwise.kept-aside.1')).toBe(text);
    });
  }

  test('what was kept aside before is not overwritten, and the same text is kept once', () => {
    const shelf = createShelf({ [DOCUMENT_KEY]: 'first' });
    load(shelf);
    load(shelf);
    shelf.setItem(DOCUMENT_KEY, 'second');
    load(shelf);
    expect([...shelf.texts].filter(([key]) => key.startsWith('slantwise.kept-aside'))).toEqual([
      ['slantwise.kept-aside.1', 'first'],
      ['slantwise.kept-aside.2', 'second'],
    ]);
  });

  test('a damaged history is dropped and the document stands', () => {
    const shelf = createShelf();
    save(shelf, { ...DEFAULT_DOCUMENT, board: 'dark' }, NO_HISTORY);
    shelf.setItem(HISTORY_KEY, '{"past":[{"label":"x","before":{"board":"green"},"after":{}}],"future":[]}');
    const { document, history, notice } = load(shelf);
    expect(document.board).toBe('dark');
    expect(history).toEqual(NO_HISTORY);
    expect(notice).toBeNull();
  });
});
