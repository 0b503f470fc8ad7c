import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFigure } from '../../src/figure/figure';
import { createPlacement, MATRIX_SIZE, PART, PART_IDS, type PartId } from '../../src/figure/partIds';
import { placeFigure } from '../../src/figure/place';
import { BALL_RADIUS, heelLiftAt, placeBall } from '../../src/figure/stance';
import { FACE_FORWARD } from '../../src/figure/woodShapes';
import { rad } from '../../src/math/angle';
import { bodyOf, SEGMENT_FRACTIONS, type Player } from '../../src/model/body';
import { AT, createPose, createRig, placePose, type Pose } from '../../src/model/chain';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { createJointVector, JOINTS } from '../../src/model/joints';
import { K } from '../../src/model/keys';
import { createSwing, swingPose, type Swing } from '../../src/reading/swing';
import { solveReference } from '../../src/solving/reference/reference';
import { seedReference } from '../../src/solving/reference/seed';

const swingOf = (player: Player, clubId: (typeof CLUB_IDS)[number] = '7-iron'): Swing => {
  const body = bodyOf(player);
  return createSwing(body, clubOf(CLUBS[clubId]), seedReference(body));
};
const ballPoint: readonly [number, number, number] = [0.05, 0.02, 0.8];

function placed(swing: Swing, t: number): { out: Float64Array; pose: Pose } {
  const pose = createPose();
  swingPose(swing, t, pose);
  const out = createPlacement();
  placeFigure(createFigure(swing.rig.body, swing.rig.club), pose, { ballPoint, heelLift: heelLiftAt(swing, t) }, out);
  return { out, pose };
}
const axis = (out: Float64Array, id: PartId, which: 0 | 1 | 2 | 3): number[] => {
  const at = PART[id] * MATRIX_SIZE + which * 3;
  return [...out.subarray(at, at + 3)];
};
const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const distance = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const angles = [-0.75, -0.45, -0.2, 0, 0.1, 0.15, 0.21, 0.25, 0.3, 0.45, 0.65];

describe('the solids', () => {
  test.each(CLUB_IDS)('every solid with a %s is closed, finite and turned outward', (id) => {
    const { parts } = createFigure(bodyOf({ statureM: 1.78, handed: 'right' }), clubOf(CLUBS[id]));
    expect(parts.map((part) => part.id)).toEqual([...PART_IDS]);
    for (const { id: part, rings, ringCount, segments } of parts) {
      expect(rings.length, part).toBe(ringCount * segments * 3);
      expect(rings.every(Number.isFinite), part).toBe(true);
      // Signed volume by the divergence theorem: positive means the triangles face outward.
      expect(volume(rings, ringCount, segments), part).toBeGreaterThan(0);
    }
  });

  test('the taller player has the longer limbs, a measured forearm changes the forearm alone', () => {
    const lengthOf = (player: Player, id: PartId): number => {
      const { rings } = createFigure(bodyOf(player), clubOf(CLUBS['7-iron'])).parts[PART[id]];
      return rings[rings.length - 2] - rings[1];
    };
    const usual: Player = { statureM: 1.78, handed: 'right' };
    const long: Player = { ...usual, segmentsM: { forearm: SEGMENT_FRACTIONS.forearm * 1.78 + 0.03 } };
    expect(lengthOf({ ...usual, statureM: 2 }, 'thighLead')).toBeGreaterThan(lengthOf(usual, 'thighLead'));
    expect(lengthOf(long, 'forearmTrail') - lengthOf(usual, 'forearmTrail')).toBeCloseTo(0.03, 12);
    expect(lengthOf(long, 'upperArmTrail')).toBe(lengthOf(usual, 'upperArmTrail'));
  });
});

