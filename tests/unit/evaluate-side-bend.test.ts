import { expect, test } from 'vitest';
import { answerLine } from '../../src/evaluate/answer';

interface Answered {
  readonly error?: { readonly field: string; readonly message: string };
  readonly leadArmParallel: { readonly readings: Record<string, number | null> };
  readonly shaftParallel: { readonly readings: Record<string, number | null> };
}
const swing = (player: object, movements: object): Answered =>
  JSON.parse(
    answerLine({
      number: 1,
      text: JSON.stringify({ kind: 'swing', player: { statureM: 1.78, ...player }, club: '7-iron', movements }),
    }).text,
  ) as Answered;

test('side bend to the trail side flattens the shaft', () => {
  const planes = [-5, 0, 5].map(
    (deg) => swing({}, { trailSideBendDeg: deg }).leadArmParallel.readings['shaftPlaneDeg']!,
  );
  expect(planes[0]).toBeGreaterThan(planes[1]);
  expect(planes[1]).toBeGreaterThan(planes[2]);
});

test('the lean is an error that says what to use', () => {
  const { error } = swing({}, { trailTiltDeg: 5 });
  expect(error!.field).toBe('movements.trailTiltDeg');
  expect(error!.message).toContain('trailSideBendDeg');
});

test('a lag is held, and one outside what a wrist can hold is refused', () => {
  expect(swing({ lagDeg: 100 }, {}).leadArmParallel.readings['leadArmToShaftDeg']).toBeCloseTo(100, 0);
  expect(swing({ lagDeg: 80 }, {}).error!.field).toBe('player.lagDeg');
});

test('at shaft parallel the shaft is seen end on: no gap and no crossing', () => {
  const { leadArmParallel, shaftParallel } = swing({}, {});
  for (const field of ['bicepGapCm', 'bicepCrossing']) {
    expect(leadArmParallel.readings[field]).not.toBeNull();
    expect(shaftParallel.readings[field]).toBeNull();
  }
});
