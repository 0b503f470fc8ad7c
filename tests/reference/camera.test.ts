import fc from 'fast-check';
import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { AT } from '../../src/model/chain';
import { findImage, standCamera, type Address, type CameraView } from '../../src/reading/camera/camera';
import { readThrough, seeReading, type CameraReadingId } from '../../src/reading/camera/cameraReadings';
import type { CheckpointId } from '../../src/reading/checkpoints';
import { CAMERA_LIMITS, toTripod, type CameraPlace } from '../../src/store/document/cameras';
import { at, filmed, viewOf } from '../unit/filmed';

// Outside references: the camera of three.js 0.187 (its own matrices, its own field of view, handed the tripod in a coach's terms and in
// the real world, left-handed golfers included), and the picture plane of elementary geometry.

const swing = filmed();
const { address } = swing;
const POINTS = [AT.leadGrip, AT.head, AT.bicep, AT.pelvis, AT.midShoulder, AT.leadShoulder];
const VIEWS: readonly CameraView[] = ['downTheLine', 'faceOn'];

const stepped = (id: keyof CameraPlace, perUnit: number): fc.Arbitrary<number> =>
  fc
    .integer({ min: Math.ceil(CAMERA_LIMITS[id].min * perUnit), max: Math.floor(CAMERA_LIMITS[id].max * perUnit) })
    .map((n) => n / perUnit);
const places = fc.record({
  distanceM: stepped('distanceM', 100).filter((m) => m >= 2),
  heightM: stepped('heightM', 100),
  rightCm: stepped('rightCm', 10),
  aimRightDeg: stepped('aimRightDeg', 100),
  clockwiseDeg: stepped('clockwiseDeg', 100),
  fieldDeg: stepped('fieldDeg', 10),
});
const hands = fc.constantFrom('right' as const, 'left' as const);
const checkpoints = fc.constantFrom<CheckpointId>('leadArmParallel', 'shaftParallel');

/** A coach's tripod as three's camera, in the real world: a left-handed golfer stands on the other side of the ball line. */
function threeCamera(view: CameraView, place: CameraPlace, { hands: h, ball }: Address, side: 1 | -1) {
  const camera = new PerspectiveCamera(place.fieldDeg, 9 / 16, 0.01, 100);
  const right = place.rightCm / 100;
  // Down the line a coach looks along +X, +Z to his right. Face on he looks at the golfer, for whom the target is on the other hand.
  if (view === 'downTheLine') camera.position.set(h[0] - place.distanceM, place.heightM, side * h[2] + right);
  else camera.position.set(side * right, place.heightM, side * (ball[2] + place.distanceM));
  camera.lookAt(new Vector3(h[0], h[1], side * h[2]));
  camera.rotateOnWorldAxis(new Vector3(0, 1, 0), (-place.aimRightDeg * Math.PI) / 180);
  camera.rotateZ((-place.clockwiseDeg * Math.PI) / 180);
  camera.updateMatrixWorld();
  camera.updateProjectionMatrix();
  return camera;
}

describe("three's perspective camera", () => {
  test.each(VIEWS)('%s sees every point where ours does, for either hand', (view) => {
    fc.assert(
      fc.property(places, hands, checkpoints, (place, handed, id) => {
        const { pose } = at(swing.checkpoints, id);
        const side = handed === 'left' ? -1 : 1;
        const camera = threeCamera(view, place, address, side);
        const lens = standCamera(view, toTripod(place, { statureM: 1.78, handed }), address);
        for (const point of POINTS) {
          const world = new Vector3(pose[point], pose[point + 1], side * pose[point + 2]);
          const depth = -world.clone().applyMatrix4(camera.matrixWorldInverse).z;
          const image = findImage(lens, pose, point);
          if (!image) {
            expect(depth).toBeLessThan(0.05 + 1e-6);
            continue;
          }
          expect(image.depth).toBeCloseTo(depth, 9);
          const ndc = world.clone().project(camera);
          const tan = Math.tan((place.fieldDeg * Math.PI) / 360);
          // What a right-handed golfer's camera has on its right, a left-handed golfer's has on its left.
          expect(Math.abs(image.right - (side * ndc.x * tan * 9) / 16)).toBeLessThan(1e-9 * (1 + 1 / image.depth ** 2));
          expect(Math.abs(image.up - ndc.y * tan)).toBeLessThan(1e-9 * (1 + 1 / image.depth ** 2));
        }
      }),
      { numRuns: 300 },
    );
  });
});

