import { useFrame } from '@react-three/fiber';
import { createContext, useContext, useEffect, useRef, useState } from 'react';
import type { SolidBatch } from '../figure/solidBatch';
import type { SceneLines } from '../lines/sceneLines';
import type { SceneFrame, SwingShown } from '../sceneFrame';
import type { Theme } from '../setting/theme';

/** What the parts of a scene share. One for each mounted `<SwingScene>`, the same for as long as it stands. */
export interface SceneShared {
  readonly frame: SceneFrame;
  readonly theme: Theme;
  readonly lines: SceneLines;
  readonly solids: SolidBatch;
}

export const SceneContext = createContext<SceneShared | undefined>(undefined);

/** What this scene shares with its parts. */
export function useScene(): SceneShared {
  const shared = useContext(SceneContext);
  if (!shared) throw new Error('A part of the scene stands outside of <SwingScene>.');
  return shared;
}

/** Builds something once and disposes of it when the component unmounts. */
export function useBuilt<T extends { dispose(): void }>(build: () => T): T {
  const [built] = useState(build);
  useEffect(() => () => built.dispose(), [built]);
  return built;
}

/** Poses a part from the frame, only when the frame shows something new. */
export function usePose(pose: (frame: SceneFrame, shown: SwingShown) => void): void {
  const { frame } = useScene();
  const posed = useRef(0);
  useFrame(() => {
    if (!frame.shown || posed.current === frame.version) return;
    posed.current = frame.version;
    pose(frame, frame.shown);
  });
}
