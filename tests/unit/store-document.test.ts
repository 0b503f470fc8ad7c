import { describe, expect, test } from 'vitest';
import { deg, rad, toDeg, toRad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { createJointVector, J } from '../../src/model/joints';
import { DIALS } from '../../src/model/movements';
import { sideBendOfLean } from '../../src/model/sideBend';
import { findLeadArmParallel } from '../../src/reading/checkpoints';
import { createSwing, swingJoints } from '../../src/reading/swing';
import { findShipped, shippedSwings } from '../../src/solving/reference/shipped';
import { migrateMovements, SIDE_BEND_OF_LEAN } from '../../src/store/document/migrate';
import { exaggerated, toMovements } from '../../src/store/document/convert';
import { dialValue, EDGE_DIALS, edgeDial, fitToDial, STILL_DIALLED, withDial } from '../../src/store/document/document';

describe('dials at the edge', () => {
  test("every dial of the model has its slider, in the unit of the screen, with the model's ends", () => {
    for (const dial of DIALS) {
      const edge = edgeDial(dial.id);
      expect(edge.min * dial.edgeUnit).toBeCloseTo(dial.min, 12);
      expect(edge.max * dial.edgeUnit).toBeCloseTo(dial.max, 12);
      expect(edge.usualMin * dial.edgeUnit).toBeCloseTo(dial.usualMin, 12);
    }
    expect(edgeDial('leadWristFlexion')).toMatchObject({ min: -40, max: 40, step: 1, usualMin: -30, usualMax: 30 });
    expect(edgeDial('rotationDelay')).toMatchObject({ min: -40, max: 40, step: 1 });
    expect(edgeDial('pelvisShift')).toMatchObject({ min: -10, max: 10, step: 1 });
  });

  test('the number that is slid is the number that is stored, for every step of every slider', () => {
    for (const { id, min, max, step } of EDGE_DIALS) {
      for (let i = 0; i <= Math.round((max - min) / step); i++) {
        // What a native slider hands over: its decimal text, read as a number.
        const slid = Number((min + i * step).toFixed(4));
        expect(dialValue(withDial(STILL_DIALLED, id, slid), id)).toBe(slid);
      }
    }
  });

  test('a value between steps goes to the nearest step, one past the end stops at the end, no number changes nothing', () => {
    expect(fitToDial('leadWristFlexion', 8.4, 0)).toBe(8);
    expect(fitToDial('leadWristFlexion', 400, 0)).toBe(40);
    expect(fitToDial('rotationRate', 1.0849, 1)).toBe(1.08);
    expect(fitToDial('trailSideBend', NaN, 3)).toBe(3);
    expect(Object.is(fitToDial('trailSideBend', -0.2, 3), 0)).toBe(true);
  });

  test('cupped 20° is 20° of extension in the model, 108 % a rate of 1.08, 12 ms early a delay of -0.012 s', () => {
    const moved = toMovements({ ...STILL_DIALLED, leadWristFlexionDeg: -20, rotationRate: 1.08, rotationDelayMs: -12 });
    expect(moved.leadWristFlexion).toBeCloseTo(toRad(deg(-20)), 12);
    expect(moved.rotationRate).toBe(1.08);
    expect(moved.rotationDelay).toBeCloseTo(-0.012, 12);
    expect('pelvisRate' in moved).toBe(false);
  });

  test('a pelvis on its own starts where the chest is and is then dialled alone', () => {
    const fast = withDial(STILL_DIALLED, 'rotationRate', 1.1);
    expect(dialValue(fast, 'pelvisRate')).toBe(1.1);
    const alone = withDial(fast, 'pelvisDelay', -10);
    expect(alone.pelvis).toEqual({ rate: 1.1, delayMs: -10 });
    expect(toMovements(alone)).toMatchObject({
      rotationRate: 1.1,
      rotationDelay: 0,
      pelvisRate: 1.1,
      pelvisDelay: -0.01,
    });
  });

  test('exaggerating doubles the deviation from the reference and leaves the reference alone', () => {
    const moved = toMovements({ ...STILL_DIALLED, leadWristFlexionDeg: -10, rotationRate: 1.05 });
    const doubled = exaggerated(moved);
    expect(doubled.leadWristFlexion).toBeCloseTo(toRad(deg(-20)), 12);
    expect(doubled.rotationRate).toBeCloseTo(1.1, 12);
    expect(exaggerated(toMovements(STILL_DIALLED))).toEqual(toMovements(STILL_DIALLED));
  });
});

test('a lean of an old document becomes the side bend that leans the trunk alike on every shipped swing, within 3 % (our limit)', () => {
  for (const { statureM, club: id } of shippedSwings()) {
    const body = bodyOf({ statureM, handed: 'right' });
    const club = clubOf(CLUBS[id as ClubId]);
    const swing = createSwing(body, club, findShipped(body, club)!);
    const arm = findLeadArmParallel(swing);
    if ('missing' in arm) throw new Error(arm.missing);
    const q = createJointVector();
    swingJoints(swing, arm.t, q);
    const bend = sideBendOfLean(rad(4), q[J.trunkBend], q[J.thoraxTurn]);
    expect(Math.abs(toDeg(bend) / (4 * SIDE_BEND_OF_LEAN) - 1)).toBeLessThan(0.03);
  }
});

test('an old lean past what side bend goes to stops at the end of its slider; a damaged one stays damaged', () => {
  const old = (trailTiltDeg: unknown): unknown => {
    const { leadWristFlexionDeg, rotationRate, rotationDelayMs, pelvisShiftCm, pelvis } = STILL_DIALLED;
    return migrateMovements({
      leadWristFlexionDeg,
      rotationRate,
      rotationDelayMs,
      trailTiltDeg,
      pelvisShiftCm,
      pelvis,
    });
  };
  expect(old(15)).toEqual({ ...STILL_DIALLED, trailSideBendDeg: 12 });
  expect(old(-5)).toEqual({ ...STILL_DIALLED, trailSideBendDeg: -5.8 });
  for (const value of [16, '4', null, NaN]) expect(old(value)).toHaveProperty('trailTiltDeg');
});