describe('the placed figure', () => {
  test('is never NaN and every part keeps a right-handed frame, for any posture inside the joint ranges', () => {
    const draw = fc.tuple(
      fc.integer({ min: 140, max: 210 }),
      fc.constantFrom(...CLUB_IDS),
      fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: JOINTS.length, maxLength: JOINTS.length }),
      fc.integer({ min: 0, max: 100 }),
    );
    fc.assert(
      fc.property(draw, ([cm, id, shares, lift]) => {
        const body = bodyOf({ statureM: cm / 100, handed: 'right' });
        const club = clubOf(CLUBS[id]);
        const q = createJointVector();
        JOINTS.forEach((joint, i) => (q[i] = joint.min + ((joint.max - joint.min) * shares[i]) / 1000));
        const pose = createPose();
        placePose(createRig(body, club), q, pose);
        const out = createPlacement();
        placeFigure(createFigure(body, club), pose, { ballPoint, heelLift: lift / 100 }, out);
        expect(out.every(Number.isFinite)).toBe(true);
        for (const id of PART_IDS) {
          const [x, y, z] = [axis(out, id, 0), axis(out, id, 1), axis(out, id, 2)];
          expect(Math.abs(dot(x, y)) + Math.abs(dot(y, z)) + Math.abs(dot(z, x)), id).toBeLessThan(1e-9);
          const triple =
            x[0] * (y[1] * z[2] - y[2] * z[1]) +
            x[1] * (y[2] * z[0] - y[0] * z[2]) +
            x[2] * (y[0] * z[1] - y[1] * z[0]);
          expect(triple, id).toBeGreaterThan(0);
        }
      }),
      { numRuns: 60 },
    );
  });

  test.each(angles)(
    'hangs together at %s s: hands on the grip, wrists on the forearms, knees between hip and ankle',
    (t) => {
      const swing = swingOf({ statureM: 1.78, handed: 'right' });
      const { out, pose } = placed(swing, t);
      const { body } = swing.rig;
      const at = (id: PartId): number[] => axis(out, id, 3);
      expect(distance(at('fistLead'), pose.subarray(AT.leadGrip))).toBeLessThan(1e-12);
      expect(distance(at('fistTrail'), pose.subarray(AT.trailGrip))).toBeLessThan(1e-12);
      expect(distance(at('shoulderLead'), at('elbowLead'))).toBeCloseTo(body.upperArm, 12);
      expect(distance(at('elbowLead'), at('wristLead'))).toBeCloseTo(body.forearm, 12);
      expect(distance(at('elbowTrail'), at('wristTrail'))).toBeCloseTo(body.forearm, 12);
      for (const side of ['Lead', 'Trail'] as const) {
        const stretch = Math.hypot(...axis(out, `thigh${side}`, 1));
        expect(distance(at(`hip${side}`), at(`knee${side}`))).toBeCloseTo(body.thigh * stretch, 9);
        expect(distance(at(`knee${side}`), at(`ankle${side}`))).toBeCloseTo(body.shank * stretch, 9);
        expect(stretch).toBeLessThan(1.04);
      }
    },
  );

  test('the feet stand still until shaft parallel, then only the trail heel leaves the ground', () => {
    const swing = swingOf({ statureM: 1.78, handed: 'right' });
    const feet = (t: number, id: PartId): number[] => [
      ...placed(swing, t).out.subarray(PART[id] * 12, PART[id] * 12 + 12),
    ];
    for (const t of angles) expect(feet(t, 'footLead')).toEqual(feet(-0.75, 'footLead'));
    for (const t of angles.filter((s) => s < 0.211)) expect(feet(t, 'footTrail')).toEqual(feet(-0.75, 'footTrail'));
    const heel = (t: number): number => axis(placed(swing, t).out, 'ankleTrail', 3)[1];
    expect(heel(0.25)).toBeGreaterThan(heel(0.2) + 0.01);
    expect(heel(0.65)).toBeGreaterThan(heel(0.25) + 0.08);
  });

  test('the lead foot flares 22 degrees toward the target, the trail foot 8 away from it', () => {
    const { out } = placed(swingOf({ statureM: 1.78, handed: 'right' }), 0);
    const toes = (id: PartId): number => Math.atan2(axis(out, id, 1)[0], axis(out, id, 1)[2]);
    expect(toes('footLead')).toBeCloseTo(rad(22), 12);
    expect(toes('footTrail')).toBeCloseTo(rad(-8), 12);
  });

  test('the knee and elbow pins lie on the axes about which they bend', () => {
    for (const t of angles) {
      const { out } = placed(swingOf({ statureM: 1.78, handed: 'right' }), t);
      const bones: readonly [PartId, PartId, PartId][] = [
        ['kneeLead', 'thighLead', 'shankLead'],
        ['kneeTrail', 'thighTrail', 'shankTrail'],
        ['elbowTrail', 'upperArmTrail', 'forearmTrail'],
      ];
      for (const [joint, a, b] of bones) {
        expect(Math.abs(dot(axis(out, joint, 0), axis(out, a, 1))), joint).toBeLessThan(1e-6);
        expect(Math.abs(dot(axis(out, joint, 0), axis(out, b, 1))), joint).toBeLessThan(1e-6);
      }
    }
  });

  test('an arm out of reach keeps its bones and shows a gap before the grip', () => {
    const swing = swingOf({ statureM: 1.78, handed: 'right' });
    const pose = createPose();
    swingPose(swing, 0.28, pose);
    expect(pose[AT.reachShortfall]).toBeGreaterThan(0.03);
    const { out } = placed(swing, 0.28);
    expect(Math.hypot(...axis(out, 'palmTrail', 1))).toBeCloseTo(1.2, 9);
    expect(Math.hypot(...axis(out, 'forearmTrail', 1))).toBeCloseTo(1, 12);
  });

  test('placing the same figure twice gives the same numbers: nothing is carried over', () => {
    const swing = swingOf({ statureM: 1.62, handed: 'right' }, 'driver');
    const first = placed(swing, 0.1).out;
    placed(swing, 0.6);
    expect(placed(swing, 0.1).out).toEqual(first);
  });
});

