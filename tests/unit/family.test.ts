import { describe, expect, test } from 'vitest';
import { rad, toDeg } from '../../src/math/angle';
import { DIALS, STILL, type Movements } from '../../src/model/movements';
import { withMovements } from '../../src/reading/swing';
import { answerLine } from '../../src/evaluate/answer';
import { createJudge, HALF_RANGE, type Judge } from '../../src/solving/diagnosis/judged';
import { solveFamily } from '../../src/solving/family/family';
import type { Family } from '../../src/solving/family/question';
import { findDifferences, readSigns } from '../../src/solving/family/signs';
import { findWidest, type Room } from '../../src/solving/family/widest';
import { readBase } from '../../src/solving/playOut';
import { solveReach, type Aim } from '../../src/solving/reference/reach';
import { fullReadings, playerWith, referenceSwing } from '../reference/solvingPlayers';

const swing = referenceSwing();
const seenCm = (gap: number, depth: number, plusMinus: number) => ({
  leadArmParallel: { value: gap / 100, plusMinus: plusMinus / 100 },
  shaftParallel: { value: depth / 100, plusMinus: plusMinus / 100 },
});
const familyOf = (gap: number, depth: number, plusMinus: number): Family => {
  const found = solveFamily({ swing, seen: seenCm(gap, depth, plusMinus), count: 9 });
  if (found.status !== 'found') throw new Error(found.status);
  return found;
};
/** Change of each dial in half usual ranges. */
const changeOf = (movements: Movements): number[] =>
  DIALS.map(({ id, neutral }, i) => (movements[id] - neutral) / HALF_RANGE[i]);
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i], 0);

interface SwingAnswer {
  readonly leadArmParallel: { readonly readings: { readonly bicepGapCm: number } };
  readonly shaftParallel: { readonly readings: { readonly headDepthCm: number } };
}
interface FamilyAnswer {
  readonly status: string;
  readonly error?: { readonly field: string; readonly message: string };
  readonly smallest: number;
  readonly alwaysSame: readonly string[];
  readonly closest?: object;
  readonly members: readonly {
    readonly movements: object;
    readonly place: number;
    readonly effort: number;
    readonly usual: boolean;
    readonly differs: readonly { readonly sign: string; readonly view: string }[];
  }[];
}
const ask = (line: object): unknown => JSON.parse(answerLine({ number: 1, text: JSON.stringify(line) }).text);
const who = { player: { statureM: 1.78 }, club: '7-iron' };
const seen = {
  leadArmParallel: { bicepGapCm: 3, plusMinusCm: 1.5 },
  shaftParallel: { headDepthCm: 8, plusMinusCm: 2 },
};

describe('bodies that give one picture', () => {
  const out = ask({ kind: 'family', ...who, seen, count: 9 }) as FamilyAnswer;

  test('every one of nine, played out as a swing line, reads the same to the margin', () => {
    expect(out.status).toBe('found');
    expect(out.members).toHaveLength(9);
    for (const { movements } of out.members) {
      const played = ask({ kind: 'swing', ...who, movements }) as SwingAnswer;
      expect(Math.abs(played.leadArmParallel.readings.bicepGapCm - 3)).toBeLessThanOrEqual(1.5);
      expect(Math.abs(played.shaftParallel.readings.headDepthCm - 8)).toBeLessThanOrEqual(2);
    }
  });

  test('they differ by more than a coach could overlook, though the picture does not', () => {
    const [first, last] = [out.members[0], out.members[8]];
    expect(first.differs.length).toBeGreaterThan(0);
    expect(last.differs.length).toBeGreaterThan(0);
    expect(out.members[out.smallest].differs).toEqual([]);
  });

  test('the smallest change is marked: no member changes less', () => {
    const efforts = out.members.map(({ effort }) => effort);
    expect(Math.min(...efforts)).toBe(efforts[out.smallest]);
  });

  test('they go in order from one end to the other, inside the usual ranges', () => {
    const places = out.members.map(({ place }) => place);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places[0]).toBeCloseTo(0, 3);
    expect(places[8]).toBeCloseTo(1, 3);
    expect(out.members.every(({ usual }) => usual)).toBe(true);
  });

  test('the shift of the pelvis carries the whole golfer: it is named as free, and left alone', () => {
    expect(out.alwaysSame).toEqual(['pelvisShiftCm']);
    for (const { movements } of out.members) expect(movements).toMatchObject({ pelvisShiftCm: 0 });
  });
});

