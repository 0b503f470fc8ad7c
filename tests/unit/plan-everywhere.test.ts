import { beforeEach, describe, expect, test } from 'vitest';
import { readText, toAddress, toCodeAddress, toText } from '../../src/export/link/link';
import { codeOf, fitsCode } from '../../src/export/picture/qrCode';
import { derivePlain, sayChanges, takeSnapshot } from '../../src/export/task/exportSnapshot';
import { isReached } from '../../src/reading/checkpoints';
import { computeCm } from '../../src/record/book/deskLink';
import { rowsOf } from '../../src/record/book/progress';
import { current, desk, setMovement } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { comparedOf } from '../../src/store/desk/compared';
import { showGhost, setWhy, takeDialled } from '../../src/store/desk/whyActions';
import { findSwing, ghostDialled } from '../../src/store/derive/swings';
import { toMovements } from '../../src/store/document/convert';
import { PLAN_LIMITS, type ChosenPlan } from '../../src/store/document/chosenPlan';
import { DEFAULT_DOCUMENT, STILL_DIALLED, type Dialled } from '../../src/store/document/document';
import { startEffects } from '../../src/store/effects/startEffects';
import { changesBetween, draftPlan } from '../../src/store/plan/draftPlan';
import { choosePlan, editPlan } from '../../src/store/plan/planActions';
import { sayPlanChanges } from '../../src/words/why/planText';
import { createRandom } from '../reference/random';
import { makeLesson, makePlan } from './record-stand';

startEffects();
beforeEach(() => clearDesk());

const cupped: Dialled = { ...STILL_DIALLED, leadWristFlexionDeg: -18, rotationDelayMs: -4 };
const aims: readonly Dialled[] = [
  { ...cupped, leadWristFlexionDeg: -3 },
  { ...STILL_DIALLED, trailSideBendDeg: 3 },
];
const choose = (movements: Dialled): ChosenPlan => {
  const { document } = desk.getState();
  choosePlan({ from: cupped, movements, targetCm: computeCm({ ...document, movements }) });
  return desk.getState().document.plan!;
};

describe.each(aims.map((movements, i) => ({ movements, name: `plan ${i + 1}` })))('$name', ({ movements }) => {
  test('has the same target numbers in clip and sheet, comparison, lists of swings, ghost, link and progress', () => {
    setMovement('leadWristFlexion', 12);
    choose(aims[0]);
    const plan = choose(movements);
    showGhost('plan');
    const state = desk.getState();

    const { now, after, afterId } = takeSnapshot(state, derivePlain(state), 'plan');
    expect(afterId).toBe('plan');
    const { leadArmParallel: arm, shaftParallel: shaft } = after.checkpoints;
    if (!isReached(arm) || !isReached(shaft)) throw new Error('not reached');
    expect(arm.readings.bicepGap * 100).toBeCloseTo(plan.targetCm.leadArmParallel!, 2);
    expect(shaft.readings.headDepth * 100).toBeCloseTo(plan.targetCm.shaftParallel!, 2);
    expect(now.swing.movements).toMatchObject(toMovements(plan.from));

    setWhy({ solid: 'plan', ghost: 'ghost' });
    const pair = comparedOf(desk.getState());
    for (const side of [pair.solid, pair.ghost]) {
      if ('problem' in side || !isReached(side.checkpoints.leadArmParallel)) throw new Error('no swing');
      expect(side.checkpoints.leadArmParallel.readings.bicepGap).toBe(arm.readings.bicepGap);
    }
    expect(findSwing('plan', state).movements).toBe(plan.movements);
    expect(ghostDialled(state)).toBe(plan.movements);
    expect(current().ghostSwing?.movements).toMatchObject(toMovements(plan.movements));

    const sent = readText(toText(state.document));
    expect('document' in sent && sent.document.plan).toEqual(plan);
    const [row] = rowsOf([makeLesson('player-1', { now: state.document })], (lesson) => lesson.now.seen);
    expect(row.newPlan).not.toBeNull();
  });

  test('has the same words on the drawer and the lesson as in clip and sheet', () => {
    const plan = choose(movements);
    const state = desk.getState();
    const onScreen = sayPlanChanges(changesBetween(plan.from, plan.movements), state.document.units);
    expect(sayChanges(takeSnapshot(state, derivePlain(state), 'plan'))).toEqual(onScreen);
    expect(onScreen.length).toBeGreaterThan(0);
  });

  test('is not moved by what is dialled, and moves nothing that is dialled', () => {
    setMovement('leadWristFlexion', 12);
    const { movements: dialled } = desk.getState().document;
    const plan = choose(movements);
    expect(desk.getState().document.movements).toBe(dialled);
    takeDialled('Use this swing', STILL_DIALLED);
    expect(desk.getState().document.plan).toBe(plan);
  });
});

test('an id is random and new for each plan; what is said with a plan leaves it the same plan', () => {
  const [a, b] = [choose(aims[0]), choose(aims[1])];
  expect(a.id).toMatch(/^[0-9a-z]{16}$/);
  expect(a.id).not.toBe(b.id);
  editPlan('Own words', { words: 'Slowly.' });
  expect(desk.getState().document.plan).toEqual({ ...b, words: 'Slowly.' });
});

test('a plan with words too long for a code still has one: without the words, and the link keeps them', () => {
  const random = createRandom(3);
  /** Letters of three bytes that nothing can pack. */
  const letters = (count: number): string =>
    Array.from({ length: count }, () => String.fromCharCode(0x4e00 + Math.floor(random() * 20_000))).join('');
  const long = makePlan({
    words: letters(PLAN_LIMITS.words),
    feel: letters(PLAN_LIMITS.feel),
    drills: [0, 1, 2].map(() => ({
      name: letters(PLAN_LIMITS.drillName),
      how: letters(PLAN_LIMITS.drillHow),
      often: '',
    })),
  });
  const document = { ...desk.getState().document, plan: long };
  const base = 'https://board.invalid/';
  const { address, isWhole } = toCodeAddress(document, base);
  expect(isWhole).toBe(false);
  expect(codeOf(address).length).toBeGreaterThan(100);
  const scanned = readText(new URL(address).hash.slice(1));
  expect('document' in scanned && scanned.document.plan?.movements).toEqual(long.movements);
  const whole = readText(toText(document));
  expect('document' in whole && whole.document.plan).toEqual(long);
  expect(toCodeAddress({ ...document, plan: makePlan() }, base).isWhole).toBe(true);
});

test('a link with every movement changed, three drills, names and the words of a coach is short enough for a code', () => {
  const from = {
    ...STILL_DIALLED,
    leadWristFlexionDeg: -20,
    rotationRate: 1.2,
    rotationDelayMs: -20,
    trailSideBendDeg: -8,
    pelvisShiftCm: 4,
  };
  const targetCm = { leadArmParallel: 0, shaftParallel: 0 };
  const plan: ChosenPlan = {
    ...draftPlan('longestplan1', { from, movements: STILL_DIALLED, targetCm }, null),
    words:
      'Slow ones first, feet together, then the same with a half swing. Film one ball from down the line on Sunday.',
    nextDate: '2026-12-13',
    names: { player: 'Juniper', coach: 'Rowan' },
  };
  expect(plan.drills).toHaveLength(3);
  const address = toAddress({ ...DEFAULT_DOCUMENT, plan }, 'https://coach.example/slantwise/');
  expect(address.length).toBeLessThan(1500);
  expect(fitsCode(address)).toBe(true);
});
