import { beforeEach, describe, expect, test, vi } from 'vitest';
import { AT } from '../../src/model/chain';
import { isReached } from '../../src/reading/checkpoints';
import { DEFAULT_BANDS, verdictAt } from '../../src/reading/verdicts';
import {
  beginGesture,
  bendJoint,
  current,
  currentPose,
  DEFAULT_DOCUMENT,
  desk,
  endGesture,
  holdAt,
  holdGhost,
  loadSituation,
  redo,
  releaseBench,
  resetAll,
  setBoard,
  setDrawer,
  setExaggerate,
  setMovement,
  setPelvisAlone,
  setPlayer,
  setPlayhead,
  setSetUp,
  SITUATIONS,
  STILL_DIALLED,
  step,
  subscribe,
  undo,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import { toBands } from '../../src/store/document/convert';
import { NO_HISTORY, withStep } from '../../src/store/document/history';

const wrist = (): number => desk.getState().document.movements.leadWristFlexionDeg;
const gap = (): number => {
  const { leadArmParallel } = current().checkpoints;
  return isReached(leadArmParallel) ? leadArmParallel.readings.bicepGap : NaN;
};
const dragTilt = (): void => {
  beginGesture();
  setMovement('trailSideBend', 4);
  endGesture();
};
const labels = (): string[] => desk.getState().history.past.map(({ label }) => label);

startEffects();
beforeEach(() => clearDesk());

describe('one change', () => {
  test('calls every listener once, and what the listener sees is already of one instant', () => {
    const seen: number[] = [];
    const stop = subscribe(({ document, session }) => {
      expect(document.movements.leadWristFlexionDeg).toBe(-20);
      expect(session.t).toBe(current().positions.P5);
      seen.push(gap());
    });
    setMovement('leadWristFlexion', -20);
    stop();
    expect(seen).toHaveLength(1);
    expect(seen[0]).toBe(gap());
  });

  test('that changes nothing calls nobody and leaves no undo step', () => {
    const listener = vi.fn();
    const stop = subscribe(listener);
    setMovement('leadWristFlexion', 0);
    setMovement('leadWristFlexion', NaN);
    resetAll();
    stop();
    expect(listener).not.toHaveBeenCalled();
    expect(labels()).toEqual([]);
  });

  test('asking twice for what is shown gives the same answer without working it out again', () => {
    setMovement('trailSideBend', 5);
    expect(current()).toBe(current());
    setDrawer('setUp');
    const before = current();
    setPlayhead(0.1);
    expect(current()).toBe(before);
  });
});

describe('gestures and undo', () => {
  test('a drag through many values is one undo step named after where it ended', () => {
    beginGesture();
    for (let value = -1; value >= -8; value--) setMovement('leadWristFlexion', value);
    endGesture();
    expect(labels()).toEqual(['Wrist −8°']);
    undo();
    expect(wrist()).toBe(0);
    redo();
    expect(wrist()).toBe(-8);
  });

  test('a drag that comes back to its start leaves no step', () => {
    beginGesture();
    setMovement('leadWristFlexion', 9);
    setMovement('leadWristFlexion', 0);
    endGesture();
    expect(labels()).toEqual([]);
  });

  test('undo in the middle of a drag ends it at its last value first', () => {
    beginGesture();
    setMovement('leadWristFlexion', 9);
    undo();
    expect(wrist()).toBe(0);
    redo();
    expect(wrist()).toBe(9);
  });

  test.each([
    ['another drag', dragTilt, 'Side bend 4°'],
    ['Reset all', resetAll, 'Reset all'],
    ['a situation', () => loadSituation('stuck'), 'Stuck behind'],
    ['the pelvis on its own', () => setPelvisAlone(true), 'Hips on their own'],
  ])('%s in the middle of a drag ends it first: two steps, taken back one by one', (_, act, label) => {
    beginGesture();
    setMovement('leadWristFlexion', 9);
    act();
    expect(desk.getState().gesture).toBeNull();
    expect(labels()).toEqual(['Wrist 9°', label]);
    undo();
    expect(desk.getState().document.movements).toEqual({ ...STILL_DIALLED, leadWristFlexionDeg: 9 });
    undo();
    expect(desk.getState().document.movements).toEqual(STILL_DIALLED);
  });

  test('reset and situations can be undone', () => {
    setMovement('trailSideBend', 6);
    loadSituation('stuck');
    resetAll();
    expect(labels()).toEqual(['Side bend 6°', 'Stuck behind', 'Reset all']);
    expect(desk.getState().document.movements).toEqual(STILL_DIALLED);
    undo();
    undo();
    expect(desk.getState().document.movements).toEqual({ ...STILL_DIALLED, trailSideBendDeg: 6 });
  });

  test('a new change after an undo forgets what was undone', () => {
    setMovement('trailSideBend', 6);
    undo();
    setMovement('trailSideBend', 2);
    expect(redo()).toBeUndefined();
  });

  test('5,000 steps can be undone; the oldest go first, so that a desk left on for days does not fill the memory', () => {
    const steps = Array.from({ length: 5003 }, (_, at) => ({ label: String(at), before: {}, after: {} }));
    const { past } = steps.reduce(withStep, NO_HISTORY);
    expect(past).toHaveLength(5000);
    expect([past[0].label, past.at(-1)?.label]).toEqual(['3', '5002']);
  });

  test('undo brings back the player and the board too', () => {
    setPlayer({ statureM: 1.93, handed: 'left' });
    setBoard('dark');
    undo();
    undo();
    expect(desk.getState().document).toMatchObject({ player: { statureM: 1.78, handed: 'right' }, board: 'light' });
  });
});

describe('what is shown', () => {
  test('cupping the lead wrist puts the shaft line higher on the trail bicep (common practice), and the picture moves', () => {
    const before = { gap: gap(), pose: Array.from(currentPose()) };
    setMovement('leadWristFlexion', -20);
    expect(gap()).toBeGreaterThan(before.gap);
    expect(Array.from(currentPose())).not.toEqual(before.pose);
  });

  test('a playhead held at lead arm parallel follows it; one put at a time stays', () => {
    holdAt('P5');
    setMovement('rotationDelay', 20);
    expect(desk.getState().session.t).toBe(current().positions.P5);
    setPlayhead(0.1);
    setMovement('rotationDelay', -20);
    expect(desk.getState().session.t).toBe(0.1);
  });

  test('steps lead through the ten positions and stop at both ends', () => {
    holdAt('P1');
    const passed: (string | null)[] = ['P1'];
    for (let i = 0; i < 12; i++) {
      step(1);
      passed.push(desk.getState().session.held);
    }
    expect([...new Set(passed)]).toEqual(['P1', 'P2', 'P3', 'P4', 'P5', 'P6', 'P7', 'P8', 'P9', 'P10']);
    for (let i = 0; i < 12; i++) step(-1);
    expect(desk.getState().session.held).toBe('P1');
  });

  test('exaggerating doubles what is drawn, marks it, and changes neither the dial nor the document', () => {
    setMovement('leadWristFlexion', -10);
    const { document } = desk.getState();
    setExaggerate(true);
    const shown = gap();
    expect(current().exaggerated).toBe(true);
    expect(desk.getState().document).toBe(document);
    setExaggerate(false);
    setMovement('leadWristFlexion', -20);
    expect(gap()).toBeCloseTo(shown, 12);
  });

  test('exaggerating doubles what the pelvis does on its own, too', () => {
    setPelvisAlone(true);
    setMovement('pelvisRate', 1.1);
    setMovement('pelvisDelay', -12);
    setExaggerate(true);
    const { movements } = current();
    expect(movements).toMatchObject({ rotationRate: 1, rotationDelay: 0 });
    expect(movements.pelvisRate).toBeCloseTo(1.2, 12);
    expect(movements.pelvisDelay).toBeCloseTo(-0.024, 12);
  });

  test('the bench shows a joint by hand and lets go without a trace', () => {
    const { document } = desk.getState();
    const before = Array.from(currentPose());
    bendJoint('leadArmElevation', 0.3);
    expect(Array.from(currentPose())).not.toEqual(before);
    expect(desk.getState().document).toBe(document);
    releaseBench();
    expect(Array.from(currentPose())).toEqual(before);
  });

  test('a ghost keeps the swing as it was when it was held', () => {
    setMovement('trailSideBend', -6);
    holdGhost(true);
    setMovement('trailSideBend', 6);
    expect(current().ghostSwing!.movements.trailSideBend).toBeLessThan(0);
    expect(current().movements.trailSideBend).toBeGreaterThan(0);
    holdGhost(false);
    expect(current().ghostSwing).toBeNull();
  });

  test('the pelvis on its own turns the pelvis and leaves the chest', () => {
    setPelvisAlone(true);
    setMovement('pelvisRate', 1.3);
    expect(current().movements).toMatchObject({ rotationRate: 1, pelvisRate: 1.3 });
    expect(labels()).toEqual(['Hips on their own', 'Hip turn 130 %']);
    setPelvisAlone(false);
    expect(current().movements.pelvisRate).toBeUndefined();
  });

  test('a slower downswing lowers the head speed and leaves every distance as it was', () => {
    const headSpeed = (): number => {
      const { delivery } = current();
      if ('missing' in delivery) throw new Error(delivery.missing);
      return delivery.headSpeed;
    };
    const before = { gap: gap(), headSpeed: headSpeed() };
    setSetUp({ ...desk.getState().document.setUp, downswingMs: 310 });
    expect(current().swing.tempo).toBeCloseTo(310 / 250, 12);
    expect(gap()).toBeCloseTo(before.gap, 12);
    expect(headSpeed()).toBeCloseTo((before.headSpeed * 250) / 310, 6);
  });

  test('the head meets the ball in every situation, and the path is the one implied at shaft parallel', () => {
    for (const { id } of SITUATIONS) {
      loadSituation(id);
      const { delivery, impliedPath } = current();
      if ('missing' in delivery) throw new Error(`${id}: ${delivery.missing}`);
      expect(Math.hypot(delivery.miss.toe, delivery.miss.high)).toBeLessThan(0.001);
      if (delivery.status === 'held') expect(delivery.path).toBeCloseTo(impliedPath!, 4);
    }
  });

  test('hands asked higher at the top are higher there; asked out of reach, what is missing is told', () => {
    const topHeight = (): number => {
      holdAt('P4');
      return currentPose()[AT.leadGrip + 1];
    };
    const before = topHeight();
    setSetUp({ ...desk.getState().document.setUp, handHeightCm: 5 });
    expect(topHeight() - before).toBeCloseTo(0.05, 3);
    expect(current().topShortfall).toBeLessThan(0.001);
  });

  test.each([
    ['reference', 'onPlane'],
    ['cupped', 'steep'],
    ['bent', 'shallow'],
    ['early', 'steep'],
    ['fast', 'steep'],
    ['overHip', 'steep'],
    ['stuck', 'shallow'],
    ['cuppedAndFast', 'steep'],
    ['bentAndLate', 'shallow'],
  ] as const)('the situation "%s" is %s at both checkpoints', (id, verdict) => {
    loadSituation(id);
    const { checkpoints, bands } = current();
    for (const at of ['leadArmParallel', 'shaftParallel'] as const) {
      expect(verdictAt(at, checkpoints[at], bands), at).toBe(verdict);
    }
  });

  test('every situation lies inside the dials and differs from every other', () => {
    const seen = new Set<string>();
    for (const { id } of SITUATIONS) {
      loadSituation(id);
      const { movements } = desk.getState().document;
      seen.add(JSON.stringify(movements));
      expect(current().status).toBe('ready');
      for (const value of [gap(), ...currentPose()]) expect(Number.isFinite(value)).toBe(true);
    }
    expect(seen.size).toBe(9);
  });
});

test('a desk nobody has changed judges by the bands of the model', () => {
  expect(toBands(DEFAULT_DOCUMENT.bands)).toEqual(DEFAULT_BANDS);
});
