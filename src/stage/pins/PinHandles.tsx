import { useThree } from '@react-three/fiber';
import { useLayoutEffect } from 'react';
import type { PerspectiveCamera } from 'three';
import type { SceneFrame } from '../../scene/sceneFrame';
import { beginGesture, desk, dialValue, edgeDial, endGesture, resetMovement, setMovement } from '../../store';
import type { PinId } from '../../scene/figure/jointPins';
import { pinAt, pinsOnScreen, type PinOnScreen } from './pinOnScreen';
import { DIAL_OF, pinStore } from './pinStore';

/** Two taps on a pin so close in time reset its dial; a pointer that moves farther than `STILL` drags. Ms and css px, our choice. */
const SOON_MS = 400;
const STILL = 8;

interface PinTap {
  readonly id: PinId;
  readonly at: number;
}

/**
 * Lets mouse, pen and finger drag the pins: each moves its dial, one undo step a drag. Mounted before the camera's controls, so that a
 * pointer that takes a pin never reaches them. Nothing here takes the focus: the dial is the typed way.
 */
export function PinHandles({ frame }: { readonly frame: SceneFrame }) {
  const canvas = useThree((state) => state.gl.domElement);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;

  useLayoutEffect(() => {
    let end: (() => void) | undefined;
    let tapped: PinTap | undefined;
    const find = ({ clientX, clientY, pointerType }: PointerEvent): PinOnScreen | undefined => {
      const { left, top } = canvas.getBoundingClientRect();
      return pinAt(pinsOnScreen(frame, camera), clientX - left, clientY - top, pointerType);
    };
    const down = (event: PointerEvent): void => {
      if (end) return event.stopImmediatePropagation();
      const pin = event.button === 0 && !event.shiftKey ? find(event) : undefined;
      if (!pin) return;
      event.stopImmediatePropagation();
      const isSecond = tapped !== undefined && tapped.id === pin.id && event.timeStamp - tapped.at < SOON_MS;
      end = drag(canvas, pin, event, (hasMoved) => {
        end = undefined;
        tapped = hasMoved || isSecond ? undefined : { id: pin.id, at: event.timeStamp };
        // As on its slider.
        if (isSecond && !hasMoved) resetMovement(DIAL_OF[pin.id]);
      });
    };
    const hover = (event: PointerEvent): void => {
      if (event.pointerType === 'touch' || event.buttons !== 0) return;
      canvas.style.cursor = find(event) ? 'grab' : '';
    };
    const off = new AbortController();
    canvas.addEventListener('pointerdown', down, { capture: true, signal: off.signal });
    canvas.addEventListener('pointermove', hover, { signal: off.signal });
    return () => {
      off.abort();
      end?.();
    };
  }, [canvas, camera, frame]);
  return null;
}

/** One pin with one pointer, from where it came down. Answers how to end it before the pointer does. */
function drag(
  canvas: HTMLElement,
  pin: PinOnScreen,
  from: PointerEvent,
  onEnd: (hasMoved: boolean) => void,
): () => void {
  const id = DIAL_OF[pin.id];
  const { min, max } = edgeDial(id);
  const value = dialValue(desk.getState().document.movements, id);
  const gesture = beginGesture();
  const over = new AbortController();
  let hasMoved = false;
  const isOwn = ({ pointerId }: PointerEvent): boolean => pointerId === from.pointerId;
  const move = (event: PointerEvent): void => {
    if (!isOwn(event)) return;
    event.stopImmediatePropagation();
    const [dx, dy] = [event.clientX - from.clientX, event.clientY - from.clientY];
    hasMoved ||= Math.hypot(dx, dy) > STILL;
    // A finger that only taps trembles.
    if (hasMoved) setMovement(id, value + (dx * pin.perX + dy * pin.perY) * (max - min));
  };
  const end = (): void => {
    over.abort();
    endGesture(gesture);
    pinStore.setState({ held: undefined });
    canvas.style.cursor = '';
    onEnd(hasMoved);
  };
  const lift = (event: PointerEvent): void => {
    if (isOwn(event)) end();
  };
  const options = { capture: true, signal: over.signal };
  const page = canvas.ownerDocument;
  page.addEventListener('pointermove', move, options);
  page.addEventListener('pointerup', lift, options);
  page.addEventListener('pointercancel', lift, options);
  window.addEventListener('blur', end, options);
  pinStore.setState({ held: pin.id });
  canvas.style.cursor = 'grabbing';
  return end;
}
