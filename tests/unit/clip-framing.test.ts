import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/export/clip/clipLayout';
import { directionOf } from '../../src/export/clip/clipStage';
import { pixelSize, type Shape } from '../../src/export/clip/formats';
import { pointsUntil } from '../../src/export/clip/framingBounds';
import { drawStoryboard, frameCount, momentAt, type CameraId } from '../../src/export/clip/storyboard';
import { takeSnapshot } from '../../src/export/task/exportSnapshot';
import { createFigure } from '../../src/figure/figure';
import { placeBall } from '../../src/figure/stance';
import { AT, createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { drawnPose, swingPose, type Swing } from '../../src/reading/swing';
import { pointCamera } from '../../src/scene/camera/camera';
import { framePoints } from '../../src/scene/camera/framePoints';
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
const points = takes.map(({ swing }) => framePoints(swing, figure, ball, ball[2]));
const INSETS = { left: 0, right: 0, top: 0, bottom: 0 };
const pose = createPose();

/** Where the club's head and the hands are on the picture, by three's own projection: -1 to 1 both ways. */
function seenAt(camera: PerspectiveCamera, swing: Swing, t: number): Vector3[] {
  drawnPose(swing, t, pose);
  return [AT.head, AT.leadGrip].map((at) => new Vector3(pose[at], pose[at + 1], pose[at + 2]).project(camera));
}

describe.each(['16:9', '9:16', '1:1'] satisfies Shape[])('in a clip of %s', (shape) => {
  test.each(['downTheLine', 'faceOn', 'overhead', 'orbit'] satisfies CameraId[])(
    'club and hands stay in the picture from address to finish, and through the slow downswing (%s)',
    (camera) => {
      const storyboard = drawStoryboard(
        { arrangement: 'sideBySide', wholeSwing: camera, slowMotion: camera, titleCard: false, endCard: false },
        takes,
      );
      const held = new Map(
        storyboard.shots.map((shot) => [shot, pointsUntil(points, Math.max(...shot.legs.flatMap(({ to }) => to)))]),
      );
      const lens = new PerspectiveCamera();
      for (let frame = 0; frame < frameCount(storyboard, 25); frame++) {
        const { shot, share, times } = momentAt(storyboard, frame / 25);
        const { picture } = layOut(pixelSize(shape, '720p'), 2, shot.kind === 'slow').cells[0];
        lens.aspect = picture.width / picture.height;
        const view = fitView(directionOf(camera, share), held.get(shot)!, picture.width, picture.height, INSETS);
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

test('the picture is no wider than it has to be: until the ball it holds less than until the finish', () => {
  const { times } = now.swing.curves;
  const until = (t: number): number => pointsUntil(points, t).length;
  expect(until(-Infinity)).toBeLessThan(until(times[K.exit]));
  expect(until(times[K.exit])).toBeLessThan(until(times[K.finish]));
});
