import { vec3 } from 'gl-matrix';
import { describe, expect, test } from 'vitest';
import { isRefused } from '../../src/flight/answer';
import { findLaunch, impactOf, spinLoft, startShare, strikeOf, type StrikeNumbers } from '../../src/flight/impact';
import type { LaunchNumbers } from '../../src/flight/launch';

const iron: StrikeNumbers = {
  headSpeedMps: 37,
  dynamicLoftDeg: 26,
  faceDeg: 0,
  pathDeg: 0,
  attackDeg: -4,
  headMassKg: 0.27,
};

function strike(change: Partial<StrikeNumbers> = {}): LaunchNumbers {
  const launch = impactOf({ ...iron, ...change });
  if (isRefused(launch)) throw new Error(launch.message);
  return launch;
}

describe('what a strike does to the ball', () => {
  test('a lofted face gives backspin: the top of the ball moves back, the axis points right of the target', () => {
    const launch = findLaunch({
      headVelocity: [40, 0, 0],
      faceNormal: [Math.cos(0.5), Math.sin(0.5), 0],
      headMass: 0.27,
    });
    if (isRefused(launch)) throw new Error(launch.message);
    const [ax, ay, az] = launch.spinAxis;
    expect(ax).toBeCloseTo(0, 12);
    expect(ay).toBeCloseTo(0, 12);
    expect(az).toBeCloseTo(1, 12);
    expect(launch.spinRate).toBeGreaterThan(0);
    // Axis x up is where the top of the ball goes: against the flight.
    const topGoes = vec3.cross([0, 0, 0], [ax, ay, az], [0, 1, 0]);
    expect(topGoes[0]).toBeCloseTo(-1, 12);
  });

  test('a face that grips no more gives no spin, and the ball goes off along its normal; one that springs back gives more', () => {
    const given = { headVelocity: [40, 0, 0], faceNormal: [Math.cos(0.5), Math.sin(0.5), 0], headMass: 0.27 } as const;
    const launchWith = (tangential?: number) => {
      const launch = findLaunch({ ...given, ...(tangential !== undefined && { tangential }) });
      if (isRefused(launch)) throw new Error(launch.message);
      return launch;
    };
    const slick = launchWith(-1);
    expect(slick.spinRate).toBe(0);
    expect(Math.atan2(slick.velocity[1], slick.velocity[0])).toBeCloseTo(0.5, 12);
    expect(launchWith(0)).toEqual(launchWith());
    expect(launchWith(0.25).spinRate).toBeCloseTo(1.25 * launchWith(0).spinRate, 9);
    expect(launchWith(0.25).velocity[1]).toBeLessThan(launchWith(0).velocity[1]);
  });

  test('a face open to the path starts the ball near the face and tilts the axis to the right', () => {
    const open = strike({ faceDeg: 3 });
    expect(open.startDeg).toBeGreaterThan(1.5);
    expect(open.startDeg).toBeLessThan(3);
    expect(open.spinAxisDeg).toBeGreaterThan(2);
  });

  test('a path in-to-out under a square face starts the ball a little right and tilts the axis to the left', () => {
    const inToOut = strike({ pathDeg: 4 });
    expect(inToOut.startDeg).toBeGreaterThan(0.5);
    expect(inToOut.startDeg).toBeLessThan(2);
    expect(inToOut.spinAxisDeg).toBeLessThan(-2);
  });

  test('path and face turned together only turn the start line', () => {
    const turned = strike({ faceDeg: 5, pathDeg: 5 });
    const straight = strike();
    expect(turned.startDeg).toBeCloseTo(5, 9);
    expect(turned.spinAxisDeg).toBeCloseTo(0, 9);
    expect(turned.ballSpeedMps).toBeCloseTo(straight.ballSpeedMps, 9);
    expect(turned.spinRpm).toBeCloseTo(straight.spinRpm, 6);
  });

  test('loft and attack raised together only raise the launch', () => {
    const raised = strike({ dynamicLoftDeg: 29, attackDeg: -1 });
    expect(raised.launchDeg).toBeCloseTo(strike().launchDeg + 3, 9);
    expect(raised.spinRpm).toBeCloseTo(strike().spinRpm, 6);
  });

  test('more spin loft, more spin and less ball speed', () => {
    expect(strike({ dynamicLoftDeg: 30 }).spinRpm).toBeGreaterThan(strike().spinRpm);
    expect(strike({ dynamicLoftDeg: 30 }).ballSpeedMps).toBeLessThan(strike().ballSpeedMps);
  });

  test('a heavier head sends the ball off faster', () => {
    expect(strike({ headMassKg: 0.3 }).ballSpeedMps).toBeGreaterThan(strike().ballSpeedMps);
  });

  test('a blow square to the face leaves no spin', () => {
    const square = strike({ dynamicLoftDeg: 0, attackDeg: 0 });
    expect(square.spinRpm).toBe(0);
    expect(square.spinAxisDeg).toBeCloseTo(0, 12);
  });

  test('a face looking down at a level blow leaves topspin: the axis is turned past 90 deg', () => {
    expect(Math.abs(strike({ dynamicLoftDeg: -5, attackDeg: 0 }).spinAxisDeg)).toBeGreaterThan(90);
  });

  test('spin loft is dynamic loft less attack when the face looks along the path', () => {
    const built = strikeOf(iron);
    if (isRefused(built)) throw new Error(built.message);
    expect((spinLoft(built) * 180) / Math.PI).toBeCloseTo(30, 9);
  });

  test('with face and path the same there is no share to give', () => {
    expect(startShare(1, 2, 2)).toBeUndefined();
  });
});

