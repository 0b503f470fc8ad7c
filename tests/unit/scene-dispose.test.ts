import {
  DirectionalLight,
  EventDispatcher,
  InstancedMesh,
  Mesh,
  Vector2,
  type BufferGeometry,
  type LightShadow,
  type Material,
} from 'three';
import { expect, test, vi } from 'vitest';
import { SwingScene } from '../../src/scene/swingScene';
import { SCENE_TOKENS, themeOf, type SceneTokens } from '../../src/scene/setting/theme';
import { current, currentPose, setPlayer } from '../../src/store';

/** What says that it was given back: by an event, or, for a shadow's picture, by nothing but the call. */
type Held = EventDispatcher<{ dispose: object }> | LightShadow;
const tokens = Object.fromEntries(SCENE_TOKENS.map((name) => [name, '#336677'])) as SceneTokens;

/** All that three puts on the graphics card for a scene, and takes back only when told. */
function heldBy(scene: SwingScene): Set<Held> {
  const held = new Set<Held>();
  scene.root.traverse((node) => {
    if (node instanceof InstancedMesh) held.add(node);
    if (node instanceof DirectionalLight && node.castShadow) held.add(node.shadow);
    if (!(node instanceof Mesh)) return;
    const { geometry, material, customDepthMaterial } = node as Mesh<BufferGeometry, Material | Material[]>;
    const all = [geometry, ...[material].flat(), ...(customDepthMaterial ? [customDepthMaterial] : [])];
    for (const one of all) held.add(one);
  });
  return held;
}

/** Of what a scene held, what has not been given back yet. */
function watch(held: ReadonlySet<Held>): ReadonlySet<Held> {
  const left = new Set(held);
  for (const one of held) {
    const giveBack = (): unknown => left.delete(one);
    if (one instanceof EventDispatcher) one.addEventListener('dispose', giveBack);
    else vi.spyOn(one, 'dispose').mockImplementation(giveBack);
  }
  return left;
}

function show(scene: SwingScene): void {
  const { body, club, player, swing, referenceSwing } = current();
  const reference = { swing: referenceSwing, t: 0 };
  scene.show({
    body,
    club,
    handed: player.handed,
    swing,
    referenceSwing,
    t: 0,
    pose: currentPose(),
    throughEyes: false,
    reference,
  });
}

test('the picture of a board that is taken away leaves nothing on the graphics card', () => {
  const scene = new SwingScene(themeOf('light', tokens), new Vector2(800, 600));
  show(scene);
  const held = heldBy(scene);
  const left = watch(held);
  expect(held.size).toBeGreaterThan(12);
  scene.dispose();
  expect([...left].map(({ constructor }) => constructor.name)).toEqual([]);
});

test('another player takes the place of the last one, who leaves nothing on the graphics card', () => {
  const scene = new SwingScene(themeOf('light', tokens), new Vector2(800, 600));
  show(scene);
  const before = heldBy(scene);
  const left = watch(before);
  setPlayer({ statureM: 1.9, handed: 'right' });
  show(scene);
  const after = heldBy(scene);
  expect(after.size).toBe(before.size);
  const gone = [...before].filter((one) => !after.has(one));
  // A geometry, its surface, its ink and the depth of its shadow.
  expect(gone.length).toBe(4);
  expect(gone.filter((one) => left.has(one))).toEqual([]);
});