/** All settings on a grid over the usual ranges, four live dials, with both readings inside the margins. In half usual ranges. */
const GRID = 9;
function scan(judge: Judge, low: readonly [number, number], high: readonly [number, number]): number[][] {
  const inside: number[][] = [];
  const dials = Float64Array.from(DIALS, ({ neutral }) => neutral);
  const read = new Float64Array(2);
  const value = (k: number): number => -1 + (2 * k) / (GRID - 1);
  for (let n = 0; n < GRID ** 4; n++) {
    const at = [0, 1, 2, 3].map((i) => value(Math.floor(n / GRID ** i) % GRID));
    at.forEach((share, i) => (dials[i] = DIALS[i].neutral + share * HALF_RANGE[i]));
    judge.read(dials, read);
    if (read[0] >= low[0] && read[0] <= high[0] && read[1] >= low[1] && read[1] <= high[1]) inside.push([...at, 0]);
  }
  return inside;
}

describe('the ends of a family', () => {
  test.each([
    [3, 8, 2],
    [-2, -12, 2],
  ])(
    'for %d and %d cm, give or take %d, are found again by a scan of a coarse grid, within its step',
    (gap, depth, margin) => {
      const found = familyOf(gap, depth, margin);
      const { direction, width, members } = found;
      const inside = scan(
        createJudge(swing, rad(-10)),
        [(gap - margin) / 100, (depth - margin) / 100],
        [(gap + margin) / 100, (depth + margin) / 100],
      );
      expect(inside.length).toBeGreaterThan(20);
      const along = inside.map((at) => dot(direction, at));
      const [low, high] = [members[0], members[8]].map(({ movements }) => dot(direction, changeOf(movements)));
      // A neighbour on the grid is at most one step away in every dial.
      const step = (2 / (GRID - 1)) * direction.reduce((sum, value) => sum + Math.abs(value), 0);
      expect(Math.max(...along)).toBeLessThanOrEqual(high + 0.02);
      expect(Math.max(...along)).toBeGreaterThan(high - step);
      expect(Math.min(...along)).toBeGreaterThanOrEqual(low - 0.02);
      expect(Math.min(...along)).toBeLessThan(low + step);
      // And no two of the grid lie farther apart than the ends: the direction is the widest.
      let apart = 0;
      for (const a of inside)
        for (const b of inside) apart = Math.max(apart, Math.hypot(...a.map((one, i) => one - b[i])));
      expect(apart).toBeLessThanOrEqual(width * 1.01);
    },
    60_000,
  );

  test('with the wrist alone they are where its reading runs into the margin, found by halving', () => {
    const gapAt = (flexionDeg: number): number => fullReadings(playerWith({ leadWristFlexion: rad(flexionDeg) }))[0];
    const wristFor = (gap: number): number => {
      let [cupped, bowed] = [-30, 30];
      for (let i = 0; i < 50; i++) {
        const middle = (cupped + bowed) / 2;
        if (gapAt(middle) > gap) cupped = middle;
        else bowed = middle;
      }
      return cupped;
    };
    const found = solveFamily({
      swing,
      seen: { leadArmParallel: { value: 0.02, plusMinus: 0.01 } },
      allow: ['leadWrist'],
      count: 2,
    });
    if (found.status !== 'found') throw new Error(found.status);
    const ends = found.members.map(({ movements }) => toDeg(movements.leadWristFlexion)).toSorted((a, b) => a - b);
    // The search keeps 0.2 mm inside the margin; a degree of the wrist is about 2 mm.
    expect(Math.abs(ends[0] - wristFor(0.03))).toBeLessThan(0.2);
    expect(Math.abs(ends[1] - wristFor(0.01))).toBeLessThan(0.2);
    expect(found.ends.map(({ group }) => group)).toEqual(['leadWrist', 'leadWrist']);
  });

  test('where the readings are straight lines they are the corners one works out by hand', () => {
    const judge: Judge = {
      // Bow one half range and turn one half range faster: nothing changes. The second reading hangs on the delay alone.
      read(dials, out) {
        const at = DIALS.map(({ neutral }, i) => (dials[i] - neutral) / HALF_RANGE[i]);
        out[0] = (at[0] + at[1]) / 100;
        out[1] = at[2] / 100;
      },
      evaluations: 0,
    };
    const from = Float64Array.from(DIALS, ({ neutral }) => neutral);
    const tight: Aim = { low: -1e-9, high: 1e-9, weight: 1e5 };
    const room: Room = {
      judge,
      from,
      free: [0, 1, 2],
      margins: [tight, tight],
      slack: [1e-6, 1e-6],
      limits: DIALS.map(({ usualMin, usualMax }) => ({ min: usualMin, max: usualMax })),
    };
    const { width, direction, ends } = findWidest(room, solveReach({ ...room, aims: room.margins }, [from])!);
    expect(width).toBeCloseTo(2 * Math.SQRT2, 3);
    expect(Math.abs(direction[0])).toBeCloseTo(Math.SQRT1_2, 3);
    expect(direction[0]).toBeCloseTo(-direction[1], 3);
    for (const { dials } of ends) expect(dials[2]).toBeCloseTo(0, 5);
  });
});

