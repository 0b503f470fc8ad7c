import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { AT, createPose, type Pose } from '../../src/model/chain';
import * as read from '../../src/reading/readings';

type Three = readonly [number, number, number];
type Points = { readonly [point in keyof typeof AT]?: Three };

/** A pose built by hand: only what is given, everything else zero. */
function pose(points: Points): Pose {
  const p = createPose();
  for (const [point, value] of Object.entries(points)) p.set(value, AT[point as keyof typeof AT]);
  return p;
}
/** A shaft seen down the line, so many degrees up from pointing back behind the player. */
const shaftAt = (degrees: number): Three => [0, Math.sin(rad(degrees)), -Math.cos(rad(degrees))];
/** A level shaft whose head trails the hands, aimed so many degrees right of the target. */
const levelShaft = (degrees: number): Three => [-Math.cos(rad(degrees)), 0, -Math.sin(rad(degrees))];
const DOWN: Three = [0, -1, 0];

describe('shaft pitch', () => {
  test.each([
    ['level, it is zero', [-1, 0, 0], 0],
    ['head 30 deg above the hands, it is +30', shaftAt(30), 30],
    ['head 30 deg below the hands, it is -30', shaftAt(-30), -30],
    ['straight up, it is 90', [0, 1, 0], 90],
  ] as const)('%s', (_, shaftDirection, degrees) => {
    expect(read.shaftPitch(pose({ shaftDirection }))).toBeCloseTo(rad(degrees), 12);
  });
});

describe('shaft plane, seen down the line', () => {
  test.each([
    ['upright, it is 90', [0, 1, 0], 90],
    ['lying behind the player, it is less', shaftAt(58), 58],
    ['tipped out over the ball, it is more', shaftAt(120), 120],
    ['leaning along the target line does not count', [-0.6, 0.8, 0], 90],
  ] as const)('%s', (_, shaftDirection, degrees) => {
    expect(read.shaftPlane(pose({ shaftDirection }))).toBeCloseTo(rad(degrees), 12);
  });
});

describe('bicep gap', () => {
  const leadGrip: Three = [0, 1, 0.4];

  test('a line through the bicep has none', () => {
    expect(read.bicepGap(pose({ leadGrip, shaftDirection: shaftAt(45), bicep: [-0.3, 1.3, 0.1] }))).toBeCloseTo(0, 12);
  });

  test('a line 10 cm above the bicep at 45 deg is 7.07 cm away, positive (steep)', () => {
    expect(read.bicepGap(pose({ leadGrip, shaftDirection: shaftAt(45), bicep: [0, 1.2, 0.1] }))).toBeCloseTo(
      0.1 * Math.SQRT1_2,
      12,
    );
  });

  test('a line 10 cm below the bicep is negative (over-shallow)', () => {
    expect(read.bicepGap(pose({ leadGrip, shaftDirection: shaftAt(45), bicep: [0, 1.4, 0.1] }))).toBeCloseTo(
      -0.1 * Math.SQRT1_2,
      12,
    );
  });

  test('an upright line 30 cm in front of the bicep is +30 cm, and nothing jumps there', () => {
    const gap = (degrees: number): number =>
      read.bicepGap(pose({ leadGrip, shaftDirection: shaftAt(degrees), bicep: [0, 1.2, 0.1] }));
    expect(gap(90)).toBeCloseTo(0.3, 12);
    expect(gap(91) - gap(90)).toBeCloseTo(gap(90) - gap(89), 3);
  });

  test('how far the shaft leans along the target line does not count', () => {
    const at = (x: number): number =>
      read.bicepGap(pose({ leadGrip, shaftDirection: [x, Math.SQRT1_2, -Math.SQRT1_2], bicep: [5, 1.2, 0.1] }));
    expect(at(-0.9)).toBeCloseTo(at(0), 12);
  });
});

describe('bicep crossing', () => {
  const arm = { leadGrip: [0, 1, 0.4], trailShoulder: [-0.4, 1.5, 0.2], trailElbow: [-0.4, 1.1, 0.2] } as const;

  test.each([
    ['through the shoulder it is 0', [0, 0.5, -0.2], 0],
    ['through the middle of the upper arm it is 0.5', [0, 0.3, -0.2], 0.5],
    ['through the elbow it is 1', [0, 0.1, -0.2], 1],
    ['above the shoulder it is below 0', [0, 0.7, -0.2], -0.5],
  ] as const)('%s', (_, shaftDirection, crossing) => {
    expect(read.bicepCrossing(pose({ ...arm, shaftDirection }))).toBeCloseTo(crossing, 12);
  });

  test('a shaft along the upper arm crosses nowhere: no number', () => {
    expect(read.bicepCrossing(pose({ ...arm, shaftDirection: DOWN }))).toBeNaN();
  });
});

