import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { SetupError } from '../../src/model/body';
import { dialOf, MOVEMENT_GROUPS, STILL } from '../../src/model/movements';
import type { Swing } from '../../src/reading/swing';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { shareInBand } from '../../src/solving/diagnosis/verdictShare';
import { INSIDE, solvePlans, type Plan } from '../../src/solving/diagnosis/plan';
import { dialled, fullReadings, playerWith, referenceSwing, verdictsOf } from '../reference/solvingPlayers';

const plansFor = (swing: Swing): readonly Plan[] => solvePlans({ swing, allow: MOVEMENT_GROUPS }).plans;
const using = (plans: readonly Plan[], ...groups: string[]): Plan => {
  const plan = plans.find(({ uses }) => uses.join() === groups.join());
  if (!plan) throw new Error(`no plan with ${groups.join()}`);
  return plan;
};

describe('a plan for a player who is steep', () => {
  const cupped = playerWith(dialled({ wristDeg: -25 }));
  const plans = plansFor(cupped);

  test('there is one for each movement and one for all together, the smallest change first', () => {
    expect(verdictsOf(cupped)).toContain('steep');
    expect(plans.map(({ uses }) => uses.join()).toSorted()).toEqual([
      'leadWrist',
      'leadWrist,rotation,sideTilt',
      'rotation',
      'sideTilt',
    ]);
    const efforts = plans.filter(({ status }) => status === 'reached').map(({ effort }) => effort);
    expect(efforts).toEqual(efforts.toSorted((a, b) => a - b));
  });

  test('with the wrist alone it bows: not past the reference, only as far as the bands need', () => {
    const plan = using(plans, 'leadWrist');
    expect(plan.status).toBe('reached');
    expect(plan.change.leadWristFlexion).toBeGreaterThan(rad(5));
    expect(plan.change.leadWristFlexion).toBeLessThan(rad(25));
    expect(plan.movements).toEqual({ ...cupped.movements, leadWristFlexion: plan.movements.leadWristFlexion });
    expect(plan.effort).toBeCloseTo(plan.change.leadWristFlexion / rad(30), 12);
  });

  test('with rotation alone the turn slows down or starts later', () => {
    const { change } = using(plans, 'rotation');
    expect(change.rotationRate < 0 || change.rotationDelay > 0).toBe(true);
    expect([change.leadWristFlexion, change.trailSideBend, change.pelvisShift]).toEqual([0, 0, 0]);
  });

  test('with side tilt alone the upper body leans further away from the target', () => {
    expect(using(plans, 'sideTilt').change.trailSideBend).toBeGreaterThan(rad(2));
  });

  test('it ends on the near edge of a band, a fifth of a millimetre inside', () => {
    const { readings } = using(plans, 'leadWrist');
    const margins = [
      DEFAULT_BANDS.leadArmParallel.high - readings.leadArmParallel,
      DEFAULT_BANDS.shaftParallel.high - readings.shaftParallel,
    ];
    expect(Math.abs(Math.min(...margins) - INSIDE)).toBeLessThan(1e-6);
  });

  test('asked to end 1 cm inside, it takes more effort and holds in more of what the coach may have misread', () => {
    const doubt = { leadArmParallel: 0.01, shaftParallel: 0.02 };
    const ask = (inside: number): Plan => solvePlans({ swing: cupped, allow: ['leadWrist'], inside, doubt }).plans[0];
    expect(ask(0.01).effort).toBeGreaterThan(ask(INSIDE).effort);
    expect(ask(0.01).holds).toBeGreaterThan(ask(INSIDE).holds! + 0.2);
    expect(ask(INSIDE).holds).toBeLessThan(0.6);
  });

  test('with no doubt about the head, only the doubt about the shaft counts', () => {
    const [plan] = solvePlans({ swing: cupped, allow: ['leadWrist'], doubt: { leadArmParallel: 0.01 } }).plans;
    expect(plan.holds).toBe(
      shareInBand({ value: plan.readings.leadArmParallel, plusMinus: 0.01 }, DEFAULT_BANDS.leadArmParallel),
    );
  });

  test('what else a plan does is asked of the planned swing', () => {
    const { plans: answered } = solvePlans({ swing: cupped, allow: ['leadWrist'], sideEffects: fullReadings });
    const { readings, sideEffects } = answered[0];
    expect(sideEffects).toEqual([readings.leadArmParallel, readings.shaftParallel]);
  });
});

