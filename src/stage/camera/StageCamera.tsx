import { CameraControls } from '@react-three/drei/core/CameraControls';
import { useFrame, useThree } from '@react-three/fiber';
import { useCallback, useEffect, useRef, useState, type RefObject } from 'react';
import type { View } from '../../scene/camera/view';
import type { SceneFrame } from '../../scene/sceneFrame';
import { desk, setView, stagePicture, subscribe } from '../../store';
import { FRAME_ORDER } from '../useStageFrames';
import { CameraGoal } from './cameraGoal';
import { listenToKeys } from './cameraKeys';
import { arrive, askForView, cameraStore, leaveFree } from './cameraStore';
import { listenToDoubleTaps } from './doubleTap';
import { toggleFullScreen } from '../fullScreen';
import { framedTime } from './framedTime';
import { resetView } from './resetView';
import { StageControls } from './stageControls';

interface Props {
  readonly frame: SceneFrame;
  /** What has the focus while keys turn the picture. */
  readonly keyed: HTMLElement;
  /** Whether this frame will not be drawn. */
  readonly isHeld: RefObject<boolean>;
}

/** The camera: turned, moved and zoomed by touch, mouse, pen and keys; goes to the view that is asked for, and stays fitted to the swing. */
export function StageCamera({ frame, keyed, isHeld }: Props) {
  const { domElement } = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  const controls = useRef<StageControls>(null);
  const [goal] = useState(() => new CameraGoal());
  /** Where the controls were sent last, and for which hand. */
  const sent = useRef<{ view: View | undefined; mirror: 1 | -1 }>({ view: undefined, mirror: 1 });
  const hasMoved = useRef(true);

  const leave = useCallback(() => {
    const { mirror } = frame;
    const free = controls.current!.viewOf(mirror, true, sent.current.view?.fov);
    // He is there already.
    sent.current = { view: free, mirror };
    leaveFree(free);
    if (desk.getState().session.view !== 'free') setView('free');
  }, [frame]);
  // The controls take one move a frame: what a finger did between the last frame and being lifted would be lost.
  const takeMove = useCallback(() => void controls.current!.update(0), []);
  const drag = useCallback(() => {
    takeMove();
    leave();
  }, [takeMove, leave]);

  useEffect(() => {
    const own = controls.current!;
    const reducedMotion = matchMedia('(prefers-reduced-motion: reduce)');
    const off = new AbortController();
    const { signal } = off;
    const still = (): void => {
      own.isDamped = !reducedMotion.matches;
    };
    const letGo = (): void => own.cancel();
    still();
    reducedMotion.addEventListener('change', still, { signal });
    domElement.addEventListener('pointerdown', ({ shiftKey }) => own.panWithDrag(shiftKey), { signal, capture: true });
    domElement.ownerDocument.addEventListener('pointermove', (event) => own.expectMove(event), {
      signal,
      capture: true,
    });
    domElement.addEventListener('wheel', () => own.panWithDrag(false), { signal, capture: true });
    window.addEventListener('blur', letGo, { signal });
    document.addEventListener('visibilitychange', () => document.hidden && letGo(), { signal });
    const stopKeys = listenToKeys(keyed, own, leave, resetView, () => void toggleFullScreen(stageOf(keyed)));
    const stopTaps = listenToDoubleTaps(domElement, resetView);
    askForView(desk.getState().session.view, false);
    const stopViews = subscribe(({ session }, before) => {
      // A drag asks for the free view as well, and is there.
      if (session.viewAsked !== before.session.viewAsked && !isThere(session.view, sent.current.view))
        askForView(session.view, !reducedMotion.matches);
    });
    return () => {
      off.abort();
      stopKeys();
      stopTaps();
      stopViews();
    };
  }, [domElement, keyed, leave]);

  // Later pictures are pixel for pixel what the controls show: so is the one they come to.
  useEffect(() => invalidate(), [invalidate]);

  useFrame(({ size }) => {
    if (isHeld.current || !frame.shown) return;
    const { isTurning, ...wanted } = cameraStore.getState();
    const view = goal.find(frame, { ...wanted, width: size.width, height: size.height, framedTime: framedTime() });
    const { mirror } = frame;
    if (view === sent.current.view && mirror === sent.current.mirror) return;
    const isFirst = sent.current.view === undefined || mirror !== sent.current.mirror;
    sent.current = { view, mirror };
    controls.current!.lookFrom(view, mirror, isTurning && !isFirst);
  }, FRAME_ORDER.aim);

  useFrame(({ camera, size: { width, height } }) => {
    if (isHeld.current || !frame.shown) return;
    frame.seeFrom(camera.position, cameraStore.getState().view === 'playersEyes');
    const { drawn } = stagePicture.getState();
    if (!hasMoved.current && drawn?.width === width && drawn.height === height) return;
    hasMoved.current = false;
    stagePicture.setState({ drawn: { view: controls.current!.viewOf(frame.mirror, false), width, height } });
  }, FRAME_ORDER.look);

  return (
    <CameraControls
      ref={controls}
      impl={StageControls}
      onControlStart={takeMove}
      onControl={drag}
      onUpdate={() => {
        hasMoved.current = true;
      }}
      onRest={arrive}
      onSleep={arrive}
    />
  );
}

/** What fills the screen: the picture with its views. */
const stageOf = (keyed: HTMLElement): HTMLElement => keyed.closest<HTMLElement>('.stage') ?? keyed;

/** Whether the free view is asked for where the camera was sent to it last. */
const isThere = (view: string, sent: View | undefined): boolean =>
  view === 'free' && sent !== undefined && sent === cameraStore.getState().free;
