import { describe, expect, test } from 'vitest';
import { pixelSize, type Shape } from '../../src/export/clip/formats';
import { bodyBoxes } from '../../src/export/stop/bodyBoxes';
import { stopGeometry } from '../../src/export/stop/geometry';
import { layStop } from '../../src/export/stop/layStop';
import { sizesFor } from '../../src/export/stop/sizes';
import { mixedPose } from '../../src/export/stop/stopPainter';
import { takeSnapshot, type ShownSwing } from '../../src/export/task/exportSnapshot';
import { createFigure } from '../../src/figure/figure';
import { heelLiftAt } from '../../src/figure/stance';
import { rad } from '../../src/math/angle';
import { AT, createPose } from '../../src/model/chain';
import { DIALS, STILL, type Movements } from '../../src/model/movements';
import { doBoxesMeet, isInside } from '../../src/plates/annotation/boxes';
import { toPoint, type Box } from '../../src/plates/plate/frame';
import { CHECKPOINT_IDS } from '../../src/reading/checkpointTable';
import { isReached } from '../../src/reading/checkpoints';
import { judgedReading } from '../../src/reading/verdicts';
import { current, desk, setMovement } from '../../src/store';
import { sayCheckpoint } from '../../src/words';
import { sayFault, sayFeel, sayNumbers, sayWas, sayWhere, sayWholeChange } from '../../src/words/showing/handout';

const units = { length: 'cm' } as const;
const take = (movements: Parameters<typeof setMovement>[1], bend = 0): ShownSwing => {
  setMovement('leadWristFlexion', movements);
  setMovement('trailSideBend', bend);
  return takeSnapshot(desk.getState(), current(), 'reference').now;
};
const swings = { steep: take(-22), 'over-shallow': take(25, 8), 'on plane': take(0) };
const { derived } = takeSnapshot(desk.getState(), current(), 'reference');
const figure = createFigure(derived.body, derived.club);

describe.each(['16:9', '9:16', '1:1'] satisfies Shape[])('a stop in %s', (shape) => {
  const size = pixelSize(shape, '720p');
  const { sizes, unit } = sizesFor(size);
  const cases = Object.entries(swings).flatMap(([name, swing]) =>
    CHECKPOINT_IDS.flatMap((id) => ([1, -1] as const).map((side) => ({ name, swing, id, side }))),
  );
  test.each(cases)(
    '$name, $id, side $side: clubhead and number in the picture, nothing on the words',
    ({ swing, id, side }) => {
      const at = swing.checkpoints[id];
      if (!isReached(at)) throw new Error('not reached');
      const stance = { ballPoint: swing.swing.reference.ballPoint, heelLift: heelLiftAt(swing.swing, at.t) };
      const body = { pose: at.pose, boxes: bodyBoxes(figure, at.pose, stance) };
      // A word as long as the longest verdict, beside a left-handed player on the right.
      const wide = size.width > size.height ? 0.45 : size.width < size.height ? 0.8 : 0.5;
      const left = side === -1 && size.width >= size.height ? size.width * (0.95 - wide) : sizes.left * unit;
      const words: Box[] = [
        {
          left,
          right: left + wide * size.width,
          top: sizes.top * unit,
          bottom: (sizes.top + sizes.word[id] * 1.6) * unit,
        },
      ];
      const number = { width: sizes.stop[id].number * 1.3 * unit, height: sizes.stop[id].number * 0.67 * unit };
      const of = {
        id,
        side,
        band: derived.bands[id],
        bodies: [body],
        words: [{ withNumber: words, alone: [] }],
        number,
      };
      const { frame, numbers } = layStop(of, sizes, unit, size);
      const picture = { left: 0, top: 0, right: size.width, bottom: size.height };
      const { x, y } = toPoint(frame, at.pose, AT.head);
      expect(isInside({ left: x - 20, right: x + 20, top: y - 20, bottom: y + 20 }, picture)).toBe(true);
      expect(isInside(numbers[0], picture)).toBe(true);
      expect(doBoxesMeet(numbers[0], words[0])).toBe(false);
      expect(doBoxesMeet({ left: x - 10, right: x + 10, top: y - 10, bottom: y + 10 }, words[0])).toBe(false);
      // As large as it can be: never under half of the usual scale.
      expect(frame.scale).toBeGreaterThanOrEqual(0.58 * sizes.stop[id].scale * unit);
      // The dimension is as long as the reading.
      const { dimension } = stopGeometry(id, at.pose, frame, derived.bands[id]);
      const length = Math.hypot(dimension.to.x - dimension.from.x, dimension.to.y - dimension.from.y);
      expect(length).toBeCloseTo(Math.abs(judgedReading(id, at)) * frame.scale, 6);
    },
  );
});

