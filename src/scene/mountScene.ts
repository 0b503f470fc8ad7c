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

// What the scene's elements are made of. fiber's <Canvas> would take in all of three for them, of which most is never used.
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
 * A canvas with a renderer for a `<SwingScene>`, on the page or off screen. Throws where the browser gives out no WebGL. What is
 * rendered into it stands there at once.
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
    // A world that places itself anew makes all that stands in it do so too.
    scene: { matrixAutoUpdate: false },
    gl: (defaults) => {
      try {
        const own = new WebGLRenderer({ ...(defaults as WebGLRendererParameters), ...renderer });
        // A shadow is drawn anew when what casts it has moved.
        own.shadowMap.autoUpdate = false;
        // Asking whether a shader compiled makes the page wait for the graphics processor, for each of them in turn.
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
