import { describe, expect, test } from 'vitest';
import { answerLine } from '../../src/evaluate/answer';
import { toDeg } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, createRig, placePose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, JOINTS } from '../../src/model/joints';
import { DELIVERY_RULES, deliver, strikeOf } from '../../src/reading/delivery/delivery';
import { isReached, readCheckpoints, type Checkpoint, type Reached } from '../../src/reading/checkpoints';
import { createSwing, withMovements } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { seedReference } from '../../src/solving/reference/seed';

/** A part of an answer, by field. */
type Fields = Readonly<Record<string, unknown>>;
const ask = (line: object): Fields => JSON.parse(answerLine({ number: 1, text: JSON.stringify(line) }).text) as Fields;
const at = (from: Fields, ...path: readonly string[]): Fields =>
  path.reduce((found, field) => found[field] as Fields, from);
const near = (value: number): unknown => expect.closeTo(value, 9);
const toCm = (metres: number): number => metres * 100;

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const reference = createSwing(body, club, solveReference(body, club).reference);

/** One movement under its name and unit at the edge, and the same in the model's. */
const MOVED = {
  edge: {
    leadWristFlexionDeg: -18,
    rotationRate: 1.08,
    rotationDelayMs: 12,
    trailSideBendDeg: -4,
    pelvisShiftCm: 3,
    pelvisRate: 0.9,
    pelvisDelayMs: -25,
  },
  model: {
    leadWristFlexion: (-18 * Math.PI) / 180,
    rotationRate: 1.08,
    rotationDelay: 0.012,
    trailSideBend: (-4 * Math.PI) / 180,
    pelvisShift: 0.03,
    pelvisRate: 0.9,
    pelvisDelay: -0.025,
  },
} as const;

const reached = (checkpoint: Checkpoint): Reached => {
  if (!isReached(checkpoint)) throw new Error(checkpoint.missing);
  return checkpoint;
};

describe('a swing line answers what the model reads, each under its name and in its unit', () => {
  const LINE = { kind: 'swing', player: { statureM: 1.78 }, club: '7-iron', movements: MOVED.edge };
  const answer = ask(LINE);
  const swing = withMovements(reference, MOVED.model);
  const checkpoints = readCheckpoints(swing);

  test.each(['leadArmParallel', 'shaftParallel'] as const)('at %s', (id) => {
    const { t, readings } = reached(checkpoints[id]);
    const { impliedPathDeg, ...told } = at(answer, id, 'readings');
    expect(impliedPathDeg).toBeTypeOf('number');
    expect(at(answer, id)['timeMs']).toEqual(near(t * 1000));
    expect(told).toEqual({
      shaftPitchDeg: near(toDeg(readings.shaftPitch)),
      shaftPlaneDeg: near(toDeg(readings.shaftPlane)),
      // Down the line a level shaft is seen end on: it passes nothing, and there is no number.
      bicepGapCm: id === 'shaftParallel' ? null : near(toCm(readings.bicepGap)),
      bicepCrossing: id === 'shaftParallel' ? null : near(readings.bicepCrossing),
      headDepthCm: near(toCm(readings.headDepth)),
      shaftAimDeg: near(toDeg(readings.shaftAim)),
      planeDirectionDeg: near(toDeg(readings.planeDirection)),
      planeTiltDeg: near(toDeg(readings.planeTilt)),
      // It meets no ground either; JSON has no other word for that.
      gripEndLineCm: id === 'shaftParallel' ? null : near(toCm(readings.gripEndLine)),
      faceToVerticalDeg: near(toDeg(readings.faceToVertical)),
      leadArmToShaftDeg: near(toDeg(readings.armToShaft)),
      thoraxTurnDeg: near(toDeg(readings.thoraxTurn)),
      pelvisTurnDeg: near(toDeg(readings.pelvisTurn)),
      handHeightCm: near(toCm(readings.handHeight)),
      handDepthCm: near(toCm(readings.handDepth)),
      trailReachRatio: near(readings.reachRatio),
      trailShortfallCm: near(toCm(readings.reachShortfall)),
    });
  });

  test.each(DELIVERY_RULES)('and in the delivery (%s)', (rule) => {
    const { delivery } = deliver(swing, checkpoints, strikeOf(reference, readCheckpoints(reference))!, rule);
    if ('missing' in delivery) throw new Error(delivery.missing);
    const { miss, returnTakes } = delivery;
    const smallest = Math.min(...[miss.toe, miss.high, miss.late].map(Math.abs));
    if (rule === 'nothing adapts') expect(smallest).toBeGreaterThan(1e-4);
    expect(at(ask({ ...LINE, rule }), 'delivery')).toEqual({
      pathDeg: near(toDeg(delivery.path)),
      attackDeg: near(toDeg(delivery.attack)),
      faceDeg: near(toDeg(delivery.face)),
      faceLeftDeg: near(toDeg(delivery.faceLeft)),
      faceReturnedDeg: near(toDeg(delivery.faceReturned)),
      returnTakes: returnTakes && {
        rollDeg: near(toDeg(returnTakes.roll)),
        flexionDeg: near(toDeg(returnTakes.flexion)),
        inRange: returnTakes.isInRange,
      },
      impactTimeMs: near(delivery.impactTime * 1000),
      faceToPathDeg: near(toDeg(delivery.faceToPath)),
      dynamicLoftDeg: near(toDeg(delivery.dynamicLoft)),
      shaftBendDeg: near(toDeg(delivery.shaftBend)),
      spinLoftDeg: near(toDeg(delivery.spinLoft)),
      shaftLeanDeg: near(toDeg(delivery.shaftLean)),
      headSpeedMps: near(delivery.headSpeed),
      lowPointCm: near(toCm(delivery.lowPoint)),
      planeTiltDeg: near(toDeg(delivery.planeTilt)),
      planeDirectionDeg: near(toDeg(delivery.planeDirection)),
      rule,
      status: delivery.status,
      miss: { towardToeCm: near(toCm(miss.toe)), highCm: near(toCm(miss.high)), lateMs: near(miss.late * 1000) },
      trailShortfallCm: near(toCm(delivery.reachShortfall)),
    });
  });
});

