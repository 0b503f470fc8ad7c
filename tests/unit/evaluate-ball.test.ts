import { describe, expect, test } from 'vitest';
import { answerLine } from '../../src/evaluate/answer';
import { HEADS } from '../../src/flight/heads';

type Numbers = Readonly<Record<string, number>>;
interface Answer {
  readonly kind?: string;
  readonly missing?: string;
  readonly message?: string;
  readonly error?: { readonly field: string; readonly message: string };
  readonly delivery: Numbers & { readonly rule: string; readonly status: string; readonly miss: Numbers };
  readonly flight: Numbers & { readonly missing?: string; readonly extrapolated: boolean };
}
const answer = (line: unknown): Answer & Numbers =>
  JSON.parse(answerLine({ number: 1, text: JSON.stringify(line) }).text) as Answer & Numbers;

const swing = {
  kind: 'swing',
  player: { statureM: 1.78, handed: 'right' },
  club: '7-iron',
  movements: {},
};
const impact = {
  kind: 'impact',
  headSpeedMps: 45,
  dynamicLoftDeg: 12,
  faceDeg: 0,
  pathDeg: 0,
  attackDeg: 0,
  headMassKg: 0.2,
};
const flight = { kind: 'flight', ballSpeedMps: 70, launchDeg: 12, startDeg: 0, spinRpm: 2700, spinAxisDeg: 0 };

describe('a swing line with delivery and flight', () => {
  const still = answer(swing);

  test('the reference brings a straight path and a square face, and the ball lands on the target line', () => {
    expect(Math.abs(still.delivery['pathDeg'])).toBeLessThan(1);
    expect(Math.abs(still.delivery['faceDeg'])).toBeLessThan(0.5);
    expect(still.delivery).toMatchObject({ rule: 'held plane', status: 'held' });
    expect(Math.abs(still.flight['offlineM'])).toBeLessThan(2);
    expect(still.flight['carryM']).toBeGreaterThan(80);
  });

  test('the loft at the ball has what the bending shaft adds: more with a longer club', () => {
    const driver = answer({ ...swing, club: 'driver' });
    expect(driver.delivery['shaftBendDeg']).toBeCloseTo(5.35, 9);
    expect(still.delivery['shaftBendDeg']).toBeGreaterThan(0.5);
    expect(still.delivery['shaftBendDeg']).toBeLessThan(2);
    expect(driver.delivery['spinLoftDeg']).toBeCloseTo(
      driver.delivery['dynamicLoftDeg'] - driver.delivery['attackDeg'],
      1,
    );
  });

  test('bowing the wrist closes the face to the path and curves the ball left; cupping the reverse', () => {
    const bowed = answer({ ...swing, movements: { leadWristFlexionDeg: 8 } });
    const cupped = answer({ ...swing, movements: { leadWristFlexionDeg: -8 } });
    expect(bowed.delivery['faceToPathDeg']).toBeLessThan(still.delivery['faceToPathDeg']);
    expect(bowed.flight['curveM']).toBeLessThan(-1);
    expect(bowed.flight['startDeg']).toBeLessThan(0);
    expect(cupped.delivery['faceToPathDeg']).toBeGreaterThan(still.delivery['faceToPathDeg']);
    expect(cupped.flight['curveM']).toBeGreaterThan(1);
  });

  test('path, plane and attack fit together: path = direction - atan(tan(attack) / tan(plane)) (plane geometry, C)', () => {
    const { delivery } = answer({ ...swing, movements: { trailSideBendDeg: 6 } });
    const degToRad = Math.atan(1) / 45;
    const slope = Math.tan(delivery['attackDeg'] * degToRad) / Math.tan(delivery['planeTiltDeg'] * degToRad);
    // To first order: the path is measured along the ground, the plane's fall across it.
    expect(delivery['pathDeg']).toBeCloseTo(delivery['planeDirectionDeg'] - Math.atan(slope) / degToRad, 0);
  });

  test('when nothing adapts the head may miss: by how much is told, and no ball flies', () => {
    const missed = answer({ ...swing, movements: { rotationRate: 1.3 }, rule: 'nothing adapts' });
    expect(missed.delivery).toMatchObject({ rule: 'nothing adapts', status: 'free' });
    expect(Math.abs(missed.delivery.miss['highCm'])).toBeGreaterThan(2);
    expect(missed.flight.missing).toBe('misses');
  });

  test('a left-handed player is the mirror image: the same numbers', () => {
    const line = { ...swing, movements: { leadWristFlexionDeg: -5, rotationRate: 1.05 } };
    const left = answer({ ...line, player: { ...line.player, handed: 'left' } });
    expect(left).toEqual(answer(line));
  });

  test('a rule that does not exist is an error with the legal words', () => {
    expect(answer({ ...swing, rule: 'hope' }).error).toMatchObject({ field: 'rule' });
    expect(answer({ ...swing, rule: 'hope' }).error!.message).toContain('held plane, nothing adapts');
  });
});

