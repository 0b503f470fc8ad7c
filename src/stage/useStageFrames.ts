import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef, useState, type RefObject } from 'react';
import type { Camera } from 'three';
import { isAnswerFirst, subscribe } from '../store';
import { cameraStore } from './camera/cameraStore';
import type { DeskFrame } from './deskFrame';
import { pinStore } from './pins/pinStore';
import { GpuBackpressure } from './gpuBackpressure';

/**
 * What happens in a frame, in the order of fiber's `useFrame` priorities. The parts of the scene pose themselves at 0; drei's camera
 * controls move the camera at -1. Anything above 0 takes the drawing over from fiber.
 */
export const FRAME_ORDER = { hold: -5, show: -4, aim: -3, look: -0.5, draw: 1, drawn: 2 } as const;

/**
 * When a frame is drawn, and when it is held back. Frames are asked for here: on a change of the desk, of the view that is wanted, or
 * of what is mounted. fiber asks for its own when the canvas changes, drei while the camera moves. Otherwise the picture sleeps.
 * `onPosed` comes when everything stands, right before the picture is drawn. Answers whether the current frame is held back.
 */
export function useStageFrames(frame: DeskFrame, onPosed: (camera: Camera) => void): RefObject<boolean> {
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  const isHeld = useRef(false);
  const [backpressure] = useState(() => new GpuBackpressure(gl.getContext() as WebGL2RenderingContext));

  useEffect(() => {
    const ask = (): void => invalidate();
    const restore = (): void => {
      gl.shadowMap.needsUpdate = true;
      ask();
    };
    const ends = [subscribe(ask), cameraStore.subscribe(ask), pinStore.subscribe(ask)];
    gl.domElement.addEventListener('webglcontextrestored', restore);
    return () => {
      gl.domElement.removeEventListener('webglcontextrestored', restore);
      for (const end of ends) end();
    };
  }, [gl, invalidate]);
  // What was mounted just now has not been drawn.
  useEffect(() => invalidate());

  useFrame(() => {
    isHeld.current = backpressure.isBusy() || isAnswerFirst();
  }, FRAME_ORDER.hold);
  useFrame(({ size }) => {
    if (isHeld.current) return;
    frame.size.set(size.width, size.height);
    frame.update();
  }, FRAME_ORDER.show);
  useFrame(({ scene, camera }) => {
    if (isHeld.current) {
      invalidate();
      return;
    }
    onPosed(camera);
    gl.render(scene, camera);
    backpressure.mark();
  }, FRAME_ORDER.draw);
  return isHeld;
}
