import { Color, Mesh, PerspectiveCamera, Vector2, Vector3, type BufferGeometry } from 'three';
import { describe, expect, test } from 'vitest';
import { BALL_RADIUS, placeBall } from '../../src/figure/stance';
import { bodyOf } from '../../src/model/body';
import { AT, createPose, type Pose } from '../../src/model/chain';
import { CLUB_IDS, CLUBS, clubOf } from '../../src/model/club';
import { K } from '../../src/model/keys';
import { STILL } from '../../src/model/movements';
import { createSwing, swingPose, type Swing } from '../../src/reading/swing';
import { pointCamera } from '../../src/scene/camera/camera';
import { LineBatch } from '../../src/scene/lines/lineBatch';
import { placeOnTrace, Traces } from '../../src/scene/lines/trace';
import { seedReference } from '../../src/solving/reference/seed';
import { mountSwing, theme } from './mountedSwing';

const body = bodyOf({ statureM: 1.78, handed: 'right' });
const club = clubOf(CLUBS['7-iron']);
const seed = seedReference(body);
const swing = createSwing(body, club, seed);
const SIZE = new Vector2(800, 600);

type Three = readonly [number, number, number];
const three = (from: ArrayLike<number>, at = 0): Three => [from[at], from[at + 1], from[at + 2]];
const closeTo = (values: readonly number[], digits = 6) => values.map((v) => expect.closeTo(v, digits) as number);
const poseAt = (of: Swing, t: number): Pose => {
  const pose = createPose();
  swingPose(of, t, pose);
  return pose;
};

describe('a left-handed player', () => {
  test('is the scene mirrored across the target line, and a right-handed one is not', () => {
    const { scene, show } = mountSwing();
    const zOf = (handed: 'right' | 'left'): number => {
      const pose = poseAt(swing, 0);
      show({ body, club, handed, swing, referenceSwing: swing, t: 0, pose });
      scene.updateMatrixWorld();
      let lowest: Mesh | undefined;
      scene.traverse((node) => (lowest ??= node instanceof Mesh ? node : undefined));
      return new Vector3(1, 2, 3).applyMatrix4(lowest!.matrixWorld).z;
    };
    expect([zOf('right'), zOf('left'), zOf('right')]).toEqual([3, -3, 3]);
  });

  test('is seen by the mirrored camera: a picture with left and right changed, up and far as before', () => {
    const view = { target: [0.1, 0.9, 0.3], yaw: 0.4, pitch: 0.2, distance: 3, fov: 0.6 } as const;
    const seenBy = (mirror: 1 | -1): number[] => {
      const camera = new PerspectiveCamera();
      pointCamera(camera, { ...view, target: [...view.target] }, mirror);
      return new Vector3(0.4, 1.2, 0.7 * mirror).project(camera).toArray();
    };
    const [x, y, z] = seenBy(1);
    expect(Math.abs(x)).toBeGreaterThan(0.02);
    expect(seenBy(-1)).toEqual(closeTo([-x, y, z]));
  });
});

/** What a pen was told to draw. */
interface Stroke {
  readonly from: Three;
  readonly to: Three;
  readonly colour: Color;
  readonly px: number;
}
/** Lines that remember their strokes. */
function watchedLines() {
  const lines = new LineBatch(400, SIZE).take(400);
  const strokes: Stroke[] = [];
  const line = lines.line.bind(lines);
  lines.line = (a, b, colour, px, share) => {
    strokes.push({ from: three(a), to: three(b), colour: colour.clone(), px });
    line(a, b, colour, px, share);
  };
  return { lines, strokes };
}

