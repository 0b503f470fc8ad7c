import { beforeEach, describe, expect, test } from 'vitest';
import type { Shot } from '../../src/flight/shot';
import {
  current,
  DEFAULT_DOCUMENT,
  setBall,
  setMovement,
  setPlayer,
  STILL_AIR,
  undo,
  type BallFlight,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import { readDocument } from '../../src/store/document/validate';

startEffects();
beforeEach(clearDesk);

const shot = (): Shot => {
  const now = current().shot;
  if ('missing' in now) throw new Error(now.missing);
  return now;
};

describe('the ball in the document', () => {
  test('a document from before the ball opens with still air and the held plane', () => {
    const { ball: _ball, ...older } = DEFAULT_DOCUMENT;
    expect(_ball).toEqual(STILL_AIR);
    expect(readDocument(older)).toEqual({ document: DEFAULT_DOCUMENT });
  });

  test.each<[string, unknown]>([
    ['a rule that does not exist', { ...STILL_AIR, rule: 'hope' }],
    ['a storm', { ...STILL_AIR, tailWindMps: 60 }],
    ['a height in space', { ...STILL_AIR, altitudeM: 1e6 }],
    ['no number', { ...STILL_AIR, crossWindMps: null }],
    ['something unknown', { ...STILL_AIR, rain: 1 }],
  ])('%s is refused, not guessed', (_name, ball) => {
    expect(readDocument({ ...DEFAULT_DOCUMENT, ball })).toHaveProperty('problem');
  });
});

describe('the shot on the desk', () => {
  const blow = (part: Partial<BallFlight>): void => setBall({ ...STILL_AIR, ...part });

  test('is worked out once per change and follows a slider', () => {
    const before = shot();
    expect(shot()).toBe(before);
    setMovement('leadWristFlexion', 6);
    expect(shot()).not.toBe(before);
    expect(shot().flight.curveM).toBeLessThan(before.flight.curveM);
  });

  test('wind against the ball shortens the carry; height above the sea lengthens it', () => {
    const { carryM } = shot().flight;
    blow({ tailWindMps: -6 });
    expect(shot().flight.carryM).toBeLessThan(carryM);
    blow({ altitudeM: 2000 });
    expect(shot().flight.carryM).toBeGreaterThan(carryM);
  });

  test('wind from left to right is that for either hand', () => {
    blow({ crossWindMps: 5 });
    const right = shot().flight.offlineM;
    setPlayer({ statureM: 1.78, handed: 'left' });
    // In the frame of the mirrored player the same wind comes from the other side.
    expect(Math.sign(shot().flight.offlineM)).toBe(-Math.sign(right));
  });

  test('when nothing adapts the swing that is drawn is the one that is dialled, and the head may miss', () => {
    setMovement('rotationRate', 1.2);
    expect(current().swing.adaptation).toBeDefined();
    blow({ rule: 'nothing adapts' });
    expect(current().swing.adaptation).toBeUndefined();
    expect(current().shot).toEqual({ missing: 'misses' });
  });

  test('a change of the rule is one step, and can be undone', () => {
    blow({ rule: 'nothing adapts' });
    expect(current().delivery).toMatchObject({ rule: 'nothing adapts', status: 'free' });
    expect(undo()).toBe('Ball');
    expect(current().delivery).toMatchObject({ rule: 'held plane', status: 'held' });
  });
});
