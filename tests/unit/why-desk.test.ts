import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { isReached } from '../../src/reading/checkpoints';
import { judge, judgedReading } from '../../src/reading/verdicts';
import { current, desk, loadSituation, setBands, setDrawer, setMovement, setSetUp, undo } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { askedNow, solverClient } from '../../src/store/solver/solverClient';
import { linkedTime } from '../../src/store/derive/compare';
import { drawGuess, guessAgain, setGuessFirst, showGuess } from '../../src/store/desk/guess';
import type { Ledger } from '../../src/store/derive/ledger';
import { ledgerOf } from '../../src/store/desk/ledger';
import type { PlanAnswer } from '../../src/solving/diagnosis/solverJobs';
import {
  HYSTERESIS,
  NO_VERDICTS,
  bandsWithHysteresis,
  type StandingVerdicts,
} from '../../src/store/derive/verdictHysteresis';
import { playPart } from '../../src/store/effects/contributionPlayback';
import { stopTrial } from '../../src/store/desk/sessionActions';
import { startEffects } from '../../src/store/effects/startEffects';
import { readDocument } from '../../src/store/document/validate';
import { sawAt, setLocked, setSeen, setWhy, takeDialled, toDialled } from '../../src/store/desk/whyActions';

const readingsCm = (): [number, number] => {
  const { leadArmParallel: arm, shaftParallel: shaft } = current().checkpoints;
  return [
    isReached(arm) ? judgedReading('leadArmParallel', arm) * 100 : NaN,
    isReached(shaft) ? judgedReading('shaftParallel', shaft) * 100 : NaN,
  ];
};
const planned = (): PlanAnswer => {
  const { answer } = askedNow();
  if (answer?.kind !== 'plan') throw new Error(`no plan but ${answer?.kind}`);
  return answer;
};

const ledger = (): Ledger => {
  const answer = ledgerOf(desk.getState());
  if ('problem' in answer) throw new Error(answer.problem);
  return answer;
};

startEffects();
// The drawers' answers are fetched with the first drawer; here they are there from the start.
solverClient.follow();
beforeEach(clearDesk);
afterEach(() => {
  setDrawer(null);
  clearDesk();
});

describe('the change plan', () => {
  for (const situation of ['cuppedAndFast', 'bentAndLate'] as const) {
    test(`${situation}: what is applied reads exactly what the plan says, and undo brings the swing back`, () => {
      loadSituation(situation);
      setDrawer('plan');
      const before = desk.getState().document.movements;
      const { plans } = planned();
      expect(plans.length).toBeGreaterThan(0);
      for (const plan of plans) {
        takeDialled('Plan', toDialled(plan.movements, before));
        const [arm, shaft] = readingsCm();
        expect(arm).toBeCloseTo(plan.readings.leadArmParallel * 100, 9);
        expect(shaft).toBeCloseTo(plan.readings.shaftParallel * 100, 9);
        const { exactBands } = current();
        const isInside =
          judge(arm / 100, exactBands.leadArmParallel) === 'onPlane' &&
          judge(shaft / 100, exactBands.shaftParallel) === 'onPlane';
        expect(isInside).toBe(plan.status === 'reached');
        undo();
        expect(desk.getState().document.movements).toEqual(before);
      }
      expect(plans[0].status).toBe('reached');
    });
  }

  test('a locked movement is left alone, and with all locked it says so in words', () => {
    loadSituation('cuppedAndFast');
    setDrawer('plan');
    setLocked('leadWrist', true);
    for (const { change } of planned().plans) expect(change.leadWristFlexion).toBe(0);
    setLocked('rotation', true);
    setLocked('sideTilt', true);
    expect(askedNow().answer).toEqual({
      kind: 'refused',
      message: 'Every movement is locked. Unlock at least one.',
    });
    setLocked('sideTilt', false);
    expect(askedNow().answer?.kind).toBe('plan');
  });

  test('bands upside down are refused in words, and nothing is lost', () => {
    loadSituation('cupped');
    setDrawer('plan');
    const { bands, movements } = desk.getState().document;
    setBands({ ...bands, leadArmParallel: { lowCm: 3, highCm: -3 } });
    expect(askedNow().answer).toEqual({
      kind: 'refused',
      message: 'The lower edge 3.0 cm lies above the upper edge -3.0 cm. Swap them.',
    });
    expect(desk.getState().document.movements).toBe(movements);
    setBands(bands);
    expect(askedNow().answer?.kind).toBe('plan');
  });

  test('well inside the bands a plan lands more surely than at the edge', () => {
    loadSituation('cuppedAndFast');
    setDrawer('plan');
    const edge = planned().plans[0].holds;
    setWhy({ aim: 'inside' });
    expect(planned().plans[0].holds).toBeGreaterThan(edge);
  });
});

