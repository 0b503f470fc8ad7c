import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, J, type JointId } from '../../src/model/joints';
import { K, KEY_IDS, keyAt, type KeyId } from '../../src/model/keys';
import { STILL } from '../../src/model/movements';
import { isReached, readAt, readCheckpoints, type Checkpoint, type Reached } from '../../src/reading/checkpoints';
import * as read from '../../src/reading/readings';
import { createSwing, headVelocityAt, swingJoints, withMovements, type Swing } from '../../src/reading/swing';
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

  test.each([0.1, 0.16, 0.215])('is what the single functions read off its pose, at %d s', (t) => {
    const { pose, readings } = readAt(swing, t);
    const velocity = new Float64Array(3);
    headVelocityAt(swing, t, velocity);
    const joints = createJointVector();
    swingJoints(swing, t, joints);
    const trailArm = Math.hypot(...[0, 1, 2].map((i) => pose[AT.trailGrip + i] - pose[AT.trailShoulder + i]));
    expect(readings).toEqual({
      shaftPitch: read.shaftPitch(pose),
      shaftPlane: read.shaftPlane(pose),
      bicepGap: read.bicepGap(pose),
      bicepCrossing: read.bicepCrossing(pose),
      headDepth: read.headDepth(pose),
      shaftAim: read.shaftAim(pose),
      planeDirection: read.planeDirection(pose, velocity),
      planeTilt: read.planeTilt(pose, velocity),
      gripEndLine: read.gripEndLine(pose, seed.ballPoint[2]),
      faceToVertical: read.faceToVertical(pose),
      armToShaft: read.armToShaft(pose),
      thoraxTurn: joints[J.thoraxTurn],
      pelvisTurn: joints[J.pelvisTurn],
      handHeight: read.handHeight(pose),
      handDepth: read.handDepth(pose),
      reachRatio: expect.closeTo(trailArm / ARM, 12) as number,
      reachShortfall: 0,
    });
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