test('one body becomes the other with bones of the same length, and both ends are the swings themselves', () => {
  const [from, to] = [swings.steep, swings['on plane']];
  const times = [from, to].map(({ checkpoints: { leadArmParallel: at } }) => (isReached(at) ? at.t : 0));
  const pose = createPose();
  const shaft = (): number => Math.hypot(...[0, 1, 2].map((axis) => pose[AT.head + axis] - pose[AT.leadGrip + axis]));
  const lengths = [0, 0.3, 0.7, 1].map((share) => {
    mixedPose(from.swing, times[0], to.swing, times[1], share, pose);
    return shaft();
  });
  for (const length of lengths) expect(length).toBeCloseTo(lengths[0], 9);
  const at = to.checkpoints.leadArmParallel;
  if (!isReached(at)) throw new Error('not reached');
  pose.forEach((value, i) => expect(value).toBeCloseTo(at.pose[i], 9));
});

describe('words of hand-outs', () => {
  const changes = (to: Partial<Movements>, from: Movements = STILL) =>
    DIALS.map(({ id }) => ({ id, change: (to[id] ?? from[id]) - from[id] }));
  const cupped = { ...STILL, leadWristFlexion: rad(-12), rotationRate: 1.1, rotationDelay: -0.02 };

  test('a change is named as a whole, the wrist first', () => {
    const say = (to: Partial<Movements>, from = cupped) => sayWholeChange(changes(to, from), from, units);
    expect(say({ ...STILL, leadWristFlexion: rad(-1), trailSideBend: rad(2) })).toEqual({
      head: '11° less cup',
      rest: 'with a later, smaller turn and 2° more side bend',
    });
    expect(say({ leadWristFlexion: rad(5) }, STILL)).toEqual({ head: '5° more bow', rest: '' });
    expect(say({ rotationDelay: -0.02, pelvisShift: 0.03 }, STILL)).toEqual({
      head: 'An earlier turn',
      rest: 'with 3 cm more hip slide',
    });
    expect(say({}, STILL)).toEqual({ head: 'No change', rest: '' });
  });

  test('what is said agrees with the plates, at most 15 words a sentence', () => {
    for (const { checkpoints } of Object.values(swings)) {
      const words = {
        leadArmParallel: sayCheckpoint('leadArmParallel', checkpoints.leadArmParallel, derived.bands, units),
        shaftParallel: sayCheckpoint('shaftParallel', checkpoints.shaftParallel, derived.bands, units),
      };
      const fault = sayFault(
        words,
        changes({}, cupped).map(({ id }) => ({ id, change: STILL[id] - cupped[id] })),
      );
      for (const id of CHECKPOINT_IDS) {
        // The number stands on the body, once.
        expect(sayWhere(id, words[id])).not.toMatch(/\d/);
        expect(sayNumbers(id, words[id])).toContain(words[id].shortWhy);
        expect(sayWas(words[id])).toMatch(words[id].verdict === 'onPlane' ? /^Was on plane$/ : /^Was \d/);
        for (const said of [fault, sayWhere(id, words[id]), sayNumbers(id, words[id])]) {
          expect(said.split(' ').length).toBeLessThanOrEqual(15);
        }
      }
    }
    const steep = { verdict: 'steep', word: 'Steep' } as ReturnType<typeof sayCheckpoint>;
    const both = { leadArmParallel: steep, shaftParallel: steep };
    expect(sayFault(both, changes(STILL, cupped))).toBe('Steep coming down: too much cup, turning too fast.');
    expect(sayFault(both, [])).toBe('Steep coming down.');
  });

  test('a feel is not said to be felt twice', () => {
    expect(sayFeel('Feel the arms fall first.')).toBe('The arms fall first.');
    expect(sayFeel('Knuckles to the ground.')).toBe('Knuckles to the ground.');
    expect(sayFeel('')).toBe('');
  });
});
