import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { packJson, readText, toText } from '../../src/export/link/link';
import {
  beginGesture,
  DEFAULT_DOCUMENT,
  desk,
  endGesture,
  setCamera,
  setCheckpointArmDeg,
  setMovement,
  setPlayer,
  throughCameras,
  undo,
  USUAL_CAMERAS,
  type CameraPlace,
  type ThroughCameras,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import { load } from '../../src/store/document/persistence';
import { readDocument, readPart } from '../../src/store/document/validate';

startEffects();
beforeEach(clearDesk);

const { camera: usual, ...OLDER } = DEFAULT_DOCUMENT;
const line = (part: Partial<CameraPlace>) => ({
  ...USUAL_CAMERAS,
  downTheLine: { ...USUAL_CAMERAS.downTheLine, ...part },
});

describe('cameras in the document', () => {
  test('a document from before there were cameras opens with them where they usually stand', () => {
    expect(usual).toEqual(USUAL_CAMERAS);
    expect(readDocument(OLDER)).toEqual({ document: DEFAULT_DOCUMENT });
  });

  test('the desk of an older program opens, with its undo steps', () => {
    const step = { label: 'Board', before: { board: 'dark' }, after: { board: 'light' } };
    const shelf = new Map([
      ['slantwise.document', JSON.stringify(OLDER)],
      ['slantwise.history', JSON.stringify({ past: [step], future: [] })],
    ]);
    const loaded = load({ getItem: (key) => shelf.get(key) ?? null, setItem: () => {} });
    expect(loaded).toMatchObject({ document: DEFAULT_DOCUMENT, notice: null, history: { past: [step] } });
  });

  test('the desks inside a lesson book of the first version open as well', () => {
    const text = readFileSync(new URL('../fixtures/lesson-book-file-v1.json', import.meta.url), 'utf8');
    const { records } = JSON.parse(text) as { records: { record: { now?: object } }[] };
    const desks = records.flatMap(({ record: { now } }) => (now ? [now] : []));
    expect(desks.length).toBeGreaterThan(0);
    for (const now of desks) {
      expect(now).not.toHaveProperty('camera');
      expect(readDocument(now)).toHaveProperty('document.camera', USUAL_CAMERAS);
    }
  });

  test('a link says nothing of cameras that stand where they usually do, so older programs read it too', () => {
    expect(toText(DEFAULT_DOCUMENT)).toBe(packJson(JSON.stringify(OLDER)));
    const moved = { ...DEFAULT_DOCUMENT, camera: line({ rightCm: 40 }) };
    expect(readText(toText(moved))).toEqual({ document: moved });
    expect(toText(moved).length).toBeLessThan(300);
  });

  test.each<[string, unknown]>([
    ['a camera in the club', line({ distanceM: 0.2 })],
    ['a camera in the next county', line({ rightCm: 5000 })],
    ['a camera under the ground', line({ heightM: -1 })],
    ['no number', { ...USUAL_CAMERAS, faceOn: { ...USUAL_CAMERAS.faceOn, aimRightDeg: null } }],
    ['something unknown', { ...USUAL_CAMERAS, overhead: USUAL_CAMERAS.faceOn }],
    ['a number left out', { ...USUAL_CAMERAS, faceOn: { distanceM: 4 } }],
  ])('%s is refused, not guessed', (_name, camera) => {
    expect(readDocument({ ...DEFAULT_DOCUMENT, camera })).toHaveProperty('problem');
    expect(readPart({ camera })).toBeUndefined();
  });
});

describe('through the cameras on the desk', () => {
  const see = (): ThroughCameras => throughCameras(desk.getState());
  const bends = (): (number | undefined)[] =>
    (['leadArmParallel', 'shaftParallel'] as const).map((id) => {
      const { judged } = see().downTheLine[id];
      return 'bend' in judged ? judged.bend : undefined;
    });

  test('is worked out once per change, and follows the camera and the sliders', () => {
    const before = see();
    expect(see()).toBe(before);
    setCamera(line({ rightCm: 40 }));
    const moved = see();
    expect(moved).not.toBe(before);
    setMovement('leadWristFlexion', -10);
    expect(see()).not.toBe(moved);
  });

  test('moving a camera is one step, and can be undone', () => {
    setCamera(line({ rightCm: 40 }));
    expect(undo()).toBe('Camera');
    expect(desk.getState().document.camera).toBe(USUAL_CAMERAS);
  });

  test('a drag of the camera, or of the angle at which arms are read, is one step that bears its name', () => {
    const drag = (...moves: readonly (() => void)[]): void => {
      const gesture = beginGesture();
      for (const move of moves) move();
      endGesture(gesture);
    };
    drag(
      () => setCamera(line({ rightCm: 20 })),
      () => setCamera(line({ rightCm: 40 })),
    );
    drag(
      () => setCheckpointArmDeg(2),
      () => setCheckpointArmDeg(5),
    );
    expect([undo(), undo(), undo()]).toEqual(['Reading angle', 'Camera', undefined]);
    expect(desk.getState().document).toEqual(DEFAULT_DOCUMENT);
  });

  test('it changes no reading of the model: only what a coach would take it for', () => {
    setMovement('leadWristFlexion', -10);
    const before = desk.getState();
    setCamera(line({ rightCm: 150 }));
    const { judged, asSeen } = see().downTheLine.shaftParallel;
    expect('readings' in asSeen && 'seen' in judged && asSeen.readings.headDepth === judged.seen).toBe(true);
    expect(desk.getState().document).toMatchObject({
      movements: before.document.movements,
      bands: before.document.bands,
    });
  });

  test("40 cm to the coach's right is toward the ball line for a right-handed player, away from it for a left-handed one", () => {
    const [gap, depth] = bends() as [number, number];
    setCamera(line({ rightCm: 40 }));
    const right = bends() as [number, number];
    expect(right[0]).toBeLessThan(gap);
    expect(right[1]).toBeLessThan(depth);
    setPlayer({ statureM: 1.78, handed: 'left' });
    const left = bends() as [number, number];
    expect(left[0]).toBeGreaterThan(gap);
    expect(left[1]).toBeGreaterThan(depth);
    setCamera(line({ rightCm: -40 }));
    expect(bends()).toEqual(right);
  });

  test('the better place it tells reads true to a centimetre when the camera goes there, for either hand', () => {
    for (const handed of ['right', 'left'] as const) {
      setPlayer({ statureM: 1.78, handed });
      setCamera(line({ rightCm: 40, heightM: 1.5 }));
      const { rightCm, heightM, worst } = see().better!;
      setCamera(line({ rightCm, heightM }));
      expect(worst).toBeLessThan(0.01);
      expect(Math.max(...bends().map((bend) => Math.abs(bend!)))).toBeCloseTo(worst, 12);
    }
  });

  test('what bends a reading most is named: the place aside, the height, or simply how near it is', () => {
    const cause = (id: 'leadArmParallel' | 'shaftParallel') => {
      const { judged } = see().downTheLine[id];
      return 'cause' in judged ? judged.cause : judged.missing;
    };
    expect(cause('shaftParallel')).toBe('distance');
    setCamera(line({ rightCm: 60 }));
    expect(cause('shaftParallel')).toBe('offset');
    setCamera(line({ heightM: 2.2 }));
    expect(cause('leadArmParallel')).toBe('height');
  });

  test('a camera the club swings past has a reason in place of a number', () => {
    setCamera(line({ distanceM: 1 }));
    expect(see().downTheLine.shaftParallel.judged).toEqual({ missing: 'behind-the-camera' });
  });
});
