import { describe, expect, test } from 'vitest';
import { answerLine } from '../../src/evaluate/answer';
import { LONGEST_LINE_BYTES } from '../../src/evaluate/split';

interface At {
  readonly timeMs: number;
  readonly readings: Readonly<Record<string, number>>;
}
/** Any answer: what a pose, a swing and an error line hold, together. */
interface Answer {
  readonly kind: string;
  readonly points: Readonly<Record<string, readonly number[]>>;
  readonly shaftDirection: readonly number[];
  readonly faceNormal: readonly number[];
  readonly trailReach: { readonly ratio: number; readonly shortfallCm: number };
  readonly readings: Readonly<Record<string, number>>;
  readonly leadArmParallel: At;
  readonly shaftParallel: At;
  readonly verdict: Readonly<Record<'leadArmParallel' | 'shaftParallel', string>>;
  readonly error?: { readonly line: number; readonly field: string; readonly message: string };
}

const answer = (line: unknown, number = 1): Answer =>
  JSON.parse(answerLine({ number, text: typeof line === 'string' ? line : JSON.stringify(line) }).text) as Answer;

const pose = {
  kind: 'pose',
  body: { statureM: 1.78 },
  club: { lengthM: 0.94, lieDeg: 62.5, loftDeg: 34, gripTurnDeg: 0 },
  pose: {
    pelvisSwayM: 0,
    pelvisHeightM: 0.89,
    pelvisThrustM: 0,
    pelvisTurnDeg: 0,
    pelvisBendDeg: 0,
    pelvisSideTiltDeg: 0,
    trunkBendDeg: 36,
    trunkTiltDeg: 9,
    thoraxTurnDeg: -45,
    leadProtractionDeg: 14,
    trailProtractionDeg: -6,
    leadArmAdductionDeg: 57,
    leadArmElevationDeg: -7,
    leadArmRollDeg: 84,
    leadWristFlexionDeg: 4,
    leadWristRadialDeg: 20,
  },
};
const swing = {
  kind: 'swing',
  player: { statureM: 1.78, handed: 'right' },
  club: '7-iron',
  movements: {
    leadWristFlexionDeg: -20,
    rotationRate: 1.1,
    rotationDelayMs: 0,
    trailSideBendDeg: -4,
    pelvisShiftCm: 0,
  },
};

describe('a pose line', () => {
  const out = answer(pose);

  test('answers with points, directions, reach and readings', () => {
    expect(out.kind).toBe('pose');
    expect(Object.keys(out.points)).toEqual([
      'pelvis',
      'midShoulder',
      'leadShoulder',
      'trailShoulder',
      'leadGrip',
      'trailGrip',
      'trailElbow',
      'bicep',
      'head',
    ]);
    for (const direction of [out.shaftDirection, out.faceNormal]) {
      expect(Math.hypot(direction[0], direction[1], direction[2])).toBeCloseTo(1, 12);
    }
    expect(out.trailReach.shortfallCm).toBe(0);
    for (const field of ['shaftPitchDeg', 'shaftPlaneDeg', 'bicepGapCm', 'bicepCrossing', 'headDepthCm']) {
      expect(out.readings[field], field).toBeTypeOf('number');
    }
  });

  test('reads in degrees and centimetres what its own points say in metres', () => {
    const { head, leadGrip } = out.points;
    expect(out.readings.headDepthCm).toBeCloseTo(100 * (head[2] - leadGrip[2]), 10);
    expect(Math.sin((out.readings.shaftPitchDeg * Math.PI) / 180)).toBeCloseTo(out.shaftDirection[1], 12);
    expect(Math.hypot(head[0] - leadGrip[0], head[1] - leadGrip[1], head[2] - leadGrip[2])).toBeCloseTo(0.94 - 0.1, 12);
  });

  test('takes a club by name and a measured segment', () => {
    const long = answer({ ...pose, club: 'driver', body: { statureM: 1.78, segmentsM: { trunk: 0.55 } } });
    const { midShoulder, pelvis } = long.points;
    expect(Math.hypot(midShoulder[0] - pelvis[0], midShoulder[1] - pelvis[1], midShoulder[2] - pelvis[2])).toBeCloseTo(
      0.55,
      12,
    );
  });

  test('a shaft level along the target line has no grip-end line and no gap: null, not a made-up number', () => {
    // Arm and hand straight out, rolled so that a shaft square to the hand points away from the target.
    const level = answer({
      ...pose,
      club: { ...pose.club, gripAngleDeg: 90 },
      pose: {
        ...Object.fromEntries(Object.keys(pose.pose).map((key) => [key, 0])),
        pelvisHeightM: 0.9,
        leadArmRollDeg: 90,
      },
    });
    expect(level.shaftDirection.map((part) => Math.round(part * 1e9) / 1e9 + 0)).toEqual([-1, 0, 0]);
    expect(level.readings).toMatchObject({ shaftPitchDeg: expect.closeTo(0, 9) as number, bicepGapCm: null });
    expect(level.readings.bicepCrossing).toBeNull();
    expect(level.readings.shaftAimDeg).toBeCloseTo(0, 9);
    expect(answer(swing).shaftParallel.readings.gripEndLineCm).toBeNull();
  });

  test('prints numbers as they are, not rounded', () => {
    expect(answerLine({ number: 1, text: JSON.stringify(pose) }).text).toMatch(/"shaftPitchDeg":\d+\.\d{10,}/);
  });
});

