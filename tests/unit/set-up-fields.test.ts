import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bodyOf, STATURE_LIMITS_M } from '../../src/model/body';
import { CLUB_LIMITS } from '../../src/model/club';
import { edgeDial } from '../../src/store';
import { typingProblem } from '../../src/words/swing/edgeDials';
import { lengthField } from '../../src/panels/player/lengthFields';
import { outside } from '../../src/words/numbers/ranges';

describe('a value that cannot be taken', () => {
  test('is answered in the unit of its field, under the name of its field, with the minus of print', () => {
    expect(outside('Height', 250, 140, 210, 'cm', 1)).toBe('Height 250 cm is outside 140 to 210 cm.');
    expect(outside('Turn', -25, -20, 20, '°')).toBe('Turn −25° is outside −20 to 20°.');
    expect(outside('Lowest, below is minus', 5, -40, 1.5, 'cm', 1)).toMatch(/^Lowest 5 cm is outside −40 to 1.5 cm/);
    expect(typingProblem(edgeDial('leadWristFlexion'), -99, { length: 'cm' })).toBe(
      'Lead wrist: −99 is outside. Enter −40 to 40°.',
    );
    expect(typingProblem(edgeDial('leadWristFlexion'), NaN, { length: 'cm' })).toBe(
      'Lead wrist: not a number. Enter −40 to 40°.',
    );
    expect(typingProblem(edgeDial('pelvisShift'), 99, { length: 'in' })).toMatch(
      /^Hip slide: 99 is outside. Enter −[\d.]+ to [\d.]+ in\.$/,
    );
  });

  test.each(['cm', 'in'] as const)('both ends that are named can be typed, in %s', (length) => {
    const { unit, decimals, toField, fromField } = lengthField({ length });
    for (const { min, max } of [STATURE_LIMITS_M, CLUB_LIMITS.lengthM]) {
      const said = outside('Length', 1e3, toField(min), toField(max), unit, decimals)!;
      const [low, high] = /outside ([\d.]+) to ([\d.]+)/.exec(said)!.slice(1).map(Number);
      for (const end of [low, high]) {
        expect(outside('Length', end, toField(min), toField(max), unit, decimals)).toBeUndefined();
        expect(fromField(end)).toBeGreaterThanOrEqual(min);
        expect(fromField(end)).toBeLessThanOrEqual(max);
      }
    }
    expect(() => bodyOf({ statureM: fromField(length === 'cm' ? 210 : 82.67), handed: 'right' })).not.toThrow();
  });

  test('named ends lie inside whatever the limits are', () => {
    const hundredths = fc.integer({ min: -5000, max: 5000 });
    fc.assert(
      fc.property(hundredths, fc.integer({ min: 20, max: 5000 }), (from, width) => {
        const [min, max] = [from / 100, (from + width) / 100];
        const said = outside('It', max + 1, min, max, 'cm', 1)!;
        const [low, high] = /outside (\S+) to (\S+)/
          .exec(said)!
          .slice(1)
          .map((end) => Number(end.replace('−', '-')));
        expect(low).toBeGreaterThanOrEqual(min - 1e-6);
        expect(high).toBeLessThanOrEqual(max + 1e-6);
      }),
    );
  });
});
