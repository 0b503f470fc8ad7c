import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rad, toDeg } from '../../src/math/angle';
import { CLUBS, DEFAULT_GRIP } from '../../src/model/club';
import { createJointVector, J, JOINTS } from '../../src/model/joints';
import { STILL, type Movements } from '../../src/model/movements';
import { readCheckpoints } from '../../src/reading/checkpoints';
import { deliver } from '../../src/reading/delivery/delivery';
import { swingJoints, withMovements, type Swing } from '../../src/reading/swing';
import { createMujocoGolfer, type MujocoGolfer } from './mujoco';
import { caseOf } from './players';

// Outside reference: the club at the ball, worked out by MuJoCo (mj_kinematics, model typed by hand in mjcf.ts) from the joints of the
// drawn swing. What is printed of a delivery is held against differences of that trace a tenth of a millisecond either side.
const HALF = 1e-4;
/** What the model promises between printed numbers and the drawn trace: deg, and m/s. */
const LIMIT = { angle: 0.05, speed: 0.1 } as const;

const SWINGS: readonly Partial<Movements>[] = [
  {},
  { leadWristFlexion: rad(-16), rotationRate: 1.15 },
  { leadWristFlexion: rad(18), rotationDelay: 0.012 },
  { trailSideBend: rad(-6), pelvisShift: 0.03 },
  { trailSideBend: rad(6), rotationRate: 0.88 },
];

describe.each([
  [1.62, 'driver'],
  [1.78, '7-iron'],
  [1.93, 'sand wedge'],
] as const)('%d m with a %s, at the ball as MuJoCo has it', (statureM, id) => {
  const player = caseOf(statureM, id);
  const { club } = player.swing.rig;
  // One at a time: another one may move the library's memory from under it.
  let golfer: MujocoGolfer;
  beforeAll(() => {
    golfer = createMujocoGolfer({
      statureM,
      ...DEFAULT_GRIP,
      ...CLUBS[id],
      // As it is held and built in this player's reference swing.
      lieDeg: toDeg(club.lie),
      gripAngleDeg: toDeg(club.gripAngle),
      gripTurnDeg: toDeg(club.gripTurn),
    });
  });
  afterAll(() => golfer.free());
  const q = createJointVector();

  function placeAt(swing: Swing, t: number): void {
    swingJoints(swing, t, q);
    JOINTS.forEach(({ id: joint }, j) => golfer.setJoint(joint, q[j]));
    golfer.setJoint('leadProtractionBack', q[J.leadProtraction]);
    golfer.solve();
  }
  const headAt = (swing: Swing, t: number): number[] => {
    placeAt(swing, t);
    return golfer.siteAt('head');
  };

  test.each(SWINGS.flatMap((move) => [0, 0.5, 1].map((share): [Partial<Movements>, number] => [move, share])))(
    '%o, face returned %d: head speed, path, attack and face are the printed ones',
    (move, share) => {
      const moved = withMovements(player.swing, { ...STILL, ...move });
      const { swing, delivery } = deliver(moved, readCheckpoints(moved), player.strike, 'held plane', share);
      if ('missing' in delivery) throw new Error(delivery.missing);
      const { t } = delivery;
      const [before, after] = [headAt(swing, t - HALF), headAt(swing, t + HALF)];
      const [x, y, z] = [0, 1, 2].map((i) => (after[i] - before[i]) / (2 * HALF));
      expect(Math.abs(Math.hypot(x, y, z) - delivery.headSpeed)).toBeLessThan(LIMIT.speed);
      expect(Math.abs(toDeg(Math.atan2(z, x) - delivery.path))).toBeLessThan(LIMIT.angle);
      expect(Math.abs(toDeg(Math.atan2(y, Math.hypot(x, z)) - delivery.attack))).toBeLessThan(LIMIT.angle);
      placeAt(swing, t);
      const normal = golfer.siteAxis('head', 0);
      expect(Math.abs(toDeg(Math.atan2(normal[2], normal[0]) - delivery.face))).toBeLessThan(1e-6);
      const ball = moved.reference.ballPoint;
      expect(Math.hypot(...golfer.siteAt('head').map((v, i) => v - ball[i]))).toBeLessThan(0.001);
    },
  );
});