describe('the traces', () => {
  const traced = (of: Swing) => {
    const { lines, strokes } = watchedLines();
    const traces = new Traces(theme, SIZE, lines);
    traces.draw(of);
    const isTick = ({ colour }: Stroke): boolean => colour.equals(theme.ink);
    return { traces, ticks: strokes.filter(isTick), hands: strokes.filter((stroke) => !isTick(stroke)) };
  };
  const IMPACT = seed.times[K.impact];
  const { traces, ticks, hands } = traced(swing);

  test('of the head runs from the top to impact', () => {
    const at = new Float64Array(3);
    for (const [share, t] of [
      [0, 0],
      [1, IMPACT],
    ])
      expect([...placeOnTrace(traces.heads, share, at)]).toEqual(closeTo(three(poseAt(swing, t), AT.head), 9));
  });

  test('is brass at the top and verdigris at the ball', () => {
    const { geometry, material } = traces.ribbon;
    const [brass, , , verdigris] = material.uniforms['colours'].value as readonly Color[];
    expect(brass).toEqual(new Color('#e6b13c'));
    expect(verdigris).toEqual(new Color('#0c4942'));
    const place = geometry.getAttribute('place');
    const position = geometry.getAttribute('position');
    expect(place.getX(0)).toBe(0);
    expect([position.getX(0), position.getY(0), position.getZ(0)]).toEqual(
      closeTo(three(poseAt(swing, 0), AT.head), 5),
    );
    expect(place.getX(place.count - 1)).toBe(1);
    expect(hands[0].colour).toEqual(brass);
    expect(hands.at(-1)!.colour.g).toBeLessThan(hands[0].colour.g);
  });

  test('widens from the top to impact, and keeps a least width on the screen that does so too', () => {
    const across = traces.ribbon.geometry.getAttribute('across');
    const half = (i: number): number => Math.hypot(across.getX(i), across.getY(i), across.getZ(i));
    const halves = Array.from({ length: across.count / 2 }, (_, i) => half(2 * i));
    expect(halves[0]).toBeCloseTo(0.007, 6);
    expect(halves.at(-1)).toBeCloseTo(0.017, 6);
    expect(halves.every((wide, i) => i === 0 || wide > halves[i - 1])).toBe(true);
    const { x, y } = traces.ribbon.material.uniforms['leasts'].value as Vector2;
    expect([2 * x, 2 * y]).toEqual([3.4, 8.8]);
  });

  test('of the hands runs between both of them', () => {
    const between = (t: number): number[] => {
      const pose = poseAt(swing, t);
      return [0, 1, 2].map((i) => (pose[AT.leadGrip + i] + pose[AT.trailGrip + i]) / 2);
    };
    expect(hands[0].from).toEqual(closeTo(between(0)));
    expect(hands.at(-1)!.to).toEqual(closeTo(between(IMPACT)));
  });

  test.each([
    [250, 11],
    [310, 13],
  ])('has a tick every 25 ms of the player’s own time: a downswing of %d ms has %d', (ms, count) => {
    const own = createSwing(body, club, seed, STILL, ms / 1000);
    const drawn = traced(own).ticks;
    expect(drawn).toHaveLength(count);
    const { from, to } = drawn[3];
    const pose = poseAt(own, (3 * 0.025) / own.tempo);
    for (const end of [from, to]) {
      const off = end.map((v, i) => v - pose[AT.head + i]);
      expect(Math.hypot(...off)).toBeLessThan(0.035);
    }
    expect(ticks).toHaveLength(11);
  });
});

describe('the ground', () => {
  test('the glass stands on the plane of the shaft at address, seen down the line', () => {
    const { scene, frame, show } = mountSwing();
    const address = poseAt(swing, seed.times[K.address]);
    show({ body, club, handed: 'right', swing, referenceSwing: swing, t: 0, pose: poseAt(swing, 0) });
    const geometries: BufferGeometry[] = [];
    scene.traverse((node) => {
      if (node instanceof Mesh) geometries.push((node as Mesh<BufferGeometry>).geometry);
    });
    // Flat colours, one a corner: the arrowhead lies flat, the glass stands.
    const standing = geometries
      .filter((geometry) => geometry.hasAttribute('tint'))
      .map((geometry) => geometry.getAttribute('position'))
      .filter((place) => place.getY(0) !== place.getY(2));
    expect(standing).toHaveLength(1);
    const [place] = standing;
    const corners = [0, 1, 2, 3].map((i) => ({ y: place.getY(i), z: place.getZ(i) }));
    const [y, z] = [address[AT.head + 1], address[AT.head + 2]];
    const [dy, dz] = [address[AT.shaftDirection + 1], address[AT.shaftDirection + 2]];
    const size = Math.hypot(dy, dz);
    /** Off the line of the shaft, m. */
    const off = (point: { y: number; z: number }): number => ((point.z - z) * dy - (point.y - y) * dz) / size;
    for (const corner of corners) expect(off(corner)).toBeCloseTo(0, 6);
    expect(off({ y: frame.glassEdge[1], z: frame.glassEdge[2] })).toBeCloseTo(0, 6);
    expect(Math.max(...corners.map((corner) => corner.y))).toBeGreaterThan(0.7);
  });

  /** A square head 6 cm above the ground, its toe away from the player. */
  const pose = createPose();
  pose.set([0.05, 0.06, 0.8], AT.head);
  pose.set([0, 0, 1], AT.toeDirection);
  pose.set([1, 0, 0], AT.faceNormal);

  test.each(CLUB_IDS)('a ball for the %s lies 32 mm toward the toe, teed only for a driver', (id) => {
    const ball = placeBall(clubOf(CLUBS[id]), pose, new Float64Array(3));
    expect(ball[2] - 0.8).toBeCloseTo(0.032, 9);
    expect(ball[1]).toBeCloseTo(id === 'driver' ? 0.06 : BALL_RADIUS, 9);
    expect(ball[0]).toBeGreaterThan(0.05 + BALL_RADIUS);
  });
});
