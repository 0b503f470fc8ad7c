import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFigure } from '../../src/figure/figure';
import { placeBall } from '../../src/figure/stance';
import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { AT, createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { createSwing, drawnPose, type Swing } from '../../src/reading/swing';
import { framePoints, type FramePoints } from '../../src/scene/camera/framePoints';
import { frameSwing } from '../../src/scene/camera/framing';
import { DIRECTIONS, eyeDirection, fitView, holdsAll } from '../../src/scene/camera/view';
import { findShipped } from '../../src/solving/reference/shipped';

type Vec = readonly [number, number, number];
const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec): Vec => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};

/** Pinhole projection worked out from the camera's place alone, in px from the upper left corner. */
function project(view: ReturnType<typeof fitView>, point: Vec, width: number, height: number): [number, number] {
  const back = eyeDirection(view);
  const eye: Vec = [
    view.target[0] + back[0] * view.distance,
    view.target[1] + back[1] * view.distance,
    view.target[2] + back[2] * view.distance,
  ];
  const ahead = unit(minus(view.target, eye));
  const right = unit(cross(ahead, [0, 1, 0]));
  const up = cross(right, ahead);
  const p = minus(point, eye);
  const depth = dot(p, ahead);
  expect(depth).toBeGreaterThan(0);
  const scale = height / 2 / Math.tan(view.fov / 2);
  return [width / 2 + (dot(p, right) / depth) * scale, height / 2 - (dot(p, up) / depth) * scale];
}

const centimetres = fc.tuple(
  fc.integer({ min: -150, max: 150 }),
  fc.integer({ min: 0, max: 260 }),
  fc.integer({ min: -80, max: 140 }),
);
const cloud = fc.array(centimetres, { minLength: 4, maxLength: 30 });
const insets = { left: 60, right: 14, top: 12, bottom: 68 };

test('a fitted view holds every point inside the picture less its edges, whatever its shape and direction', () => {
  fc.assert(
    fc.property(
      cloud,
      fc.integer({ min: 300, max: 1400 }),
      fc.integer({ min: 260, max: 900 }),
      fc.constantFrom(...Object.values(DIRECTIONS)),
      (cms, width, height, direction) => {
        const points = cms.map((p): Vec => [p[0] / 100, p[1] / 100, p[2] / 100]);
        const view = fitView(direction, points.flat(), width, height, insets);
        for (const point of points) {
          const [x, y] = project(view, point, width, height);
          expect(x).toBeGreaterThanOrEqual(insets.left - 1e-6);
          expect(x).toBeLessThanOrEqual(width - insets.right + 1e-6);
          expect(y).toBeGreaterThanOrEqual(insets.top - 1e-6);
          expect(y).toBeLessThanOrEqual(height - insets.bottom + 1e-6);
        }
      },
    ),
  );
});

test('points in one line of sight lie in front of the eye', () => {
  const points: Vec[] = [
    [-0.04, 2.58, 0.43],
    [0, 2.34, -0.7],
    [0, 2.49, 0],
    [0, 2.49, 0],
  ];
  const view = fitView(
    { yaw: -0.8482300164692442, pitch: 0.17627825445142728, fov: 0.5113814708343386 },
    points.flat(),
    1132,
    260,
    insets,
  );
  for (const point of points) project(view, point, 1132, 260);
  expect(holdsAll(view, points.flat(), 1132, 260, insets)).toBe(true);
});

test('a fitted view stands as near as it can: some points touch two opposite edges', () => {
  const points: Vec[] = [
    [-0.9, 0, 0.2],
    [0.9, 0, 0.4],
    [0, 2.2, 0.1],
  ];
  const view = fitView(DIRECTIONS.faceOn, points.flat(), 900, 600, insets);
  const places = points.map((point) => project(view, point, 900, 600));
  const ys = places.map(([, y]) => y);
  expect(Math.min(...ys)).toBeCloseTo(insets.top, 6);
  expect(Math.max(...ys)).toBeCloseTo(600 - insets.bottom, 6);
});