test('head depth: a head 12 cm nearer the ball line than the hands is +12 cm, one 12 cm behind is -12', () => {
  expect(read.headDepth(pose({ leadGrip: [0, 1, 0.3], head: [-0.8, 1, 0.42] }))).toBeCloseTo(0.12, 12);
  expect(read.headDepth(pose({ leadGrip: [0, 1, 0.3], head: [-0.8, 1, 0.18] }))).toBeCloseTo(-0.12, 12);
});

describe('shaft aim', () => {
  test.each([
    ['parallel to the target line, it is zero', 0],
    ['butt 8 deg right of the target, head behind the hands, it is +8', 8],
    ['butt 8 deg left of the target, head in front of the hands, it is -8', -8],
  ])('%s', (_, degrees) => {
    expect(read.shaftAim(pose({ shaftDirection: levelShaft(degrees) }))).toBeCloseTo(rad(degrees), 12);
  });
});

describe('the plane of the club', () => {
  test('a level shaft whose head drops straight down: the trace is the shaft and the plane is vertical', () => {
    const p = pose({ shaftDirection: levelShaft(6) });
    expect(read.planeDirection(p, DOWN)).toBeCloseTo(rad(6), 12);
    expect(read.planeTilt(p, DOWN)).toBeCloseTo(rad(90), 12);
  });

  test('a level shaft whose head goes down and out at 45 deg: same trace, a plane of 45 deg', () => {
    const p = pose({ shaftDirection: levelShaft(0) });
    expect(read.planeDirection(p, [0, -1, 1])).toBeCloseTo(0, 12);
    expect(read.planeTilt(p, [0, -1, 1])).toBeCloseTo(rad(45), 12);
  });

  test('at impact, shaft 60 deg to the ground and the head going along the target line: 60 deg, straight', () => {
    const p = pose({ shaftDirection: [0, -Math.sin(rad(60)), Math.cos(rad(60))] });
    expect(read.planeDirection(p, [40, 0, 0])).toBeCloseTo(0, 12);
    expect(read.planeTilt(p, [40, 0, 0])).toBeCloseTo(rad(60), 12);
  });

  test('a plane turned about the vertical turns its direction by as much, to the right of the target', () => {
    const a = rad(10);
    const p = pose({ shaftDirection: [-0.8 * Math.sin(a), -0.6, 0.8 * Math.cos(a)] });
    expect(read.planeDirection(p, [Math.cos(a), 0, Math.sin(a)])).toBeCloseTo(a, 12);
  });

  test('how fast the head goes, and whether forward or back, does not change it', () => {
    const p = pose({ shaftDirection: [-0.5, 0.5, -Math.SQRT1_2] });
    const one = read.planeDirection(p, [0.2, -3, 1]);
    expect(read.planeDirection(p, [2, -30, 10])).toBeCloseTo(one, 12);
    expect(read.planeDirection(p, [-0.2, 3, -1])).toBeCloseTo(one, 12);
  });
});

describe('grip-end line', () => {
  test('a shaft 45 deg up behind hands 1 m high and 0.4 m out meets the ground 1.4 m out', () => {
    expect(read.gripEndLine(pose({ leadGrip: [0, 1, 0.4], shaftDirection: shaftAt(45) }), 0.6)).toBeCloseTo(0.8, 12);
  });

  test('a steeper shaft meets it nearer', () => {
    const far = read.gripEndLine(pose({ leadGrip: [0, 1, 0.4], shaftDirection: shaftAt(45) }), 0.6);
    expect(read.gripEndLine(pose({ leadGrip: [0, 1, 0.4], shaftDirection: shaftAt(70) }), 0.6)).toBeLessThan(far);
  });

  test('a level shaft never meets it: no number', () => {
    expect(read.gripEndLine(pose({ leadGrip: [0, 1, 0.4], shaftDirection: levelShaft(0) }), 0.6)).toBeNaN();
  });
});

test('face to vertical: looking 10 deg below the horizontal is +10 (closed), above it -10', () => {
  expect(read.faceToVertical(pose({ faceNormal: [Math.cos(rad(10)), -Math.sin(rad(10)), 0] }))).toBeCloseTo(
    rad(10),
    12,
  );
  expect(read.faceToVertical(pose({ faceNormal: [Math.cos(rad(10)), Math.sin(rad(10)), 0] }))).toBeCloseTo(
    rad(-10),
    12,
  );
});

test('lead arm to shaft: in one straight line it is 180 deg, at a right angle 90, folded back 0', () => {
  const angle = (shaftDirection: Three): number => read.armToShaft(pose({ armDirection: [0, 0, 1], shaftDirection }));
  expect(angle([0, 0, 1])).toBeCloseTo(rad(180), 12);
  expect(angle([0, 1, 0])).toBeCloseTo(rad(90), 12);
  expect(angle([0, 0, -1])).toBeCloseTo(0, 12);
});

test('hands 80 cm up and 25 cm in front of the ankles read so', () => {
  const p = pose({ leadGrip: [-0.3, 0.8, 0.25] });
  expect(read.handHeight(p)).toBe(0.8);
  expect(read.handDepth(p)).toBe(0.25);
});
