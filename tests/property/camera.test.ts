import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rad } from '../../src/math/angle';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, createRig, placePose, type Pose } from '../../src/model/chain';
import { CLUBS, clubOf } from '../../src/model/club';
import { standCamera, type Address, type Lens, type Tripod } from '../../src/reading/camera/camera';
import { ownReading, readThrough, seeReading, type CameraReadingId } from '../../src/reading/camera/cameraReadings';
import { angle, jointVector, length } from './arbitraries';
import { viewOf } from '../unit/filmed';

const rig = createRig(bodyOf({ statureM: 1.78, handed: 'right' }), clubOf(CLUBS['7-iron']));
const IDS: readonly CameraReadingId[] = ['bicepGap', 'headDepth', 'shaftPlane', 'armAngle', 'shaftAngle', 'trunkLean'];
const LENGTHS: readonly CameraReadingId[] = ['bicepGap', 'headDepth'];

const poses = jointVector().map((q): Pose => {
  const p = createPose();
  placePose(rig, q, p);
  return p;
});
const address: Address = { hands: [0.04, 0.72, 0.17], ball: [0.02, 0.02, 0.63] };
const tripods = (nearest: number, farthest: number): fc.Arbitrary<Tripod> =>
  fc.record({
    distance: length(nearest, farthest),
    height: length(0.1, 3),
    offset: length(-2, 2),
    aim: angle(-20, 20),
    roll: angle(-20, 20),
    field: fc.constant(rad(60)),
  });
const ids = fc.constantFrom(...IDS);

/** The smallest turn from one angle to another. */
const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

test('a picture gives a finite reading with its bend, or a reason, wherever the camera is; never anything else', () => {
  fc.assert(
    fc.property(poses, tripods(0, 20), ids, (pose, tripod, id) => {
      const read = readThrough(id, standCamera(viewOf(id), tripod, address), pose);
      if ('missing' in read) expect(['behind-the-camera', 'end-on']).toContain(read.missing);
      else expect([read.seen, read.bend].every(Number.isFinite)).toBe(true);
    }),
  );
});

test('the axes of every camera are square, of length one, and right-handed', () => {
  fc.assert(
    fc.property(tripods(1, 20), fc.constantFrom('downTheLine' as const, 'faceOn' as const), (tripod, view) => {
      const { right, up, forward } = standCamera(view, tripod, address);
      const dot = (a: readonly number[], b: readonly number[]): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
      for (const axis of [right, up, forward]) expect(dot(axis, axis)).toBeCloseTo(1, 12);
      for (const [a, b] of [
        [right, up],
        [up, forward],
        [forward, right],
      ])
        expect(dot(a, b)).toBeCloseTo(0, 12);
      expect(right[1] * up[2] - right[2] * up[1]).toBeCloseTo(-forward[0], 12);
    }),
  );
});

test('what a camera bends falls at least as fast as its distance grows: ten times farther, about a tenth', () => {
  fc.assert(
    fc.property(poses, tripods(2000, 4000), ids, (pose, tripod, id) => {
      // Aimed at the hands and level: a camera turned away from what it looks at squeezes it from any distance.
      const bend = (distance: number): number => {
        const level = { ...tripod, aim: 0, roll: 0, distance };
        const read = readThrough(id, standCamera(viewOf(id), level, address), pose);
        fc.pre('bend' in read);
        return Math.abs((read as { bend: number }).bend);
      };
      // A line that is nearly end-on without a camera turns a long way with one.
      const line = Math.hypot(pose[AT.shaftDirection + 1], pose[AT.shaftDirection + (viewOf(id) === 'faceOn' ? 0 : 2)]);
      fc.pre(line > 0.1 && Math.hypot(pose[AT.armDirection], pose[AT.armDirection + 1]) > 0.1);
      const [near, far] = [bend(tripod.distance), bend(10 * tripod.distance)];
      expect(near).toBeLessThan(0.05);
      expect(far).toBeLessThan(near / 8 + 1e-5);
    }),
  );
});

test('aim and roll never carry a point over a line of the picture', () => {
  fc.assert(
    fc.property(poses, tripods(3, 10), (pose, tripod) => {
      const straight = seeReading(
        'bicepGap',
        standCamera('downTheLine', { ...tripod, aim: 0, roll: 0 }, address),
        pose,
      );
      const turned = seeReading('bicepGap', standCamera('downTheLine', tripod, address), pose);
      fc.pre(typeof straight === 'number' && typeof turned === 'number');
      if (Math.abs(straight) > 1e-6) expect(Math.sign(turned)).toBe(Math.sign(straight));
    }),
  );
});

/** The mirror image of a pose and of a lens, z -> -z. What was the camera's right is the left of its mirror image. */
const mirroredPose = (pose: Pose): Pose => pose.map((value, i) => (i < AT.pelvisAxes && i % 3 === 2 ? -value : value));
const flip = ([x, y, z]: readonly [number, number, number]) => [x, y, -z] as const;
const mirroredLens = ({ eye, right, up, forward, halfField }: Lens): Lens => ({
  eye: flip(eye),
  right: flip(right),
  up: flip(up),
  forward: flip(forward),
  halfField,
});

test('the mirror image of the camera reads the mirror image of the golfer alike', () => {
  fc.assert(
    fc.property(poses, tripods(3, 10), ids, (pose, tripod, id) => {
      const lens = standCamera(viewOf(id), tripod, address);
      const ours = seeReading(id, lens, pose);
      const theirs = seeReading(id, mirroredLens(lens), mirroredPose(pose));
      if (typeof ours !== 'number' || typeof theirs !== 'number') expect(theirs).toEqual(ours);
      else if (LENGTHS.includes(id)) expect(theirs).toBeCloseTo(ours, 12);
      else expect(apart(theirs, ours)).toBeLessThan(1e-12);
    }),
  );
});

test('a bend is what is seen less what is there', () => {
  fc.assert(
    fc.property(poses, tripods(3, 10), ids, (pose, tripod, id) => {
      const read = readThrough(id, standCamera(viewOf(id), tripod, address), pose);
      fc.pre('bend' in read);
      const { seen, bend } = read as { seen: number; bend: number };
      if (LENGTHS.includes(id)) expect(bend).toBeCloseTo(seen - ownReading(id, pose), 12);
      else expect(apart(bend, seen - ownReading(id, pose))).toBeLessThan(1e-12);
    }),
  );
});