test('down the line looks along the target line, face on looks at the chest, overhead looks down', () => {
  const [dx] = eyeDirection(DIRECTIONS.downTheLine);
  const [, , fz] = eyeDirection(DIRECTIONS.faceOn);
  const [, oy] = eyeDirection(DIRECTIONS.overhead);
  expect(dx).toBeLessThan(-0.999);
  expect(fz).toBeGreaterThan(0.999);
  expect(oy).toBeGreaterThan(0.999);
});

describe('a fitted view follows the playhead', () => {
  const PICTURES = [
    { width: 562, height: 440, insets },
    { width: 820, height: 330, insets: { left: 172, right: 24, top: 12, bottom: 12 } },
    { width: 390, height: 170, insets: { left: 120, right: 8, top: 8, bottom: 8 } },
    { width: 430, height: 560, insets },
  ] as const;
  const PLAYERS: readonly (readonly [number, ClubId])[] = [
    [1.5, 'sand wedge'],
    [1.78, '7-iron'],
    [2.05, 'driver'],
  ];
  const CASES = PLAYERS.flatMap(([statureM, club]) =>
    Object.entries(DIRECTIONS).map(([view, direction]) => ({ statureM, club, view, direction })),
  );

  function framed(statureM: number, clubId: ClubId): { swing: Swing; points: FramePoints } {
    const body = bodyOf({ statureM, handed: 'right' });
    const club = clubOf(CLUBS[clubId]);
    const swing = createSwing(body, club, findShipped(body, club)!);
    const pose = createPose();
    drawnPose(swing, swing.reference.times[K.impact], pose);
    const ball = placeBall(club, pose, new Float64Array(3));
    return { swing, points: framePoints(swing, createFigure(body, club), ball, 0.9) };
  }

  test.each(CASES)(
    'the club stays in the picture from address to finish: $statureM m, $club, $view',
    ({ statureM, club: clubId, direction }) => {
      const { swing, points } = framed(statureM, clubId);
      const { times } = swing.reference;
      const pose = createPose();
      const outside: string[] = [];
      for (const { width, height, insets: edges } of PICTURES) {
        const framing = frameSwing(direction, points, width, height, edges);
        for (let t = times[K.address]; t <= times[K.finish]; t += 0.002) {
          drawnPose(swing, t, pose);
          const club = [pose[AT.head], pose[AT.head + 1], pose[AT.head + 2]] as const;
          const [x, y] = project(framing.at(t), club, width, height);
          const isInside = x >= edges.left && x <= width - edges.right && y >= edges.top && y <= height - edges.bottom;
          if (!isInside) outside.push(`${width} x ${height} at ${t.toFixed(3)} s: ${x.toFixed(1)}, ${y.toFixed(1)}`);
        }
      }
      expect(outside).toEqual([]);
    },
  );

  test.each(CASES)(
    'it stands still up to shaft parallel, then opens without a jump and never closes: $statureM m, $club, $view',
    ({ statureM, club, direction }) => {
      const { swing, points } = framed(statureM, club);
      const { times } = swing.reference;
      for (const { width, height, insets: edges } of PICTURES) {
        const framing = frameSwing(direction, points, width, height, edges);
        const first = framing.at(times[K.address]);
        for (const key of ['top', 'leadArmParallel', 'shaftParallel'] as const)
          expect(framing.at(times[K[key]])).toEqual(first);
        const opening = framing.at(times[K.finish]).distance - first.distance;
        let before = first.distance;
        const steps: number[] = [];
        for (let t = times[K.shaftParallel]; t <= times[K.finish] + 0.01; t += 0.001) {
          const { distance } = framing.at(t);
          steps.push(distance - before);
          before = distance;
        }
        expect(Math.min(...steps)).toBeGreaterThanOrEqual(-1e-12);
        // At most a thirtieth of the way in a millisecond of the swing.
        expect(Math.max(...steps)).toBeLessThanOrEqual(opening / 30 + 1e-12);
      }
    },
  );

  test('the same instant is always seen from the same place', () => {
    const { points } = framed(1.78, '7-iron');
    const [a, b] = [0, 1].map(() => frameSwing(DIRECTIONS.faceOn, points, 562, 440, insets));
    for (const t of [0.4, 0.1, 0.7, 0.26]) expect(a.at(t)).toEqual(b.at(t));
  });
});
