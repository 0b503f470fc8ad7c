import fc from 'fast-check';
import { rad } from '../../src/math/angle';
import { createJointVector, JOINTS, type JointVector } from '../../src/model/joints';

/** An angle in radians, drawn as whole hundredths of a degree, so that no part of the range is favoured. */
export const angle = (fromDeg = -180, toDeg = 180): fc.Arbitrary<number> =>
  fc
    .integer({ min: Math.round(fromDeg * 100), max: Math.round(toDeg * 100) })
    .map((hundredths) => rad(hundredths / 100));

/** A length in metres, drawn as whole tenths of a millimetre. */
export const length = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(from * 1e4), max: Math.round(to * 1e4) }).map((tenths) => tenths / 1e4);

/** A unit vector, by longitude and height. */
export const direction = (): fc.Arbitrary<[number, number, number]> =>
  fc.tuple(angle(), fc.integer({ min: -9999, max: 9999 })).map(([around, height]) => {
    const y = height / 10000;
    const level = Math.sqrt(1 - y * y);
    return [level * Math.cos(around), y, level * Math.sin(around)];
  });

const DEG_PER_RAD = 1 / rad(1);

/** Joint values over the whole of every joint's range. */
export const jointVector = (): fc.Arbitrary<JointVector> =>
  fc
    .tuple(
      ...JOINTS.map(({ kind, min, max }) =>
        kind === 'angle' ? angle(min * DEG_PER_RAD, max * DEG_PER_RAD) : length(min, max),
      ),
    )
    .map((values) => {
      const q = createJointVector();
      q.set(values);
      return q;
    });
