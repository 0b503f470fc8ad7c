import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber } from '../../src/panels/fields/readEntry';
import { rad } from '../../src/math/angle';
import { createPose } from '../../src/model/chain';
import { DIALS, STILL, type MovementId } from '../../src/model/movements';
import type { Checkpoint, CheckpointId, Reached, Readings } from '../../src/reading/checkpoints';
import { DEFAULT_BANDS, judge, verdictAt, type Bands } from '../../src/reading/verdicts';
import * as words from '../../src/words';

const CM: words.Units = { length: 'cm', speed: 'm/s' };
const INCHES: words.Units = { length: 'in', speed: 'mph' };
const LONGEST_SENTENCE = 15;

/** A checkpoint with these readings; everything else zero. */
const reached = (readings: Partial<Readings>): Reached => ({
  t: 0.15,
  pose: createPose(),
  readings: { shaftPlane: rad(58), bicepGap: 0, headDepth: 0, reachShortfall: 0, ...readings } as Readings,
});
const arm = (gapCm: number, more: Partial<Readings> = {}) => reached({ bicepGap: gapCm / 100, ...more });
const shaft = (depthCm: number) => reached({ headDepth: depthCm / 100 });
const sayArm = (gapCm: number, units = CM) => words.sayCheckpoint('leadArmParallel', arm(gapCm), DEFAULT_BANDS, units);
const sayShaft = (depthCm: number, units = CM) =>
  words.sayCheckpoint('shaftParallel', shaft(depthCm), DEFAULT_BANDS, units);

const sentencesIn = (text: string): string[] => text.split(/(?<=[.!?]) (?=[A-Z])/).filter(Boolean);
const longest = (text: string): number => Math.max(...sentencesIn(text).map((s) => s.split(/\s+/).length));

describe('numbers', () => {
  test('a negative number wears the true minus sign, and a rounded nothing wears none', () => {
    expect(words.showAngle(rad(-4)).text).toBe('\u22124°');
    expect(words.showAngle(rad(-0.3)).text).toBe('0°');
    expect(words.formatSigned(-0.4)).toBe('0');
    expect(words.formatSigned(3)).toBe('+3');
  });

  test('mirrored values show mirrored numbers, halves included', () => {
    expect(words.formatNumber(2.5)).toBe('3');
    expect(words.formatNumber(-2.5)).toBe('\u22123');
  });

  // The inch is 25.4 mm and the mile 1609.344 m exactly (international yard and pound agreement, 1959). From memory (M) for the
  // date; the factors themselves are the definition.
  test('lengths and speeds come in the unit the coach chose', () => {
    expect(words.showLength(0.0254, CM).text).toBe('3 cm');
    expect(words.showLength(0.0254, INCHES).text).toBe('1 in');
    expect(words.showLength(0.07, INCHES).text).toBe('2¾ in');
    expect(words.showSpeed(38, CM).text).toBe('38 m/s');
    expect(words.showSpeed(10, { speed: 'km/h' }).text).toBe('36 km/h');
    expect(words.showSpeed(1609.344 / 3600, { speed: 'mph' }).text).toBe('1 mph');
  });

  test('a number that is not there is a dash on paper and words aloud', () => {
    for (const nothing of [NaN, Infinity, -Infinity]) {
      expect(words.showLength(nothing, CM).text).toBe('–');
      expect(words.showAngle(nothing).spoken).toBe('no number');
    }
  });

  test('one is singular when said aloud', () => {
    expect(words.showLength(0.01, CM).spoken).toBe('1 centimetre');
    expect(words.showLength(-0.01, CM).spoken).toBe('minus 1 centimetre');
    expect(words.showAngle(rad(2)).spoken).toBe('2 degrees');
  });
});