describe('this is what I saw', () => {
  test('a mark is kept in the document, undoable, and explained from the reference', () => {
    sawAt('leadArmParallel', 0.05);
    const { document, session } = desk.getState();
    expect(document.seen.leadArmParallel).toEqual({ cm: 5, plusMinusCm: 3, from: 'plate' });
    expect(session.drawer).toBe('seen');
    const { answer } = askedNow();
    if (answer?.kind !== 'match') throw new Error('no explanations');
    const wrist = answer.explanations.find(({ dials }) => dials.join() === 'leadWristFlexion')!;
    expect(wrist.movements.leadWristFlexion).toBeLessThan(0);
    takeDialled('Seen', toDialled(wrist.movements, document.movements));
    expect(readingsCm()[0]).toBeCloseTo(wrist.readings.leadArmParallel * 100, 9);
    // The dial has steps of one degree; each moves the line by about a quarter of a centimetre.
    expect(Math.abs(readingsCm()[0] - 5)).toBeLessThan(0.25);
    undo();
    undo();
    expect(desk.getState().document.seen.leadArmParallel).toBeNull();
  });

  test('a document from before marks opens with nothing marked; a mark that cannot be is refused', () => {
    const older: Record<string, unknown> = { ...desk.getState().document };
    delete older['seen'];
    expect(readDocument(older)).toMatchObject({ document: { seen: { leadArmParallel: null, shaftParallel: null } } });
    const broken = {
      ...desk.getState().document,
      seen: { leadArmParallel: { cm: 9, plusMinusCm: 0 }, shaftParallel: null },
    };
    expect(readDocument(broken)).toEqual({ problem: 'part of it is damaged (seen.leadArmParallel.plusMinusCm)' });
  });

  test('marks that contradict each other are answered by the closest, which does not fit', () => {
    setDrawer('seen');
    setSeen('leadArmParallel', { cm: 20, plusMinusCm: 0.5, from: 'typed' });
    setSeen('shaftParallel', { cm: -50, plusMinusCm: 0.5, from: 'typed' });
    const { answer } = askedNow();
    if (answer?.kind !== 'match') throw new Error('no explanations');
    expect(answer.explanations.length).toBeGreaterThan(0);
    for (const { status } of answer.explanations) expect(status).toBe('closest');
  });
});

describe('the ledger on the desk', () => {
  test('another top of the backswing is a part of its own', () => {
    setMovement('leadWristFlexion', -12);
    setSetUp({ ...desk.getState().document.setUp, handHeightCm: 8 });
    const { shared, parts } = ledger();
    if ('missing' in shared) throw new Error('no ledger');
    expect(parts).toEqual(['leadWrist', 'setUp']);
    expect(shared.parts.leadWrist + shared.parts.setUp).toBeCloseTo(shared.to - shared.from, 12);
    expect(shared.to * 100).toBeCloseTo(readingsCm()[0], 9);
  });

  test('a bar plays by the clock, moves only its own movement, stops by itself and leaves the document alone', () => {
    setMovement('leadWristFlexion', -20);
    setMovement('trailSideBend', -6);
    const { document } = desk.getState();
    const frames: FrameRequestCallback[] = [];
    vi.stubGlobal('requestAnimationFrame', (frame: FrameRequestCallback) => frames.push(frame));
    const { from, to } = ledger();
    playPart(from, to, 'leadWrist', 'P5', 'Lead wrist');
    const at = (ms: number): void => frames.shift()?.(ms);
    at(0);
    expect(current().movements.leadWristFlexion).toBeCloseTo(0, 12);
    at(800);
    const half = current().movements;
    expect(half.leadWristFlexion).toBeCloseTo(to.movements.leadWristFlexion / 2, 12);
    expect(half.trailSideBend).toBe(0);
    at(1600);
    expect(current().movements.leadWristFlexion).toBe(to.movements.leadWristFlexion);
    at(4999);
    expect(desk.getState().session.trial).toBeNull();
    expect(current().movements.trailSideBend).toBe(to.movements.trailSideBend);
    expect(desk.getState().document).toBe(document);
    stopTrial();
    vi.unstubAllGlobals();
  });
});

