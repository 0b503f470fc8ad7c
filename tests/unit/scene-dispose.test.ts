import {
  DirectionalLight,
  EventDispatcher,
  InstancedMesh,
  Mesh,
  type BufferGeometry,
  type LightShadow,
  type Material,
  type Scene,
} from 'three';
import { expect, test, vi } from 'vitest';
import { current, currentPose, setPlayer } from '../../src/store';
import { startEffects } from '../../src/store/effects/startEffects';
import { mountSwing } from './mountedSwing';
import './searchHere';

startEffects();

/** What says that it was given back: by an event, or, for a shadow's picture, by nothing but the call. */
type Held = EventDispatcher<{ dispose: object }> | LightShadow;

/** All that three puts on the graphics card for a scene, and takes back only when told. */
function heldBy(scene: Scene): Set<Held> {
  const held = new Set<Held>();
  scene.traverse((node) => {
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

function showDesk({ show }: Pick<ReturnType<typeof mountSwing>, 'show'>): void {
  const { body, club, player, swing, referenceSwing } = current();
  const reference = { swing: referenceSwing, t: 0 };
  show({
    body,
    club,
    handed: player.handed,
    swing,
    referenceSwing,
    t: 0,
    pose: currentPose(),
    reference,
  });
}

test('the picture of a board that is taken away leaves nothing on the graphics card', async () => {
  const mounted = mountSwing();
  showDesk(mounted);
  const held = heldBy(mounted.scene);
  const left = watch(held);
  expect(held.size).toBeGreaterThan(12);
  mounted.root.render(null);
  await vi.waitFor(() => expect([...left].map(({ constructor }) => constructor.name)).toEqual([]));
});

test('another player takes the place of the last one, who leaves nothing on the graphics card', () => {
  const mounted = mountSwing();
  showDesk(mounted);
  const before = heldBy(mounted.scene);
  const left = watch(before);
  setPlayer({ statureM: 1.9, handed: 'right' });
  showDesk(mounted);
  const after = heldBy(mounted.scene);
  expect(after.size).toBe(before.size);
  const gone = [...before].filter((one) => !after.has(one));
  // Two geometries over the same numbers, fine and coarse: all materials serve whoever stands there.
  expect(gone.length).toBe(2);
  expect(gone.filter((one) => left.has(one))).toEqual([]);
});
