import { lazy, Suspense, useEffect, useReducer, useRef, useState } from 'react';
import type { PerspectiveCamera } from 'three';
import { SwingScene } from '../scene/parts/SwingScene';
import type { Theme } from '../scene/setting/theme';
import { cameraStore } from './camera/cameraStore';
import { FirstLook } from './camera/FirstLook';
import { Captions } from './captions';
import { DeskFrame } from './deskFrame';
import { PinHandles } from './pins/PinHandles';
import { useStageFrames } from './useStageFrames';
import { loadingChunk } from '../store/react/chunkLoadError';

/** The controls that turn the picture come after the first one. */
const StageCamera = lazy(loadingChunk(async () => ({ default: (await import('./camera/StageCamera')).StageCamera })));

/** Sliders for light, material and camera: see `DevPanel`. Not in a build. */
const DevPanel =
  import.meta.env.DEV && typeof location === 'object' && new URLSearchParams(location.search).has('dev')
    ? lazy(() => import('./dev/DevPanel'))
    : undefined;

interface Props {
  readonly theme: Theme;
  readonly board: string;
  readonly overlay: HTMLElement;
  /** What has the focus while keys turn the picture. */
  readonly keyed: HTMLElement;
}

/** The desk's swing on the stage: scene, camera and captions follow the desk from frame to frame. */
export function DeskScene({ theme, board, overlay, keyed }: Props) {
  const [frame] = useState(() => new DeskFrame());
  const [isDrawn, setDrawn] = useReducer(() => true, false);
  const captions = useRef<Captions>(null);
  useEffect(() => {
    const own = new Captions(overlay);
    captions.current = own;
    return () => own.dispose();
  }, [overlay]);
  const isHeld = useStageFrames(frame, (camera) =>
    captions.current?.place(camera as PerspectiveCamera, frame, cameraStore.getState().insets),
  );
  const first = <FirstLook frame={frame} isHeld={isHeld} onDrawn={setDrawn} />;
  return (
    <>
      <SwingScene key={board} frame={frame} theme={theme} />
      <PinHandles frame={frame} />
      {isDrawn ? (
        <Suspense fallback={first}>
          <StageCamera frame={frame} keyed={keyed} isHeld={isHeld} />
        </Suspense>
      ) : (
        first
      )}
      {DevPanel && (
        <Suspense>
          <DevPanel board={board} />
        </Suspense>
      )}
    </>
  );
}
