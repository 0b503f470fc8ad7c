import { describe, expect, test } from 'vitest';
import { HEADS, headOf } from '../../src/flight/heads';
import { restitutionAt } from '../../src/flight/impact';
import { shapeFor, SHAPES } from '../../src/flight/shape';

// The words are common practice (mark T); so are the limits between them.
describe('the trade words for a shot', () => {
  test.each([
    [0, 0, 'straight', 'starts on line, flies straight'],
    [2, -5, 'push-draw', 'starts a little right, curves left'],
    [2, 5, 'push-fade', 'starts a little right, curves right'],
    [6, 25, 'push-slice', 'starts right, curves hard right'],
    [-2, 5, 'pull-fade', 'starts a little left, curves right'],
    [-6, -25, 'pull-hook', 'starts left, curves hard left'],
    [0, 5, 'fade', 'starts on line, curves right'],
    [0, 25, 'slice', 'starts on line, curves hard right'],
    [0, -5, 'draw', 'starts on line, curves left'],
    [0, -25, 'hook', 'starts on line, curves hard left'],
    [5, 0, 'push', 'starts right, flies straight'],
    [-5, 0, 'pull', 'starts left, flies straight'],
  ])('right-handed, start %d deg, curve %d m on 150 m: %s', (startDeg, curveM, id, words) => {
    expect(shapeFor({ startDeg, curveM, carryM: 150, handed: 'right' })).toEqual({ id, words });
  });

  test("what a right-hander calls a push-fade, mirrored, is a left-hander's push-fade and is seen on the other side", () => {
    for (const [startDeg, curveM] of [
      [2, 5],
      [-6, 25],
      [0, -25],
      [5, 0],
    ]) {
      const right = shapeFor({ startDeg, curveM, carryM: 150, handed: 'right' });
      const left = shapeFor({ startDeg: -startDeg, curveM: -curveM, carryM: 150, handed: 'left' });
      expect(left.id).toBe(right.id);
    }
    expect(shapeFor({ startDeg: -2, curveM: -5, carryM: 150, handed: 'left' }).words).toBe(
      'starts a little left, curves left',
    );
  });

  test('the same curve on a short shot is the stronger one', () => {
    expect(shapeFor({ startDeg: 0, curveM: 8, carryM: 200, handed: 'right' }).id).toBe('fade');
    expect(shapeFor({ startDeg: 0, curveM: 8, carryM: 60, handed: 'right' }).id).toBe('slice');
  });

  test('a ball that goes nowhere has no curve', () => {
    expect(shapeFor({ startDeg: 0, curveM: 0, carryM: 0, handed: 'right' }).id).toBe('straight');
  });

  test('fifteen shots, fifteen words', () => {
    expect(new Set(Object.values(SHAPES).flatMap((row) => Object.values(row))).size).toBe(15);
  });
});

describe('heads', () => {
  test('every figure of a head says where it comes from', () => {
    for (const head of Object.values(HEADS)) {
      expect(head.massSource).toMatch(/^assumed|\d{4}/);
      expect(head.restitutionSource).toMatch(/^assumed|\d{4}/);
    }
  });

  // USGA, What happens in a collision between club and ball (2025), mark A: the limit is 0.822. Its test speed is from
  // memory, so only the order is checked: no head livelier than the limit at a full drive.
  test('no head is livelier than the equipment rules allow at a full drive', () => {
    for (const { restitution } of Object.values(HEADS))
      expect(restitutionAt(restitution, 48.8)).toBeLessThanOrEqual(0.822 + 1e-12);
  });

  test('a longer club has a lighter head', () => {
    const masses = Object.values(HEADS).map(({ mass }) => mass);
    expect(masses).toEqual(masses.toSorted((a, b) => a - b));
  });

  test("a club of one's own takes the head of its kind", () => {
    expect(headOf('my club', 'iron')).toBe(HEADS['7-iron']);
    expect(headOf('sand wedge', 'wedge')).toBe(HEADS['sand wedge']);
    expect(headOf('constructor', 'wood')).toBe(HEADS['5-wood']);
  });
});
