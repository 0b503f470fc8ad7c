import { describe, expect, test } from 'vitest';
import { isRefused } from '../../src/flight/answer';
import { flightOf, type Day } from '../../src/flight/forecast';
import { launchOf, type LaunchNumbers } from '../../src/flight/launch';
import { findFlight, type Flight, type FlightSettings } from '../../src/flight/trajectory';

const iron: LaunchNumbers = { ballSpeedMps: 50, launchDeg: 18, startDeg: 0, spinRpm: 6000, spinAxisDeg: 0 };

function fly(change: Partial<LaunchNumbers> = {}, day: Day = {}): Flight {
  const flight = flightOf({ ...iron, ...change }, day);
  if (isRefused(flight)) throw new Error(flight.message);
  return flight;
}

describe('how the ball answers spin, wind and height', () => {
  test('an axis tilted to the right curves the ball right, to the left left', () => {
    expect(fly({ spinAxisDeg: 10 }).curveM).toBeGreaterThan(3);
    expect(fly({ spinAxisDeg: -10 }).curveM).toBeLessThan(-3);
    expect(fly().curveM).toBeCloseTo(0, 9);
  });

  test('a start to the right lands right without any curve', () => {
    const right = fly({ startDeg: 3 });
    expect(right.startDeg).toBeCloseTo(3, 9);
    expect(right.offlineM).toBeCloseTo(right.carryM * Math.sin((3 * Math.PI) / 180), 9);
    expect(right.curveM).toBeCloseTo(0, 9);
  });

  test('a start to the left with a fade axis comes back toward the target', () => {
    const fade = fly({ startDeg: -3, spinAxisDeg: 8 });
    expect(fade.curveM).toBeGreaterThan(0);
    expect(fade.offlineM).toBeGreaterThan(fly({ startDeg: -3 }).offlineM);
  });

  test('backspin holds the ball up, topspin brings it down sooner', () => {
    expect(fly().timeS).toBeGreaterThan(fly({ spinRpm: 0 }).timeS);
    expect(fly({ spinAxisDeg: 180 }).timeS).toBeLessThan(fly({ spinRpm: 0 }).timeS);
    expect(fly({ spinAxisDeg: -120 }).curveM).toBeLessThan(0);
  });

  test('a tail wind carries the ball further, a head wind less far and higher', () => {
    expect(fly({}, { tailWindMps: 5 }).carryM).toBeGreaterThan(fly().carryM + 3);
    expect(fly({}, { tailWindMps: -5 }).carryM).toBeLessThan(fly().carryM - 3);
    expect(fly({}, { tailWindMps: -5 }).apexM).toBeGreaterThan(fly().apexM);
  });

  test('wind from the left moves the ball right, and as far as wind from the right moves it left', () => {
    const right = fly({}, { crossWindMps: 4 });
    expect(right.offlineM).toBeGreaterThan(3);
    expect(fly({}, { crossWindMps: -4 }).offlineM).toBeCloseTo(-right.offlineM, 9);
  });

  test("a ball carried by its own wind feels none: no drag, no lift, at the air's own speed", () => {
    const launch = launchOf({ ...iron, ballSpeedMps: 10, launchDeg: 60 });
    const withIt = findFlight(launch, { wind: [5, 0, 0], drag: { cd: 0.25, cl: 0 } });
    const still = findFlight(launchOf({ ...iron, ballSpeedMps: 10 * Math.sin(Math.PI / 3), launchDeg: 90 }), {
      drag: { cd: 0.25, cl: 0 },
    });
    if (isRefused(withIt) || isRefused(still)) throw new Error('no flight');
    expect(withIt.timeS).toBeCloseTo(still.timeS, 6);
    expect(withIt.carryM).toBeCloseTo(5 * still.timeS, 5);
  });

  test('a drive goes further in thin air', () => {
    const drive = { ballSpeedMps: 70, launchDeg: 12, spinRpm: 2700 };
    expect(fly(drive, { altitudeM: 1600 }).carryM).toBeGreaterThan(fly(drive).carryM + 3);
  });

  test('a ball hit straight up comes down where the lift has put it', () => {
    const up = fly({ launchDeg: 90, spinAxisDeg: 0 });
    expect(up.startDeg).toBe(0);
    expect(Number.isFinite(up.carryM) && up.apexM > 40).toBe(true);
  });

  test('two fixed coefficients ask for the axis only: a ball without spin rate still curves', () => {
    const fixed = { cd: 0.25, cl: 0.15 };
    expect(fly({ spinRpm: 0, spinAxisDeg: 20 }, { drag: fixed }).curveM).toBeGreaterThan(3);
  });
});

describe('the track that is drawn', () => {
  test('runs from the ball to the landing, evenly in time, through the apex', () => {
    const flight = fly({ startDeg: 2, spinAxisDeg: 12 }, { points: 401 });
    const { track } = flight;
    expect(track.length).toBe(4 * 401);
    expect(Array.from(track.slice(0, 4))).toEqual([0, 0, 0, 0]);
    expect(track[1600]).toBeCloseTo(flight.timeS, 12);
    expect(Math.hypot(track[1601], track[1603])).toBeCloseTo(flight.carryM, 9);
    expect(track[1602]).toBeCloseTo(0, 9);
    expect(track[1603]).toBeCloseTo(flight.offlineM, 9);
    const heights = Array.from({ length: 401 }, (_, i) => track[4 * i + 2]);
    expect(Math.max(...heights)).toBeLessThanOrEqual(flight.apexM + 1e-9);
    expect(Math.max(...heights)).toBeGreaterThan(flight.apexM - 0.01);
    expect(track[4] - track[0]).toBeCloseTo(flight.timeS / 400, 12);
  });

  test('is left out unless asked for, and asking changes nothing else', () => {
    const plain = fly();
    expect(plain.track.length).toBe(0);
    expect({ ...fly({}, { points: 64 }), track: plain.track }).toEqual(plain);
  });

  test('is the same whether it is asked for at once or after other balls have flown', () => {
    const day = { points: 48, tailWindMps: -3, crossWindMps: 4 };
    const at = fly({ startDeg: 2 }, day).track.slice();
    const late = fly({ startDeg: 2 }, day);
    fly({ ballSpeedMps: 30, spinAxisDeg: -20 }, { points: 12, drag: { cd: 0.3, cl: 0.1 } }).track.fill(0);
    expect(late.track).toEqual(at);
    expect(late.track).toBe(late.track);
  });
});

