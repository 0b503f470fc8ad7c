import { useRef } from 'react';
import type { Mesh } from 'three';
import { HIDDEN } from '../figure/eyesView';
import { BODY_PARTS, fillPartRows } from '../figure/rigidPartShader';
import { usePose, useScene } from './sceneContext';

/** The wooden figure. Its two meshes draw the whole batch of solids, so club and ball are in them: see `SolidBatch`. */
export function LayFigure() {
  const { solids } = useScene();
  const surfaces = useRef<Mesh>(null);
  const contour = useRef<Mesh>(null);
  usePose(({ figure, placement, standpoint }, { alone }) => {
    for (const mesh of [surfaces, contour]) mesh.current!.visible = alone !== 'contour';
    solids.build(figure!, [surfaces.current, contour.current]);
    fillPartRows(solids.rows, placement, BODY_PARTS, HIDDEN[standpoint]);
  });
  return (
    <>
      <mesh
        ref={surfaces}
        geometry={solids.geometry}
        material={solids.surface}
        customDepthMaterial={solids.depth}
        frustumCulled={false}
        castShadow
        receiveShadow
        onBeforeShadow={solids.beforeShadow}
        onAfterShadow={solids.afterShadow}
      />
      <mesh ref={contour} geometry={solids.geometry} material={solids.ink} frustumCulled={false} />
    </>
  );
}
