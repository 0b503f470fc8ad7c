import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SEA_LEVEL } from '../../src/flight/air';
import { airborneSlope, STATE_SIZE, VX } from '../../src/flight/airborne';
import { isRefused } from '../../src/flight/answer';
import { FLIGHT_BALL } from '../../src/flight/ball';
import { findLaunch, impactOf, strikeOf, type StrikeNumbers } from '../../src/flight/impact';
import { launchOf, numbersOf, type LaunchNumbers } from '../../src/flight/launch';
import { findFlight, type Flight, type FlightSettings } from '../../src/flight/trajectory';

/** Whole hundredths, so that every size of value is drawn alike. */
const hundredths = (from: number, to: number) => fc.integer({ min: from * 100, max: to * 100 }).map((n) => n / 100);

const launches: fc.Arbitrary<LaunchNumbers> = fc.record({
  ballSpeedMps: hundredths(5, 85),
  launchDeg: hundredths(1, 80),
  startDeg: hundredths(-40, 40),
  spinRpm: hundredths(0, 12000),
  spinAxisDeg: hundredths(-180, 180),
});

const strikes: fc.Arbitrary<StrikeNumbers> = fc.record({
  headSpeedMps: hundredths(10, 60),
  dynamicLoftDeg: hundredths(1, 60),
  faceDeg: hundredths(-20, 20),
  pathDeg: hundredths(-20, 20),
  attackDeg: hundredths(-15, 10),
  headMassKg: hundredths(0.15, 0.4),
});

/** From nothing gripping to a face that gives back all it took. */
const grips = hundredths(-1, 1);
const fits = fc.constantFrom('smits-smith' as const, 'naruo-mizota' as const, 'joined' as const);
const winds = fc.tuple(hundredths(-15, 15), fc.constant(0), hundredths(-15, 15));

function fly(launch: LaunchNumbers, settings: FlightSettings = {}): Flight {
  const flight = findFlight(launchOf(launch), settings);
  if (isRefused(flight)) throw new Error(flight.message);
  return flight;
}

function launch(numbers: StrikeNumbers, tangential = 0) {
  const strike = strikeOf(numbers);
  if (isRefused(strike)) throw new Error(strike.message);
  const ball = findLaunch({ ...strike, tangential });
  if (isRefused(ball)) throw new Error(ball.message);
  return { strike, ball };
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, part, i) => sum + part * b[i], 0);

describe('laws of the strike', () => {
  test("the spin axis is square to the head's velocity, to the face normal and to the ball's velocity", () => {
    fc.assert(
      fc.property(strikes, grips, (numbers, grip) => {
        const { strike, ball } = launch(numbers, grip);
        expect(Math.hypot(...ball.spinAxis)).toBeCloseTo(1, 9);
        fc.pre(ball.spinRate > 1);
        expect(dot(ball.spinAxis, strike.headVelocity)).toBeCloseTo(0, 7);
        expect(dot(ball.spinAxis, strike.faceNormal)).toBeCloseTo(0, 9);
        expect(dot(ball.spinAxis, ball.velocity)).toBeCloseTo(0, 7);
      }),
    );
  });

  test('the ball leaves between head velocity and face normal, and never with more energy than the head brought', () => {
    fc.assert(
      fc.property(strikes, grips, (numbers, grip) => {
        const { strike, ball } = launch(numbers, grip);
        const v = strike.headVelocity;
        const angle = (a: readonly number[], b: readonly number[]) =>
          Math.acos(Math.min(1, dot(a, b) / Math.hypot(...a) / Math.hypot(...b)));
        expect(angle(ball.velocity, v) + angle(ball.velocity, strike.faceNormal)).toBeCloseTo(
          angle(v, strike.faceNormal),
          6,
        );
        const { mass, inertia } = { mass: 0.0459, inertia: 0.4 * 0.0459 * 0.02135 ** 2 };
        const after = v.map((part, i) => part - (mass / strike.headMass) * ball.velocity[i]);
        const energy =
          0.5 * mass * dot(ball.velocity, ball.velocity) +
          0.5 * inertia * ball.spinRate ** 2 +
          0.5 * strike.headMass * dot(after, after);
        expect(energy).toBeLessThanOrEqual(0.5 * strike.headMass * dot(v, v) + 1e-9);
      }),
    );
  });

  test('mirrored face and track give the mirrored ball', () => {
    fc.assert(
      fc.property(strikes, (numbers) => {
        const ball = impactOf(numbers);
        const mirrored = impactOf({ ...numbers, faceDeg: -numbers.faceDeg, pathDeg: -numbers.pathDeg });
        if (isRefused(ball) || isRefused(mirrored)) throw new Error('no launch');
        expect(mirrored.ballSpeedMps).toBeCloseTo(ball.ballSpeedMps, 9);
        expect(mirrored.launchDeg).toBeCloseTo(ball.launchDeg, 9);
        expect(mirrored.spinRpm).toBeCloseTo(ball.spinRpm, 6);
        expect(mirrored.startDeg).toBeCloseTo(-ball.startDeg, 9);
        fc.pre(ball.spinRpm > 50 && Math.abs(ball.spinAxisDeg) < 179);
        expect(mirrored.spinAxisDeg).toBeCloseTo(-ball.spinAxisDeg, 6);
      }),
    );
  });

  test('the numbers of a launch give the launch back', () => {
    fc.assert(
      fc.property(launches, (numbers) => {
        const back = numbersOf(launchOf(numbers));
        expect(back.ballSpeedMps).toBeCloseTo(numbers.ballSpeedMps, 9);
        expect(back.launchDeg).toBeCloseTo(numbers.launchDeg, 9);
        expect(back.startDeg).toBeCloseTo(numbers.startDeg, 9);
        expect(back.spinRpm).toBeCloseTo(numbers.spinRpm, 6);
        expect(Math.cos(((back.spinAxisDeg - numbers.spinAxisDeg) * Math.PI) / 180)).toBeCloseTo(1, 12);
        const { velocity, spinAxis } = launchOf(numbers);
        expect(dot(velocity, spinAxis)).toBeCloseTo(0, 9);
      }),
    );
  });
});

