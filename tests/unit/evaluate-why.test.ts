import { describe, expect, test } from 'vitest';
import { answerLine } from '../../src/evaluate/answer';

type Numbers = Readonly<Record<string, number>>;
interface Way {
  readonly uses: readonly string[];
  readonly status: string;
  readonly movements: Numbers;
  readonly change: Numbers;
  readonly readings: Numbers;
  readonly short: Numbers;
  readonly effort: number;
  readonly misfit: number;
  readonly moves: readonly string[];
  readonly sideEffects: Numbers & { readonly flight: Numbers };
}
interface Answer {
  readonly error?: { readonly field: string; readonly message: string };
  readonly status: string;
  readonly from: number;
  readonly to: number;
  readonly parts: Numbers;
  readonly alone: Numbers;
  readonly last: Numbers;
  readonly plans: readonly Way[];
  readonly explanations: readonly Way[];
  readonly holds: Numbers;
}
interface SwingAnswer {
  readonly leadArmParallel: { readonly readings: Numbers };
  readonly shaftParallel: { readonly readings: Numbers };
  readonly delivery: Numbers;
}
const ask = (line: unknown): unknown => JSON.parse(answerLine({ number: 1, text: JSON.stringify(line) }).text);
const answer = (line: unknown): Answer => ask(line) as Answer;

const who = { player: { statureM: 1.78 }, club: '7-iron' };
const swing = (movements: Numbers): SwingAnswer => ask({ kind: 'swing', ...who, movements }) as SwingAnswer;

describe('a contributions line', () => {
  const to = { leadWristFlexionDeg: -16, rotationRate: 1.08, trailSideBendDeg: -4 };
  const line = { kind: 'contributions', ...who, from: {}, to, at: 'leadArmParallel', reading: 'bicepGapCm' };
  const out = answer(line);

  test('its parts sum to the difference that swing lines show', () => {
    const { leadWrist, rotation, sideTilt } = out.parts;
    expect(Math.abs(leadWrist + rotation + sideTilt - (out.to - out.from))).toBeLessThan(1e-9);
    expect(out.to).toBeCloseTo(swing(to).leadArmParallel.readings['bicepGapCm'], 9);
    expect(out.from).toBeCloseTo(swing({}).leadArmParallel.readings['bicepGapCm'], 9);
  });

  test('"alone" is what that movement does by itself', () => {
    const only = swing({ leadWristFlexionDeg: -16 }).leadArmParallel.readings['bicepGapCm'];
    expect(out.alone['leadWrist']).toBeCloseTo(only - out.from, 9);
  });

  test('a movement that is the same on both sides has exactly no share', () => {
    expect(answer({ ...line, to: { leadWristFlexionDeg: -16 } }).parts).toMatchObject({ rotation: 0, sideTilt: 0 });
  });

  test('the implied path can be shared out as well', () => {
    const path = answer({ ...line, at: 'shaftParallel', reading: 'impliedPathDeg' });
    const { shaftParallel, delivery } = swing(to);
    expect(path.to).toBeCloseTo(shaftParallel.readings['impliedPathDeg'], 9);
    // Near the end of a joint's range the delivered path may stay a twentieth of a degree off the implied one.
    expect(Math.abs(path.to - delivery['pathDeg'])).toBeLessThan(0.05);
  });

  test.each([
    [{ reading: 'gap' }, 'reading'],
    [{ at: 'impact' }, 'at'],
    [{ to: { wrist: 3 } }, 'to.wrist'],
  ])('%j is an error that names the field', (part, field) => {
    expect(answer({ ...line, ...part }).error!.field).toBe(field);
  });
});