describe.each([
  [1.78, '7-iron'],
  [1.78, 'driver'],
  [1.5, 'driver'],
  [1.4, 'driver'],
  [1.62, '5-wood'],
  [2.05, 'sand wedge'],
] as const)('on the way from address to finish, %f m with the %s', (statureM, id) => {
  const body = bodyOf({ statureM, handed: 'right' });
  const club = clubOf(CLUBS[id]);
  const swing = createSwing(body, club, solveReference(body, club).reference);
  const { times } = swing.reference;
  const figure = createFigure(body, swing.rig.club);
  const pose = createPose();
  const shown: Float64Array[] = [];
  for (let t = times[K.address]; t <= times[K.finish]; t += 0.001) {
    swingPose(swing, t, pose);
    const out = createPlacement();
    placeFigure(figure, pose, { ballPoint: swing.reference.ballPoint, heelLift: heelLiftAt(swing, t) }, out);
    shown.push(out);
  }

  test('no part turns by more than 8 degrees in a millisecond (our limit): nothing pops', () => {
    let least = 3;
    for (let i = 1; i < shown.length; i++) {
      for (const part of PART_IDS) least = Math.min(least, sameTurn(shown[i - 1], shown[i], part));
    }
    expect(least).toBeGreaterThan(1 + 2 * Math.cos(rad(8)));
  });

  test('the legs reach the ground without being stretched, and the club never goes into it by a centimetre', () => {
    const { rings } = figure.parts[PART.clubHead];
    for (const out of shown) {
      for (const side of ['Lead', 'Trail'] as const) {
        expect(Math.hypot(...axis(out, `thigh${side}`, 1))).toBeLessThan(1.001);
      }
      const [x, y, z, o] = ([0, 1, 2, 3] as const).map((which) => axis(out, 'clubHead', which)[1]);
      let lowest = Infinity;
      for (let k = 0; k < rings.length; k += 3) {
        lowest = Math.min(lowest, o + x * rings[k] + y * rings[k + 1] + z * rings[k + 2]);
      }
      expect(lowest).toBeGreaterThan(-0.01);
    }
  });
});

/** Trace of the turn between two places of a part: 3 where it has not turned. */
function sameTurn(before: Float64Array, after: Float64Array, part: PartId): number {
  const along = (out: Float64Array, which: 0 | 1 | 2): number[] => {
    const v = axis(out, part, which);
    return v.map((c) => c / Math.hypot(...v));
  };
  return ([0, 1, 2] as const).reduce<number>((sum, which) => sum + dot(along(before, which), along(after, which)), 0);
}

describe('the ball', () => {
  test.each(CLUB_IDS)('touches the face of a %s and does not sink into the ground', (id) => {
    const swing = swingOf({ statureM: 1.78, handed: 'right' }, id);
    const pose = createPose();
    swingPose(swing, swing.reference.times[K.impact], pose);
    const ball = placeBall(swing.rig.club, pose, new Float64Array(3));
    const n = pose.subarray(AT.faceNormal, AT.faceNormal + 3);
    const head = pose.subarray(AT.head, AT.head + 3);
    expect(dot(n, ball) - dot(n, head)).toBeCloseTo(BALL_RADIUS + FACE_FORWARD, 9);
    expect(ball[1]).toBeGreaterThanOrEqual(BALL_RADIUS);
  });
});

function volume(rings: Float64Array, ringCount: number, segments: number): number {
  let six = 0;
  const add = (a: number, b: number, c: number): void => {
    const [p, q, r] = [a, b, c].map((i) => rings.subarray(i * 3, i * 3 + 3));
    six += p[0] * (q[1] * r[2] - q[2] * r[1]) + p[1] * (q[2] * r[0] - q[0] * r[2]) + p[2] * (q[0] * r[1] - q[1] * r[0]);
  };
  for (let i = 0; i < ringCount - 1; i++) {
    for (let j = 0; j < segments; j++) {
      const a = i * segments + j;
      const b = i * segments + ((j + 1) % segments);
      add(a, a + segments, b);
      add(b, a + segments, b + segments);
    }
  }
  return six / 6;
}
