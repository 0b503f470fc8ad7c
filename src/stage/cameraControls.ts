import { rad } from '../math/angle';
import { forgetFree, moveFreely } from './cameraStore';
import { orbited, panned, zoomed } from '../scene/camera/view';

interface Finger {
  x: number;
  y: number;
}

/** A drag across the picture's height turns the view this far. */
const TURN = rad(170);
const KEY_TURN: number = rad(6);
const KEY_ZOOM = 1.12;

/**
 * Lets a pointer, two fingers, the wheel and the keyboard move the camera. Drag orbits, pinch zooms, two fingers (or a drag
 * with shift or the second button) pan. A cancelled or lost pointer, a blurred window and a hidden page end a drag where it is.
 * `mirror` is -1 for a left-handed player. Answers the function that lets go.
 */
export function holdCamera(
  canvas: HTMLElement,
  keyed: HTMLElement,
  mirror: () => 1 | -1,
  onFree: () => void,
): () => void {
  const fingers = new Map<number, Finger>();
  let isPanning = false;
  const move = (change: Parameters<typeof moveFreely>[0]): void => {
    moveFreely(change);
    onFree();
  };

  const down = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button > 2) return;
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    isPanning = event.shiftKey || event.button === 2 || event.button === 1;
    try {
      canvas.setPointerCapture(event.pointerId);
    } catch {
      // A pointer that is gone already cannot be captured; its drag ends with the next event.
    }
  };
  const drag = (event: PointerEvent): void => {
    const finger = fingers.get(event.pointerId);
    if (!finger || fingers.size > 2) return;
    const height = canvas.clientHeight || 1;
    const before = spanOf(fingers);
    const dx = (event.clientX - finger.x) / height;
    const dy = (event.clientY - finger.y) / height;
    if (dx === 0 && dy === 0) return;
    finger.x = event.clientX;
    finger.y = event.clientY;
    if (fingers.size === 2) {
      const after = spanOf(fingers);
      const factor = after > 1 && before > 1 ? before / after : 1;
      move((view) => zoomed(panned(view, (mirror() * dx) / 2, -dy / 2), factor));
    } else if (isPanning) {
      move((view) => panned(view, mirror() * dx, -dy));
    } else {
      move((view) => orbited(view, -mirror() * dx * TURN, dy * TURN));
    }
  };
  const up = (event: PointerEvent): void => void fingers.delete(event.pointerId);
  const letGo = (): void => fingers.clear();
  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 30 : 1;
    move((view) => zoomed(view, Math.exp(Math.max(-240, Math.min(240, event.deltaY * lines)) * 0.0012)));
  };
  const key = (event: KeyboardEvent): void => {
    if (event.target !== keyed || event.ctrlKey || event.metaKey || event.altKey) return;
    const turn = (yaw: number, pitch: number): void => move((view) => orbited(view, mirror() * yaw, pitch));
    const actions: Record<string, () => void> = {
      ArrowLeft: () => turn(-KEY_TURN, 0),
      ArrowRight: () => turn(KEY_TURN, 0),
      ArrowUp: () => turn(0, KEY_TURN),
      ArrowDown: () => turn(0, -KEY_TURN),
      '+': () => move((view) => zoomed(view, 1 / KEY_ZOOM)),
      '=': () => move((view) => zoomed(view, 1 / KEY_ZOOM)),
      Home: () => {
        forgetFree();
        onFree();
      },
      '-': () => move((view) => zoomed(view, KEY_ZOOM)),
    };
    const action = actions[event.key];
    if (!action) return;
    event.preventDefault();
    event.stopPropagation();
    action();
  };
  const hide = (): void => {
    if (document.hidden) letGo();
  };
  const noMenu = (event: Event): void => event.preventDefault();

  const off = new AbortController();
  const { signal } = off;
  canvas.addEventListener('pointerdown', down, { signal });
  canvas.addEventListener('pointermove', drag, { signal });
  for (const end of ['pointerup', 'pointercancel', 'lostpointercapture'] as const) {
    canvas.addEventListener(end, up, { signal });
  }
  canvas.addEventListener('wheel', wheel, { signal, passive: false });
  canvas.addEventListener('contextmenu', noMenu, { signal });
  keyed.addEventListener('keydown', key, { signal });
  window.addEventListener('blur', letGo, { signal });
  document.addEventListener('visibilitychange', hide, { signal });
  return () => off.abort();
}

/** Distance between two fingers, px; 0 for one. */
function spanOf(fingers: ReadonlyMap<number, Finger>): number {
  const [a, b] = [...fingers.values()];
  return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
}