describe('a plan line', () => {
  const now = { leadWristFlexionDeg: -16, rotationRate: 1.06 };
  const line = { kind: 'plan', ...who, now, allow: ['leadWrist', 'rotation', 'sideTilt'] };
  const out = answer(line);

  test('its plans, played as swing lines, give the readings and the side effects they print', () => {
    expect(out.plans.length).toBeGreaterThan(1);
    for (const plan of out.plans) {
      const played = swing(plan.movements);
      expect(played.leadArmParallel.readings['bicepGapCm']).toBeCloseTo(plan.readings['bicepGapCm'], 6);
      expect(played.shaftParallel.readings['headDepthCm']).toBeCloseTo(plan.readings['headDepthCm'], 6);
      expect(played.delivery['faceDeg']).toBeCloseTo(plan.sideEffects['faceDeg'], 4);
    }
  });

  test('a reached plan lies in both bands, and the smallest change comes first', () => {
    const reached = out.plans.filter(({ status }) => status === 'reached');
    for (const { readings } of reached) {
      expect(Math.abs(readings['bicepGapCm'])).toBeLessThanOrEqual(1.5);
      expect(readings['headDepthCm']).toBeLessThanOrEqual(2);
      expect(readings['headDepthCm']).toBeGreaterThanOrEqual(-10);
    }
    const efforts = reached.map(({ effort }) => effort);
    expect(efforts).toEqual(efforts.toSorted((a, b) => a - b));
  });

  test('a locked movement does not move', () => {
    for (const { change } of answer({ ...line, allow: ['sideTilt'] }).plans) {
      expect(change).toMatchObject({ leadWristFlexionDeg: 0, rotationRate: 0, rotationDelayMs: 0 });
    }
  });

  test('a swing on plane needs no plan; an over-shallow one is told to steepen', () => {
    expect(answer({ ...line, now: {} })).toMatchObject({ status: 'already', plans: [] });
    const shallow = answer({ ...line, now: { leadWristFlexionDeg: 20 }, allow: ['leadWrist'] });
    expect(shallow.plans[0].change['leadWristFlexionDeg']).toBeLessThan(0);
  });

  test.each([
    [{ allow: [] }, 'allow', 'Unlock'],
    [{ allow: ['hips'] }, 'allow[0]', 'leadWrist, rotation, sideTilt'],
    [{ bands: { leadArmParallel: { lowCm: 2, highCm: -2 } } }, 'bands.leadArmParallel', 'Swap'],
    [{ bands: { shaftParallel: { lowCm: 2 } } }, 'bands.shaftParallel.highCm', 'Missing'],
  ])('%j is an error with clear words', (part, field, words) => {
    const { error } = answer({ ...line, ...part });
    expect(error!.field).toBe(field);
    expect(error!.message).toContain(words);
  });
});

describe('a match line', () => {
  const line = { kind: 'match', ...who };

  test('finds the wrist of a player whose only fault is the wrist', () => {
    const seen = swing({ leadWristFlexionDeg: -12 });
    const out = answer({
      ...line,
      seen: {
        leadArmParallel: { bicepGapCm: seen.leadArmParallel.readings['bicepGapCm'], plusMinusCm: 0.5 },
        shaftParallel: { headDepthCm: seen.shaftParallel.readings['headDepthCm'], plusMinusCm: 0.5 },
      },
    });
    expect(out.explanations[0]).toMatchObject({ moves: ['leadWristFlexionDeg'], status: 'fits' });
    expect(Math.abs(out.explanations[0].movements['leadWristFlexionDeg'] + 12)).toBeLessThan(1);
  });

  test('says in what share of the give or take each verdict stands', () => {
    const out = answer({ ...line, seen: { leadArmParallel: { bicepGapCm: 9, plusMinusCm: 3 } } });
    expect(Object.keys(out.holds)).toEqual(['steep at P5']);
    // Five standard deviations of 1.5 cm above the band's edge at 1.5 cm.
    expect(out.holds['steep at P5']).toBeGreaterThan(0.999);
    const edge = answer({ ...line, seen: { shaftParallel: { headDepthCm: 2, plusMinusCm: 3 } } });
    expect(edge.holds['on plane at P6']).toBeCloseTo(0.5, 6);
  });

  test('sightings that no movement explains come back as the closest, with what is left', () => {
    const out = answer({
      ...line,
      seen: {
        leadArmParallel: { bicepGapCm: -9, plusMinusCm: 1 },
        shaftParallel: { headDepthCm: 30, plusMinusCm: 1 },
      },
    });
    for (const { status, misfit } of out.explanations) {
      expect(status).toBe('closest');
      expect(misfit).toBeGreaterThan(1);
    }
    expect(out.explanations.length).toBeGreaterThan(0);
  });

  test.each([
    [{ seen: {} }, 'seen'],
    [{ seen: { leadArmParallel: { bicepGapCm: 9, plusMinusCm: 0 } } }, 'seen.leadArmParallel'],
    [{ seen: { leadArmParallel: { bicepGapCm: 9, plusMinusCm: -1 } } }, 'seen.leadArmParallel.plusMinusCm'],
    [{ seen: { leadArmParallel: { bicepGapCm: 9 } } }, 'seen.leadArmParallel.plusMinusCm'],
    [{ seen: { top: {} } }, 'seen.top'],
  ])('%j is an error that names the field', (part, field) => {
    expect(answer({ ...line, ...part }).error!.field).toBe(field);
  });
});