describe('strikes that cannot be answered say why', () => {
  test.each<[string, Partial<StrikeNumbers>]>([
    ['headSpeedMps', { headSpeedMps: 0 }],
    ['headSpeedMps', { headSpeedMps: -40 }],
    ['headSpeedMps', { headSpeedMps: Infinity }],
    ['headMassKg', { headMassKg: 0 }],
    ['headMassKg', { headMassKg: -0.2 }],
    ['dynamicLoftDeg', { dynamicLoftDeg: NaN }],
    ['attackDeg', { attackDeg: 91 }],
    ['pathDeg', { pathDeg: '3' as unknown as number }],
  ])('%s of %o', (field, change) => {
    const answer = impactOf({ ...iron, ...change });
    expect(answer).toMatchObject({ missing: 'bad-input', field });
    expect((answer as { message: string }).message).toMatch(/Enter a number/);
  });

  test('a face that moves away from the ball does not touch it', () => {
    expect(impactOf({ ...iron, pathDeg: 120 })).toMatchObject({ missing: 'no-contact' });
    expect(impactOf({ ...iron, dynamicLoftDeg: 90, attackDeg: -4 })).toMatchObject({ missing: 'no-contact' });
  });

  test('vectors that are not finite, or not of unit length', () => {
    const sound = { headVelocity: [40, 0, 0], faceNormal: [1, 0, 0], headMass: 0.2 } as const;
    expect(findLaunch({ ...sound, headVelocity: [NaN, 0, 0] })).toMatchObject({ field: 'headVelocity' });
    expect(findLaunch({ ...sound, faceNormal: [1, 1, 0] })).toMatchObject({ field: 'faceNormal' });
    expect(findLaunch({ ...sound, faceNormal: [NaN, 0, 0] })).toMatchObject({ field: 'faceNormal' });
    expect(findLaunch({ ...sound, headMass: NaN })).toMatchObject({ field: 'headMass' });
    for (const tangential of [NaN, -1.1, 1.1]) {
      expect(findLaunch({ ...sound, tangential })).toMatchObject({ missing: 'bad-input', field: 'tangential' });
    }
  });
});
