import { describe, expect, test } from 'vitest';
import { findMovedCamera, isProvenStill } from '../../src/film/judgeFilm';
import type { FilmMarks, FrameMarks, Pixel } from '../../src/film/marks';
import { EMPTY_SHEET, nextMark, toDraft, type MarkedFrame, type Sheet } from '../../src/panels/film/filmMarks';
import { NOTHING } from '../../src/panels/film/filmStore';

const marked = (frame: number, points: Record<string, readonly [number, number]>): MarkedFrame => ({
  frame,
  points: Object.fromEntries(Object.entries(points).map(([id, at]) => [id, { at, how: 'tapped' as const }])),
});
const ADDRESS = marked(0, { clubHead: [700, 1500], gripEnd: [560, 1060], stickA: [810, 1800], stickB: [720, 1380] });

describe('a tripod that is said to stand', () => {
  const kept = { isTripodKept: true };
  const sheet: Sheet = { ...EMPTY_SHEET, address: ADDRESS };

  test('is checked by one mark, at whichever checkpoint comes first', () => {
    expect(nextMark('arm', sheet, kept)).toBe('stickA');
    expect(nextMark('shaft', sheet, kept)).toBe('stickA');
    expect(nextMark('arm', sheet, { isTripodKept: false })).toBe('hands');
    const checked = { ...sheet, arm: marked(80, { stickA: [811, 1799] }) };
    expect(nextMark('arm', checked, kept)).toBe('hands');
    expect(nextMark('shaft', checked, kept)).toBe('hands');
  });

  test('is refused when the stick is no longer where it was, whichever of its ends is marked', () => {
    const frame = (stickEnd: Pixel): FrameMarks => ({ frame: 80, hands: [500, 900], clubHead: [300, 200], stickEnd });
    const marks = (stickEnd: Pixel): FilmMarks => ({
      size: { w: 1080, h: 1920 },
      address: {
        clubHead: [700, 1500],
        gripEnd: [560, 1060],
        stick: [
          [810, 1800],
          [720, 1380],
        ],
      },
      leadArmParallel: frame(stickEnd),
    });
    expect(findMovedCamera(marks([812, 1803]))).toBeUndefined();
    expect(findMovedCamera(marks([723, 1384]))).toBeUndefined();
    expect(findMovedCamera(marks([840, 1800]))).toEqual({ at: 'leadArmParallel', mark: 'stick', px: 30 });
    expect(isProvenStill(marks([812, 1803]), frame([812, 1803]))).toBe(true);
  });
});

test('the typed place of the camera goes to the search as it is meant: to 10 cm, and to 10 % of the distance', () => {
  const notes = { ...NOTHING.notes, heightM: 1.1, distanceM: 4, sidewaysM: -0.3 };
  // Give or take is two standard deviations.
  expect(toDraft(EMPTY_SHEET, notes, { w: 1080, h: 1920 }).camera).toEqual({
    height: { value: 1.1, sd: 0.05 },
    distance: { value: 4, sd: 0.2 },
    sideways: { value: -0.3, sd: 0.05 },
  });
});
