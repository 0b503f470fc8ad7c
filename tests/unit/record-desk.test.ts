import { beforeEach, describe, expect, test } from 'vitest';
import { linkDesk, computeCm } from '../../src/record/book/deskLink';
import { makeExample } from '../../src/record/book/example';
import { readRecord } from '../../src/record/file/validate';
import { desk, put, setBoard, setExaggerate, setMovement, undo } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';
import { DEFAULT_DOCUMENT, STILL_DIALLED } from '../../src/store/document/document';
import type { LessonRecord } from '../../src/record/book/recordTypes';
import { createKeeper, makeLesson, makePlayer, puts, standBook } from './record-stand';

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

test('the example is valid, marked, and improves toward the band', () => {
  const [player, ...lessons] = makeExample(computeCm);
  for (const record of [player, ...lessons]) expect(readRecord(record)).toEqual({ record });
  expect(player).toMatchObject({ example: true, name: expect.stringMatching(/^Example/) as string });
  const p5 = (lessons as LessonRecord[]).map(({ computedCm }) => computedCm.leadArmParallel!);
  expect(p5.every((cm, at) => at === 0 || cm < p5[at - 1])).toBe(true);
});