describe('guess first', () => {
  test('the movement waits for the guess, then shows, and the slider was right all along', () => {
    setGuessFirst(true);
    const [before] = readingsCm();
    setMovement('leadWristFlexion', -20);
    expect(readingsCm()[0]).toBe(before);
    expect(desk.getState().document.movements.leadWristFlexionDeg).toBe(-20);
    drawGuess('leadArmParallel', 0.03);
    showGuess();
    expect(readingsCm()[0]).toBeGreaterThan(before + 2);
    const made = [{ id: 'leadArmParallel', drawn: 0.03, went: readingsCm()[0] / 100 }];
    expect(desk.getState().session.guess).toEqual({ stage: 'shown', drawn: { leadArmParallel: 0.03 }, made });
    // The next movement is guessed anew, and the score goes on.
    setMovement('leadWristFlexion', -5);
    expect(desk.getState().session.guess).toEqual({ stage: 'open', drawn: {}, made });
    drawGuess('shaftParallel', 0.02);
    showGuess();
    expect(desk.getState().session.guess!.made).toHaveLength(2);
    guessAgain();
    expect(desk.getState().session.guess).toMatchObject({ stage: 'ready', drawn: {} });
    expect(desk.getState().session.guess!.drawn).toEqual({});
    expect(desk.getState().session.guess!.made[1]).toMatchObject({ id: 'shaftParallel', drawn: 0.02 });
    setGuessFirst(false);
    expect(desk.getState().session.trial).toBeNull();
  });
});

describe('verdicts on an edge', () => {
  const bands = { leadArmParallel: { low: -0.015, high: 0.015 }, shaftParallel: { low: -0.1, high: 0.02 } };
  let standing: StandingVerdicts = NO_VERDICTS;
  const at = (gap: number) => {
    const { leadArmParallel: arm, shaftParallel } = current().checkpoints;
    if (!isReached(arm)) throw new Error('not reached');
    const checkpoints = { leadArmParallel: { ...arm, readings: { ...arm.readings, bicepGap: gap } }, shaftParallel };
    const judged = bandsWithHysteresis(bands, checkpoints, standing);
    // What stands afterwards gives the same bands again: the screens may ask as often as they like.
    expect(bandsWithHysteresis(bands, checkpoints, judged.verdicts)).toEqual(judged);
    standing = judged.verdicts;
    return judge(gap, judged.bands.leadArmParallel);
  };
  test('a value that trembles on the edge keeps the verdict that stood; one that leaves it does not', () => {
    expect(at(0)).toBe('onPlane');
    for (let i = 0; i < 6; i++) expect(at(0.015 + (i % 2 ? 1 : -1) * HYSTERESIS * 0.9)).toBe('onPlane');
    expect(at(0.015 + HYSTERESIS * 1.1)).toBe('steep');
    for (let i = 0; i < 6; i++) expect(at(0.015 + (i % 2 ? 1 : -1) * HYSTERESIS * 0.9)).toBe('steep');
    expect(at(0.015 - HYSTERESIS * 1.1)).toBe('onPlane');
  });

  test('a tenth of a millimetre past the edge is past it', () => {
    expect(at(0)).toBe('onPlane');
    expect(at(0.0151)).toBe('steep');
    expect(at(0.0149)).toBe('onPlane');
    expect(at(-0.0151)).toBe('shallow');
  });
});

test('a linked ghost stands at the same position of its own swing', () => {
  const none = { P2: null, P3: null, P8: null, P9: null };
  const own = { ...none, P1: -1, P4: 0, P5: 0.14, P6: 0.21, P7: 0.25, P10: 0.7 };
  const other = { ...own, P5: 0.16, P6: 0.22 };
  expect(linkedTime(0.14, own, other)).toBeCloseTo(0.16, 12);
  expect(linkedTime(0.175, own, other)).toBeCloseTo(0.19, 12);
  expect(linkedTime(0.9, own, other)).toBeCloseTo(0.9, 12);
});
