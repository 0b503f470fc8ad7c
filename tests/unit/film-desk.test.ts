import { describe, expect, test } from 'vitest';
import { findMovedCamera, isProvenStill } from '../../src/film/judgeFilm';
import type { FilmMarks, FrameMarks, Pixel } from '../../src/film/marks';
import { isBesideLevel, leadToLevel } from '../../src/panels/film/level/leadToLevel';
import { EMPTY_SHEET, nextMark, toDraft, type MarkedFrame, type Sheet } from '../../src/panels/film/filmMarks';
import * as KEPT_WORDS from '../../src/words/film/kept';
import * as LEVEL_WORDS from '../../src/words/film/level';
import * as OVER_WORDS from '../../src/words/film/over';
import { FILM_STAYS, PICTURES_HOW, sayRefused, TYPED_PLACE } from '../../src/words/film/film';
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
  expect(toDraft(EMPTY_SHEET, notes, { kind: 'video', w: 1080, h: 1920 }).camera).toEqual({
    height: { value: 1.1, sd: 0.05 },
    distance: { value: 4, sd: 0.2 },
    sideways: { value: -0.3, sd: 0.05 },
  });
});

describe('leading to level', () => {
  const shaft = marked(100, { hands: [500, 900], clubHead: [480, 880] });
  const next = marked(101, { hands: [501, 905], clubHead: [481, 890] });
  const at = (frame: number) => ({ frame, isMarked: true });

  test.each([
    ['not known: the frame after', undefined, 'next', 101, { shaft, next: undefined }],
    ['just after: the frame after', 100.3, 'next', 101, { shaft, next: undefined }],
    [
      'just before: the frame before, and the marked one becomes the second',
      99.8,
      'shaft',
      99,
      { shaft: undefined, next: shaft },
    ],
    ['farther on: there, and the marks stay until new ones are made', 104.6, 'shaft', 104, { shaft, next: undefined }],
    ['beyond the end of the film: its last two frames', 400, 'shaft', 198, { shaft, next: undefined }],
  ] as const)('which is %s', (_, frame, place, to, sheet) => {
    const from = { ...EMPTY_SHEET, shaft };
    expect(leadToLevel(from, frame === undefined ? undefined : at(frame), 200)).toMatchObject({
      place,
      frame: to,
      sheet,
    });
  });

  test('from two marked frames keeps the one that is right, and only where level lies outside them', () => {
    const both = { ...EMPTY_SHEET, shaft, next };
    expect([99.4, 99.6, 100.5, 101.4, 101.6].map((frame) => isBesideLevel(both, at(frame)))).toEqual([
      true,
      false,
      false,
      false,
      true,
    ]);
    expect(leadToLevel(both, at(101.7), 200)).toMatchObject({
      place: 'next',
      frame: 102,
      sheet: { shaft: next, next: undefined },
    });
    expect(leadToLevel(both, at(99.2), 200)).toMatchObject({
      place: 'shaft',
      frame: 99,
      sheet: { shaft: undefined, next: shaft },
    });
  });
});

test('no sentence about keeping, leading and taking along has more than 15 words', () => {
  const said: unknown[] = [
    ...Object.values(KEPT_WORDS),
    ...Object.values(LEVEL_WORDS),
    ...Object.values(OVER_WORDS),
    PICTURES_HOW,
    FILM_STAYS,
    TYPED_PLACE,
    ...['many', 'mixed', 'sizes'].map((reason) => sayRefused(reason)),
    ...[-12, -1, 0, 1, 12].map(LEVEL_WORDS.sayLed),
    LEVEL_WORDS.sayBesideLevel(870.4),
    OVER_WORDS.sayTarget(true),
    OVER_WORDS.sayTarget(false),
    OVER_WORDS.sayDrawn(true, 'reference'),
    KEPT_WORDS.sayKeptFrame('leadArmParallel', 812, 'video', 2400),
  ].flatMap((one: unknown) => (typeof one === 'object' && one !== null ? (Object.values(one) as unknown[]) : [one]));
  const sentences = said.filter((one) => typeof one === 'string').flatMap((text) => text.split(/(?<=[.:]) /));
  expect(sentences.length).toBeGreaterThan(40);
  for (const sentence of sentences) expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(15);
});