describe('what tells two bodies apart', () => {
  const base = readBase(swing);
  const differ = (a: Partial<Movements>, b: Partial<Movements>) =>
    findDifferences(
      readSigns(base, withMovements(swing, { ...STILL, ...a })),
      readSigns(base, withMovements(swing, { ...STILL, ...b })),
    );

  test('a swing differs from itself by nothing', () => {
    for (const { change } of differ({ rotationRate: 1.1 }, { rotationRate: 1.1 })) expect(change).toBe(0);
  });

  test('side bend to the trail side is seen face on, as more lean away from the target', () => {
    const lean = differ({}, { trailSideBend: rad(6) }).find(
      ({ sign, at }) => sign.id === 'trunkLean' && at === 'leadArmParallel',
    )!;
    expect(lean.sign.view).toBe('faceOn');
    expect(toDeg(lean.change)).toBeGreaterThan(2);
  });

  test('a wrist bowed by twenty degrees reads about twenty degrees more at shaft parallel, which comes at another moment', () => {
    const wrist = differ({}, { leadWristFlexion: rad(20) }).find(
      ({ sign, at }) => sign.id === 'wristFlexion' && at === 'shaftParallel',
    )!;
    expect(Math.abs(toDeg(wrist.change) - 20)).toBeLessThan(1);
    expect(wrist.size).toBeCloseTo(toDeg(wrist.change) / 5, 9);
  });

  test('the plainest comes first, and the two swings the other way round differ the other way', () => {
    const [forth, back] = [differ({}, { rotationRate: 1.1 }), differ({ rotationRate: 1.1 }, {})];
    const sizes = forth.map(({ size }) => size);
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    for (const { sign, at, change } of forth) {
      expect(back.find((other) => other.sign === sign && other.at === at)!.change).toBeCloseTo(-change, 12);
    }
  });
});

describe('a family line', () => {
  test('a picture that no body gives comes back with the nearest', () => {
    const far = {
      leadArmParallel: { bicepGapCm: -9, plusMinusCm: 1 },
      shaftParallel: { headDepthCm: 60, plusMinusCm: 1 },
    };
    expect(ask({ kind: 'family', ...who, seen: far })).toMatchObject({ status: 'out-of-reach', members: [] });
  });

  test('one that only unusual bodies give says that it went beyond the usual ranges', () => {
    const wide = {
      leadArmParallel: { bicepGapCm: 21, plusMinusCm: 1 },
      shaftParallel: { headDepthCm: 58, plusMinusCm: 1 },
    };
    expect(ask({ kind: 'family', ...who, seen: wide })).toMatchObject({ status: 'found', range: 'limits' });
  });

  test.each([
    [{ seen: {} }, 'seen', 'Mark'],
    [{ count: 1 }, 'count', '2 to 99'],
    [{ count: 2.5 }, 'count', 'whole number'],
    [{ allow: [] }, 'allow', 'Unlock'],
    [{ range: 'all' }, 'range', 'usual, limits'],
    [{ seen: { leadArmParallel: { bicepGapCm: 3, plusMinusCm: 0 } } }, 'seen.leadArmParallel', 'above zero'],
  ])('%j is an error that names the field and what to do', (part, field, words) => {
    const { error } = ask({ kind: 'family', ...who, seen, ...part }) as FamilyAnswer;
    expect(error!.field).toBe(field);
    expect(error!.message).toContain(words);
  });
});
