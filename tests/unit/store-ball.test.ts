import { beforeEach, describe, expect, test } from 'vitest';
import { takeSnapshot } from '../../src/export/task/exportSnapshot';
import type { Shot } from '../../src/flight/shot';
import { toDeg } from '../../src/math/angle';
import type { Delivery } from '../../src/reading/delivery/delivery';
import {
  current,
  DEFAULT_DOCUMENT,
  desk,
  put,
  setBall,
  setDrawer,
  setMovement,
  setPlayer,
  STILL_AIR,
  undo,
  type BallFlight,
} from '../../src/store';
import { comparedOf } from '../../src/store/desk/compared';
import { clearDesk } from '../../src/store/desk/desk';
import { ledgerOf } from '../../src/store/desk/ledger';
import { setWhy } from '../../src/store/desk/whyActions';
import { askedNow, solverClient } from '../../src/store/solver/solverClient';
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
    ['a face returned farther than square', { ...STILL_AIR, faceReturned: 1.2 }],
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

describe("the document's own face", () => {
  const face = (faceReturned?: number): Delivery => {
    setBall({ ...STILL_AIR, ...(faceReturned !== undefined && { faceReturned }) });
    const { delivery } = current();
    if ('missing' in delivery) throw new Error(delivery.missing);
    return delivery;
  };
  beforeEach(() => {
    setMovement('leadWristFlexion', -16);
    setMovement('rotationRate', 1.15);
  });

  test('is drawn between the two ends of its band, half way where nothing is set', () => {
    const [left, none, half, returned] = [face(0), face(), face(0.5), face(1)];
    expect(left.face).toBe(left.faceLeft);
    expect(returned.face).toBe(left.faceReturned);
    expect(none).toEqual(half);
    expect(half.face).toBeGreaterThan(returned.face);
    expect(half.face).toBeLessThan(left.face);
  });

  test('holds in the ledger, in a comparison, for the ghost, in plans and in what is exported', () => {
    const endFollowing = solverClient.follow();
    const drawn = [0, 1].map((share) => {
      const { face: own } = face(share);
      setWhy({ reading: 'ball:face', from: 'reference', to: 'now' });
      const ledger = ledgerOf(desk.getState());
      expect(ledger).toMatchObject({ shared: { to: own } });
      expect(comparedOf(desk.getState()).solid).toMatchObject({ delivery: { face: own } });
      setDrawer('plan');
      expect(askedNow().answer).toMatchObject({ kind: 'plan', now: { delivery: { face: own } } });
      setDrawer(null);
      put({ session: { ...desk.getState().session, ghost: desk.getState().document.movements } });
      const { swing, ghostSwing } = current();
      expect(ghostSwing?.adaptation).toEqual(swing.adaptation);
      const { after } = takeSnapshot(desk.getState(), current(), 'ghost');
      expect(after.swing.adaptation).toEqual(swing.adaptation);
      return own;
    });
    endFollowing();
    expect(toDeg(drawn[0] - drawn[1])).toBeGreaterThan(3);
  });
});
