import { describe, expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { AT, createPose, type Pose } from '../../src/model/chain';
import { findImage, holdsPose, standCamera, type Address, type Lens } from '../../src/reading/camera/camera';
import { findTruePlace } from '../../src/reading/camera/cameraPlace';
import { readThrough, seeReading } from '../../src/reading/camera/cameraReadings';
import { at, filmed, through, tripodOf } from './filmed';

const level: Address = { hands: [0, 1, 0], ball: [0, 0, 0.8] };
/** Looks along +X from 4 m behind the hands, at their height. */
const STRAIGHT = standCamera('downTheLine', tripodOf('downTheLine', { height: 1 }), level);
const pose = (points: Readonly<Record<string, readonly number[]>>): Pose => {
  const p = createPose();
  for (const [point, value] of Object.entries(points)) p.set(value, AT[point as keyof typeof AT]);
  return p;
};

describe('where a camera stands (common practice)', () => {
  test('down the line it is behind the hands and looks at the target; its right is the ball line', () => {
    expect(STRAIGHT.eye).toEqual([-4, 1, 0]);
    expect(STRAIGHT.forward).toEqual([1, 0, 0]);
    expect(STRAIGHT.right).toEqual([0, 0, 1]);
    expect(STRAIGHT.up).toEqual([0, 1, 0]);
  });

  test("face on it is in front of the ball line, opposite the middle of the stance; its right is the target's side", () => {
    const lens = standCamera('faceOn', tripodOf('faceOn', { height: 1 }), level);
    expect(lens.eye).toEqual([0, 1, 4.8]);
    expect(lens.right[0]).toBeCloseTo(1, 12);
    expect(lens.forward[2]).toBeCloseTo(-1, 12);
  });

  test('wherever it stands it is aimed at the hands; aimed right of them it sees them on the left', () => {
    const see = (part: object): number => {
      const lens = standCamera('downTheLine', tripodOf('downTheLine', { offset: 0.6, height: 1.7, ...part }), level);
      return findImage(lens, pose({ leadGrip: level.hands }), AT.leadGrip)!.right;
    };
    expect(see({})).toBeCloseTo(0, 12);
    expect(see({ aim: rad(5) })).toBeLessThan(-0.05);
    expect(see({ aim: rad(-5) })).toBeGreaterThan(0.05);
  });

  test('tipped clockwise it sees the right side high', () => {
    const lens = standCamera('downTheLine', tripodOf('downTheLine', { height: 1, roll: rad(10) }), level);
    const image = findImage(lens, pose({ head: [0, 1, 0.5] }), AT.head)!;
    expect(Math.atan2(image.up, image.right)).toBeCloseTo(rad(10), 12);
  });

  test('a camera right above the hands, or in them, still looks somewhere', () => {
    for (const height of [1, 2]) {
      const lens = standCamera('downTheLine', tripodOf('downTheLine', { distance: 0, height }), level);
      expect([...lens.right, ...lens.up, ...lens.forward].every(Number.isFinite)).toBe(true);
    }
  });
});

describe('what a picture shows', () => {
  test('a head as near as the hands is read where it is; one nearer to the camera is blown up from the middle', () => {
    const beside = pose({ leadGrip: [0, 1, 0], head: [0, 1, -0.3], shaftDirection: [0, 0, -1] });
    expect(seeReading('headDepth', STRAIGHT, beside)).toBeCloseTo(-0.3, 12);
    // 3.2 m away instead of 4: a quarter larger.
    const nearer = pose({ leadGrip: [0, 1, 0], head: [-0.8, 1, -0.3] });
    expect(seeReading('headDepth', STRAIGHT, nearer)).toBeCloseTo(-0.3 * (4 / 3.2), 12);
  });

  test('a head that covers the hands is read so by a camera straight behind it, and in front by one that stands inside', () => {
    const covering = pose({ leadGrip: [0, 1, 0], head: [-0.8, 1, 0] });
    const seen = (offset: number) =>
      seeReading(
        'headDepth',
        standCamera('downTheLine', tripodOf('downTheLine', { height: 1, offset }), level),
        covering,
      );
    expect(seen(0)).toBeCloseTo(0, 12);
    expect(seen(-0.3)).toBeGreaterThan(0.05);
    expect(seen(0.3)).toBeLessThan(-0.05);
  });

  test('a club that reaches behind the camera cannot be read: a reason, not a number', () => {
    const swing = filmed();
    const lens = standCamera('downTheLine', tripodOf('downTheLine', { distance: 1 }), swing.address);
    expect(readThrough('headDepth', lens, at(swing.checkpoints, 'shaftParallel').pose)).toEqual({
      missing: 'behind-the-camera',
    });
  });

  test('a shaft that points straight at the camera makes no line: a reason, not a number', () => {
    const p = pose({ leadGrip: [0, 1, 0], head: [-0.8, 1, 0], bicep: [0, 1.2, 0], shaftDirection: [-1, 0, 0] });
    expect(readThrough('bicepGap', STRAIGHT, p)).toEqual({ missing: 'end-on' });
    expect(readThrough('shaftPlane', STRAIGHT, p)).toEqual({ missing: 'end-on' });
    expect(readThrough('headDepth', STRAIGHT, p)).toEqual({ seen: 0, bend: 0 });
  });

  test('a picture holds the golfer from four metres and loses him from two', () => {
    const { address, checkpoints } = filmed();
    const lens = (distance: number): Lens => standCamera('downTheLine', tripodOf('downTheLine', { distance }), address);
    expect(holdsPose(lens(4), at(checkpoints, 'leadArmParallel').pose)).toBe(true);
    expect(holdsPose(lens(2), at(checkpoints, 'leadArmParallel').pose)).toBe(false);
  });
});

describe.each([
  ['the reference', {}],
  ['a steep swing', { leadWristFlexion: rad(-20) }],
  ['an over-shallow swing', { leadWristFlexion: rad(20) }],
])('filming %s', (_, movements) => {
  const swing = filmed(movements);
  const gap = (part = {}): number => through(swing, 'leadArmParallel', 'bicepGap', part).bend;
  const depth = (part = {}): number => through(swing, 'shaftParallel', 'headDepth', part).bend;

  test('a camera too far inside reads steeper, one too far toward the ball line shallower (common practice)', () => {
    expect(gap({ offset: -0.5 })).toBeGreaterThan(gap() + 0.02);
    expect(gap({ offset: 0.5 })).toBeLessThan(gap() - 0.02);
    expect(depth({ offset: -0.5 })).toBeGreaterThan(depth() + 0.1);
    expect(depth({ offset: 0.5 })).toBeLessThan(depth() - 0.1);
  });

  test('a camera held high looks down on the line: shallower at lead arm parallel, hardly anything at shaft parallel', () => {
    expect(gap({ height: 1.6 })).toBeLessThan(gap() - 0.02);
    expect(Math.abs(depth({ height: 1.6 }) - depth())).toBeLessThan(0.01);
  });

  test('aim alone never puts the line on the other side of the bicep, and roll does not move it at all', () => {
    const { seen } = through(swing, 'leadArmParallel', 'bicepGap');
    for (const aim of [-15, -5, 5, 15]) {
      const aimed = through(swing, 'leadArmParallel', 'bicepGap', { aim: rad(aim) }).seen;
      expect(Math.sign(aimed)).toBe(Math.sign(seen));
      expect(Math.abs(aimed / seen - 1)).toBeLessThan(0.1);
    }
    expect(gap({ roll: rad(7) })).toBeCloseTo(gap(), 12);
  });

  test('a camera tipped clockwise reads the shaft flatter by as much', () => {
    const { seen } = through(swing, 'leadArmParallel', 'shaftPlane');
    const { seen: tipped } = through(swing, 'leadArmParallel', 'shaftPlane', { roll: rad(6) });
    expect(tipped - seen).toBeCloseTo(rad(-6), 12);
  });

  test('twice as far away the camera bends half as much, and from a kilometre nothing', () => {
    for (const bend of [gap, depth]) {
      expect(bend({ distance: 400 }) / bend({ distance: 800 })).toBeCloseTo(2, 1);
      expect(Math.abs(bend({ distance: 1000 }))).toBeLessThan(0.0005);
    }
  });

  test('there is a place from which both checkpoints read true to a centimetre, and it is told to 5 cm', () => {
    const { address, checkpoints } = swing;
    const poses = {
      leadArmParallel: at(checkpoints, 'leadArmParallel').pose,
      shaftParallel: at(checkpoints, 'shaftParallel').pose,
    };
    const place = findTruePlace(tripodOf('downTheLine', { offset: 0.6, height: 1.5 }), address, poses)!;
    expect(place.worst).toBeLessThan(0.01);
    const { offset, height } = place;
    expect(Math.max(Math.abs(gap({ offset, height })), Math.abs(depth({ offset, height })))).toBe(place.worst);
    expect((offset * 20) % 1).toBeCloseTo(0, 9);
    // From there, there is nothing better to tell.
    expect(findTruePlace(tripodOf('downTheLine', { offset, height }), address, poses)).toBeUndefined();
  });
});

describe('face on', () => {
  const swing = filmed();
  test('without a camera the trunk leans by what the joint says, and the shaft is level at shaft parallel', () => {
    const { pose: p } = at(swing.checkpoints, 'shaftParallel');
    const far = through(swing, 'shaftParallel', 'shaftAngle', { distance: 1e6 });
    expect(far.seen).toBeCloseTo(0, 5);
    expect(far.bend).toBeCloseTo(0, 5);
    const [dx, dy] = [p[AT.midShoulder] - p[AT.pelvis], p[AT.midShoulder + 1] - p[AT.pelvis + 1]];
    expect(through(swing, 'shaftParallel', 'trunkLean', { distance: 1e6 }).seen).toBeCloseTo(Math.atan2(-dx, dy), 5);
  });

  test("from the target's side the trunk, bent toward the camera, reads as leaning farther away", () => {
    const lean = (offset: number): number => through(swing, 'leadArmParallel', 'trunkLean', { offset }).bend;
    expect(lean(0.4)).toBeGreaterThan(rad(2));
    expect(lean(-0.4)).toBeLessThan(rad(-2));
  });

  test('held high, the camera reads the lead arm too high: parallel seems to come late', () => {
    expect(through(swing, 'leadArmParallel', 'armAngle', { height: 1.6 }).bend).toBeGreaterThan(rad(1));
  });
});
