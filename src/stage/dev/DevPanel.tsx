import { useThree } from '@react-three/fiber';
import { folder, useControls } from 'leva';
import { useEffect } from 'react';
import { MeshPhysicalMaterial, type Light, type Mesh, type PerspectiveCamera, type Scene } from 'three';
import { SURFACES } from '../../scene/figure/solids';

const LIGHTS = ['key', 'fill', 'rim', 'sky'] as const;
const WOODS = ['beech', 'walnut'] as const;

const lightIn = (scene: Scene, name: string): Light => scene.getObjectByName(name) as Light;

/** The material of everything solid: see `solidMaterial`. */
function materialIn(scene: Scene): MeshPhysicalMaterial {
  let found: MeshPhysicalMaterial | undefined;
  scene.traverse((node) => {
    const { material } = node as Mesh;
    if (material instanceof MeshPhysicalMaterial) found = material;
  });
  if (!found) throw new Error('The scene has no material of the solids.');
  return found;
}

/** Its four numbers a surface: colour and roughness. */
const finishIn = (scene: Scene): Float32Array => materialIn(scene).userData['finish'] as Float32Array;
const roughnessAt = (wood: (typeof WOODS)[number]): number => 4 * SURFACES.indexOf(wood) + 3;

/** What the panel turns, as the scene has it now. Intensities as three counts them, the field of view vertical, in degrees. */
function readScene(scene: Scene, camera: PerspectiveCamera): Record<string, number> {
  const { clearcoat, clearcoatRoughness } = materialIn(scene);
  return {
    ...Object.fromEntries(LIGHTS.map((name) => [name, lightIn(scene, name).intensity])),
    ...Object.fromEntries(WOODS.map((wood) => [wood, finishIn(scene)[roughnessAt(wood)]])),
    clearcoat,
    clearcoatRoughness,
    fieldOfView: camera.fov,
  };
}

interface Props {
  /** Another board brings a scene with its own lights. */
  readonly board: string;
}

/**
 * Turns the stage's lights, the figure's material and the camera's field of view live, to try values out before they are written into
 * `theme.ts` and `surfaces.ts`. Nothing is kept. Only in development, with `?dev` in the address.
 */
export default function DevPanel({ board }: Props) {
  const scene = useThree((state) => state.scene);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const invalidate = useThree((state) => state.invalidate);

  const [, set] = useControls(() => {
    const now = readScene(scene, camera);
    const turn = (name: string, max: number, write: (value: number) => void, min = 0) => ({
      [name]: {
        value: now[name],
        min,
        max,
        step: 0.01,
        onChange: (value: number) => {
          write(value);
          invalidate();
        },
      },
    });
    const lights = LIGHTS.map((name) => turn(name, 5, (value) => (lightIn(scene, name).intensity = value)));
    const woods = WOODS.map((wood) => turn(wood, 1, (value) => (finishIn(scene)[roughnessAt(wood)] = value)));
    return {
      'Light, intensity': folder(Object.assign({}, ...lights) as ReturnType<typeof turn>),
      'Wood, roughness': folder(Object.assign({}, ...woods) as ReturnType<typeof turn>),
      Lacquer: folder({
        ...turn('clearcoat', 1, (value) => (materialIn(scene).clearcoat = value)),
        ...turn('clearcoatRoughness', 1, (value) => (materialIn(scene).clearcoatRoughness = value)),
      }),
      Camera: folder(
        turn(
          'fieldOfView',
          75,
          (value) => {
            camera.fov = value;
            camera.updateProjectionMatrix();
          },
          10,
        ),
      ),
    };
  });
  useEffect(() => set(readScene(scene, camera)), [board, scene, camera, set]);
  return null;
}
