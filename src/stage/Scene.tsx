import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef, type RefObject } from 'react';
import type { PerspectiveCamera } from 'three';
import { desk, setView, subscribe } from '../store';
import { Captions } from './captions';
import { lens, turnToward } from './lens';
import { holdCamera } from './orbit';
import { Pace } from './pace';
import { Stagehand } from './stagehand';

const isStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** The only component that asks for frames: on a change of the desk or of the camera. Between changes the canvas sleeps. */
function Wake() {
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    const ends = [
      subscribe(({ session }, before) => {
        if (session.viewAsked !== before.session.viewAsked) turnToward(session.view, performance.now(), isStill());
        invalidate();
      }),
      lens.subscribe(() => invalidate()),
    ];
    turnToward(desk.getState().session.view, performance.now(), true);
    invalidate();
    return () => ends.forEach((end) => end());
  }, [invalidate]);
  return null;
}

/** Inside the canvas: hands each frame to the stagehand. */
export function Scene({
  overlay,
  keyed,
}: {
  overlay: RefObject<HTMLElement | null>;
  keyed: RefObject<HTMLElement | null>;
}) {
  const gl = useThree((state) => state.gl);
  const scene = useThree((state) => state.scene);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const hand = useRef<Stagehand | null>(null);
  const pace = useMemo(() => new Pace(gl.getContext() as WebGL2RenderingContext), [gl]);

  useEffect(() => {
    const canvas = gl.domElement;
    const own = new Stagehand(gl, scene, camera, overlay.current ? new Captions(overlay.current) : undefined);
    hand.current = own;
    const free = (): void => {
      if (desk.getState().session.view !== 'free') setView('free');
    };
    const letGo = holdCamera(canvas, keyed.current ?? canvas, () => own.mirror, free);
    const restore = (): void => {
      own.restore();
      lens.setState({ insets: { ...lens.getState().insets } });
    };
    canvas.addEventListener('webglcontextrestored', restore);
    return () => {
      letGo();
      canvas.removeEventListener('webglcontextrestored', restore);
      own.dispose();
      hand.current = null;
    };
  }, [gl, scene, camera, keyed, overlay]);

  // A priority takes the drawing over from the canvas.
  useFrame(({ size, invalidate }) => {
    if (!hand.current) return;
    if (pace.isBusy()) {
      invalidate();
      return;
    }
    hand.current.frame(performance.now(), size.width, size.height);
    gl.render(scene, camera);
    pace.mark();
  }, 1);
  return <Wake />;
}
