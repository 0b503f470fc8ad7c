import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import type { BendCause, Bent } from '../../src/reading/camera/cameraCause';
import {
  isWorthMoving,
  sayBend,
  sayFaceOn,
  sayFront,
  sayLine,
  sayMisjudged,
  sayMove,
  sayMoveFront,
  sayTurn,
  sayUnseen,
  TOO_NARROW,
  type PlacedTripod,
} from '../../src/words';

const CM = { length: 'cm' } as const;
const IN = { length: 'in' } as const;
const tripod: PlacedTripod = { distanceM: 4, heightM: 1.6, rightCm: 40, aimRightDeg: -5, clockwiseDeg: 3 };
const bent = (bend: number, cause: BendCause = 'offset'): Bent => ({ seen: 0, bend, cause });
const atP6 = (bend: number, cause?: BendCause) =>
  [
    { at: 'leadArmParallel', read: bent(0.004) },
    { at: 'shaftParallel', read: bent(bend, cause) },
  ] as const;

describe('what a camera down the line does, in one sentence', () => {
  test.each<[string, number, BendCause, string]>([
    ['aside', -0.061, 'offset', 'Standing 40 cm right of the line, it reads 6 cm shallower at shaft parallel.'],
    ['held high', -0.03, 'height', 'Standing 1.6 m high, it reads 3 cm shallower at shaft parallel.'],
    ['aimed badly', 0.02, 'aim', 'Aimed 5° left of the hands, it reads 2 cm steeper at shaft parallel.'],
    ['not level', 0.02, 'roll', 'Tilted 3° clockwise, it reads 2 cm steeper at shaft parallel.'],
    ['near', 0.038, 'distance', 'From 4 m away, it reads 4 cm steeper at shaft parallel.'],
  ])('%s', (_, bend, cause, sentence) => {
    expect(sayLine(atP6(bend, cause), tripod, CM)).toBe(sentence);
  });

  test('in inches the tripod stands in feet', () => {
    const far = { ...tripod, distanceM: 3.048 };
    expect(sayLine(atP6(0.0254, 'distance'), far, IN)).toBe(
      'From 10 feet away, it reads 1 inch steeper at shaft parallel.',
    );
  });

  test('left of the line is said as left', () => {
    expect(sayLine(atP6(0.06), { ...tripod, rightCm: -40 }, CM)).toContain('40 cm left of the line');
  });

  test('less than a centimetre is true', () => {
    expect(sayLine(atP6(0.009), tripod, CM)).toBe('Your camera reads this swing true to 1 cm.');
    expect(isWorthMoving(bent(0.009))).toBe(false);
    expect(isWorthMoving(bent(-0.011))).toBe(true);
  });

  test('what cannot be read is said with what to do', () => {
    const read = { missing: 'behind-the-camera' } as const;
    expect(sayLine([{ at: 'shaftParallel', read }], tripod, CM)).toBe(
      'The club swings past this camera at shaft parallel. Move it back.',
    );
    expect(sayLine([{ at: 'leadArmParallel', read: { missing: 'end-on' } }], tripod, CM)).toContain('Move it aside.');
    expect(sayLine([{ at: 'shaftParallel', read: { missing: 'never-parallel' } }], tripod, CM)).toBe(
      'No checkpoint is reached, so there is nothing to read.',
    );
    expect([read, { missing: 'end-on' }, { missing: 'never-parallel' }].map((one) => sayUnseen(one as never))).toEqual([
      'out of its sight',
      'end-on to it',
      'not reached',
    ]);
  });
});

describe('what a camera face on does', () => {
  test('the reading that is bent most is named, with its sense', () => {
    const reads = [
      { at: 'leadArmParallel', id: 'armAngle', read: bent(rad(-1.5)) },
      { at: 'leadArmParallel', id: 'trunkLean', read: bent(rad(3.5)) },
    ] as const;
    expect(sayFront(reads, tripod, CM)).toBe('Standing 40 cm right of centre, it reads the trunk lean 4° too large.');
    expect(sayFront([reads[0]], tripod, CM)).toContain('reads the lead arm 2° too low');
  });

  test('angles are said with their side', () => {
    expect(sayFaceOn('armAngle', rad(-10))).toBe('10° below level');
    expect(sayFaceOn('shaftAngle', rad(0.2))).toBe('level');
    expect(sayFaceOn('trunkLean', rad(14))).toBe('14° from the target');
    expect(sayTurn('shaftAngle', rad(2))).toBe('2° too high');
    expect(sayTurn('shaftAngle', rad(0.3))).toBe('true');
  });
});

describe('how it is mended', () => {
  test('by how far to carry it, and what it reads there', () => {
    expect(sayMove(tripod, { rightCm: 15, heightM: 0.9, worst: 0.0053 }, CM)).toEqual([
      'Move it 25 cm left and 70 cm down.',
      'There it reads this swing true to 1 cm.',
    ]);
    expect(sayMove(tripod, { rightCm: 60, heightM: 1.6, worst: 0.012 }, CM)).toEqual([
      'Move it 20 cm right.',
      'There it reads this swing true to 2 cm.',
    ]);
  });
  test('or farther back, where no place is told', () => {
    expect(sayMove(tripod, null, CM)).toEqual(['Farther back it bends less: twice as far, about half as much.']);
    expect(sayMoveFront(tripod, CM)[0]).toBe('Move it 40 cm left, opposite the middle of the stance.');
    expect(sayMoveFront({ ...tripod, rightCm: 0 }, CM)).toHaveLength(1);
  });
  test('a verdict that comes out wrong is said, one that comes out right is not', () => {
    expect(sayMisjudged('shaftParallel', 'On plane', 'Steep')).toBe(
      'At shaft parallel you would call it on plane. It is steep.',
    );
    expect(sayMisjudged('shaftParallel', 'Steep', 'Steep')).toBeUndefined();
  });
});

test('a bend is steeper or shallower, and nothing when it is shown as nothing', () => {
  expect([0.021, -0.021, 0.001].map((bend) => sayBend(bend, CM))).toEqual(['2 cm steeper', '2 cm shallower', 'true']);
});

test('no sentence has more than 15 words, whatever the camera and the units', () => {
  const causes: BendCause[] = ['offset', 'height', 'aim', 'roll', 'distance'];
  const sentences = [CM, IN].flatMap((units) =>
    causes.flatMap((cause) => [
      sayLine(atP6(-0.25, cause), { ...tripod, clockwiseDeg: -3.5 }, units),
      ...(['armAngle', 'shaftAngle', 'trunkLean'] as const).map((id) =>
        sayFront([{ at: 'shaftParallel', id, read: bent(rad(-12), cause) }], tripod, units),
      ),
      ...sayMove(tripod, { rightCm: -130, heightM: 0.9, worst: 0.02 }, units),
      ...sayMoveFront(tripod, units),
      TOO_NARROW,
    ]),
  );
  for (const text of sentences)
    for (const sentence of text.split(/(?<=\.) /)) expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(15);
});