describe('a swing line', () => {
  const out = answer(swing);

  test('answers with both checkpoints, their times, readings and verdicts', () => {
    expect(out.kind).toBe('swing');
    expect(out.leadArmParallel.timeMs).toBeGreaterThan(0);
    expect(out.shaftParallel.timeMs).toBeGreaterThan(out.leadArmParallel.timeMs);
    for (const at of [out.leadArmParallel, out.shaftParallel]) {
      expect(Object.keys(at.readings)).toEqual(
        expect.arrayContaining([
          'shaftPitchDeg',
          'shaftPlaneDeg',
          'bicepGapCm',
          'bicepCrossing',
          'headDepthCm',
          'shaftAimDeg',
          'planeDirectionDeg',
          'impliedPathDeg',
          'planeTiltDeg',
          'gripEndLineCm',
          'faceToVerticalDeg',
          'leadArmToShaftDeg',
          'thoraxTurnDeg',
          'pelvisTurnDeg',
        ]),
      );
    }
    expect(['steep', 'on plane', 'over-shallow']).toContain(out.verdict.leadArmParallel);
    expect(['in front', 'on plane', 'too far behind']).toContain(out.verdict.shaftParallel);
  });

  test('the implied path changes by as much as the plane turns against the reference', () => {
    const still = answer({ ...swing, movements: {} });
    for (const id of ['leadArmParallel', 'shaftParallel'] as const) {
      const turned = out[id].readings.planeDirectionDeg - still[id].readings.planeDirectionDeg;
      expect(out[id].readings.impliedPathDeg - still[id].readings.impliedPathDeg).toBeCloseTo(turned, 9);
      expect(Math.abs(turned)).toBeGreaterThan(1);
    }
    expect(still.leadArmParallel.readings.impliedPathDeg).toBeCloseTo(still.shaftParallel.readings.impliedPathDeg, 9);
  });

  test('says lead and trail: the same for a left-handed player', () => {
    expect(answer({ ...swing, player: { statureM: 1.78, handed: 'left' } })).toEqual(out);
    expect(answer({ ...swing, player: { statureM: 1.78 } })).toEqual(out);
  });

  test('reads lead arm parallel at the angle asked for', () => {
    const late = answer({ ...swing, checkpointArmDeg: -20 });
    const early = answer({ ...swing, checkpointArmDeg: 0 });
    expect(early.leadArmParallel.timeMs).toBeLessThan(out.leadArmParallel.timeMs);
    expect(late.leadArmParallel.timeMs).toBeGreaterThan(out.leadArmParallel.timeMs);
    expect(late.shaftParallel.timeMs).toBeCloseTo(out.shaftParallel.timeMs, 6);
    expect(answer({ ...swing, checkpointArmDeg: -10 })).toEqual(out);
  });

  test('takes a club of the player’s own and the pelvis apart from the chest', () => {
    const own = answer({
      ...swing,
      club: { name: 'my club', lengthM: 0.95, lieDeg: 62, loftDeg: 32 },
      movements: { rotationRate: 1.1, pelvisRate: 1, pelvisDelayMs: 5 },
    });
    expect(own.leadArmParallel.readings.bicepGapCm).toBeTypeOf('number');
  });

  test('does not depend on the lines before it', () => {
    answer({ ...swing, checkpointArmDeg: 0 });
    answer({ ...swing, player: { statureM: 1.6 } });
    expect(answer(swing)).toEqual(out);
  });
});