/** Where the sight of a point meets the plane through the hands, square to the line of sight: plain geometry in metres. */
function onPlaneOfHands(camera: PerspectiveCamera, handsAt: Vector3, point: Vector3): Vector3 {
  const sight = camera.getWorldDirection(new Vector3());
  const ray = point.clone().sub(camera.position);
  const share = handsAt.clone().sub(camera.position).dot(sight) / ray.dot(sight);
  return ray.multiplyScalar(share).add(camera.position);
}

describe('the plane of elementary geometry through the hands, square to the line of sight', () => {
  test('the gap is the distance of the bicep from the shaft line there, the head depth how far right the head is there', () => {
    fc.assert(
      fc.property(places, checkpoints, (place, id) => {
        const { pose } = at(swing.checkpoints, id);
        const camera = threeCamera('downTheLine', place, address, 1);
        const lens = standCamera('downTheLine', toTripod(place, { statureM: 1.78, handed: 'right' }), address);
        const point = (k: number): Vector3 => new Vector3(pose[k], pose[k + 1], pose[k + 2]);
        const h = point(AT.leadGrip);
        const head = onPlaneOfHands(camera, h, point(AT.head)).sub(h);
        const bicep = onPlaneOfHands(camera, h, point(AT.bicep)).sub(h);
        const gap = seeReading('bicepGap', lens, pose);
        const depth = seeReading('headDepth', lens, pose);
        fc.pre(typeof gap === 'number' && typeof depth === 'number');
        const distance = bicep.clone().cross(head).length() / head.length();
        expect(Math.abs(gap)).toBeCloseTo(distance, 8);
        const right = new Vector3().setFromMatrixColumn(camera.matrixWorld, 0);
        expect(depth).toBeCloseTo(head.dot(right), 8);
      }),
      { numRuns: 300 },
    );
  });
});

test('the head at shaft parallel by similar triangles: drawn larger from the middle by the ratio of the depths', () => {
  // Down the line, level, not turned: the head lies k m nearer than the hands, so it is drawn larger by D / (D - k) from the middle.
  const { pose } = at(swing.checkpoints, 'shaftParallel');
  const [D, offset] = [4, 0.4];
  const tripod = { distance: D, height: address.hands[1], offset, aim: Math.atan2(offset, D), roll: 0, field: 1 };
  const lens = standCamera('downTheLine', tripod, address);
  expect(lens.forward[2]).toBeCloseTo(0, 12);
  const eye = address.hands[2] + offset;
  const depthOf = (k: number): number => D + pose[k] - address.hands[0];
  const drawn = (k: number): number => (pose[k + 2] - eye) * (depthOf(AT.leadGrip) / depthOf(k));
  expect(seeReading('headDepth', lens, pose)).toBeCloseTo(drawn(AT.head) - drawn(AT.leadGrip), 12);
});

test.each<CameraReadingId>(['bicepGap', 'headDepth', 'shaftPlane', 'armAngle', 'shaftAngle', 'trunkLean'])(
  'from a hundred kilometres %s is what the orthographic view says',
  (id) => {
    const { pose } = at(
      swing.checkpoints,
      id === 'headDepth' || id === 'shaftAngle' ? 'shaftParallel' : 'leadArmParallel',
    );
    const place = { distance: 1e5, height: 0.8, offset: 0, aim: 0, roll: 0, field: 1 };
    const read = readThrough(id, standCamera(viewOf(id), place, address), pose);
    expect('bend' in read && Math.abs(read.bend)).toBeLessThan(1e-4);
  },
);
