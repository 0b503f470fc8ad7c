import { Mesh, ShaderMaterial, Vector3, type Scene } from 'three';
import { expect, test } from 'vitest';
import { shownOf, type Staging } from '../../src/export/clip/clipStage';
import { derivePlain, takeSnapshot } from '../../src/export/task/exportSnapshot';
import { createPose } from '../../src/model/chain';
import { K } from '../../src/model/keys';
import { swingPose } from '../../src/reading/swing';
import { BALL_PART } from '../../src/scene/figure/solids';
import { desk, put, setMovement } from '../../src/store';
import { mountSwing } from './mountedSwing';

setMovement('leadWristFlexion', -20);
const subject = takeSnapshot(desk.getState(), derivePlain(desk.getState()), 'reference');
const { derived, now, after } = subject;
const grey = '#808080';
const tokens = { paper: grey, ink: grey, reference: grey, ghost: grey, glass: grey };
const staging: Staging = {
  body: derived.body,
  club: derived.club,
  handed: 'right',
  referenceSwing: derived.referenceSwing,
  board: 'light',
  tokens,
};

/** The card counts in single precision (IEEE 754 binary32): two places within 2 m of the origin are each rounded by at most 2^-24 m, so their distance by 2^-23. */
const ROUNDED = 2 ** -23;

/** Where the graphics card is told to draw the ball: the last column of its three rows. */
function ballOnCard(scene: Scene): Vector3 {
  let value: Float32Array | undefined;
  scene.traverse((one) => {
    if (one instanceof Mesh && one.material instanceof ShaderMaterial)
      value ??= (one.material.uniforms['partRows'] as { value: Float32Array } | undefined)?.value;
  });
  const [x, y, z] = [0, 1, 2].map((row) => value![BALL_PART * 12 + row * 4 + 3]);
  return new Vector3(x, y, z);
}

/** Where the ball lies in the scene of a clip, m. */
function ballAt(take: typeof now, t: number): Vector3 {
  const { scene, show, root } = mountSwing();
  const pose = createPose();
  swingPose(take.swing, t, pose);
  show(shownOf(staging, take, undefined, t, pose));
  const place = ballOnCard(scene);
  root.unmount();
  return place;
}

test('in a clip the ball lies still until it is struck, and is on its way right after', () => {
  for (const take of [now, after]) {
    const { t, track } = take.struck!;
    const { times } = take.swing.curves;
    const lies = ballAt(take, times[K.address]);
    expect(ballAt(take, t - 0.001)).toEqual(lies);
    // 20 ms after impact, in the player's own time: where its computed track has it.
    const later = ballAt(take, t + 0.02 / take.swing.tempo);
    const flown = [later.x - lies.x, later.y - lies.y, later.z - lies.z];
    const step = track[4];
    const share = 0.02 / step;
    flown.forEach((way, axis) => expect(Math.abs(way - track[4 + 1 + axis] * share)).toBeLessThan(ROUNDED));
    expect(flown[0]).toBeGreaterThan(0.4);
    expect(flown[1]).toBeGreaterThan(0.05);
    // By the finish it has left the picture.
    expect(ballAt(take, times[K.finish]).x - lies.x).toBeGreaterThan(7);
  }
});

test('a swing doubled on the desk is filmed as it is', () => {
  put({ session: { ...desk.getState().session, exaggerate: true } });
  const doubled = takeSnapshot(desk.getState(), derivePlain(desk.getState()), 'reference');
  put({ session: { ...desk.getState().session, exaggerate: false } });
  expect(doubled.derived.exaggerated).toBe(false);
  expect(doubled.now.dialled).toBe(now.dialled);
  expect(doubled.now.swing.movements).toEqual(now.swing.movements);
});
