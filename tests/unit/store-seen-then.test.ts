import { beforeEach, expect, test } from 'vitest';
import { DEFAULT_DOCUMENT, desk, put, setMovement, USUAL_CAMERAS, type Document } from '../../src/store';
import { clearDesk, current, honestSeenOf } from '../../src/store/desk/desk';
import { referenceKey } from '../../src/store/derive/references';
import { toBodyAndClub } from '../../src/store/document/convert';
import { startEffects } from '../../src/store/effects/startEffects';
import { createSeenReader, type SeenThen } from '../../src/store/solver/seenThen';
import { solverClient } from '../../src/store/solver/solverClient';

startEffects();
beforeEach(clearDesk);

const MARKED: Document = {
  ...DEFAULT_DOCUMENT,
  bands: { ...DEFAULT_DOCUMENT.bands, leadArmParallel: { lowCm: -1, highCm: 2 } },
  checkpointArmDeg: -6,
  seen: { leadArmParallel: { cm: 6, plusMinusCm: 2, from: 'typed' }, shaftParallel: null },
  camera: { ...USUAL_CAMERAS, downTheLine: { ...USUAL_CAMERAS.downTheLine, rightCm: 60 } },
};

const readThen = (document: Document): SeenThen => {
  const then = createSeenReader()(document, desk.getState());
  if (!then || 'problem' in then) throw new Error(then?.problem ?? 'still solving');
  return then;
};

test('what was seen in a closed lesson counts just as it did on the desk, whatever stands there now', () => {
  put({ document: MARKED });
  const [honest, bands] = [honestSeenOf(desk.getState()), current().exactBands];
  clearDesk();
  setMovement('leadWristFlexion', -25);
  const then = readThen(MARKED);
  expect(then.honest).toEqual(honest);
  expect(honest.leadArmParallel).toMatchObject({ isCorrected: true });
  expect(honest.leadArmParallel!.cm).not.toBeCloseTo(6, 0);
  expect(then.bands).toEqual(bands);
  expect(desk.getState().document.seen.leadArmParallel).toBeNull();
});

test('its causes are asked for with its own marks, and answered beside whatever the open drawer asks', async () => {
  const then = readThen(MARKED);
  const answer = await solverClient.answerOnce(then.job!);
  if (answer.kind !== 'match') throw new Error(answer.kind);
  expect(answer.causes.length).toBeGreaterThan(1);
  // The cause that fits reads what was seen, camera reckoned in, within the coach's margin.
  const { cm, plusMinusCm } = then.honest.leadArmParallel!;
  const fits = answer.causes.filter(({ status }) => status === 'fits');
  expect(fits.length).toBeGreaterThan(0);
  for (const { readings } of fits)
    expect(Math.abs(readings.leadArmParallel * 100 - cm)).toBeLessThanOrEqual(plusMinusCm + 0.01);
});

test('without a mark nothing is asked, and while the reference swing is being found nothing is said, or why it cannot be', () => {
  const read = createSeenReader();
  expect(readThen(DEFAULT_DOCUMENT).job).toBeUndefined();
  const tall: Document = { ...MARKED, player: { ...MARKED.player, statureM: 1.937 } };
  expect(read(tall, { ...desk.getState(), references: new Map() })).toBeUndefined();
  const { body, club } = toBodyAndClub(tall);
  const failed = new Map([[referenceKey(body, club), { failed: 'No swing was found.' }]]);
  expect(read(tall, { ...desk.getState(), references: failed })).toEqual({ problem: 'No swing was found.' });
});
