import { Vector3, type PerspectiveCamera } from 'three';
import { createPins, PIN_IDS, PIN_SIZE, placePins, type PinId } from '../../scene/figure/jointPins';
import type { SceneFrame } from '../../scene/sceneFrame';

/** A pointer that comes down within this of a pin takes hold of it, css px. A finger hides what it points at. */
const NEAR = { touch: 26, mouse: 16, pen: 20 } as const;
/** How far a dial is dragged from end to end, m at the pin: what its joint visibly moves. */
const WHOLE_WAY: Readonly<Record<PinId, number>> = { leadWrist: 0.7, chest: 0.5, shoulderLine: 0.4 };
/** A way seen from its end, shorter than this share of itself, is dragged down as it comes nearer and up as it goes away. */
const END_ON = 0.2;

/** A pin on the screen: where, and how much of its dial a pixel moves, to the right and down (shares of the dial from end to end). */
export interface PinOnScreen {
  readonly id: PinId;
  readonly x: number;
  readonly y: number;
  readonly perX: number;
  readonly perY: number;
}

const pins = createPins();
const at = new Vector3();
const ahead = new Vector3();

/** The pins of what a frame shows, css px from the picture's upper left corner. Those behind the camera are left out. */
export function pinsOnScreen(frame: SceneFrame, camera: PerspectiveCamera): PinOnScreen[] {
  const { shown, figure, placement, size, mirror } = frame;
  if (!shown?.pins || !figure || frame.standpoint !== 'outside') return [];
  placePins(figure, placement, shown.pose, pins);
  camera.updateMatrixWorld();
  return PIN_IDS.flatMap((id, i) => {
    const from = i * PIN_SIZE;
    at.set(pins[from], pins[from + 1], pins[from + 2] * mirror);
    ahead.set(pins[from + 3], pins[from + 4], pins[from + 5] * mirror);
    const depth = -at.clone().applyMatrix4(camera.matrixWorldInverse).z;
    if (depth <= 0) return [];
    // Along the camera's own axes, without perspective: the pixels of a metre at the pin.
    ahead.transformDirection(camera.matrixWorldInverse);
    const pxPerMetre = (size.y * camera.projectionMatrix.elements[5]) / (2 * depth);
    const seen = Math.hypot(ahead.x, ahead.y);
    const [x, y] = seen < END_ON ? [0, Math.sign(ahead.z) || 1] : [ahead.x / seen, -ahead.y / seen];
    const share = 1 / (pxPerMetre * WHOLE_WAY[id]);
    const { x: u, y: v } = at.project(camera);
    return [{ id, x: ((u + 1) / 2) * size.x, y: ((1 - v) / 2) * size.y, perX: x * share, perY: y * share }];
  });
}

/** The pin that a pointer of a kind takes hold of at a place, px; the nearest of several. */
export function pinAt(pins: readonly PinOnScreen[], x: number, y: number, pointer: string): PinOnScreen | undefined {
  let nearest: PinOnScreen | undefined;
  let least: number = NEAR[pointer as keyof typeof NEAR] ?? NEAR.mouse;
  for (const pin of pins) {
    const off = Math.hypot(pin.x - x, pin.y - y);
    if (off > least) continue;
    least = off;
    nearest = pin;
  }
  return nearest;
}
