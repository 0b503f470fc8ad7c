import { describe, expect, test } from 'vitest';
import { DEFAULT_ARM_ANGLE } from '../../src/reading/checkpoints';
import { DIALS, MOVEMENT_GROUPS } from '../../src/model/movements';
import type { Swing } from '../../src/reading/swing';
import { DEFAULT_BANDS, type Band } from '../../src/reading/verdicts';
import { createJudge, DIAL_INDEX, HALF_RANGE, toDials } from '../../src/solving/diagnosis/judged';
import { INSIDE, solvePlans, type Plan } from '../../src/solving/diagnosis/plan';
import { createRandom } from './random';
import { playersOffPlane } from './solvingPlayers';

const { leadWristFlexion: WRIST, rotationRate: RATE, rotationDelay: DELAY, trailSideBend: TILT } = DIAL_INDEX;
/** Times as many grid points along every side: `PLAN_GRID=2` looks sixteen times as closely where four dials are free. */
const FINER = Number(process.env['PLAN_GRID'] ?? 1);
const players = playersOffPlane(50, 31);
const answers = players.map((swing) => ({ swing, plans: solvePlans({ swing, allow: MOVEMENT_GROUPS }).plans }));
/** Readings come from events solved to 1e-9 s; that is far less than this, in metres and in half ranges. */
const ROUNDING = 1e-6;

const outside = ({ low, high }: Band, value: number): number =>
  Math.max(0, low + INSIDE - value, value - high + INSIDE);

/** Metres outside the inner bands (those a plan aims at) at changes given in half ranges; undefined past the range of motion. */
function createTrial(swing: Swing) {
  const judge = createJudge(swing, DEFAULT_ARM_ANGLE);
  const from = toDials(swing.movements);
  const dials = from.slice();
  const read = new Float64Array(2);
  return (indices: readonly number[], changes: readonly number[]): number | undefined => {
    dials.set(from);
    for (let k = 0; k < indices.length; k++) {
      const i = indices[k];
      dials[i] += changes[k] * HALF_RANGE[i];
      if (dials[i] < DIALS[i].min || dials[i] > DIALS[i].max) return undefined;
    }
    judge.read(dials, read);
    const distance = Math.hypot(
      outside(DEFAULT_BANDS.leadArmParallel, read[0]),
      outside(DEFAULT_BANDS.shaftParallel, read[1]),
    );
    return Number.isNaN(distance) ? undefined : distance;
  };
}

/** Metres outside the inner bands that a plan itself leaves. */
const leftBy = ({ readings }: Plan): number =>
  Math.hypot(
    outside(DEFAULT_BANDS.leadArmParallel, readings.leadArmParallel),
    outside(DEFAULT_BANDS.shaftParallel, readings.shaftParallel),
  );

const planOf = (plans: readonly Plan[], uses: string): Plan => plans.find((plan) => plan.uses.join() === uses)!;

/** Smallest effort on a grid that reaches the bands, and the smallest distance left anywhere on it. */
function search(swing: Swing, indices: readonly number[], points: Iterable<readonly number[]>) {
  const trial = createTrial(swing);
  let effort = Infinity;
  let left = Infinity;
  for (const changes of points) {
    const distance = trial(indices, changes);
    if (distance === undefined) continue;
    left = Math.min(left, distance);
    if (distance === 0) effort = Math.min(effort, Math.hypot(...changes));
  }
  return { effort, left };
}

/** Evenly spaced changes over all that the dial's limits allow, half ranges. */
function* line(swing: Swing, index: number, count: number): Generator<number> {
  const { id, min, max } = DIALS[index];
  for (let i = 0; i <= count; i++) yield (min + (i / count) * (max - min) - swing.movements[id]) / HALF_RANGE[index];
}

function* pairs(swing: Swing, a: number, b: number, count: number): Generator<readonly number[]> {
  for (const x of line(swing, a, count)) for (const y of line(swing, b, count)) yield [x, y];
}

describe(
  'fifty players, half of them steep and half over-shallow, against trying everything',
  { timeout: 90_000 * FINER ** 4 },
  () => {
    for (const [uses, index] of [['leadWrist', WRIST] as const, ['sideTilt', TILT] as const]) {
      test(`with ${uses} alone no smaller change reaches the bands, and ours is no larger than it must be`, () => {
        const COUNT = 500 * FINER;
        const spacing = (DIALS[index].max - DIALS[index].min) / COUNT / HALF_RANGE[index];
        let reached = 0;
        for (const { swing, plans } of answers) {
          const plan = planOf(plans, uses);
          const grid = search(
            swing,
            [index],
            [...line(swing, index, COUNT)].map((change) => [change]),
          );
          expect(grid.left).toBeGreaterThan(leftBy(plan) - ROUNDING);
          if (grid.effort < Infinity) {
            reached++;
            expect(plan.status).toBe('reached');
            expect(plan.effort).toBeLessThan(grid.effort + ROUNDING);
            expect(plan.effort).toBeGreaterThan(grid.effort - spacing - ROUNDING);
          }
        }
        expect(reached).toBeGreaterThan(10);
      });
    }

    test('with rotation alone no smaller change of rate and start reaches the bands', () => {
      let reached = 0;
      for (const { swing, plans } of answers) {
        const plan = planOf(plans, 'rotation');
        const grid = search(swing, [RATE, DELAY], pairs(swing, RATE, DELAY, 32 * FINER));
        expect(grid.left).toBeGreaterThan(leftBy(plan) - ROUNDING);
        if (grid.effort === Infinity) continue;
        reached++;
        expect(plan.status).toBe('reached');
        expect(plan.effort).toBeLessThan(grid.effort + ROUNDING);
      }
      expect(reached).toBeGreaterThan(20);
    });

    test('with everything allowed, nothing inside the ball of our effort reaches the bands, and our own point on its rim does', () => {
      const random = createRandom(32);
      for (const { swing, plans } of answers) {
        const plan = planOf(plans, MOVEMENT_GROUPS.join());
        expect(plan.status).toBe('reached');
        const dials = [WRIST, RATE, DELAY, TILT];
        const inner = plan.effort - ROUNDING;
        expect(search(swing, dials, lattice(inner, 4 * FINER)).effort).toBe(Infinity);
        expect(search(swing, dials, shell(0.99 * inner, 400 * FINER ** 3, random)).effort).toBe(Infinity);
        const change = dials.map((i) => plan.change[DIALS[i].id] / HALF_RANGE[i]);
        expect(createTrial(swing)(dials, change)).toBeLessThan(ROUNDING);
      }
    });
  },
);

/** Points of a four-dimensional lattice inside a ball, `steps` from the middle to the rim. */
function* lattice(radius: number, steps: number): Generator<readonly number[]> {
  const values = Array.from({ length: 2 * steps + 1 }, (_, i) => ((i - steps) / steps) * radius);
  for (const a of values)
    for (const b of values)
      for (const c of values) for (const d of values) if (Math.hypot(a, b, c, d) < radius) yield [a, b, c, d];
}

/** Random points on a sphere in four dimensions. */
function* shell(radius: number, count: number, random: () => number): Generator<readonly number[]> {
  for (let i = 0; i < count;) {
    const point = Array.from({ length: 4 }, () => 2 * random() - 1);
    const size = Math.hypot(...point);
    if (size > 1 || size < 1e-3) continue;
    i++;
    yield point.map((value) => (value / size) * radius);
  }
}
