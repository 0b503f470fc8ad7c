import { beginGesture, endGesture } from '../store';

/**
 * A pointer goes down on a control: until it goes up, is cancelled, or the window loses it, everything is one undo
 * step. The window listens, because a native slider may keep the pointer's events to itself.
 */
export function holdPointer(): void {
  beginGesture();
  const end = (): void => {
    for (const event of ENDS) window.removeEventListener(event, end, true);
    endGesture();
  };
  for (const event of ENDS) window.addEventListener(event, end, true);
}
const ENDS = ['pointerup', 'pointercancel', 'blur'] as const;

/** A key goes down: held, it is one undo step as well. */
export function holdKey(repeats: boolean): void {
  if (!repeats) beginGesture();
}
