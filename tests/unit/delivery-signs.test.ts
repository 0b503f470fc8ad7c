import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, createPose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { J } from '../../src/model/joints';
import { DOWNSWING, K, KEY_IDS, keyAt, type ReferenceSwing } from '../../src/model/keys';
import { STILL } from '../../src/model/movements';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver, type Delivery } from '../../src/reading/delivery/delivery';
import { createSwing, headAt, swingPose } from '../../src/reading/swing';
import { seedReference } from '../../src/solving/reference/seed';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const seed = seedReference(body);
/** The trail arm from its shoulder to its grip, m. */
const ARM = body.upperArm + body.forearm + body.grip;
const IMPACT = seed.times[K.impact];
const [X, Y, Z] = [0, 1, 2];

const swingOf = (reference: ReferenceSwing, downswing = DOWNSWING) =>
  createSwing(body, club, reference, STILL, downswing);
const head = (t: number): Float64Array => {
  const out = new Float64Array(3);
  headAt(swingOf(seed), t, out);
  return out;
};
const [x, y, z] = head(IMPACT);

/** What a swing in which nothing adapts brings to a ball that lies so far from where its head is at impact, m. */
function atBall(off: readonly [number, number, number], given: { downswing?: number; values?: Float64Array } = {}) {
  const { downswing, values = seed.values } = given;
  const reference: ReferenceSwing = { ...seed, values, ballPoint: [x + off[X], y + off[Y], z + off[Z]] };
  const swing = swingOf(reference, downswing);
  const strike = { path: 0, planeDirection: 0 };
  const { delivery } = deliver(swing, readCheckpoints(swing), strike, 'nothing adapts');
  if ('missing' in delivery) throw new Error(delivery.missing);
  return delivery;
}

test('a ball where the head is at impact is met: not missed, and not late', () => {
  const { miss, t } = atBall([0, 0, 0]);
  for (const value of [miss.toe, miss.high, miss.late, t - IMPACT]) expect(value).toBeCloseTo(0, 6);
});

describe('a ball that is missed', () => {
  test('2 cm farther from the player it lies nearer the toe, 2 cm closer nearer the heel', () => {
    const pose = createPose();
    swingPose(swingOf(seed), IMPACT, pose);
    const outward = pose[AT.toeDirection + Z];
    expect(outward).toBeGreaterThan(0.5);
    expect(atBall([0, 0, 0.02]).miss.toe).toBeCloseTo(0.02 * outward, 6);
    expect(atBall([0, 0, -0.02]).miss.toe).toBeCloseTo(-0.02 * outward, 6);
  });

  test('3 cm lower the head passes high, 3 cm higher it passes low', () => {
    expect(atBall([0, -0.03, 0]).miss.high).toBeCloseTo(0.03, 6);
    expect(atBall([0, 0.03, 0]).miss.high).toBeCloseTo(-0.03, 6);
  });

  test('10 cm farther toward the target the head comes late, by the way over its speed, in the player’s own time', () => {
    const usual = atBall([0.1, 0, 0]);
    const slow = atBall([0.1, 0, 0], { downswing: 0.31 });
    expect(usual.miss.late).toBeGreaterThan(0);
    expect(usual.miss.late).toBeCloseTo(0.1 / usual.headVelocity[X], 3);
    expect(slow.miss.late).toBeCloseTo((usual.miss.late * 0.31) / DOWNSWING, 9);
    expect(slow.t).toBeCloseTo(usual.t, 9);
  });
});

describe('around the ball', () => {
  /** Where the head's trace is lowest, toward the target, found in steps of 0.1 ms. */
  const lowest = (): number => {
    let best = head(IMPACT);
    for (let t = IMPACT - 0.03; t <= IMPACT + 0.03; t += 1e-4) if (head(t)[Y] < best[Y]) best = head(t);
    return best[X];
  };

  test('a ball 4 cm behind the low point has it 4 cm ahead, a ball 4 cm in front of it 4 cm behind', () => {
    const shift = lowest() - x;
    expect(atBall([shift - 0.04, 0, 0]).lowPoint).toBeCloseTo(0.04, 2);
    expect(atBall([shift + 0.04, 0, 0]).lowPoint).toBeCloseTo(-0.04, 2);
  });

  test('the shaft leans forward while the handle is ahead of the head, and less the later the ball is met', () => {
    const leanOf = (delivery: Delivery): number => {
      const pose = createPose();
      swingPose(swingOf(seed), delivery.t, pose);
      const ahead = pose[AT.leadGrip] - pose[AT.head];
      expect(Math.tan(delivery.shaftLean)).toBeCloseTo(ahead / (pose[AT.leadGrip + Y] - pose[AT.head + Y]), 9);
      return delivery.shaftLean;
    };
    const [early, late] = [leanOf(atBall([-0.25, 0, 0])), leanOf(atBall([0.25, 0, 0]))];
    expect(early).toBeGreaterThan(rad(5));
    expect(late).toBeLessThan(early);
  });

  test('a trail shoulder held back leaves the trail arm short at the ball, and the delivery says by how much', () => {
    const values = seed.values.slice();
    for (const key of KEY_IDS) values[keyAt(key, J.trailProtraction)] = rad(-40);
    const { t, reachShortfall } = atBall([0, 0, 0], { values });
    const pose = createPose();
    swingPose(swingOf({ ...seed, values }), t, pose);
    const asked = Math.hypot(...[X, Y, Z].map((i) => pose[AT.trailGrip + i] - pose[AT.trailShoulder + i]));
    expect(reachShortfall).toBeCloseTo(asked - ARM, 12);
    expect(reachShortfall).toBeGreaterThan(0.02);
    expect(atBall([0, 0, 0]).reachShortfall).toBe(0);
  });
});
