import { createRoot } from '@react-three/fiber';
import type { ReactNode } from 'react';
import type { Camera, Scene } from 'three';
import { vi } from 'vitest';
// Names three's classes to fiber.
import '../../src/scene/mountScene';

/** Fences of a graphics processor that has finished everything, unless told otherwise. */
export const idleContext = {
  SYNC_GPU_COMMANDS_COMPLETE: 1,
  SYNC_STATUS: 2,
  UNSIGNALED: 3,
  fenceSync: () => ({}),
  getSyncParameter: (): number => 4,
  deleteSync: () => undefined,
  flush: () => undefined,
};

/** A canvas as far as fiber and camera-controls need one: it hears events and has a size. */
export class PlainCanvas extends EventTarget {
  readonly style = {};
  readonly ownerDocument = new EventTarget();
  constructor(
    readonly width: number,
    readonly height: number,
  ) {
    super();
  }
  setAttribute = (): void => undefined;
  removeAttribute = (): void => undefined;
  getBoundingClientRect = () => ({ left: 0, top: 0, x: 0, y: 0, width: this.width, height: this.height });
}

interface MountOptions {
  readonly frameloop?: 'never' | 'demand';
  readonly width?: number;
  readonly height?: number;
  readonly context?: typeof idleContext;
}

/** Mounts fiber elements on a renderer that draws nothing and remembers how often it was asked to. */
export function mount(
  children: ReactNode,
  { frameloop = 'never', width = 800, height = 600, context = idleContext }: MountOptions = {},
) {
  const canvas = new PlainCanvas(width, height);
  const render = vi.fn<(scene: Scene, camera: Camera) => void>();
  const gl = {
    render,
    domElement: canvas,
    shadowMap: {} as { needsUpdate?: boolean },
    xr: { addEventListener: () => undefined, removeEventListener: () => undefined },
    setPixelRatio: () => undefined,
    setSize: () => undefined,
    getContext: () => context,
  };
  const root = createRoot(canvas as unknown as HTMLCanvasElement);
  void root.configure({
    frameloop,
    dpr: 1,
    size: { width, height, top: 0, left: 0 },
    gl: () => gl,
  });
  const store = root.render(children);
  return {
    canvas,
    gl,
    render,
    root,
    scene: store.getState().scene,
    camera: store.getState().camera,
    setSize: store.getState().setSize,
    /** One frame by hand, at a time in s. */
    advance: (time: number): void => store.getState().advance(time),
  };
}