describe('checkpoints', () => {
  test('a line well above the trail bicep is steep, below it over-shallow, through it on plane', () => {
    expect(sayArm(7)).toMatchObject({ word: 'Steep', number: '7', unit: 'cm', why: '7 cm above the trail bicep' });
    expect(sayArm(-5)).toMatchObject({
      word: 'Over-shallow',
      why: '5 cm below the trail bicep',
      shortWhy: '5 cm below',
    });
    expect(sayArm(0.2)).toMatchObject({ word: 'On plane', number: '0', why: 'line through the trail bicep' });
  });

  test('a head in front of the hands is steep, far behind them over-shallow, just behind them on plane', () => {
    expect(sayShaft(21)).toMatchObject({ word: 'Steep', why: '21 cm in front of the hands' });
    expect(sayShaft(-33)).toMatchObject({
      word: 'Over-shallow',
      why: '33 cm behind the hands',
      shortWhy: '33 cm behind',
    });
    expect(sayShaft(-6)).toMatchObject({ word: 'On plane', why: '6 cm behind the hands' });
    expect(sayShaft(0)).toMatchObject({ word: 'On plane', why: 'head covers the hands' });
  });

  test('an upright shaft stands in front of the bicep rather than above it', () => {
    const upright = arm(8, { shaftPlane: rad(95) });
    const { why } = words.sayCheckpoint('leadArmParallel', upright, DEFAULT_BANDS, CM);
    expect(why).toBe('8 cm in front of the trail bicep');
  });

  test.each([
    [79, 8, '8 cm above the trail bicep'],
    [81, 8, '8 cm in front of the trail bicep'],
    [79, -8, '8 cm below the trail bicep'],
    [81, -8, '8 cm behind the trail bicep'],
  ])('a shaft at %d deg counts as upright from 80 on: a line %d cm off is %s', (planeDeg, gapCm, why) => {
    const at = arm(gapCm, { shaftPlane: rad(planeDeg) });
    expect(words.sayCheckpoint('leadArmParallel', at, DEFAULT_BANDS, CM).why).toBe(why);
  });

  test('sentences write inches out, so that nothing is "8 in in front"', () => {
    expect(sayShaft(21, INCHES).why).toBe('8¼ inches in front of the hands');
    expect(sayShaft(21, INCHES).unit).toBe('in');
  });

  test('the screen reader hears the whole sentence without symbols', () => {
    expect(sayArm(7).spoken).toBe('Steep: shaft line 7 centimetres above the trail bicep at lead arm parallel.');
  });

  test('a number at the edge of the band shows one decimal', () => {
    expect(sayShaft(2.3)).toMatchObject({ word: 'Steep', number: '2.3' });
    expect(sayShaft(1.7)).toMatchObject({ word: 'On plane', number: '1.7' });
    expect(sayShaft(2)).toMatchObject({ word: 'On plane', number: '2.0' });
    expect(sayShaft(-10)).toMatchObject({ word: 'On plane', number: '10.0' });
    expect(sayShaft(2.04)).toMatchObject({ word: 'Steep', number: '2.04' });
    expect(sayShaft(2.0004)).toMatchObject({ word: 'Steep', number: '2.01' });
    expect(sayArm(1.5)).toMatchObject({ word: 'On plane', number: '1.5' });
    expect(sayArm(1.6)).toMatchObject({ word: 'Steep', number: '2' });
  });

  test('a trail arm that does not reach is said, and one that reaches is not', () => {
    const short = arm(3, { reachShortfall: 0.041 });
    const say = (at: Reached) => words.sayCheckpoint('leadArmParallel', at, DEFAULT_BANDS, CM).reach;
    expect(say(short)).toBe('Trail arm 4 cm short of the grip here.');
    expect(say(arm(3))).toBeUndefined();
    expect(say(arm(3, { reachShortfall: 0.006 }))).toBe('Trail arm 1 cm short of the grip here.');
    expect(say(arm(3, { reachShortfall: 0.004 }))).toBeUndefined();
  });

  test('a checkpoint that is never reached is said in words, with no number', () => {
    for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
      for (const missing of ['never-parallel', 'not-finite'] as const) {
        const said = words.sayCheckpoint(id, { missing }, DEFAULT_BANDS, CM);
        expect(said).toMatchObject({ word: 'Not reached', number: '', verdict: 'missing' });
        expect(longest(said.sentence)).toBeLessThanOrEqual(LONGEST_SENTENCE);
      }
    }
  });

  test.each([
    ['leadArmParallel', 'never-parallel', 'The lead arm never comes down to the reading angle in this swing.'],
    ['shaftParallel', 'never-parallel', 'The shaft never comes down to parallel after lead arm parallel here.'],
    ['leadArmParallel', 'not-finite', 'The model finds no lead arm parallel for this swing. Undo the last change.'],
    ['shaftParallel', 'not-finite', 'The model finds no shaft parallel for this swing. Undo the last change.'],
  ] as const)('%s, %s, says what is missing', (id, missing, sentence) => {
    expect(words.sayCheckpoint(id, { missing }, DEFAULT_BANDS, CM)).toMatchObject({ sentence, spoken: sentence });
  });

  test('a reading that is not a number counts as not reached', () => {
    expect(sayArm(NaN)).toMatchObject({ word: 'Not reached', verdict: 'missing', number: '' });
  });

  test('what the coach saw is said as theirs, to the millimetre', () => {
    expect(words.saySight('shaftParallel', 0.129, CM)).toEqual({
      sentence: 'You saw 12.9 cm in front of the hands.',
      number: '12.9',
      where: 'in front of the hands',
      short: 'seen 12.9 cm in front',
      spoken: 'You saw 12.9 centimetres in front of the hands.',
      source: 'measured by you',
    });
    expect(words.saySight('leadArmParallel', -0.04, INCHES).sentence).toBe('You saw 1.6 inches below the trail bicep.');
    expect(words.saySight('leadArmParallel', 0, CM).sentence).toBe('You saw the line on the trail bicep.');
  });

  test('every number says where it comes from, and the verdict that its band is a rule of thumb', () => {
    expect(sayArm(7)).toMatchObject({ source: 'computed by the model', verdictSource: 'rule of thumb' });
    expect(words.sayBand('shaftParallel', DEFAULT_BANDS, CM)).toBe(
      'On plane from 10 cm behind to 2 cm in front (rule of thumb).',
    );
    expect(words.sayBand('leadArmParallel', DEFAULT_BANDS, CM)).toBe(
      'On plane from 1.5 cm below to 1.5 cm above (rule of thumb).',
    );
  });
});

