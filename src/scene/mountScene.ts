import { createRoot, extend, type ReconcilerRoot, type RenderProps } from '@react-three/fiber';
import {
  Color,
  CylinderGeometry,
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshStandardMaterial,
  WebGLRenderer,
  type WebGLRendererParameters,
} from 'three';

// The three classes that the scene uses in JSX. fiber's <Canvas> would register, and ship, all of three.
extend({ Color, CylinderGeometry, DirectionalLight, Group, HemisphereLight, Mesh, MeshStandardMaterial });

type AnyCanvas = HTMLCanvasElement | OffscreenCanvas;

export interface MountOptions extends Pick<RenderProps<AnyCanvas>, 'frameloop' | 'dpr' | 'onCreated'> {
  /** css px. */
  readonly width: number;
  readonly height: number;
  readonly renderer: WebGLRendererParameters;
}

/** Near and far plane of every camera, m. */
const PLANES = { near: 0.06, far: 30 } as const;

/**
 * A canvas with a renderer for a `<SwingScene>`, on the page or off screen. Throws if the browser provides no WebGL.
 * Rendering into it is synchronous.
 */
export function mountScene(
  canvas: AnyCanvas,
  { width, height, renderer, ...options }: MountOptions,
): ReconcilerRoot<AnyCanvas> {
  let refused: { readonly error: unknown } | undefined;
  const root = createRoot(canvas);
  const configured = root.configure({
    ...options,
    size: { width, height, top: 0, left: 0 },
    // Paper and ink keep the colours of the page.
    flat: true,
    shadows: 'variance',
    camera: PLANES,
    // If the scene updated its matrix, three would update those of everything in it.
    scene: { matrixAutoUpdate: false },
    gl: (defaults) => {
      try {
        const own = new WebGLRenderer({ ...(defaults as WebGLRendererParameters), ...renderer });
        // The shadow is drawn again only when what casts it has moved.
        own.shadowMap.autoUpdate = false;
        // Checking a shader for errors makes the page wait until the graphics processor has compiled it.
        own.debug.checkShaderErrors = import.meta.env.DEV;
        return own;
      } catch (error) {
        refused = { error };
        throw error;
      }
    },
  });
  configured.catch(() => undefined);
  if (refused) throw refused.error;
  return root;
}
