import { expect, test } from 'vitest';
import { layOut } from '../../src/export/clip/clipLayout';
import {
  FRAME_RATES,
  pixelSize,
  rateOf,
  SHAPES,
  sizeFor,
  SIZES,
  type Shape,
  type Size,
} from '../../src/export/clip/formats';
import {
  drawStoryboard,
  frameCount,
  keyMoments,
  looksAlike,
  momentAt,
  type Film,
  type Storyboard,
} from '../../src/export/clip/storyboard';
import { takeSnapshot } from '../../src/export/task/exportSnapshot';
import { isReached } from '../../src/reading/checkpoints';
import { current, desk, setMovement } from '../../src/store';

setMovement('leadWristFlexion', -20);
const { now, after } = takeSnapshot(desk.getState(), current(), 'reference');
const FILM: Film = {
  arrangement: 'sideBySide',
  wholeSwing: 'faceOn',
  slowMotion: 'downTheLine',
  titleCard: true,
  endCard: true,
};
const framesOf = (storyboard: Storyboard, fps: number) =>
  Array.from({ length: frameCount(storyboard, fps) }, (_, i) => momentAt(storyboard, i / fps));

test('frame i shows the same instant at every frame rate', () => {
  const storyboard = drawStoryboard(FILM, [now, after]);
  for (const fps of FRAME_RATES) {
    const frames = framesOf(storyboard, fps);
    expect(frames.length).toBe(Math.round(storyboard.seconds * fps));
    // Frame fps * s is second s, whatever the rate.
    for (let s = 0; s < Math.floor(storyboard.seconds); s++) {
      expect(frames[s * fps].times).toEqual(momentAt(storyboard, s).times);
    }
  }
});

test('the swing never runs backward inside a shot, and no time is skipped between two frames', () => {
  const storyboard = drawStoryboard(FILM, [now, after]);
  const frames = framesOf(storyboard, 60);
  for (let i = 1; i < frames.length; i++) {
    if (frames[i].shot !== frames[i - 1].shot) continue;
    frames[i].times.forEach((t, k) => {
      const step = t - frames[i - 1].times[k];
      expect(step).toBeGreaterThanOrEqual(-1e-12);
      expect(step).toBeLessThan(0.03);
    });
  }
});

test('slow motion stops at both checkpoints, each swing at its own, with the plate drawn in', () => {
  const frames = framesOf(drawStoryboard(FILM, [now, after]), 30);
  for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
    const stopped = frames.filter(({ plate, isFrozen, shot }) => shot.kind === 'slow' && plate === id && isFrozen);
    expect(stopped.length).toBeGreaterThanOrEqual(47);
    const own = [now, after].map(({ checkpoints }) => checkpoints[id]);
    for (const { times } of stopped) {
      own.forEach((checkpoint, k) => expect(isReached(checkpoint) && checkpoint.t).toBe(times[k]));
    }
  }
});

test('side by side shows both swings at once, one after the other shows them in turn, a ghost film shows one', () => {
  const swings = (arrangement: Film['arrangement']) =>
    drawStoryboard({ ...FILM, arrangement }, [now, after])
      .shots.filter(({ takes }) => takes.length > 0)
      .map(({ takes }) => takes);
  expect(swings('sideBySide')).toEqual([
    [0, 1],
    [0, 1],
  ]);
  expect(swings('oneAfterOther')).toEqual([[0], [0], [1], [1]]);
  expect(swings('ghosted')).toEqual([[0], [0]]);
});

test('shots and cards that are left out are not there', () => {
  const { shots } = drawStoryboard({ ...FILM, wholeSwing: null, titleCard: false, endCard: false }, [now]);
  expect(shots.map(({ kind }) => kind)).toEqual(['slow']);
  expect(shots[0].camera).toBe('downTheLine');
});

test('the storyboard has a picture of every shot and of both stops', () => {
  const storyboard = drawStoryboard(FILM, [now, after]);
  const shown = keyMoments(storyboard).map((s) => momentAt(storyboard, s));
  expect(shown.map(({ shot, plate }) => `${shot.kind} ${plate ?? ''}`.trim())).toEqual([
    'title',
    'whole',
    'slow leadArmParallel',
    'slow shaftParallel',
    'end',
  ]);
});

test('a frame is drawn again exactly when something in it changed', () => {
  const frames = framesOf(drawStoryboard(FILM, [now, after]), 30);
  for (let i = 1; i < frames.length; i++) {
    const [a, b] = [frames[i - 1], frames[i]];
    const isSame =
      a.shot === b.shot && a.plate === b.plate && String(a.times) === String(b.times) && a.isFrozen === b.isFrozen;
    expect(looksAlike(a, b)).toBe(isSame);
  }
});

test('every shape and size has even sides and the height its name says', () => {
  for (const shape of Object.keys(SHAPES) as Shape[]) {
    for (const size of Object.keys(SIZES) as Size[]) {
      const { width, height } = pixelSize(shape, size);
      expect(width % 2).toBe(0);
      expect(height % 2).toBe(0);
      expect(Math.min(width, height)).toBe(SIZES[size]);
    }
  }
  expect(pixelSize('16:9', '1080p')).toEqual({ width: 1920, height: 1080 });
  expect(pixelSize('9:16', '720p')).toEqual({ width: 720, height: 1280 });
});

test('a GIF keeps to rates that hundredths of a second can tell, and to a size that can be sent', () => {
  for (const fps of FRAME_RATES) expect(100 % rateOf('gif', fps)).toBe(0);
  expect(sizeFor('gif', { width: 1920, height: 1080 })).toEqual({ width: 854, height: 480 });
  expect(sizeFor('mp4', { width: 1920, height: 1080 })).toEqual({ width: 1920, height: 1080 });
});

test('pictures, plates and words never lie on one another', () => {
  for (const shape of Object.keys(SHAPES) as Shape[]) {
    for (const count of [1, 2]) {
      const size = pixelSize(shape, '720p');
      const { cells, strip } = layOut(size, count, true);
      const all = [...cells.flatMap(({ picture, plate }) => [picture, plate!]), strip];
      for (const rect of all) {
        expect(rect.x).toBeGreaterThanOrEqual(0);
        expect(rect.x + rect.width).toBeLessThanOrEqual(size.width);
        expect(rect.y + rect.height).toBeLessThanOrEqual(size.height);
      }
      const apart = (a: typeof strip, b: typeof strip): boolean =>
        a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
      all.forEach((a, i) => all.slice(i + 1).forEach((b) => expect(apart(a, b)).toBe(true)));
    }
  }
});
