import { useStore, useThree } from '@react-three/fiber';
import { useEffect, useRef, type RefObject } from 'react';
import type { PerspectiveCamera } from 'three';
import { desk, setView, subscribe } from '../store';
import { Captions } from './captions';
import { RenderScheduler } from './renderScheduler';
import { cameraStore, turnToward } from './cameraStore';
import { holdCamera } from './cameraControls';
import { GpuBackpressure } from './gpuBackpressure';
import { StageController } from './stageController';

const isStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

interface Props {
  readonly overlay: RefObject<HTMLElement | null>;
  readonly keyed: RefObject<HTMLElement | null>;
}

/**
 * Inside the canvas: hands each frame to the stagehand. Frames are asked for here alone, on a change of the desk, of the camera or of
 * the canvas; between changes it sleeps.
 */
export function Scene({ overlay, keyed }: Props) {
  const gl = useThree((state) => state.gl);
  const scene = useThree((state) => state.scene);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const canvas = useStore();
  const hand = useRef<StageController | null>(null);

  useEffect(() => {
    const { domElement } = gl;
    const own = new StageController(gl, scene, camera, overlay.current ? new Captions(overlay.current) : undefined);
    hand.current = own;
    const free = (): void => {
      if (desk.getState().session.view !== 'free') setView('free');
    };
    const letGo = holdCamera(domElement, keyed.current ?? domElement, () => own.mirror, free);
    const restore = (): void => {
      own.restore();
      cameraStore.setState({ insets: { ...cameraStore.getState().insets } });
    };
    domElement.addEventListener('webglcontextrestored', restore);
    return () => {
      letGo();
      domElement.removeEventListener('webglcontextrestored', restore);
      own.dispose();
      hand.current = null;
    };
  }, [gl, scene, camera, keyed, overlay]);

  useEffect(() => {
    const pace = new GpuBackpressure(gl.getContext() as WebGL2RenderingContext);
    const frames = new RenderScheduler(() => {
      if (pace.isBusy()) return false;
      const { width, height } = canvas.getState().size;
      hand.current?.frame(performance.now(), width, height);
      gl.render(scene, camera);
      pace.mark();
      return true;
    });
    const ask = (): void => frames.ask();
    const ends = [
      subscribe(({ session }, before) => {
        if (session.viewAsked !== before.session.viewAsked) turnToward(session.view, performance.now(), isStill());
        ask();
      }),
      cameraStore.subscribe(ask),
      // Of another size it is empty.
      canvas.subscribe(ask),
    ];
    turnToward(desk.getState().session.view, performance.now(), true);
    ask();
    return () => {
      ends.forEach((end) => end());
      frames.cancel();
    };
  }, [canvas, gl, scene, camera]);
  return null;
}