describe('dials', () => {
  const short = (id: MovementId, value: number) => words.sayDial(id, value).short;

  test('the coach reads bowed and cupped, the anatomist flexion and extension', () => {
    expect(short('leadWristFlexion', 12)).toBe('Bowed 12°');
    expect(short('leadWristFlexion', -16)).toBe('Cupped 16°');
    expect(short('leadWristFlexion', 0)).toBe('As reference');
    expect(words.sayDial('leadWristFlexion', 12).full).toBe('Bowed 12° (lead-wrist flexion)');
    expect(words.sayDial('leadWristFlexion', -16).full).toBe('Cupped 16° (lead-wrist extension)');
  });

  test('turning is a percentage, its start early or late', () => {
    expect(short('rotationRate', 1.08)).toBe('108 %');
    expect(words.sayDial('rotationRate', 1.08).phrase).toBe('8 % more turn');
    expect(words.sayDial('rotationRate', 0.84).phrase).toBe('16 % less turn');
    expect(short('rotationDelay', -12)).toBe('12 ms early');
    expect(short('rotationDelay', 26)).toBe('26 ms late');
  });

  test('side bend is signed in its field and put in words elsewhere', () => {
    expect(short('trailSideBend', -4)).toBe('\u22124°');
    expect(short('trailSideBend', 1)).toBe('+1°');
    expect(words.sayDial('trailSideBend', -4).phrase).toBe('4° toward the target');
    expect(words.sayDial('trailSideBend', 1).spoken).toBe('1 degree to the trail side');
  });

  test('the pelvis moves to the target or back, in the unit the coach chose', () => {
    expect(short('pelvisShift', 3)).toBe('3 cm to target');
    expect(short('pelvisShift', -3)).toBe('3 cm back');
    expect(words.sayDial('pelvisShift', 3, INCHES).short).toBe('1¼ in to target');
  });

  test('a typed half degree is shown as typed', () => {
    expect(short('leadWristFlexion', 12.5)).toBe('Bowed 12.5°');
    expect(short('rotationRate', 1.085)).toBe('108.5 %');
  });

  test('what the solvers hand back reads like what the coach dialled', () => {
    expect(words.sayMovement('leadWristFlexion', { ...STILL, leadWristFlexion: rad(-16) }).short).toBe('Cupped 16°');
    expect(words.sayMovement('rotationDelay', { ...STILL, rotationDelay: -0.012 }).short).toBe('12 ms early');
    expect(words.sayMovement('pelvisShift', { ...STILL, pelvisShift: 0.03 }).short).toBe('3 cm to target');
  });

  // The left end of a track is its smaller value. What stands there is what the value's own words say.
  test.each([
    ['leadWristFlexion', 'cupped', 'bowed', ['cupped 10°', 'bowed 10°'], [-10, 10]],
    ['rotationRate', 'less', 'more', ['10 % less turn', '10 % more turn'], [0.9, 1.1]],
    ['rotationDelay', 'earlier', 'later', ['10 ms early', '10 ms late'], [-10, 10]],
    ['trailSideBend', 'toward target', 'trail side', ['4° toward the target', '4° to the trail side'], [-4, 4]],
    ['pelvisShift', 'back', 'to target', ['3 cm back', '3 cm to target'], [-3, 3]],
  ] as const)('the track of %s runs from "%s" to "%s"', (id, low, high, phrases, values) => {
    expect(words.DIAL_NAMES[id]).toMatchObject({ low, high });
    expect(values.map((value) => words.sayDial(id, value).phrase)).toEqual(phrases);
  });

  test('past the usual range the words say so, up to it they do not', () => {
    expect(words.sayPastUsual('leadWristFlexion', -30)).toBeUndefined();
    expect(words.sayPastUsual('leadWristFlexion', -31)).toContain('cupped 30° (rule of thumb)');
    expect(words.sayPastUsual('rotationRate', 1.21)).toContain('20 % more turn');
  });

  test('an undo step is named after what it did', () => {
    expect(words.sayUndo('leadWristFlexion', -8)).toBe('Wrist \u22128°');
    expect(words.sayUndo('rotationRate', 1.08)).toBe('Body turn 108 %');
    expect(words.sayUndo('rotationDelay', 12)).toBe('Turn starts 12 ms');
    expect(words.sayUndo('trailSideBend', -4)).toBe('Side bend \u22124°');
    expect(words.sayUndo('pelvisShift', 3)).toBe('Hip slide 3 cm');
  });
});

