import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { toDeg } from '../../src/math/angle';
import { isReached, readCheckpoints, type ReadingId } from '../../src/reading/checkpoints';
import { judgedReading } from '../../src/reading/verdicts';
import { PARTS } from '../../src/solving/diagnosis/contributions';
import { BALL_READINGS } from '../../src/solving/diagnosis/question';
import {
  current,
  DEFAULT_DOCUMENT,
  desk,
  loadSituation,
  setDrawer,
  setMovement,
  setSetUp,
  SITUATIONS,
  STILL_DIALLED,
  undo,
  type Document,
} from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { clockTime, type Compared } from '../../src/store/derive/compare';
import { comparedOf, ghostTime } from '../../src/store/desk/compared';
import type { Ledger } from '../../src/store/derive/ledger';
import { ledgerOf } from '../../src/store/desk/ledger';
import { findSwing, situationSwing } from '../../src/store/derive/swings';
import type { SwingOf } from '../../src/store/desk/whyState';
import { startEffects } from '../../src/store/effects/startEffects';
import { chooseSwing, setWhy } from '../../src/store/desk/whyActions';
import { READING_GROUPS } from '../../src/panels/why/ledger/ledgerReadings';
import { bookGroups, deskGroups } from '../../src/panels/why/swingChoice';
import type { BookRecord, LessonRecord, PlayerRecord, SwingRecord } from '../../src/record';
import { RECORD_VERSION } from '../../src/record/book/recordTypes';
import { draftPlan } from '../../src/store/plan/draftPlan';
import './searchHere';

const ledger = (): Ledger => {
  const answer = ledgerOf(desk.getState());
  if ('problem' in answer) throw new Error(answer.problem);
  return answer;
};
const pair = (): { solid: Compared; ghost: Compared } => {
  const { solid, ghost } = comparedOf(desk.getState());
  if ('problem' in solid || 'problem' in ghost) throw new Error('no pair');
  return { solid, ghost };
};
const readingsCm = ({ checkpoints }: Pick<Compared, 'checkpoints'>): number[] =>
  (['leadArmParallel', 'shaftParallel'] as const).map((id) => {
    const checkpoint = checkpoints[id];
    return isReached(checkpoint) ? judgedReading(id, checkpoint) * 100 : NaN;
  });

/** Another player with another club and tempo, cupped. */
const B: SwingOf = {
  name: 'Player B',
  player: { statureM: 1.62, handed: 'left' },
  club: { id: 'driver', my: null },
  setUp: { ...DEFAULT_DOCUMENT.setUp, downswingMs: 300 },
  movements: { ...STILL_DIALLED, leadWristFlexionDeg: -10 },
};

startEffects();
beforeEach(clearDesk);
afterEach(() => {
  setDrawer(null);
  clearDesk();
});

describe('any two swings', () => {
  test('each ready-made situation can be compared, and reads what it reads when it is laid out', () => {
    for (const { id } of SITUATIONS.filter((one) => one.id !== 'reference')) {
      chooseSwing('solid', situationSwing(id));
      const read = readingsCm(pair().solid);
      loadSituation(id);
      expect(readingsCm(current())).toEqual(read);
      clearDesk();
    }
  });

  test('comparing shows the chosen swing solid and the other as ghost, and closing gives the desk back', () => {
    loadSituation('stuck');
    const own = readingsCm(current());
    chooseSwing('solid', 'B', B);
    chooseSwing('ghost', situationSwing('cupped'));
    setDrawer('compare');
    const { player, swing, ghostSwing } = current();
    expect(player).toEqual(B.player);
    expect(swing.rig.body.stature).toBe(1.62);
    expect(readingsCm(current())).toEqual(readingsCm(pair().solid));
    expect(ghostSwing!.rig.body.stature).toBe(1.78);
    expect(toDeg(ghostSwing!.movements.leadWristFlexion)).toBeCloseTo(-20, 9);
    setDrawer(null);
    expect(readingsCm(current())).toEqual(own);
    expect(desk.getState().document.player).toBe(DEFAULT_DOCUMENT.player);
  });

  test('before and after: the swing before the last step is one to choose, while there is one', () => {
    expect(findSwing('before', desk.getState()).name).toBe('This swing');
    setMovement('leadWristFlexion', -20);
    const before = readingsCm(current());
    setMovement('leadWristFlexion', 4);
    chooseSwing('ghost', 'before');
    expect(pair().ghost.of.name).toMatch(/^Before: Wrist/);
    expect(readingsCm(pair().ghost)).toEqual(before);
    undo();
    undo();
    expect(pair().ghost.of.name).toBe('This swing');
  });

  test('the reference is the one without a top of the player\u2019s own', () => {
    const plain = readingsCm(pair().ghost);
    setSetUp({ ...desk.getState().document.setUp, handHeightCm: 8 });
    expect(readingsCm(pair().ghost)).toEqual(plain);
    expect(readingsCm(pair().solid)).not.toEqual(plain);
  });

  test('what no place shows any more is let go', () => {
    chooseSwing('solid', 'B', B);
    chooseSwing('from', 'B', B);
    chooseSwing('solid', 'now');
    expect(desk.getState().session.why.brought).toHaveLength(1);
    chooseSwing('from', 'reference');
    expect(desk.getState().session.why.brought).toHaveLength(0);
  });
});