test.each([
  [-40, 'steep', 'in front'],
  [0, 'on plane', 'on plane'],
  [40, 'over-shallow', 'too far behind'],
])(
  'a wrist bowed by %d deg is %s at P5 and its head %s at P6',
  (leadWristFlexionDeg, leadArmParallel, shaftParallel) => {
    const line = { kind: 'swing', player: { statureM: 1.78 }, club: '7-iron', movements: { leadWristFlexionDeg } };
    expect(ask(line)['verdict']).toEqual({ leadArmParallel, shaftParallel });
  },
);

describe('a pose line', () => {
  /** The seed's top of the backswing, with some joints put elsewhere: radians and metres, and the same as a line. */
  const posed = (change: Readonly<Record<string, number>>) => {
    const q = createJointVector();
    const pose: Record<string, number> = {};
    JOINTS.forEach(({ field, kind, id }, j) => {
      q[j] = change[id] ?? seedReference(body).values[3 * q.length + j];
      pose[field] = kind === 'angle' ? toDeg(q[j]) : q[j];
    });
    const placed = createPose();
    placePose(createRig(body, club), q, placed);
    return { placed, answer: ask({ kind: 'pose', body: { statureM: 1.78 }, club: '7-iron', pose }) };
  };

  test('answers with every point and direction under its own name', () => {
    const { placed, answer } = posed({});
    const three = (from: number) => [0, 1, 2].map((i) => near(placed[from + i]));
    expect(answer['points']).toEqual({
      pelvis: three(AT.pelvis),
      midShoulder: three(AT.midShoulder),
      leadShoulder: three(AT.leadShoulder),
      trailShoulder: three(AT.trailShoulder),
      leadGrip: three(AT.leadGrip),
      trailGrip: three(AT.trailGrip),
      trailElbow: three(AT.trailElbow),
      bicep: three(AT.bicep),
      head: three(AT.head),
    });
    expect(answer).toMatchObject({
      leadArmDirection: three(AT.armDirection),
      shaftDirection: three(AT.shaftDirection),
      faceNormal: three(AT.faceNormal),
      toeDirection: three(AT.toeDirection),
    });
  });

  test('says in centimetres by how much a trail arm held away from the club is too short', () => {
    const { placed, answer } = posed({ trailProtraction: -1.5, leadArmAdduction: 0 });
    const reach = body.upperArm + body.forearm + body.grip;
    const asked = Math.hypot(...[0, 1, 2].map((i) => placed[AT.trailGrip + i] - placed[AT.trailShoulder + i]));
    expect(asked - reach).toBeGreaterThan(0.02);
    expect(answer['trailReach']).toEqual({ ratio: near(asked / reach), shortfallCm: near(toCm(asked - reach)) });
  });
});
