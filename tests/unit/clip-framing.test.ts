import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { cellsOf } from '../../src/export/painting/cells';
import { directionOf } from '../../src/export/clip/clipStage';
import { pixelSize, type Shape } from '../../src/export/clip/formats';
import { fillFrame, pointsToFill } from '../../src/export/clip/fillFrame';
import { joinFramed, withoutGlass } from '../../src/export/clip/framingBounds';
import { drawStoryboard, frameCount, momentAt, type CameraId, type Film } from '../../src/export/clip/storyboard';
import { frameAt, viewOf } from '../../src/export/stop/stopView';
import { toPoint } from '../../src/plates/plate/frame';
import { CHECKPOINT_IDS } from '../../src/reading/checkpointTable';
import { isReached } from '../../src/reading/checkpoints';
import { takeSnapshot } from '../../src/export/task/exportSnapshot';
import { createFigure } from '../../src/figure/figure';
import { placeBall } from '../../src/figure/stance';
import { AT, createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { drawnPose, swingPose, type Swing } from '../../src/reading/swing';
import { pointCamera } from '../../src/scene/camera/camera';
import { framePoints, pointsAt, type FramePoints } from '../../src/scene/camera/framePoints';
import { frameSwing } from '../../src/scene/camera/framing';
import { fitView } from '../../src/scene/camera/view';
import { current, desk, setMovement } from '../../src/store';

// A swing far from the reference: the picture has to hold it, not only the reference.
setMovement('leadWristFlexion', -30);
setMovement('rotationRate', 1.2);
setMovement('trailSideBend', -8);
const { now, after, derived } = takeSnapshot(desk.getState(), current(), 'reference');
const takes = [now, after];
const figure = createFigure(derived.body, derived.club);
const ball = new Float64Array(3);
{
  const pose = createPose();
  swingPose(derived.referenceSwing, derived.referenceSwing.curves.times[K.impact], pose);
  placeBall(derived.club, pose, ball);
}
const points = takes.map(({ swing }) => withoutGlass(framePoints(swing, figure, ball, ball[2])));
const INSETS = { left: 0, right: 0, top: 0, bottom: 0 };
const pose = createPose();

/** Where the club's head and the hands are on the picture, by three's own projection: -1 to 1 both ways. */
function seenAt(camera: PerspectiveCamera, swing: Swing, t: number): Vector3[] {
  drawnPose(swing, t, pose);
  return [AT.head, AT.leadGrip].map((at) => new Vector3(pose[at], pose[at + 1], pose[at + 2]).project(camera));
}

describe.each(['16:9', '9:16', '1:1'] satisfies Shape[])('in a clip of %s', (shape) => {
  test.each(['free', 'downTheLine', 'faceOn', 'overhead', 'orbit'] satisfies CameraId[])(
    'club and hands stay in the picture from address to finish, and through the slow downswing (%s)',
    (camera) => {
      const film: Film = {
        arrangement: 'sideBySide',
        wholeSwing: camera,
        slowMotion: camera,
        titleCard: false,
        endCard: false,
        cuts: false,
      };
      const storyboard = drawStoryboard(film, takes, { hasFeel: false });
      const [cell] = cellsOf(pixelSize(shape, '720p'), 2);
      const whole = joinFramed(points);
      const lens = new PerspectiveCamera();
      lens.aspect = cell.width / cell.height;
      const follows = frameSwing(directionOf(camera, 0), whole, cell.width, cell.height, INSETS);
      for (let frame = 0; frame < frameCount(storyboard, 25); frame++) {
        const { shot, share, times } = momentAt(storyboard, frame / 25);
        if (shot.kind === 'stop') continue;
        const isFixed = camera === 'orbit';
        const view = isFixed
          ? fitView(directionOf(camera, share), whole.whole, cell.width, cell.height, INSETS)
          : follows.at(times[0]);
        pointCamera(lens, view, 1);
        for (const [i, { swing }] of takes.entries()) {
          for (const { x, y, z } of seenAt(lens, swing, times[i])) {
            expect(Math.max(Math.abs(x), Math.abs(y)), `${shot.kind}, frame ${frame}`).toBeLessThan(1);
            expect(z).toBeLessThan(1);
          }
        }
      }
    },
  );
});

test('without the glass the picture is nearer, and it opens only for the follow-through', () => {
  const direction = directionOf('free', 0);
  const far = (of: FramePoints): number => fitView(direction, of.struck, 1280, 720, INSETS).distance;
  expect(far(joinFramed(points))).toBeLessThan(far(framePoints(now.swing, figure, ball, ball[2])) - 0.2);
  const follows = frameSwing(direction, joinFramed(points), 1280, 720, INSETS);
  const { times } = now.swing.curves;
  expect(follows.at(times[K.address])).toBe(follows.at(times[K.top]));
  expect(follows.at(times[K.finish]).distance).toBeGreaterThan(follows.at(times[K.top]).distance);
});

describe.each(['right', 'left'] as const)('at a checkpoint of a %s-handed player', (handed) => {
  test.each(['16:9', '9:16', '1:1'] satisfies Shape[])(
    'the near-parallel camera sees the body where the drawing has it, within a hundredth of its distance from the pin (%s)',
    (shape) => {
      const size = pixelSize(shape, '720p');
      const side = handed === 'left' ? -1 : 1;
      for (const id of CHECKPOINT_IDS) {
        const at = now.checkpoints[id];
        if (!isReached(at)) throw new Error('not reached');
        const pin = id === 'leadArmParallel' ? AT.bicep : AT.leadGrip;
        const frame = frameAt(side, 600, at.pose[pin + 1], at.pose[pin + 2], size.width * 0.6, size.height * 0.55);
        const lens = new PerspectiveCamera();
        lens.aspect = size.width / size.height;
        pointCamera(lens, viewOf(frame, size, at.pose[pin]), side);
        for (const point of [pin, AT.head, AT.leadGrip, AT.bicep]) {
          const seen = new Vector3(at.pose[point], at.pose[point + 1], side * at.pose[point + 2]).project(lens);
          const drawn = toPoint(frame, at.pose, point);
          const [dx, dy] = [((seen.x + 1) / 2) * size.width - drawn.x, ((1 - seen.y) / 2) * size.height - drawn.y];
          const middle = Math.hypot(drawn.x - size.width / 2, drawn.y - size.height / 2);
          // A pinhole at d m sees what lies x m nearer larger by x / d: here at most 1 m at 60 m.
          expect(Math.hypot(dx, dy)).toBeLessThanOrEqual(point === pin ? 1e-6 : middle / 50);
          expect(Math.abs(seen.z)).toBeLessThan(1);
        }
      }
    },
  );
});

describe.each(['9:16', '1:1'] satisfies Shape[])('what to feel, in a clip of %s', (shape) => {
  const { width, height } = pixelSize(shape, '720p');
  // Words of several lines at the top.
  const insets = { left: 16, right: 16, top: height * 0.4, bottom: 24 };
  const highest = height * 0.1;
  const framing = fillFrame(
    directionOf('free', 0),
    pointsToFill(now.swing, figure, ball),
    { width, height },
    insets,
    highest,
  );
  const { times } = now.swing.curves;
  const lens = new PerspectiveCamera();
  lens.aspect = width / height;
  /** From the picture's top, px: lowest and highest of points, three numbers each. */
  const spanOf = (list: readonly number[], t: number): [number, number] => {
    pointCamera(lens, framing.at(t), 1);
    const ys: number[] = [];
    for (let i = 0; i < list.length; i += 3) {
      const { x, y } = new Vector3(list[i], list[i + 1], list[i + 2]).project(lens);
      expect(Math.abs(x)).toBeLessThanOrEqual(1 + 1e-9);
      ys.push(((1 - y) / 2) * height);
    }
    return [Math.min(...ys), Math.max(...ys)];
  };

  test('the body stays clear of the words, and the club in the picture, no higher than it may go', () => {
    for (let i = 0; i <= 40; i++) {
      const t = times[K.address] + ((times[K.finish] - times[K.address]) * i) / 40;
      const isStill = i === 0 || i === 40;
      const [top, bottom] = spanOf(pointsAt(now.swing, figure, ball, t, isStill), t);
      // Between the instants that were looked at, a fiftieth of the picture.
      expect(top).toBeGreaterThan(insets.top - height / 50);
      expect(bottom).toBeLessThan(height);
      expect(spanOf(pointsAt(now.swing, figure, ball, t, true), t)[0]).toBeGreaterThan(highest - height / 50);
    }
  });

  test('the figure stands larger than where the club would have to stay under the words too', () => {
    const t = times[K.address];
    const [top, bottom] = spanOf(pointsAt(now.swing, figure, ball, t, false), t);
    const under = frameSwing(directionOf('free', 0), points[0], width, height, insets);
    expect(framing.at(t).distance).toBeLessThan(under.at(t).distance * 0.85);
    expect((bottom - top) / height).toBeGreaterThan(0.4);
  });
});