describe('swings of the lesson book', () => {
  const kept = { version: RECORD_VERSION, createdMs: 0, changedMs: 0 } as const;
  const computedCm = { leadArmParallel: null, shaftParallel: null };
  const planned = { ...STILL_DIALLED, leadWristFlexionDeg: 3 };
  const now: Document = {
    ...DEFAULT_DOCUMENT,
    movements: { ...STILL_DIALLED, leadWristFlexionDeg: -4 },
    seen: {
      leadArmParallel: { cm: 5, plusMinusCm: 2, from: 'eye' },
      shaftParallel: { cm: 18, plusMinusCm: 4, from: 'eye' },
    },
    plan: draftPlan('plan00000001', { from: STILL_DIALLED, movements: planned, targetCm: computedCm }, null),
  };
  const player: PlayerRecord = {
    kind: 'player',
    ...kept,
    id: 'player-wren',
    name: 'Wren',
    body: now.player,
    clubs: [],
    notes: '',
    archived: false,
    example: false,
  };
  const lesson: LessonRecord = {
    kind: 'lesson',
    ...kept,
    id: 'lesson-1',
    playerId: player.id,
    date: '2026-01-12',
    now,
    computedCm,
    notes: '',
  };
  const swing: SwingRecord = {
    kind: 'swing',
    ...kept,
    id: 'swing-1',
    playerId: player.id,
    name: 'Best',
    now,
    computedCm,
  };
  const records = new Map<string, BookRecord>([player, lesson, swing].map((one) => [one.id, one]));
  const [group] = bookGroups(records);

  test('kept swings and, of each lesson, what was seen, now and the plan can be chosen', () => {
    expect(group.label).toBe('Wren');
    expect(group.options.map(({ text }) => text)).toEqual([
      'Best',
      '12 Jan 2026, as seen',
      '12 Jan 2026, now',
      '12 Jan 2026, plan',
    ]);
    const desks = deskGroups(true, true, 'Before: Wrist').flatMap(({ options }) => options.map(({ value }) => value));
    expect(desks.slice(0, 5)).toEqual(['now', 'reference', 'plan', 'ghost', 'before']);
  });

  test('"as seen" is the most likely explanation of the marks and reads within their give or take; the plan is the plan', () => {
    const [, seen, , aim] = group.options;
    chooseSwing('solid', seen.value, seen.swing);
    chooseSwing('ghost', aim.value, aim.swing);
    const [arm, shaft] = readingsCm(pair().solid);
    expect(Math.abs(arm - 5)).toBeLessThanOrEqual(2);
    expect(Math.abs(shaft - 18)).toBeLessThanOrEqual(4);
    expect(toDeg(pair().ghost.swing.movements.leadWristFlexion)).toBeCloseTo(3, 9);
  });
});

describe('the ledger between any two swings', () => {
  test('player A and player B: set-up is a part of its own and the shares add up', () => {
    setMovement('rotationRate', 1.1);
    chooseSwing('from', 'now');
    chooseSwing('to', 'B', B);
    const { shared, parts, from, to } = ledger();
    if ('missing' in shared) throw new Error('no shares');
    expect(parts).toEqual(['leadWrist', 'rotation', 'setUp']);
    expect(PARTS.reduce((sum, part) => sum + shared.parts[part], 0)).toBeCloseTo(shared.to - shared.from, 9);
    expect(from.rig.body.stature).toBe(1.78);
    expect(to.rig.body.stature).toBe(1.62);
    chooseSwing('solid', 'B', B);
    expect(shared.to * 100).toBeCloseTo(readingsCm(pair().solid)[0], 9);
  });

  test('any reading can be shared out: all of both checkpoints, the path they imply, and the delivery', () => {
    const { leadArmParallel: arm } = readCheckpoints(current().referenceSwing);
    if (!isReached(arm)) throw new Error('not reached');
    const all = READING_GROUPS.flatMap(({ options }) => options.map(({ value }) => value));
    const wanted = [
      ...Object.keys(arm.readings).flatMap((id) => [`leadArmParallel:${id}`, `shaftParallel:${id}`]),
      'leadArmParallel:impliedPath',
      'shaftParallel:impliedPath',
      ...BALL_READINGS.map((id) => `ball:${id}`),
    ].filter(
      // A level shaft is level, never meets the ground, and is seen end on beside the trail arm: there is nothing to ask.
      (id) => !/^shaftParallel:(shaftPitch|gripEndLine|bicepGap|bicepCrossing)$/.test(id),
    );
    expect(all.toSorted()).toEqual(wanted.toSorted());
    loadSituation('cuppedAndFast');
    for (const reading of all) {
      setWhy({ reading });
      const { shared } = ledger();
      if ('missing' in shared) throw new Error(`${reading}: ${shared.missing}`);
      const sum = PARTS.reduce((total, part) => total + shared.parts[part], 0);
      expect(Math.abs(sum - (shared.to - shared.from)), reading).toBeLessThan(1e-9);
      const [at, id] = reading.split(':') as ['leadArmParallel' | 'shaftParallel' | 'ball', ReadingId];
      const { checkpoints, delivery } = current();
      if (at === 'ball') expect(shared.to, reading).toBe((delivery as unknown as Record<string, number>)[id]);
      else if ((id as string) !== 'impliedPath') {
        const checkpoint = checkpoints[at];
        if (!isReached(checkpoint)) throw new Error('not reached');
        expect(shared.to, reading).toBe(checkpoint.readings[id]);
      }
    }
  });
});

test('linked by the clock, a slower ghost stands earlier in its own swing', () => {
  chooseSwing('ghost', 'B', B);
  setDrawer('compare');
  setWhy({ link: 'clock' });
  const { t } = desk.getState().session;
  const { swing, ghostSwing } = current();
  expect(t).toBeGreaterThan(0);
  expect(ghostTime(desk.getState()) * ghostSwing!.tempo).toBeCloseTo(t * swing.tempo, 12);
  expect(clockTime(t, swing, ghostSwing!)).toBeLessThan(t);
});
