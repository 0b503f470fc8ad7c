import { useFrame } from '@react-three/fiber';
import { useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import type { Group, Object3D } from 'three';
import { SolidBatch } from '../figure/solidBatch';
import { createSceneLines } from '../lines/sceneLines';
import type { SceneFrame } from '../sceneFrame';
import type { Theme } from '../setting/theme';
import { Ball } from './Ball';
import { Club } from './Club';
import { Fan } from './compared/Fan';
import { Ghost } from './compared/Ghost';
import { GlassSheet } from './GlassSheet';
import { Ground } from './Ground';
import { LayFigure } from './LayFigure';
import { Lights } from './Lights';
import { Paper } from './Paper';
import { Pins } from './Pins';
import { Reference } from './compared/Reference';
import { SceneContext, useBuilt, usePose } from './sceneContext';
import { Traces } from './Traces';

interface Props {
  /** What is shown, frame by frame. Its owner calls `show` before each frame that differs. */
  readonly frame: SceneFrame;
  /** Read once: give the scene another `key` with another theme. */
  readonly theme: Theme;
}

/** A swing with ground, light and traces. The stage and the clips mount this same scene, each on a canvas of its own. */
export function SwingScene({ frame, theme }: Props) {
  const lines = useState(() => createSceneLines(frame.size))[0];
  const solids = useBuilt(() => new SolidBatch(theme, frame.size));
  useBuilt(() => lines.batch);
  const [shared] = useState({ frame, theme, lines, solids });
  return (
    <SceneContext value={shared}>
      <color attach="background" args={[theme.paper]} />
      <World>
        <Lights />
        <LayFigure />
        <Club />
        <Ball />
        <Ghost />
        <Setting>
          <Paper />
          <Ground />
          <GlassSheet />
          <Traces />
          <Reference />
          <Fan />
          <Pins />
          <mesh geometry={lines.batch.geometry} material={lines.batch.material} frustumCulled={false} renderOrder={3} />
        </Setting>
      </World>
    </SceneContext>
  );
}

/** What is round the figure: left out where it is shown alone. */
function Setting({ children }: { readonly children: ReactNode }) {
  const group = useRef<Group>(null);
  usePose((_, { alone }) => void (group.current!.visible = !alone));
  return <group ref={group}>{children}</group>;
}

/** The solids move in their shaders and everything else stays, so three need not update matrices in every frame. */
function standStill(root: Object3D): void {
  root.traverse((node) => {
    node.updateMatrix();
    node.matrixAutoUpdate = false;
  });
}

/**
 * The scene of a left-handed player is mirrored as a whole. The shadow is drawn again when something has moved, not when
 * the camera turns.
 */
function World({ children }: { readonly children: ReactNode }) {
  const root = useRef<Group>(null);
  const hasMoved = useRef(true);
  useLayoutEffect(() => standStill(root.current!), []);
  usePose(({ mirror }) => {
    hasMoved.current = true;
    const group = root.current!;
    if (group.scale.z === mirror) return;
    group.scale.z = mirror;
    group.updateMatrix();
  });
  useFrame(({ gl }) => {
    if (hasMoved.current) gl.shadowMap.needsUpdate = true;
    hasMoved.current = false;
  });
  return <group ref={root}>{children}</group>;
}
