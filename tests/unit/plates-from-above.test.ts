import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findShot, STILL_DAY, type Shot } from '../../src/flight/shot';
import { rad, toDeg } from '../../src/math/angle';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import type { Box, Point } from '../../src/plates/plate/frame';
import { doBoxesMeet, isInside } from '../../src/plates/annotation/boxes';
import { readablesOf as shotReadables, shotDrawing } from '../../src/plates/ball/shotDrawing';
import { readablesOf as strikeReadables, strikeDrawing } from '../../src/plates/ball/strikeDrawing';
import { deliveryWith } from './delivered';

/** Pictures as the four screens have them, css px. */
const PICTURES = [
  { width: 233, height: 224 },
  { width: 178, height: 224 },
  { width: 380, height: 168 },
  { width: 170, height: 190 },
] as const;

/** What of a drawing is cut or lies on something else, in words. */
function faults(things: readonly [string, Box][], { width, height }: { width: number; height: number }): string[] {
  const sheet = { left: 0, top: 0, right: width, bottom: height };
  return things.flatMap(([name, box], i) => [
    ...(isInside(box, sheet) ? [] : [`${name} is cut`]),
    ...things
      .slice(i + 1)
      .flatMap(([other, otherBox]) => (doBoxesMeet(box, otherBox) ? [`${name} lies on ${other}`] : [])),
  ]);
}

const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((n) => rad(n / 100));
const strikes = fc.record({
  path: hundredths(-40, 40),
  face: hundredths(-60, 60),
  attack: hundredths(-12, 12),
  dynamicLoft: hundredths(5, 60),
});
const anyClub = fc.constantFrom(...CLUB_IDS);
const hand = fc.constantFrom('right' as const, 'left' as const);
const anyUnit = fc.constantFrom({ length: 'cm' } as const, { length: 'in' } as const);
const picture = fc.constantFrom(...PICTURES);

/** Direction of a line on the drawing, deg from the target, + right. */
const headingOf = (from: Point, to: Point): number => toDeg(Math.atan2(to.x - from.x, from.y - to.y));

describe('the strike from above', () => {
  test('nothing is cut and no label lies on another, whatever path and face', () => {
    fc.assert(
      fc.property(strikes, hand, picture, (strike, handed, size) => {
        const drawing = strikeDrawing(deliveryWith(strike), handed, size);
        expect(faults(strikeReadables(drawing), size)).toEqual([]);
        for (const { x, y } of [...drawing.pathHead.slice(0, 1), drawing.facing.to, drawing.path.from]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(size.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(size.height);
        }
      }),
      { numRuns: 600 },
    );
  });

  test('path and face are drawn at their true angles, in-to-out to the right for a right-handed player', () => {
    const drawing = strikeDrawing(deliveryWith({ path: rad(6), face: rad(-3) }), 'right', PICTURES[0]);
    expect(headingOf(drawing.path.from, drawing.path.to)).toBeCloseTo(6, 6);
    expect(headingOf(drawing.facing.from, drawing.facing.to)).toBeCloseTo(-3, 6);
    expect(drawing.turn).toBe('closed');
    expect(drawing.angle!.number).toBe('9');
  });

  test('a left-handed player has the mirrored drawing', () => {
    const delivery = deliveryWith({ path: rad(6), face: rad(-3) });
    const right = strikeDrawing(delivery, 'right', PICTURES[0]);
    const left = strikeDrawing(delivery, 'left', PICTURES[0]);
    expect(headingOf(left.path.from, left.path.to)).toBeCloseTo(-6, 6);
    left.face.forEach(({ x }, i) => expect(PICTURES[0].width - x).toBeCloseTo(right.face[i].x, 6));
  });

  test('a ball nearer the toe is drawn so: the face stands nearer the player', () => {
    const drawing = strikeDrawing(deliveryWith({ miss: { toe: 0.03, high: 0, late: 0 } }), 'right', PICTURES[0]);
    const middle = drawing.face.reduce((sum, { x }) => sum + x / 4, 0);
    expect(middle).toBeLessThan(drawing.ball.x - 10);
  });

  test('in usual strikes every part has its name', () => {
    for (const [pathDeg, faceDeg] of [
      [0, 0],
      [4, 1],
      [-5, 3],
      [8, -6],
    ]) {
      const { labels } = strikeDrawing(deliveryWith({ path: rad(pathDeg), face: rad(faceDeg) }), 'right', PICTURES[0]);
      expect(labels.map(({ text }) => text).toSorted()).toEqual(['face', 'path', 'target']);
    }
  });
});

describe('the shot from above', () => {
  test('nothing is cut and no label lies on another, for every shot that flies', () => {
    let flown = 0;
    fc.assert(
      fc.property(strikes, anyClub, hand, anyUnit, picture, (strike, clubId, handed, units, size) => {
        const shot = findShot(deliveryWith(strike), clubOf(CLUBS[clubId]), STILL_DAY, 48);
        if ('missing' in shot) return;
        flown++;
        const drawing = shotDrawing(shot, handed, units, size);
        expect(faults(shotReadables(drawing), size)).toEqual([]);
        for (const { x, y } of [...drawing.curve, ...drawing.width]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(size.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(size.height);
        }
      }),
      { numRuns: 600 },
    );
    expect(flown).toBeGreaterThan(300);
  });

  const shot = findShot(deliveryWith({ path: rad(5), face: rad(2) }), clubOf(CLUBS['7-iron']), STILL_DAY, 48) as Shot;

  test('the landing stands to scale, and the strip is as wide as models differ', () => {
    const { ball, landing, scale, width } = shotDrawing(shot, 'right', { length: 'cm' }, PICTURES[0]);
    expect((ball.y - landing.y) / scale).toBeCloseTo(shot.flight.track[4 * 47 + 1], 6);
    expect((landing.x - ball.x) / scale).toBeCloseTo(shot.flight.offlineM, 6);
    expect(Math.hypot(width[1].x - width[0].x, width[1].y - width[0].y) / scale).toBeCloseTo(shot.width, 6);
  });

  test('the start line points where the ball starts, and the ball ends left of it when it curves left', () => {
    const { start, landing } = shotDrawing(shot, 'right', { length: 'cm' }, PICTURES[0]);
    expect(headingOf(start.from, start.to)).toBeCloseTo(shot.flight.startDeg, 6);
    expect(shot.flight.curveM).toBeLessThan(0);
    expect(landing.x).toBeLessThan(start.to.x);
  });

  test('a left-handed player has the mirrored plan', () => {
    const right = shotDrawing(shot, 'right', { length: 'cm' }, PICTURES[0]);
    const left = shotDrawing(shot, 'left', { length: 'cm' }, PICTURES[0]);
    expect(left.landing.x - left.ball.x).toBeCloseTo(right.ball.x - right.landing.x, 9);
  });

  test('a usual shot carries its number, start, apex and at least two distances', () => {
    for (const size of PICTURES.slice(0, 3)) {
      const { carry, labels, arcs } = shotDrawing(shot, 'right', { length: 'cm' }, size);
      expect(carry!.number).toBe(String(Math.round(shot.flight.carryM)));
      expect(labels.map(({ text }) => text).join(' ')).toMatch(/start apex \d+ m/);
      expect(arcs.filter(({ label }) => label).length).toBeGreaterThanOrEqual(2);
    }
  });
});
