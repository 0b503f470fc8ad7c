import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, J, type JointId } from '../../src/model/joints';
import { K, KEY_IDS, keyAt, type KeyId } from '../../src/model/keys';
import { STILL } from '../../src/model/movements';
import { isReached, readAt, readCheckpoints, type Checkpoint, type Reached } from '../../src/reading/checkpoints';
import { createSwing, swingJoints, withMovements, type Swing } from '../../src/reading/swing';
import { seedReference } from '../../src/solving/reference/seed';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const seed = seedReference(body);
/** The trail arm from its shoulder to its grip, m. */
const ARM = body.upperArm + body.forearm + body.grip;

/** The seed swing with some joints changed at some keys. Radians, metres. */
function swingWith(change: (value: (key: KeyId, joint: JointId) => number) => Partial<Record<KeyId, Joints>>): Swing {
  const values = seed.values.slice();
  const changes = change((key, joint) => seed.values[keyAt(key, J[joint])]);
  for (const key of KEY_IDS)
    for (const [joint, value] of Object.entries(changes[key] ?? {})) values[keyAt(key, J[joint as JointId])] = value;
  return createSwing(body, club, { ...seed, values });
}
type Joints = Partial<Record<JointId, number>>;

type Point = readonly [number, number, number];
const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
/** Area of a triangle from its three sides (Heron). */
function areaOf(p: Point, q: Point, r: Point): number {
  const [a, b, c] = [distance(p, q), distance(q, r), distance(r, p)];
  const half = (a + b + c) / 2;
  return Math.sqrt(half * (half - a) * (half - b) * (half - c));
}

const reached = (checkpoint: Checkpoint): Reached => {
  if (!isReached(checkpoint)) throw new Error(`Not reached: ${checkpoint.missing}`);
  return checkpoint;
};

describe('what is read at a time', () => {
  const swing = withMovements(createSwing(body, club, seed), {
    ...STILL,
    leadWristFlexion: rad(-12),
    rotationRate: 1.1,
  });

  // Read again with pencil and ruler: from the points of the pose alone, as a coach would measure them in two photographs (down the
  // line: z to the right, y up; from above: x toward the target, z to the right), by Heron's formula and the law of cosines.
  test.each([0.1, 0.16, 0.215])('is what a ruler reads between the points of its pose, at %d s', (t) => {
    const { pose, readings } = readAt(swing, t);
    const point = (at: number): Point => [pose[at], pose[at + 1], pose[at + 2]];
    const [hands, head, bicep] = [AT.leadGrip, AT.head, AT.bicep].map(point);
    const [shoulder, trailShoulder, trailHand] = [AT.leadShoulder, AT.trailShoulder, AT.trailGrip].map(point);
    const downTheLine = ([, y, z]: Point): Point => [0, y, z];

    expect(readings.handHeight).toBeCloseTo(hands[1], 12);
    expect(readings.handDepth).toBeCloseTo(hands[2], 12);
    expect(readings.headDepth).toBeCloseTo(head[2] - hands[2], 12);
    expect(Math.sin(readings.shaftPitch)).toBeCloseTo((head[1] - hands[1]) / distance(head, hands), 9);
    expect(Math.tan(readings.shaftAim)).toBeCloseTo((hands[2] - head[2]) / (hands[0] - head[0]), 9);
    const [h, c, b] = [hands, head, bicep].map(downTheLine);
    expect(Math.abs(readings.bicepGap)).toBeCloseTo((2 * areaOf(h, c, b)) / distance(h, c), 9);
    const lineAtBicep = h[1] + ((c[1] - h[1]) * (b[2] - h[2])) / (c[2] - h[2]);
    // Around lead arm parallel, where the line is read, steep is above the bicep. A level shaft has turned past upright by then.
    if (t < 0.2) expect(readings.bicepGap > 0).toBe(lineAtBicep > b[1]);
    const [arm, shaft, straight] = [distance(shoulder, hands), distance(hands, head), distance(shoulder, head)];
    expect(Math.cos(readings.armToShaft)).toBeCloseTo((arm ** 2 + shaft ** 2 - straight ** 2) / (2 * arm * shaft), 9);
    expect(readings.reachRatio).toBeCloseTo(distance(trailShoulder, trailHand) / ARM, 12);
    expect(readings.reachShortfall).toBe(0);
    const joints = createJointVector();
    swingJoints(swing, t, joints);
    expect([readings.thoraxTurn, readings.pelvisTurn]).toEqual([joints[J.thoraxTurn], joints[J.pelvisTurn]]);
  });

  test.each([0.1, 0.16, 0.215])('has the plane that shaft and head sweep in a tenth of a millisecond, at %d s', (t) => {
    const { pose, readings } = readAt(swing, t);
    const at = (time: number): Point => {
      const { pose: there } = readAt(swing, time);
      return [there[AT.head], there[AT.head + 1], there[AT.head + 2]];
    };
    const [before, after] = [at(t - 5e-5), at(t + 5e-5)];
    const way = after.map((value, i) => value - before[i]);
    const shaft = [0, 1, 2].map((i) => pose[AT.head + i] - pose[AT.leadGrip + i]);
    // Both lie in the plane: where it meets the ground is the combination of them that has no height.
    const trace = way.map((value, i) => value * shaft[1] - shaft[i] * way[1]);
    expect(Math.tan(readings.planeDirection)).toBeCloseTo(trace[2] / trace[0], 4);
    // Steepest line of the plane: square to the trace.
    const along = (shaft[0] * trace[0] + shaft[2] * trace[2]) / (trace[0] ** 2 + trace[2] ** 2);
    const out = Math.hypot(shaft[0] - along * trace[0], shaft[2] - along * trace[2]);
    expect(Math.tan(readings.planeTilt)).toBeCloseTo(Math.abs(shaft[1]) / out, 4);
  });

  test('a line through the grip end that meets the ground on the ball line reads zero, 10 cm past it 10 cm', () => {
    const at = readAt(swing, 0.16);
    const meets = at.readings.gripEndLine + seed.ballPoint[2];
    const readFor = (ballZ: number): number => {
      const [x, y] = seed.ballPoint;
      return readAt({ ...swing, reference: { ...seed, ballPoint: [x, y, ballZ] } }, 0.16).readings.gripEndLine;
    };
    expect(readFor(meets)).toBeCloseTo(0, 12);
    expect(readFor(meets - 0.1)).toBeCloseTo(0.1, 12);
  });
});

