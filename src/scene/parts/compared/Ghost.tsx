import { useRef, useState } from 'react';
import type { Group, Mesh } from 'three';
import { createPlacement, PART, PART_IDS } from '../../../figure/partIds';
import { placeFigure } from '../../../figure/place';
import { heelLiftAt } from '../../../figure/stance';
import { NEAR_THE_EYES } from '../../figure/eyesView';
import { poseGap } from '../../figure/poseGap';
import { fillPartRows, WHOLE_FIGURE } from '../../figure/rigidPartShader';
import { SeeThroughBody, type SeeThroughLook } from '../../figure/seeThroughBody';
import { BrokenShaft, SHAFT_DASHES } from '../../lines/brokenShaft';
import { useBuilt, usePose, useScene } from '../sceneContext';

/** All but what stands near the player's eyes. */
const REST: readonly number[] = PART_IDS.map((id) => PART[id]).filter((part) => !NEAR_THE_EYES.includes(part));

/**
 * The see-through body: the swing that is compared with, at its own time, with its shaft in plum dash-dot-dot. Through the player's
 * eyes it is his own shoulders and chest instead, which would hide hands and ball; where a figure is shown alone in contour, that
 * figure: one body at a time, so that a frame never draws three.
 */
export function Ghost() {
  const { theme, lines, solids, frame } = useScene();
  const [shaft] = useState(() => new BrokenShaft(lines.ghost, SHAFT_DASHES.ghost, theme.ghost));
  const [placement] = useState(createPlacement);
  const [looks] = useState((): Record<'ghost' | 'own' | 'contour', SeeThroughLook> => ({
    contour: { colour: theme.ghost, wash: 0, rim: 0, ink: 1, pen: 2.2 },
    ghost: { colour: theme.ghost, wash: theme.ghostWash, rim: 0.24, ink: 0.9, pen: 1.2 },
    own: { colour: theme.beech[1], wash: 0.1, rim: 0.1, ink: 0.5, pen: 0.9 },
  }));
  const body = useBuilt(() => new SeeThroughBody(theme, frame.size));
  const group = useRef<Group>(null);

  usePose((now, { ghost, pose, alone }) => {
    const geometry = alone ? solids.geometry : solids.coarseGeometry;
    for (const mesh of group.current!.children) (mesh as Mesh).geometry = geometry;
    const isApart = shaft.draw(ghost, pose);
    now.legends.ghost = ghost !== undefined;
    now.legends.ghostGap = ghost ? poseGap(shaft.pose, pose) : 0;
    if (alone === 'contour') {
      group.current!.visible = true;
      body.wear(looks.contour);
      return fillPartRows(body.rows, now.placement, WHOLE_FIGURE);
    }
    const isOwn = now.standpoint === 'eyes';
    group.current!.visible = isOwn || isApart;
    if (!isOwn && !(ghost && isApart)) return;
    body.wear(looks[isOwn ? 'own' : 'ghost']);
    if (isOwn) return fillPartRows(body.rows, now.placement, WHOLE_FIGURE, REST);
    const stance = { ballPoint: now.ball, heelLift: heelLiftAt(ghost!.swing, ghost!.t) };
    placeFigure(now.figure!, shaft.pose, stance, placement);
    fillPartRows(body.rows, placement, WHOLE_FIGURE);
  });
  return (
    <group ref={group} visible={false}>
      {body.materials.map((material, i) => (
        <mesh
          key={material.uuid}
          geometry={solids.coarseGeometry}
          material={material}
          frustumCulled={false}
          renderOrder={4 + i}
        />
      ))}
    </group>
  );
}
