import { useRef } from 'react';
import type { Mesh } from 'three';
import { Traces as TraceLines } from '../lines/trace';
import { useBuilt, usePose, useScene } from './sceneContext';

/** Where head and hands have been from the top to impact: redrawn with the swing, not with time. */
export function Traces() {
  const { theme, frame, lines } = useScene();
  const traces = useBuilt(() => new TraceLines(theme, frame.size, lines.traces, frame.headTrace));
  const drawn = useRef<unknown>(undefined);
  const ribbon = useRef<Mesh>(null);
  usePose((_, { swing, isTraceless }) => {
    ribbon.current!.visible = !isTraceless;
    const wanted = isTraceless ? undefined : swing;
    if (drawn.current === wanted) return;
    if (wanted) traces.draw(wanted);
    else traces.hide();
    drawn.current = wanted;
  });
  const { geometry, material } = traces.ribbon;
  return <mesh ref={ribbon} geometry={geometry} material={material} frustumCulled={false} />;
}
