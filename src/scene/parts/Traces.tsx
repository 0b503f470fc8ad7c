import { useRef } from 'react';
import { Traces as TraceLines } from '../lines/trace';
import { useBuilt, usePose, useScene } from './sceneContext';

/** Where head and hands have been from the top to impact: redrawn with the swing, not with time. */
export function Traces() {
  const { theme, frame, lines } = useScene();
  const traces = useBuilt(() => new TraceLines(theme, frame.size, lines.traces, frame.headTrace));
  const drawn = useRef<unknown>(undefined);
  usePose((_, { swing }) => {
    if (drawn.current !== swing) traces.draw(swing);
    drawn.current = swing;
  });
  const { geometry, material } = traces.ribbon;
  return <mesh geometry={geometry} material={material} frustumCulled={false} />;
}