describe('delivery', () => {
  test('path, face and attack are said with their side', () => {
    expect(words.sayPath(rad(4)).text).toBe('4° in-to-out');
    expect(words.sayPath(rad(-4)).text).toBe('4° out-to-in');
    expect(words.sayFace(rad(2)).text).toBe('2° open');
    expect(words.sayFace(rad(-2)).text).toBe('2° closed');
    expect(words.sayAttack(rad(-4)).text).toBe('4° down');
    expect(words.sayLowPoint(0.09, CM).text).toBe('9 cm ahead of the ball');
    expect(words.sayHeadSpeed(38, INCHES).text).toBe('85 mph');
  });

  test('an angle that rounds to nothing takes no side', () => {
    expect(words.sayPath(rad(0.4)).text).toBe('0° straight');
    expect(words.sayFace(rad(-0.4)).text).toBe('0° square');
    expect(words.sayAttack(rad(0.2)).text).toBe('0° level');
  });
});

describe('status', () => {
  const say = (gapCm: number, depthCm: number, exaggerated = false) =>
    words.sayStatus({
      status: 'ready',
      checkpoints: { leadArmParallel: arm(gapCm), shaftParallel: shaft(depthCm) },
      bands: DEFAULT_BANDS,
      exaggerated,
    });

  test('one sentence tells both checkpoints', () => {
    expect(say(7, 21)).toBe('Steep at both checkpoints.');
    expect(say(0, -5)).toBe('On plane at lead arm parallel and at shaft parallel.');
    expect(say(7, -5)).toBe('Steep at lead arm parallel, on plane at shaft parallel.');
    expect(say(7, 21, true)).toBe('Exaggerated twofold: steep at both checkpoints.');
  });

  test('work in progress and failure are said too', () => {
    expect(words.sayStatus({ status: 'solving', bands: DEFAULT_BANDS })).toMatch(/^Working out a reference swing/);
    expect(words.sayStatus({ status: 'failed', problem: 'No.', bands: DEFAULT_BANDS })).toBe('No.');
  });
});

