import { useFrame } from '@react-three/fiber';
import { useState, type RefObject } from 'react';
import type { PerspectiveCamera } from 'three';
import { pointCamera } from '../../scene/camera/camera';
import type { SceneFrame } from '../../scene/sceneFrame';
import { desk, stagePicture } from '../../store';
import { FRAME_ORDER } from '../useStageFrames';
import { CameraGoal } from './cameraGoal';
import { cameraStore } from './cameraStore';
import { framedTime } from './framedTime';

interface Props {
  readonly frame: SceneFrame;
  /** Whether this frame will not be drawn. */
  readonly isHeld: RefObject<boolean>;
  /** After the first picture. */
  readonly onDrawn: () => void;
}

/** The camera where it belongs, for the pictures before the controls that turn it have arrived. */
export function FirstLook({ frame, isHeld, onDrawn }: Props) {
  const [goal] = useState(() => new CameraGoal());
  useFrame(({ camera, size: { width, height } }) => {
    if (isHeld.current || !frame.shown) return;
    const { view } = desk.getState().session;
    const { free, insets } = cameraStore.getState();
    const found = goal.find(frame, { view, free, insets, width, height, framedTime: framedTime() });
    pointCamera(camera as PerspectiveCamera, found, frame.mirror);
    frame.seeFrom(camera.position, view === 'playersEyes');
    stagePicture.setState({ drawn: { view: found, width, height } });
  }, FRAME_ORDER.aim);
  useFrame(() => {
    if (!isHeld.current && frame.shown) onDrawn();
  }, FRAME_ORDER.drawn);
  return null;
}