describe('a bad line', () => {
  const bad = (change: object): object => ({ ...swing, ...change });
  const badPose = (change: object): object => ({ ...pose, pose: { ...pose.pose, ...change } });
  const without = (from: object, field: string): object =>
    Object.fromEntries(Object.entries(from).filter(([key]) => key !== field));

  test.each([
    ['an empty line', '', '', /empty/],
    ['a line of blanks', '   \t', '', /empty/],
    ['not JSON', '{"kind":', '', /Not JSON/],
    ['a byte order mark before it', '\uFEFF{"kind":"pose"}', '', /byte order mark.*Remove it/],
    ['NaN, which is not JSON', '{"kind":NaN}', '', /Not JSON/],
    ['a list', [1], '', /found a list/],
    ['a number', '3', '', /found a number/],
    ['null', 'null', '', /found null/],
    ['no kind', {}, 'kind', /Missing. Use one of: pose, swing/],
    ['an unknown kind', { kind: 'putt' }, 'kind', /"putt" is not known/],
    ['a kind every object answers to', { kind: 'constructor' }, 'kind', /not known/],
    ['a kind that is not a word', { kind: 3 }, 'kind', /not known/],
    ['an unknown field', bad({ wrist: 3 }), 'wrist', /Unknown field. Known here: kind, player, club, movements/],
    [
      'an unknown field further in',
      bad({ movements: { leadWristFlexion: 3 } }),
      'movements.leadWristFlexion',
      /Unknown field/,
    ],
    ['a missing field', without(swing, 'club'), 'club', /Missing/],
    ['a missing joint', { ...pose, pose: without(pose.pose, 'trunkBendDeg') }, 'pose.trunkBendDeg', /Missing/],
    [
      'a text for a number',
      bad({ player: { statureM: '1.78' } }),
      'player.statureM',
      /Expected a number, found a string/,
    ],
    ['null for a number', badPose({ trunkBendDeg: null }), 'pose.trunkBendDeg', /Expected a number, found null/],
    ['a list for an object', bad({ player: [] }), 'player', /Expected an object, found a list/],
    ['a stature that cannot be', bad({ player: { statureM: 2.5 } }), 'player.statureM', /Enter 1.4 to 2.1 m/],
    [
      'a segment that does not fit',
      bad({ player: { statureM: 1.8, segmentsM: { trunk: 0.9 } } }),
      'player.segmentsM.trunk',
      /does not fit/,
    ],
    ['a club that is not known', bad({ club: '6-iron' }), 'club', /Use an object, or one of: driver, /],
    ['a club every object answers to', bad({ club: 'toString' }), 'club', /not known/],
    [
      'a club over the rules',
      bad({ club: { lengthM: 1.3, lieDeg: 57, loftDeg: 10 } }),
      'club.lengthM',
      /outside 0.457 to 1.2192/,
    ],
    [
      'a movement out of range',
      bad({ movements: { leadWristFlexionDeg: 41 } }),
      'movements.leadWristFlexionDeg',
      /41 is out of range. Enter -40 to 40/,
    ],
    ['a reading angle out of range', bad({ checkpointArmDeg: 5 }), 'checkpointArmDeg', /Enter -20 to 0/],
    [
      'a hand that is neither',
      bad({ player: { statureM: 1.8, handed: 'both' } }),
      'player.handed',
      /Use one of: right, left/,
    ],
    ['an angle in no circle', badPose({ trunkBendDeg: 3600 }), 'pose.trunkBendDeg', /Enter -360 to 360/],
    [
      'a name that goes on for ever',
      bad({ club: { name: 'x'.repeat(81), lengthM: 0.9, lieDeg: 60, loftDeg: 40 } }),
      'club.name',
      /Longer than 80/,
    ],
  ])('%s says so under its field', (_, line, field, message) => {
    const { error } = answer(line, 7);
    expect(error).toEqual({ line: 7, field, message: expect.stringMatching(message) as string });
  });

  test.each([
    [
      'infinite',
      '{"kind":"swing","player":{"statureM":1e999},"club":"7-iron"}',
      'player.statureM',
      /Not a finite number/,
    ],
    ['__proto__ outside', '{"__proto__":{},"kind":"swing"}', '__proto__', /Unknown field/],
    [
      '__proto__ inside',
      '{"kind":"swing","player":{"statureM":1.8,"__proto__":{"handed":"left"}},"club":"7-iron"}',
      'player.__proto__',
      /Unknown field/,
    ],
    [
      'constructor',
      '{"kind":"swing","player":{"statureM":1.8,"constructor":1},"club":"7-iron"}',
      'player.constructor',
      /Unknown field/,
    ],
    ['hasOwnProperty', '{"kind":"swing","hasOwnProperty":1}', 'hasOwnProperty', /Unknown field/],
  ])('%s is an error like any other and leaves no trace', (_, line, field, message) => {
    expect(answer(line).error).toEqual({ line: 1, field, message: expect.stringMatching(message) as string });
    expect(({} as Record<string, unknown>)['handed']).toBeUndefined();
    expect(answer(swing).error).toBeUndefined();
  });

  test('too long is an error of its own', () => {
    const { error } = JSON.parse(answerLine({ number: 3, tooLong: true }).text) as Answer;
    expect(error).toEqual({ line: 3, field: '', message: `The line is longer than ${LONGEST_LINE_BYTES} bytes.` });
  });

  test('quotes no more of what was typed than a reader needs', () => {
    expect(answerLine({ number: 1, text: JSON.stringify({ kind: 'x'.repeat(10_000) }) }).text.length).toBeLessThan(300);
    expect(
      answerLine({ number: 1, text: JSON.stringify({ kind: 'pose', ['y'.repeat(10_000)]: 1 }) }).text.length,
    ).toBeLessThan(300);
  });
});