test('a trail shoulder far back and a lead arm away from the chest: the trail arm falls short, and both checkpoints say by how much', () => {
  const far = swingWith((value) =>
    Object.fromEntries(
      KEY_IDS.map((key) => [
        key,
        { trailProtraction: rad(-75), leadArmAdduction: value(key, 'leadArmAdduction') - rad(40) },
      ]),
    ),
  );
  for (const { pose, readings } of Object.values(readCheckpoints(far)).map(reached)) {
    const asked = Math.hypot(...[0, 1, 2].map((i) => pose[AT.trailGrip + i] - pose[AT.trailShoulder + i]));
    expect(readings.reachShortfall).toBeCloseTo(asked - ARM, 12);
    expect(readings.reachRatio).toBeCloseTo(asked / ARM, 12);
    expect(readings.reachShortfall).toBeGreaterThan(0.01);
  }
});

describe('checkpoints that come at unusual times', () => {
  test('a shaft that falls through level before lead arm parallel and again after it: only the second is shaft parallel', () => {
    const uncocked = swingWith(() => ({
      top: { leadWristRadial: rad(-60) },
      leadArmParallel: { leadWristRadial: rad(-60) },
    }));
    const { leadArmParallel, shaftParallel } = readCheckpoints(uncocked);
    const arm = reached(leadArmParallel).t;
    expect(readAt(uncocked, 0.06).readings.shaftPitch).toBeGreaterThan(0);
    expect(readAt(uncocked, 0.12).readings.shaftPitch).toBeLessThan(0);
    expect(0.12).toBeLessThan(arm);
    expect(reached(shaftParallel).t).toBeGreaterThan(arm);
  });

  test('an arm that stays up until after impact is parallel then: it is looked for up to the exit', () => {
    const held = (['leadArmElevation', 'trunkTilt', 'thoraxTurn', 'leadWristRadial', 'leadArmAdduction'] as const).map(
      (joint) => [joint, seed.values[keyAt('top', J[joint])]],
    );
    const joints = Object.fromEntries(held) as Joints;
    const late = swingWith(() => ({ leadArmParallel: joints, shaftParallel: joints, impact: joints }));
    const { t } = reached(readCheckpoints(late).leadArmParallel);
    expect(t).toBeGreaterThan(seed.times[K.impact]);
    expect(t).toBeLessThan(seed.times[K.exit]);
  });
});
