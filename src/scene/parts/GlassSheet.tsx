import { useRef } from 'react';
import { Glass } from '../setting/glass';
import { useBuilt, usePose, useScene } from './sceneContext';

/** The address shaft plane as a sheet of glass. */
export function GlassSheet() {
  const { theme, lines } = useScene();
  const glass = useBuilt(() => new Glass(theme, lines.glass));
  const drawn = useRef<unknown>(undefined);
  usePose((frame) => {
    if (drawn.current !== frame.glass) glass.draw(frame.glass);
    drawn.current = frame.glass;
  });
  return <mesh geometry={glass.sheet.geometry} material={glass.sheet.material} frustumCulled={false} renderOrder={1} />;
}
