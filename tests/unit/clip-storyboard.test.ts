import { expect, test } from 'vitest';
import { cellsOf } from '../../src/export/painting/cells';
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
  cuts: false,
};
const CONTENT = { hasFeel: true };
const draw = (film: Film, takes = [now, after]) => drawStoryboard(film, takes, CONTENT);
const framesOf = (storyboard: Storyboard, fps: number) =>
  Array.from({ length: frameCount(storyboard, fps) }, (_, i) => momentAt(storyboard, i / fps));

test('frame i shows the same instant at every frame rate', () => {
  const storyboard = draw(FILM);
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
  const storyboard = draw(FILM);
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

test('slow motion stops at both checkpoints, each swing at its own, and the drawing comes up line, pattern, number', () => {
  const frames = framesOf(draw(FILM), 30);
  for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
    const stopped = frames.filter(({ shot }) => shot.kind === 'stop' && shot.checkpoint === id);
    expect(stopped.length).toBeGreaterThanOrEqual(77);
    const own = [now, after].map(({ checkpoints }) => checkpoints[id]);
    for (const { times } of stopped) {
      own.forEach((checkpoint, k) => expect(isReached(checkpoint) && checkpoint.t).toBe(times[k]));
    }
    expect(stopped[0]).toMatchObject({ hatch: 0, number: 0 });
    expect(stopped[0].line).toBeLessThan(0.15);
    expect(stopped.at(-1)).toMatchObject({ line: 1, hatch: 1, number: 1 });
    for (const { line, hatch, number } of stopped) {
      if (hatch > 0) expect(line).toBe(1);
      if (number > 0) expect(hatch).toBe(1);
    }
    // What follows the number stands still: two thirds of the stop.
    expect(stopped.filter(({ number }) => number === 1).length / stopped.length).toBeGreaterThan(0.66);
  }
});

const shotsOf = (arrangement: Film['arrangement'], part: Partial<Film> = {}) =>
  draw({ ...FILM, arrangement, ...part }).shots.map(({ kind, takes, second, checkpoint }) =>
    [
      kind,
      takes.join('+'),
      second === null ? '' : `with ${second}`,
      checkpoint === 'shaftParallel' ? 'P6' : checkpoint ? 'P5' : '',
    ]
      .filter(Boolean)
      .join(' '),
  );

test('compared as a second body: one swing with its stops, the change at the first, the second swing at the next, and the feel', () => {
  expect(shotsOf('ghosted')).toEqual([
    'title 0',
    'whole 0',
    'slow 0 P5',
    'stop 0 P5',
    'slow 0 P6',
    'stop 0 P6',
    'change 0 with 1 P5',
    'morph 0 with 1 P5',
    'slow 1 with 0 P6',
    'stop 1 with 0 P6',
    'feel 1',
    'end',
  ]);
  // Without slow motion the second body goes along with the whole swing: nothing else would compare the two.
  expect(shotsOf('ghosted', { slowMotion: null })).toEqual(['title 0', 'whole 0 with 1', 'feel 1', 'end']);
});

test('compared side by side both run at once, back to back in turn, alone only one', () => {
  const swings = (arrangement: Film['arrangement']) => shotsOf(arrangement).filter((shot) => /whole|stop/.test(shot));
  expect(swings('sideBySide')).toEqual(['whole 0+1', 'stop 0+1 P5', 'stop 0+1 P6']);
  expect(swings('oneAfterOther')).toEqual(['whole 0', 'stop 0 P5', 'stop 0 P6', 'whole 1', 'stop 1 P5', 'stop 1 P6']);
  expect(swings('one')).toEqual(['whole 0', 'stop 0 P5', 'stop 0 P6']);
  expect(
    draw({ ...FILM, arrangement: 'oneAfterOther' }).shots.flatMap(({ kind, run }) => (kind === 'whole' ? run : [])),
  ).toEqual([1, 2]);
});

test('a whole clip lasts about 26 s, and the morph goes evenly from one swing to the other', () => {
  const board = draw({ ...FILM, arrangement: 'ghosted' });
  expect(Math.abs(board.seconds - 26)).toBeLessThan(0.5);
  const mixes = framesOf(board, 30).flatMap(({ shot, mix }) => (shot.kind === 'morph' ? mix : []));
  // Frames need not fall on the cut: the first is less than one in.
  expect(mixes[0]).toBeLessThan(0.01);
  expect(mixes.at(-1)).toBe(1);
  mixes.slice(1).forEach((mix, i) => expect(mix).toBeGreaterThanOrEqual(mixes[i]));
});

test('with cuts nothing fades, grows, glides or morphs: every drawing is whole from its first frame', () => {
  const frames = framesOf(draw({ ...FILM, arrangement: 'ghosted', cuts: true }), 30);
  for (const { line, hatch, number, fade, mix, travel, shot } of frames) {
    expect([line, hatch, number, fade]).toEqual([1, 1, 1, 1]);
    expect(mix).toBe(shot.kind === 'morph' ? 1 : 0);
    expect(travel).toBe(shot.kind === 'slow' ? 0 : 1);
  }
});

test('shots and cards that are left out are not there', () => {
  const { shots } = drawStoryboard({ ...FILM, wholeSwing: null, titleCard: false, endCard: false }, [now], {
    hasFeel: false,
  });
  expect(shots.map(({ kind }) => kind)).toEqual(['slow', 'stop', 'slow', 'stop']);
  expect(shots[0].camera).toBe('downTheLine');
});

test('the storyboard has a picture of every shot but those that only lead to a checkpoint', () => {
  const board = draw(FILM);
  const shown = keyMoments(board).map((s) => momentAt(board, s));
  expect(shown.map(({ shot }) => shot.kind)).toEqual(['title', 'whole', 'stop', 'stop', 'feel', 'end']);
  for (const { number } of shown) expect(number).toBe(1);
});

test('a frame is drawn again exactly when something in it changed', () => {
  const frames = framesOf(draw({ ...FILM, arrangement: 'ghosted' }), 30);
  for (let i = 1; i < frames.length; i++) {
    const [a, b] = [frames[i - 1], frames[i]];
    const isSame = JSON.stringify({ ...a, share: 0 }) === JSON.stringify({ ...b, share: 0 }) && a.shot === b.shot;
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

test('cells of swings side by side fill the picture and never lie on one another', () => {
  for (const shape of Object.keys(SHAPES) as Shape[]) {
    const size = pixelSize(shape, '720p');
    expect(cellsOf(size, 1)).toEqual([{ x: 0, y: 0, ...size }]);
    const [a, b] = cellsOf(size, 2);
    expect([a.width, a.height]).toEqual([b.width, b.height]);
    expect(a.width * a.height * 2).toBe(size.width * size.height);
    expect(a.x + a.width <= b.x || a.y + a.height <= b.y).toBe(true);
  }
});
