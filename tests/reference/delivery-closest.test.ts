import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { ADAPTING } from '../../src/model/adaptation';
import { bodyOf } from '../../src/model/body';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { J } from '../../src/model/joints';
import { K } from '../../src/model/keys';
import { STILL } from '../../src/model/movements';
import { AT, createPose } from '../../src/model/pose';
import { solveAdaptations } from '../../src/reading/delivery/adapt';
import {
  CONDITIONS,
  FACE,
  findCosts,
  findMisfit,
  lower,
  PATH,
  SIZE,
  takeUp,
  upper,
} from '../../src/reading/delivery/adaptArm';
import { findSlopes } from '../../src/reading/delivery/adaptSlopes';
import { FACE_WEIGHT, search } from '../../src/reading/delivery/adaptSearch';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { impliedPath, strikeOf } from '../../src/reading/delivery/delivery';
import { createSwing, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { createRandom } from './random';

interface Asked {
  readonly swing: Swing;
  readonly from: number;
  readonly path: number;
}

/** Swings whose arms come to the ball as asked, or cannot. Beyond the dials' ends, where arms run out. */
function swingsThat(status: 'held' | 'closest', wanted: number, beyond = 1): Asked[] {
  const chance = createRandom(23);
  const between = (low: number, high: number): number => low + (high - low) * chance();
  const found: Asked[] = [];
  for (let draw = 0; found.length < wanted; draw++) {
    const body = bodyOf({ statureM: [1.62, 1.78, 1.93][draw % 3], handed: 'right' });
    const club = clubOf(CLUBS[CLUB_IDS[draw % CLUB_IDS.length]]);
    const reference = createSwing(body, club, solveReference(body, club).reference);
    const swing = withMovements(reference, {
      ...STILL,
      leadWristFlexion: rad(between(-55, 55) * beyond),
      rotationRate: 1 + between(-0.45, 0.45) * beyond,
      rotationDelay: between(-0.05, 0.05) * beyond,
      trailSideBend: rad(between(-15, 15)),
    });
    const checkpoints = readCheckpoints(swing);
    const strike = strikeOf(reference, readCheckpoints(reference))!;
    const { shaftParallel } = checkpoints;
    if (!isReached(shaftParallel) || shaftParallel.t > 0.24) continue;
    const path = impliedPath(checkpoints, strike)!;
    if (solveAdaptations(swing, shaftParallel.t, path, 0).left.status === status) {
      found.push({ swing, from: shaftParallel.t, path });
    }
  }
  return found;
}

const misfit = new Float64Array(CONDITIONS);
const toTheTarget = ({ path }: Asked) => ({ path, face: 0 });

describe('arms that cannot reach the ball', () => {
  test('come as near as the straightened wrist lets them: the head lies on the line from shoulder to ball', () => {
    const pose = createPose();
    let compared = 0;
    for (const { swing, from, path } of swingsThat('closest', 24, 1.4)) {
      const { adaptation, miss, limited } = solveAdaptations(swing, from, path, 0).left;
      const span = swing.reference.times[K.impact] - swing.reference.times[K.shaftParallel];
      const rates = [...adaptation.rates].every(
        (rate, i) => Math.abs(rate) < 11 * [1, 1, 2.5, 1.25, 0.75][i] * (rad(8) / span),
      );
      if (limited.join() !== `${J.leadWristRadial}` || !rates) continue;
      compared++;
      swingPose({ ...swing, adaptation }, adaptation.impact, pose);
      const length = (to: ArrayLike<number>): number =>
        Math.hypot(...[0, 1, 2].map((i) => to[i] - pose[AT.leadShoulder + i]));
      // No arm turned about its shoulder and its own length brings the head off this sphere: plain geometry.
      const shortest = Math.abs(length(swing.reference.ballPoint) - length(pose.subarray(AT.head, AT.head + 3)));
      expect(Math.hypot(...miss) - shortest).toBeGreaterThan(-1e-9);
      expect(Math.hypot(...miss) - shortest).toBeLessThan(1e-5);
    }
    expect(compared).toBeGreaterThan(8);
  });
});

/** Levenberg-Marquardt of the ml.js project (MIT): another method, by other people, on the same question. */
describe('a second optimiser finds no better answer, from ours or from anywhere', () => {
  // As the delivery asks: first the face left as it comes, then, from there, returned.
  const cases = [
    { status: 'held', weight: 'none' },
    { status: 'held', weight: 'full' },
    { status: 'closest', weight: 'none' },
    { status: 'closest', weight: 'weak' },
  ] as const;
  test.each(cases)('arms that are $status, face weighed: $weight', ({ status, weight }) => {
    const chance = createRandom(5);
    const costs = new Float64Array(SIZE);
    const ofMoment = new Float64Array(ADAPTING.length);
    const weights = [1000, 1000, 1000, 1 / rad(0.1), FACE_WEIGHT[weight]];
    for (const asked of swingsThat(status, 4)) {
      const { swing, from } = asked;
      const goal = toTheTarget(asked);
      const ours = new Float64Array(SIZE);
      takeUp(swing, from);
      search(swing, goal, FACE_WEIGHT.none, ours);
      if (weight !== 'none') search(swing, goal, FACE_WEIGHT[weight], ours);
      const left = (efforts: ArrayLike<number>): number[] => {
        const at = Float64Array.from(efforts);
        findMisfit(swing, goal, at, misfit);
        findCosts(at, costs, ofMoment);
        return [...weights.map((each, r) => each * misfit[r]), ...Array.from(costs, (each) => each / 30)];
      };
      const cost = (efforts: ArrayLike<number>): number => left(efforts).reduce((sum, each) => sum + each * each, 0);
      const held = [...ours].map((each, k) => each - lower[k] < 1e-6 || upper[k] - each < 1e-6);
      // What stands at the end of its range stays there; everything else is free.
      const free = [...ours].map((_, k) => k).filter((k) => !held[k]);
      const place = (values: ArrayLike<number>): number[] => {
        const all = [...ours];
        free.forEach((k, i) => (all[k] = values[i]));
        return all;
      };
      for (let start = 0; start < 6; start++) {
        const rows = CONDITIONS + SIZE;
        const { parameterValues } = levenbergMarquardt(
          { x: Array.from({ length: rows }, (_, i) => i), y: Array.from({ length: rows }, () => 0) },
          (values: number[]) => {
            const at = left(place(values));
            return (x) => at[x];
          },
          {
            initialValues: free.map((k) =>
              Math.min(upper[k], Math.max(lower[k], start === 0 ? ours[k] : ours[k] + 2 * chance() - 1)),
            ),
            minValues: free.map((k) => lower[k]),
            maxValues: free.map((k) => upper[k]),
            gradientDifference: 1e-5,
            centralDifference: true,
            maxIterations: 60,
            damping: 1e-3,
            errorTolerance: 1e-12,
            improvementThreshold: 1e-12,
          },
        );
        expect(cost(place(parameterValues))).toBeGreaterThan(cost(ours) * (1 - 1e-9) - 1e-9);
      }
    }
  });
});

test('how the head and the face answer to the arms and the moment is what small changes of them show', () => {
  const nudge = 1e-5;
  const chance = createRandom(9);
  const [asked] = swingsThat('closest', 1);
  const { swing, from } = asked;
  const goal = toTheTarget(asked);
  takeUp(swing, from);
  for (let draw = 0; draw < 20; draw++) {
    const efforts = Float64Array.from({ length: SIZE }, (_, k) => (6 * chance() - 3) * (k === SIZE - 1 ? 0.1 : 1));
    const slopes = new Float64Array(CONDITIONS * SIZE);
    findSlopes(swing, goal, efforts, misfit, slopes);
    const here = misfit.slice();
    findMisfit(swing, goal, efforts, misfit);
    expect([...misfit]).toEqual([...here]);
    for (let k = 0; k < SIZE; k++) {
      const [up, down] = [1, -1].map((sense) => {
        findMisfit(
          swing,
          goal,
          efforts.map((each, i) => (i === k ? each + sense * nudge : each)),
          misfit,
        );
        return misfit.slice();
      });
      for (let r = 0; r < CONDITIONS; r++) {
        const shown = (up[r] - down[r]) / (2 * nudge);
        const away = Math.abs(shown - slopes[r * SIZE + k]);
        // The truncation of a central difference is the nudge squared, its rounding the last digit over the nudge. To the moment the
        // slopes are a difference themselves, over ten microseconds.
        expect(away, `condition ${r}, unknown ${k}`).toBeLessThan(k === SIZE - 1 ? 1e-4 * (1 + Math.abs(shown)) : 1e-6);
      }
    }
    expect(slopes[PATH * SIZE + SIZE - 1]).not.toBe(0);
    expect(slopes[FACE * SIZE + 3]).not.toBe(0);
  }
});

test('how those answers change, moment and rates included, is what the answers nearby show', () => {
  const nudge = 1e-4;
  const chance = createRandom(10);
  const [asked] = swingsThat('closest', 1);
  const { swing, from } = asked;
  const goal = toTheTarget(asked);
  takeUp(swing, from);
  const slopes = new Float64Array(CONDITIONS * SIZE);
  const bends = new Float64Array(CONDITIONS * SIZE * SIZE);
  for (let draw = 0; draw < 20; draw++) {
    const efforts = Float64Array.from({ length: SIZE }, (_, k) => (2 * chance() - 1) * (k === SIZE - 1 ? 0.1 : 1));
    findSlopes(swing, goal, efforts, misfit, slopes, bends);
    for (let j = 0; j < SIZE; j++) {
      const [up, down] = [1, -1].map((sense) => {
        const at = efforts.map((each, i) => (i === j ? each + sense * nudge : each));
        findSlopes(swing, goal, at, misfit, slopes);
        return slopes.slice();
      });
      for (let r = 0; r < CONDITIONS; r++) {
        for (let k = 0; k <= j; k++) {
          const shown = (up[r * SIZE + k] - down[r * SIZE + k]) / (2 * nudge);
          // To the moment both are differences: a second one over ten microseconds keeps about five digits.
          const room = j === SIZE - 1 ? 1e-3 : 1e-6;
          const away = Math.abs(shown - bends[(r * SIZE + j) * SIZE + k]);
          expect(away, `condition ${r}, unknowns ${j} and ${k}`).toBeLessThan(room * (1 + Math.abs(shown)));
        }
      }
    }
  }
});

test('the answer does not hang on what was asked before', () => {
  const [first, second] = [...swingsThat('held', 1), ...swingsThat('closest', 1)];
  const ask = ({ swing, from, path }: Asked) => solveAdaptations(swing, from, path, 0.5);
  const fresh = ask(first);
  ask(second);
  expect(ask(first)).toEqual(fresh);
});
