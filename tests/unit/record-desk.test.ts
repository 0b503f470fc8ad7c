import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { linkDesk, computeCm } from '../../src/record/book/deskLink';
import { editLesson } from '../../src/record/book/edits';
import { makeExample } from '../../src/record/book/example';
import { readRecord } from '../../src/record/file/validate';
import { desk, put, setBoard, setExaggerate, setMovement, undo } from '../../src/store';
import { referenceKey } from '../../src/store/derive/references';
import { toBodyAndClub } from '../../src/store/document/convert';
import { solveReference } from '../../src/solving/reference/reference';
import { clearDesk } from '../../src/store/desk/desk';
import { drawGuess, guessAgain, setGuessFirst, showGuess } from '../../src/store/desk/guess';
import { startEffects } from '../../src/store/effects/startEffects';
import { DEFAULT_DOCUMENT, STILL_DIALLED } from '../../src/store/document/document';
import { LIMITS, type LessonRecord } from '../../src/record/book/recordTypes';
import { migrate } from '../../src/record/book/migrations';
import { createKeeper, makeLesson, makePlan, makePlayer, puts, standBook } from './record-stand';

startEffects();
beforeEach(() => clearDesk());

async function standLesson() {
  const { book, clock, keeper } = await standBook();
  const link = linkDesk(book, clock);
  link.start();
  const player = makePlayer();
  const lesson = makeLesson(player.id, {
    now: { ...DEFAULT_DOCUMENT, movements: { ...STILL_DIALLED, leadWristFlexionDeg: -8 } },
  });
  book.apply(puts(player, lesson));
  const kept = (): LessonRecord => book.state.getState().records.get(lesson.id) as LessonRecord;
  return { book, clock, keeper, link, lesson, kept };
}
const flexion = (): number => desk.getState().document.movements.leadWristFlexionDeg;

describe('an open lesson', () => {
  test('lies on the desk as it was left, follows what is dialled, and gives the desk back', async () => {
    const { clock, link, lesson, kept } = await standLesson();
    setMovement('leadWristFlexion', 12);
    link.open(lesson);
    expect(flexion()).toBe(-8);
    setMovement('leadWristFlexion', -20);
    await clock.go(350);
    expect(kept().now.movements.leadWristFlexionDeg).toBe(-20);
    expect(kept().computedCm).toEqual(computeCm(desk.getState().document));
    link.close();
    expect(flexion()).toBe(12);
    setMovement('leadWristFlexion', 3);
    await clock.go(1000);
    expect(kept().now.movements.leadWristFlexionDeg).toBe(-20);
  });

  test('keeps each guess once it was shown, with where the shaft went, and no more than it may', async () => {
    const { link, lesson, kept } = await standLesson();
    setGuessFirst(true);
    setMovement('leadWristFlexion', 6);
    drawGuess('leadArmParallel', 0.02);
    showGuess();
    // No lesson was open.
    expect(kept().guesses).toBeUndefined();
    link.open(lesson);
    guessAgain();
    setMovement('leadWristFlexion', -20);
    drawGuess('leadArmParallel', 0.031);
    expect(kept().guesses).toBeUndefined();
    showGuess();
    const wentCm = Number(computeCm(desk.getState().document).leadArmParallel!.toFixed(1));
    expect(wentCm).toBeGreaterThan(2);
    expect(kept().guesses).toEqual([{ at: 'leadArmParallel', drawnCm: 3.1, wentCm }]);
    expect(readRecord(JSON.parse(JSON.stringify(kept())))).toEqual({ record: kept() });
    for (let i = 0; i < LIMITS.guesses; i++) {
      setMovement('leadWristFlexion', i % 2);
      drawGuess('shaftParallel', i / 1000);
      showGuess();
    }
    expect(kept().guesses).toHaveLength(LIMITS.guesses);
    expect(kept().guesses![0]).toMatchObject({ at: 'shaftParallel', drawnCm: 0 });
    expect(readRecord(JSON.parse(JSON.stringify(kept())))).toEqual({ record: kept() });
    const [wrong] = kept().guesses!;
    const damaged = { ...kept(), guesses: [{ ...wrong, wentCm: 'far' }] };
    const read = readRecord(JSON.parse(JSON.stringify(damaged)));
    expect('damage' in read && read.damage).toMatch(/wentCm/);
    setGuessFirst(false);
  });

  test('is not touched by being looked at, on another board and in other units', async () => {
    const { clock, link, lesson, kept } = await standLesson();
    setBoard('dark');
    link.open(lesson);
    await clock.go(1000);
    expect(desk.getState().document.board).toBe('dark');
    expect(kept().changedMs).toBe(lesson.changedMs);
  });

  test('cannot be undone into the swing of somebody else', async () => {
    const { link, lesson } = await standLesson();
    setMovement('leadWristFlexion', 12);
    link.open(lesson);
    setMovement('leadWristFlexion', -20);
    expect(undo()).toBeDefined();
    expect(undo()).toBeUndefined();
    expect(flexion()).toBe(-8);
  });

  test('keeps what was dialled when a note is taken back', async () => {
    const { book, clock, link, lesson, kept } = await standLesson();
    link.open(lesson);
    book.apply({ label: 'Notes', put: [{ ...kept(), notes: 'x', changedMs: 2000 }], remove: [] });
    setMovement('leadWristFlexion', -20);
    await clock.go(350);
    book.undo();
    expect(kept()).toMatchObject({ notes: '', now: { movements: { leadWristFlexionDeg: -20 } } });
  });

  test('goes on after a reload', async () => {
    const { clock, keeper, link, lesson } = await standLesson();
    link.open(lesson);
    await clock.go(1000);
    clearDesk();
    const { book: next, clock: nextClock } = await standBook({ keeper: createKeeper(keeper.shelf), starts: false });
    const nextLink = linkDesk(next, nextClock);
    nextLink.start();
    next.start();
    await nextClock.go(100);
    expect(nextLink.openLesson()?.id).toBe(lesson.id);
    expect(flexion()).toBe(-8);
  });
});

