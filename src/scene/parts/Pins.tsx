import { useRef, useState } from 'react';
import type { Mesh } from 'three';
import { createPins, onShoulderLine, placePins, SHOULDER_LINE } from '../figure/jointPins';
import { PinBatch } from '../lines/pinBatch';
import { useBuilt, usePose, useScene } from './sceneContext';

/** Pens of the shoulder line, css px: brass in ink. */
const PEN = { ink: 4.4, brass: 2.4 } as const;

/** Brass pins at the lead wrist, the chest and the trail end of the shoulder line, where a picture offers them. */
export function Pins() {
  const { theme, lines, frame } = useScene();
  const batch = useBuilt(() => new PinBatch(theme, frame.size));
  const [pins] = useState(createPins);
  const [ends] = useState(() => [new Float64Array(3), new Float64Array(3)] as const);
  const mesh = useRef<Mesh>(null);
  usePose(({ figure, placement, standpoint }, { pins: offered, pose }) => {
    const isShown = offered !== undefined && standpoint === 'outside';
    mesh.current!.visible = isShown;
    const line = lines.shoulderLine;
    line.clear();
    if (isShown) {
      const { k } = figure!.measures;
      placePins(figure!, placement, pose, pins);
      batch.put(pins, offered.held);
      const [lead, trail] = ends;
      onShoulderLine(pose, SHOULDER_LINE.lead * k, lead);
      onShoulderLine(pose, SHOULDER_LINE.trail * k, trail);
      line.line(lead, trail, theme.contour, PEN.ink);
      line.line(lead, trail, theme.brass, PEN.brass);
    }
    line.commit();
  });
  return (
    <mesh
      ref={mesh}
      visible={false}
      geometry={batch.geometry}
      material={batch.material}
      frustumCulled={false}
      renderOrder={9}
    />
  );
}
