import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { STILL } from '../../src/model/movements';
import { AT, createPose } from '../../src/model/pose';
import { solveAdaptation } from '../../src/reading/delivery/adapt';
import { addBends, findMisfit, findSlopes, SIZE, standAtImpact } from '../../src/reading/delivery/adaptArm';
import { searchInside } from '../../src/reading/delivery/adaptInside';
import { isReached, readCheckpoints } from '../../src/reading/checkpoints';
import { impliedPath, strikeOf } from '../../src/reading/delivery/delivery';
import { createSwing, swingPose, withMovements, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { createRandom } from './random';

interface Short {
  readonly swing: Swing;
  readonly from: number;
  readonly path: number;
}

/** Swings that the arms cannot bring to the ball as asked. */
function swingsOutOfReach(wanted: number): Short[] {
  const chance = createRandom(23);
  const between = (low: number, high: number): number => low + (high - low) * chance();
  const found: Short[] = [];
  for (let draw = 0; found.length < wanted; draw++) {
    const body = bodyOf({ statureM: [1.62, 1.78, 1.93][draw % 3], handed: 'right' });
    const club = clubOf(CLUBS[CLUB_IDS[draw % CLUB_IDS.length]]);
    const reference = createSwing(body, club, solveReference(body, club).reference);
    const swing = withMovements(reference, {
      ...STILL,
      leadWristFlexion: rad(between(-40, 40)),
      rotationRate: between(0.7, 1.3),
      rotationDelay: between(-0.03, 0.03),
      trailSideBend: rad(between(-10, 10)),
    });
    const checkpoints = readCheckpoints(swing);
    const strike = strikeOf(reference, readCheckpoints(reference))!;
    const { shaftParallel } = checkpoints;
    if (!isReached(shaftParallel) || shaftParallel.t > 0.24) continue;
    const path = impliedPath(checkpoints, strike)!;
    if (solveAdaptation(swing, shaftParallel.t, path).status === 'closest') {
      found.push({ swing, from: shaftParallel.t, path });
    }
  }
  return found;
}

const misfit = new Float64Array(4);

describe('arms that cannot reach the ball', () => {
  test('come as near as the straightened wrist lets them: the head lies on the line from shoulder to ball', () => {
    const pose = createPose();
    let compared = 0;
    for (const { swing, from, path } of swingsOutOfReach(40)) {
      const { adaptation, miss, limited } = solveAdaptation(swing, from, path);
      const rates = [...adaptation.rates].every((rate, i) => Math.abs(rate) < 11 * [1, 1, 2.5, 0.75][i] * rad(8));
      if (limited.length !== 1 || !rates) continue;
      compared++;
      swingPose({ ...swing, adaptation }, adaptation.impact, pose);
      const length = (to: ArrayLike<number>): number =>
        Math.hypot(...[0, 1, 2].map((i) => to[i] - pose[AT.leadShoulder + i]));
      // No arm turned about its shoulder and its own length brings the head off this sphere: plain geometry.
      const shortest = Math.abs(length(swing.reference.ballPoint) - length(pose.subarray(AT.head, AT.head + 3)));
      expect(Math.hypot(...miss) - shortest).toBeGreaterThan(-1e-9);
      expect(Math.hypot(...miss) - shortest).toBeLessThan(1e-5);
    }
    expect(compared).toBeGreaterThan(10);
  });

  /** Levenberg-Marquardt of the ml.js project (MIT): another method, by other people, on the same question. */
  test('a second optimiser, from our answer or from anywhere, brings them no nearer', () => {
    const chance = createRandom(5);
    for (const { swing, from, path } of swingsOutOfReach(6)) {
      const ours = new Float64Array(SIZE);
      standAtImpact(swing, 0.25 - from);
      searchInside(swing, path, ours);
      const weights = [1000, 1000, 1000, 1 / rad(0.1)];
      const left = (efforts: ArrayLike<number>): number[] => {
        findMisfit(swing, path, Float64Array.from(efforts), misfit);
        return [...weights.map((weight, r) => weight * misfit[r]), ...Array.from(efforts, (each) => each / 30)];
      };
      const cost = (efforts: ArrayLike<number>): number => left(efforts).reduce((sum, each) => sum + each * each, 0);
      const free = [...ours].map((_, k) => k).filter((k) => k !== 3);
      const place = (values: ArrayLike<number>): number[] => {
        const all = [...ours];
        free.forEach((k, i) => (all[k] = values[i]));
        return all;
      };
      for (let start = 0; start < 6; start++) {
        const rows = 4 + SIZE;
        const { parameterValues } = levenbergMarquardt(
          { x: Array.from({ length: rows }, (_, i) => i), y: Array.from({ length: rows }, () => 0) },
          (values: number[]) => {
            const at = left(place(values));
            return (x) => at[x];
          },
          {
            initialValues: free.map((k) => (start === 0 ? ours[k] : 4 * chance() - 2)),
            // The wrist stays at the end of its range, where ours ran into it; rates keep their own ends.
            minValues: free.map((k) => (k < 4 ? -15 : -6)),
            maxValues: free.map((k) => (k < 4 ? 15 : 6)),
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

test('how the head answers to the arms is what small changes of the arms show', () => {
  const [{ swing, from, path }] = swingsOutOfReach(1);
  const chance = createRandom(9);
  const nudge = 1e-5;
  standAtImpact(swing, 0.25 - from);
  const read = (efforts: Float64Array): { misfit: Float64Array; slopes: Float64Array } => {
    const slopes = new Float64Array(4 * SIZE);
    findMisfit(swing, path, efforts, misfit);
    findSlopes(slopes);
    return { misfit: misfit.slice(), slopes };
  };
  for (let draw = 0; draw < 20; draw++) {
    const efforts = Float64Array.from({ length: SIZE }, () => 6 * chance() - 3);
    const here = read(efforts);
    const bends = [0, 1, 2, 3].map((condition) => {
      const bend = new Float64Array(SIZE * SIZE);
      addBends(
        Float64Array.from({ length: 4 }, (_, r) => (r === condition ? 1 : 0)),
        bend,
      );
      return bend;
    });
    for (let k = 0; k < SIZE; k++) {
      const [up, down] = [1, -1].map((sense) =>
        read(efforts.map((each, i) => (i === k ? each + sense * nudge : each))),
      );
      for (let r = 0; r < 4; r++) {
        // The truncation of a central difference is the nudge squared, its rounding the last digit over the nudge.
        expect((up.misfit[r] - down.misfit[r]) / (2 * nudge)).toBeCloseTo(here.slopes[r * SIZE + k], 6);
        for (let j = 0; j < SIZE; j++) {
          const bend = (up.slopes[r * SIZE + j] - down.slopes[r * SIZE + j]) / (2 * nudge);
          expect(bend).toBeCloseTo(bends[r][j * SIZE + k], 5);
        }
      }
    }
  }
});

test('the answer does not hang on what was asked before', () => {
  const [first, second] = swingsOutOfReach(2);
  const ask = ({ swing, from, path }: Short) => solveAdaptation(swing, from, path);
  const fresh = ask(first);
  ask(second);
  expect(ask(first)).toEqual(fresh);
});