describe('laws', () => {
  const hundredths = (low: number, high: number) => fc.integer({ min: low * 100, max: high * 100 }).map((n) => n / 100);
  const finest = fc.integer({ min: -600_000, max: 600_000 }).map((n) => n / 1e6); // m, in micrometres
  const unit = fc.constantFrom(CM, INCHES);
  const id = fc.constantFrom<CheckpointId>('leadArmParallel', 'shaftParallel');
  const bands = fc
    .tuple(fc.integer({ min: -200, max: 100 }), fc.integer({ min: 5, max: 200 }))
    .map(([low, width]): Bands => {
      const band = { low: low / 1000, high: (low + width) / 1000 };
      return { leadArmParallel: band, shaftParallel: band };
    });
  const at = (which: CheckpointId, value: number) =>
    reached(which === 'leadArmParallel' ? { bicepGap: value } : { headDepth: value });

  test('the number shown never contradicts the verdict word, in either unit, for any band', () => {
    fc.assert(
      fc.property(finest, id, bands, unit, (value, which, edges, units) => {
        const said = words.sayCheckpoint(which, at(which, value), edges, units);
        const metres = words.LENGTHS[units.length].metres;
        const [low, high] = [edges[which].low / metres, edges[which].high / metres];
        // Read as a person reads: the printed digits, with the side the words give them.
        const printed = readNumber(said.number)! * (said.value < 0 ? -1 : 1);
        const nudge = 1e-9;
        expect(judge(printed, { low: low - nudge, high: high + nudge })).toBe(said.verdict);
        expect(said.verdict).toBe(verdictAt(which, at(which, value), edges));
        expect(Math.abs(printed - value / metres)).toBeLessThanOrEqual(0.5 + nudge);
      }),
      { numRuns: 3000 },
    );
  });

  test('no sentence has more than fifteen words, and none ever says NaN, undefined or a plain hyphen for minus', () => {
    const anything = fc.oneof(finest, fc.constantFrom(NaN, Infinity, -Infinity, 0, -0));
    fc.assert(
      fc.property(anything, anything, id, bands, unit, fc.boolean(), (a, b, which, edges, units, doubled) => {
        const one: Checkpoint = reached({ bicepGap: a, headDepth: b, reachShortfall: Math.abs(b), shaftPlane: 30 * a });
        const said = words.sayCheckpoint(which, one, edges, units);
        const checkpoints = { leadArmParallel: one, shaftParallel: one };
        const texts = [
          said.why,
          said.shortWhy,
          said.sentence,
          said.spoken,
          said.reach ?? '',
          said.number,
          words.sayStatus({ status: 'ready', checkpoints, bands: edges, exaggerated: doubled }),
          words.sayBand(which, edges, units),
          ...[words.sayPath, words.sayFace, words.sayAttack, words.sayShaftLean, words.sayDynamicLoft].flatMap(
            (say) => [say(a).text, say(a).spoken],
          ),
          words.sayLowPoint(a, units).text,
          words.sayHeadSpeed(a, units).spoken,
        ];
        for (const text of texts) check(text);
      }),
      { numRuns: 1000 },
    );
  });

  test('a dial is said at every value it can take, short and without symbols for the screen reader', () => {
    for (const { id: dial, min, max, edgeUnit } of DIALS) {
      fc.assert(
        fc.property(hundredths(Math.floor(min / edgeUnit), Math.ceil(max / edgeUnit)), unit, (value, units) => {
          const said = words.sayDial(dial, value, units);
          for (const text of [said.short, said.phrase, said.full, said.spoken, words.sayUndo(dial, value)]) check(text);
          expect(said.spoken).not.toMatch(/[°%]|\bcm\b|\bms\b/);
          const past = words.sayPastUsual(dial, value, units);
          if (past !== undefined) check(past);
        }),
      );
    }
  });

  test('every caution is one short sentence', () => {
    for (const caution of words.CAUTIONS) check(caution);
    check(words.ILLUSTRATION);
  });

  function check(text: string): void {
    expect(text).not.toMatch(/NaN|undefined|Infinity|-\d|\u22120(?![.\d])/);
    if (text !== '') expect(longest(text)).toBeLessThanOrEqual(LONGEST_SENTENCE);
  }
});