describe('a plan for a player who is over-shallow', () => {
  const stuck = playerWith(dialled({ wristDeg: 22, tiltDeg: 8 }));
  const plans = plansFor(stuck);

  test('tells him to steepen: the wrist extends, the turn comes sooner or faster, the upper body leans less', () => {
    expect(verdictsOf(stuck)).toContain('shallow');
    expect(using(plans, 'leadWrist').change.leadWristFlexion).toBeLessThan(0);
    const { change } = using(plans, 'rotation');
    expect(change.rotationRate > 0 || change.rotationDelay < 0).toBe(true);
    expect(using(plans, 'sideTilt').change.trailSideBend).toBeLessThan(0);
  });
});

describe('a plan at the ends of what can be done', () => {
  test('on plane already, nothing is to change', () => {
    expect(solvePlans({ swing: referenceSwing(), allow: MOVEMENT_GROUPS })).toMatchObject({
      status: 'already',
      plans: [],
    });
  });

  test('when the range of motion ends before the band, the plan goes to the end of it and says how far short it stays', () => {
    const swing = playerWith(dialled({ wristDeg: -40, rate: 1.4, delayMs: -40 }));
    const { plans } = solvePlans({ swing, allow: ['sideTilt'] });
    const [plan] = plans;
    expect(plan.status).toBe('closest');
    expect(plan.movements.trailSideBend).toBeCloseTo(dialOf('trailSideBend').max, 9);
    const { leadArmParallel, shaftParallel } = plan.short;
    expect(leadArmParallel).toBeCloseTo(plan.readings.leadArmParallel - DEFAULT_BANDS.leadArmParallel.high, 12);
    expect(shaftParallel).toBeCloseTo(plan.readings.shaftParallel - DEFAULT_BANDS.shaftParallel.high, 12);
    expect(Math.hypot(leadArmParallel, shaftParallel)).toBeGreaterThan(0.02);
  });

  test('a band without width is met in its middle', () => {
    const bands = { ...DEFAULT_BANDS, shaftParallel: { low: -0.03, high: -0.03 } };
    const { plans } = solvePlans({ swing: referenceSwing(), allow: ['leadWrist'], bands });
    expect(plans[0].readings.shaftParallel).toBeCloseTo(-0.03, 6);
  });

  test('a shift of the pelvis that only carries the golfer along is never prescribed', () => {
    const plans = plansFor(playerWith(dialled({ wristDeg: -25 })));
    for (const { change } of plans) expect(change.pelvisShift).toBe(0);
  });

  test('a pelvis that turns on its own keeps its own dials', () => {
    const own = { ...dialled({ wristDeg: -25 }), pelvisRate: 1.1, pelvisDelay: 0.004 };
    for (const plan of plansFor(playerWith(own)))
      expect(plan.movements).toMatchObject({ pelvisRate: 1.1, pelvisDelay: 0.004 });
  });

  test('a swing that never comes down has no plan, and says why', () => {
    const swing = referenceSwing();
    const frozen: Swing = { ...swing, curves: { ...swing.curves, pieces: swing.curves.pieces.map(() => 0) } };
    expect(solvePlans({ swing: frozen, allow: MOVEMENT_GROUPS })).toMatchObject({ status: 'missing', plans: [] });
  });

  test('bad input is refused in clear words', () => {
    const swing = playerWith({ ...STILL, leadWristFlexion: rad(-25) });
    const bands = { ...DEFAULT_BANDS, shaftParallel: { low: 0.02, high: -0.1 } };
    expect(() => solvePlans({ swing, allow: ['leadWrist'], bands })).toThrow(
      new SetupError('bands.shaftParallel', 'The lower edge 2.0 cm lies above the upper edge -10.0 cm. Swap them.'),
    );
    expect(() => solvePlans({ swing, allow: [] })).toThrow('Every movement is locked. Unlock at least one.');
    expect(() => solvePlans({ swing, allow: ['knees' as 'rotation'] })).toThrow('There is no movement "knees".');
    const noBand = { ...DEFAULT_BANDS, leadArmParallel: { low: NaN, high: 0 } };
    expect(() => solvePlans({ swing, allow: ['leadWrist'], bands: noBand })).toThrow('A band needs two numbers.');
  });
});