describe('laws of the flight', () => {
  test('in still air the forces never add energy: drag takes it, lift is square to the motion', () => {
    const parts = fc.tuple(hundredths(-80, 80), hundredths(-80, 80), hundredths(-80, 80), hundredths(0, 1200));
    fc.assert(
      fc.property(parts, launches, ([vx, vy, vz, spin], { spinAxisDeg, startDeg }) => {
        const { spinAxis } = launchOf({ ballSpeedMps: 1, launchDeg: 20, startDeg, spinRpm: 0, spinAxisDeg });
        const around = { ball: FLIGHT_BALL, air: SEA_LEVEL, wind: [0, 0, 0], gravity: 9.81, spinAxis } as const;
        const out = new Float64Array(STATE_SIZE);
        for (const drag of ['smits-smith', 'naruo-mizota', 'joined', 'none', { cd: 0.3, cl: 0.4 }] as const) {
          airborneSlope({ ...around, drag })(Float64Array.of(0, 5, 0, vx, vy, vz, spin), out);
          const power = vx * out[VX] + vy * (out[VX + 1] + 9.81) + vz * out[VX + 2];
          expect(power).toBeLessThanOrEqual(1e-9 * (1 + Math.hypot(vx, vy, vz) ** 3));
        }
      }),
    );
  });

  test('along a whole flight in still air, height and speed together never grow', () => {
    fc.assert(
      fc.property(launches, fits, (numbers, drag) => {
        const flight = fly(numbers, { drag, points: 201 });
        expect(flight.landingSpeedMps).toBeLessThanOrEqual(numbers.ballSpeedMps + 1e-6);
        const h = flight.timeS / 200;
        let before = Infinity;
        for (let i = 1; i < 200; i++) {
          const at = (j: number, k: number) => flight.track[4 * j + k];
          const speed = Math.hypot(...[1, 2, 3].map((k) => (at(i + 1, k) - at(i - 1, k)) / (2 * h)));
          const energy = 0.5 * speed ** 2 + 9.81 * at(i, 2);
          // Central differences at this spacing are good to a thousandth of the energy at launch.
          expect(energy).toBeLessThan(before + 1e-3 * (1 + 0.5 * numbers.ballSpeedMps ** 2));
          before = Math.min(before, energy);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('start, spin axis and cross wind mirrored, the ball lands mirrored', () => {
    fc.assert(
      fc.property(launches, winds, fits, (numbers, [along, , across], drag) => {
        const flight = fly(numbers, { drag, wind: [along, 0, across] });
        const mirrored = fly(
          { ...numbers, startDeg: -numbers.startDeg, spinAxisDeg: -numbers.spinAxisDeg },
          { drag, wind: [along, 0, -across] },
        );
        expect(mirrored.carryM).toBeCloseTo(flight.carryM, 9);
        expect(mirrored.timeS).toBeCloseTo(flight.timeS, 9);
        expect(mirrored.offlineM).toBeCloseTo(-flight.offlineM, 9);
        expect(mirrored.curveM).toBeCloseTo(-flight.curveM, 9);
        expect(mirrored.startDeg).toBeCloseTo(-flight.startDeg, 9);
      }),
    );
  });

  test('a start turned by some angle turns the whole flight about the ball', () => {
    fc.assert(
      fc.property(launches, hundredths(-90, 90), (numbers, turn) => {
        const flight = fly(numbers);
        const turned = fly({ ...numbers, startDeg: numbers.startDeg + turn });
        // The integration promises a hundredth of a metre, in whatever direction the ball flies.
        expect(Math.abs(turned.carryM - flight.carryM)).toBeLessThan(0.01);
        expect(Math.abs(turned.curveM - flight.curveM)).toBeLessThan(0.01);
      }),
    );
  });

  test('half the step error changes carry and offline by less than 0.01 m, in any wind', () => {
    fc.assert(
      fc.property(launches, winds, fits, (numbers, wind, drag) => {
        const flight = fly(numbers, { drag, wind });
        const finer = fly(numbers, { drag, wind, tolerance: 5e-7 });
        expect(Math.abs(finer.carryM - flight.carryM)).toBeLessThan(0.01);
        expect(Math.abs(finer.offlineM - flight.offlineM)).toBeLessThan(0.01);
      }),
      { numRuns: 300 },
    );
  });

  test('every flight ends on the ground with finite numbers, or says why not', () => {
    const anything = fc.record({
      ballSpeedMps: hundredths(0, 150),
      launchDeg: hundredths(-90, 90),
      startDeg: hundredths(-180, 180),
      spinRpm: hundredths(0, 20000),
      spinAxisDeg: hundredths(-180, 180),
    });
    fc.assert(
      fc.property(anything, winds, fits, (numbers, wind, drag) => {
        const flight = findFlight(launchOf(numbers), { drag, wind, points: 2 });
        if (isRefused(flight)) {
          expect(flight.message.length).toBeGreaterThan(10);
          return;
        }
        const { track, extrapolated, ...rest } = flight;
        expect(typeof extrapolated).toBe('boolean');
        expect(Object.values(rest).every(Number.isFinite)).toBe(true);
        expect(Math.abs(track[6])).toBeLessThan(1e-6);
        expect(flight.landingDeg).toBeGreaterThanOrEqual(0);
        expect(flight.apexM).toBeGreaterThan(0);
      }),
      { numRuns: 400 },
    );
  });
});