describe('an impact line', () => {
  test('gives the published worked example to its printed digits (Penner 2001, values C)', () => {
    const out = answer(impact);
    expect(out['ballSpeedMps']).toBeCloseTo(62.07, 2);
    expect(out['launchDeg']).toBeCloseTo(9.684, 3);
    expect(Math.round(out['spinRpm'])).toBe(2805);
    expect(out['startDeg']).toBe(0);
  });

  test('with a club the face is that of the club, as on the desk: a driver spins the ball less, an iron more', () => {
    const rolling = answer(impact);
    const driver = answer({ ...impact, club: 'driver' });
    const iron = answer({ ...impact, club: '7-iron' });
    // Spin is proportional to 1 + tangential restitution; a livelier face changes the ball's speed alone.
    expect(driver['spinRpm'] / rolling['spinRpm']).toBeCloseTo(1 + HEADS.driver.tangential, 9);
    expect(iron['spinRpm'] / rolling['spinRpm']).toBeCloseTo(1 + HEADS['7-iron'].tangential, 9);
    expect(driver['ballSpeedMps']).toBeGreaterThan(rolling['ballSpeedMps']);
    const own = { lengthM: 1.14, lieDeg: 57, loftDeg: 9, kind: 'driver' };
    expect(answer({ ...impact, club: own })).toEqual(driver);
    expect(answer({ ...impact, club: 'broom' }).error).toMatchObject({ field: 'club' });
  });

  test.each([
    [{ headSpeedMps: 0 }, 'headSpeedMps'],
    [{ headSpeedMps: -30 }, 'headSpeedMps'],
    [{ headMassKg: 0 }, 'headMassKg'],
    [{ dynamicLoftDeg: 100 }, 'dynamicLoftDeg'],
    [{ faceDeg: 'open' }, 'faceDeg'],
    [{ loftDeg: 12 }, 'loftDeg'],
  ])('%j is an error that names the field', (part, field) => {
    expect(answer({ ...impact, ...part }).error!.field).toBe(field);
  });

  test('a face that moves away from the ball is answered, not an error', () => {
    const out = answer({ ...impact, faceDeg: 170 });
    expect(out.error).toBeUndefined();
    expect(out).toMatchObject({ kind: 'impact', missing: 'no-contact' });
    expect(out.message).not.toBe('');
  });
});

describe('a flight line', () => {
  test.each([
    ['none', 203.16, 2.967, 10.8],
    [{ cd: 0.25, cl: 0 }, 128.57, 2.6, 8.37],
    [{ cd: 0.25, cl: 0.15 }, 208, 5.493, 23.18],
  ])('with drag %j it meets the trajectory table (C)', (drag, carryM, timeS, apexM) => {
    const out = answer({ ...flight, drag });
    expect(Math.abs(out['carryM'] - carryM)).toBeLessThan(0.05);
    expect(Math.abs(out['timeS'] - timeS)).toBeLessThan(0.01);
    expect(Math.abs(out['apexM'] - apexM)).toBeLessThan(0.05);
    expect(out).not.toHaveProperty('carryWidthM');
  });

  test('a drive by the measured coefficients meets the table and owns up to its width (Smits & Smith 1994; values C)', () => {
    const out = answer({ ...flight, ballSpeedMps: 74.65, launchDeg: 10.9 });
    expect(Math.abs(out['carryM'] - 227.79)).toBeLessThan(0.05);
    expect(Math.abs(out['landingDeg'] - 40.93)).toBeLessThan(0.05);
    expect(out['extrapolated']).toBe(true);
    expect(out['carryWidthM']).toBeCloseTo(20, 0);
  });

  test('the fit that shots fly with has a name of its own, and its width', () => {
    const out = answer({ ...flight, drag: 'naruo-mizota' });
    expect(out['carryM']).not.toBeCloseTo(answer(flight)['carryM'], 0);
    expect(out['carryWidthM']).toBeGreaterThan(10);
    expect(answer(flight)).toEqual(answer({ ...flight, drag: 'smits-smith' }));
    expect(answer({ ...flight, drag: 'thick' }).error!.message).toContain('naruo-mizota');
  });

  test('wind against shortens the carry, wind from the left carries right', () => {
    const still = answer(flight);
    expect(answer({ ...flight, tailWindMps: -5 })['carryM']).toBeLessThan(still['carryM']);
    expect(answer({ ...flight, crossWindMps: 5 })['offlineM']).toBeGreaterThan(2);
  });

  test.each([
    [{ ballSpeedMps: 0 }, 'ballSpeedMps'],
    [{ ballSpeedMps: -5 }, 'ballSpeedMps'],
    [{ spinRpm: -1 }, 'spinRpm'],
    [{ spinAxisDeg: 181 }, 'spinAxisDeg'],
    [{ drag: 'thick' }, 'drag'],
    [{ drag: { cd: -1, cl: 0 } }, 'drag'],
    [{ altitudeM: 50_000 }, 'altitudeM'],
  ])('%j is an error that names the field', (part, field) => {
    expect(answer({ ...flight, ...part }).error!.field).toBe(field);
  });

  test('topspin, a spin axis tilted beyond 90 degrees, is a shot like any other: it dives', () => {
    const out = answer({ ...flight, spinAxisDeg: 150 });
    expect(out.error).toBeUndefined();
    expect(out['carryM']).toBeLessThan(answer({ ...flight, spinRpm: 0 })['carryM']);
  });

  test('a ball into the ground and a ball that stays up are answered, not errors', () => {
    expect(answer({ ...flight, launchDeg: -5 })).toMatchObject({ kind: 'flight', missing: 'never-rises' });
    const kite = { ...flight, ballSpeedMps: 150, launchDeg: 89, spinRpm: 0, drag: 'none', altitudeM: 0 };
    expect(answer(kite)).toMatchObject({ kind: 'flight', missing: 'never-lands' });
  });
});