describe('a lesson of the first model', () => {
  /** Kept with readings that today's model does not compute. */
  async function standOldLesson() {
    const stand = await standLesson();
    const today = computeCm(stand.lesson.now);
    const plan = makePlan({ targetCm: { leadArmParallel: -3, shaftParallel: 7 } });
    const old: LessonRecord = {
      ...stand.lesson,
      changedMs: 2000,
      now: { ...stand.lesson.now, plan },
      computedBy: 1,
      computedCm: { leadArmParallel: today.leadArmParallel! - 0.7, shaftParallel: today.shaftParallel! + 2.3 },
    };
    stand.book.apply(puts(old));
    return { ...stand, old, today };
  }

  test('says once that the model has changed, and by how much both readings moved', async () => {
    const { book, link, old, kept, today } = await standOldLesson();
    const steps = book.state.getState().undo;
    link.open(old);
    expect(desk.getState().notice).toBe(
      'The model has changed since this lesson was saved. Its lean is now side bend. ' +
        'Computed now: lead arm parallel 0.7 cm higher, shaft parallel 2.3 cm farther behind.',
    );
    expect(kept().computedCm).toEqual(today);
    expect(kept()).not.toHaveProperty('computedBy');
    expect(kept().now.plan?.targetCm).toEqual(computeCm(DEFAULT_DOCUMENT));
    expect(desk.getState().document.plan).toEqual(kept().now.plan);
    expect(book.state.getState().undo).toEqual(steps);
    link.close();
    put({ notice: null });
    link.open(kept());
    expect(desk.getState().notice).toBeNull();
  });

  test('whose reference swing is still being found says so as soon as it is there', async () => {
    const { book, clock, link, old, kept } = await standOldLesson();
    const rare = {
      ...old,
      changedMs: 3000,
      now: { ...old.now, player: { statureM: 1.777, handed: 'right' as const } },
    };
    book.apply(puts(rare));
    link.open(rare);
    expect(desk.getState().notice).toBeNull();
    expect(kept().computedBy).toBe(1);
    // Without workers the search fails; then it is there.
    await clock.go(350);
    expect(desk.getState().notice).toBeNull();
    const { body, club } = toBodyAndClub(rare.now);
    const found = { reference: solveReference(body, club).reference };
    put({ references: new Map(desk.getState().references).set(referenceKey(body, club), found) });
    await clock.go(350);
    expect(desk.getState().notice).toMatch(/^The model has changed/);
    expect(kept()).not.toHaveProperty('computedBy');
    expect(kept().computedCm).toEqual(computeCm(rare.now));
  });

  test('stays marked while only its notes are edited, and does not come back marked when that is undone', async () => {
    const { book, link, old, kept } = await standOldLesson();
    book.apply(editLesson(old, 4000, { notes: 'x' }, 'Notes'));
    expect(kept().computedBy).toBe(1);
    link.open(kept());
    expect(kept()).not.toHaveProperty('computedBy');
    book.undo();
    expect(kept()).toMatchObject({ notes: '' });
    expect(kept()).not.toHaveProperty('computedBy');
  });

  test('read from what version 1 stored it is marked, as is a saved swing; a player is not', () => {
    const { records } = JSON.parse(
      readFileSync(new URL('../fixtures/lesson-book-store-v1.json', import.meta.url), 'utf8'),
    ) as { records: unknown[] };
    const marks = records.map((raw) => {
      const read = readRecord(migrate(raw));
      return 'record' in read && 'computedBy' in read.record ? read.record.computedBy : undefined;
    });
    expect(marks).toEqual([undefined, undefined, 1, 1, 1]);
  });
});

describe('computed readings', () => {
  test('are never the exaggerated ones', () => {
    setMovement('leadWristFlexion', -12);
    const plain = computeCm(desk.getState().document);
    setExaggerate(true);
    expect(computeCm(desk.getState().document)).toEqual(plain);
    expect(plain.leadArmParallel).toBeGreaterThan(1);
  });
  test('leave what the desk shows as it was', () => {
    put({ document: { ...DEFAULT_DOCUMENT, player: { statureM: 1.62, handed: 'left' } } });
    const before = desk.getState();
    computeCm(DEFAULT_DOCUMENT);
    expect(desk.getState()).toBe(before);
  });
});

test('a change is later than the one before, even where the clock was set back: of two copies it is the newer', () => {
  const lesson = makeLesson('somebody', { changedMs: 9000 });
  const [later] = editLesson(lesson, 4000, { notes: 'x' }, '').put;
  expect(later).toMatchObject({ notes: 'x', changedMs: 9001 });
  expect(editLesson(lesson, 12_000, { notes: 'x' }, '').put).toMatchObject([{ changedMs: 12_000 }]);
});

test('the example is valid, marked, and improves toward the band', () => {
  const [player, ...lessons] = makeExample(computeCm);
  for (const record of [player, ...lessons]) expect(readRecord(record)).toEqual({ record });
  expect(player).toMatchObject({ example: true, name: expect.stringMatching(/^Example/) as string });
  const p5 = (lessons as LessonRecord[]).map(({ computedCm }) => computedCm.leadArmParallel!);
  expect(p5.every((cm, at) => at === 0 || cm < p5[at - 1])).toBe(true);
});