describe('finer steps', () => {
  test.each([
    [{ ballSpeedMps: 74.65, launchDeg: 10.9, spinRpm: 2700 }],
    [{ spinAxisDeg: 30 }],
    [{ ballSpeedMps: 30, launchDeg: 50, spinRpm: 10000 }],
    [{ ballSpeedMps: 60, launchDeg: 0.01, spinRpm: 3000 }],
  ])('half the step error, and a thousandth of it, changes the carry of %o by less than 0.01 m', (change) => {
    const launch = launchOf({ ...iron, ...change });
    const carry = (settings: FlightSettings) => {
      const flight = findFlight(launch, settings);
      if (isRefused(flight)) throw new Error(flight.message);
      return flight.carryM;
    };
    expect(Math.abs(carry({ tolerance: 5e-7 }) - carry({}))).toBeLessThan(0.01);
    expect(Math.abs(carry({ tolerance: 1e-9 }) - carry({}))).toBeLessThan(0.01);
  });
});

test('a ball without drag, lifted so hard that it loops, comes down as steeply and as fast as it rose', () => {
  const loop = fly({}, { drag: { cd: 0, cl: 3 } });
  expect(loop.carryM).toBeLessThan(20);
  expect(loop.landingDeg).toBeCloseTo(18, 3);
  expect(loop.landingSpeedMps).toBeCloseTo(50, 3);
});

describe('flights that cannot be answered say why', () => {
  test.each<[string, Partial<LaunchNumbers>]>([
    ['ballSpeedMps', { ballSpeedMps: 0 }],
    ['ballSpeedMps', { ballSpeedMps: -60 }],
    ['ballSpeedMps', { ballSpeedMps: 1e200 }],
    ['launchDeg', { launchDeg: NaN }],
    ['launchDeg', { launchDeg: 100 }],
    ['spinRpm', { spinRpm: -1 }],
    ['spinAxisDeg', { spinAxisDeg: Infinity }],
    ['spinAxisDeg', { spinAxisDeg: 181 }],
    ['startDeg', { startDeg: undefined as unknown as number }],
  ])('%s of %o', (field, change) => {
    expect(flightOf({ ...iron, ...change })).toMatchObject({ missing: 'bad-input', field });
  });

  test.each<[string, Day]>([
    ['tailWindMps', { tailWindMps: NaN }],
    ['crossWindMps', { crossWindMps: 80 }],
    ['altitudeM', { altitudeM: 20000 }],
    ['drag', { drag: { cd: -0.1, cl: 0 } }],
    ['drag', { drag: { cd: NaN, cl: 0 } }],
    ['drag', { drag: 'thick' as 'none' }],
    ['points', { points: 1 }],
    ['points', { points: 2.5 }],
  ])('%s of %o', (field, day) => {
    expect(flightOf(iron, day)).toMatchObject({ missing: 'bad-input', field });
  });

  test('a ball along or into the ground never rises', () => {
    expect(flightOf({ ...iron, launchDeg: -3 })).toMatchObject({ missing: 'never-rises' });
    expect(flightOf({ ...iron, launchDeg: 0 }, { drag: 'none' })).toMatchObject({ missing: 'never-rises' });
  });

  test('a level ball with enough backspin does rise', () => {
    expect(fly({ ballSpeedMps: 70, launchDeg: 0, spinRpm: 3000 }).apexM).toBeGreaterThan(2);
  });

  test('a ball still up after 30 s never lands', () => {
    expect(flightOf({ ...iron, ballSpeedMps: 150, launchDeg: 85 }, { drag: 'none' })).toMatchObject({
      missing: 'never-lands',
    });
    expect(findFlight(launchOf(iron), { wind: [0, 45, 0] })).toMatchObject({ missing: 'never-lands' });
  });

  test.each<[string, Parameters<typeof findFlight>]>([
    ['velocity', [{ velocity: [NaN, 1, 0], spinAxis: [0, 0, 1], spinRate: 1 }]],
    ['velocity', [{ velocity: [0, 0, 0], spinAxis: [0, 0, 1], spinRate: 1 }]],
    ['spinAxis', [{ velocity: [50, 9, 0], spinAxis: [0, 0, 2], spinRate: 1 }]],
    ['spinRate', [{ velocity: [50, 9, 0], spinAxis: [0, 0, 1], spinRate: -1 }]],
    ['launch', [{ velocity: [1e200, 1e200, 0], spinAxis: [0, 0, 1], spinRate: 1 }]],
    ['launch', [launchOf(iron), { drag: { cd: 1e7, cl: 0 }, wind: [0, 45, 0] }]],
    ['wind', [launchOf(iron), { wind: [NaN, 0, 0] }]],
    ['air', [launchOf(iron), { air: { density: 0, viscosity: 1.48e-5 } }]],
    ['gravity', [launchOf(iron), { gravity: -9.81 }]],
  ])('a bad %s given to the integration itself', (field, args) => {
    expect(findFlight(...args)).toMatchObject({ missing: 'bad-input', field });
  });
});
