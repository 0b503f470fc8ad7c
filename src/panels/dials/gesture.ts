import type { KeyboardEvent, PointerEvent } from 'react';
import { beginGesture, endGesture } from '../../store';

/**
 * Starts a gesture that ends with the first of these events, wherever they happen, or when the control or the window loses the focus.
 * Another gesture is left alone.
 */
function holdUntil(events: readonly string[], control: HTMLElement): void {
  const gesture = beginGesture();
  const over = new AbortController();
  const end = ({ type, target }: Event): void => {
    // Of whatever loses the focus to this control the window hears as well.
    if (type === 'blur' && target !== window && target !== control) return;
    over.abort();
    endGesture(gesture);
  };
  const options = { capture: true, signal: over.signal };
  for (const event of [...events, 'blur']) window.addEventListener(event, end, options);
}

/**
 * A pointer goes down on a slider: until it goes up, is cancelled, or the window loses it, everything is one undo step.
 * The window listens, because a native slider may keep the pointer's events to itself.
 */
export const holdPointer = ({ currentTarget }: PointerEvent<HTMLElement>): void =>
  holdUntil(['pointerup', 'pointercancel', 'lostpointercapture'], currentTarget);

const MOVES = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End'];

/** A key that moves a slider goes down: held, it is one undo step as well. */
export function holdKey({ key, repeat, currentTarget }: KeyboardEvent<HTMLElement>): void {
  if (!repeat && MOVES.includes(key)) holdUntil(['keyup'], currentTarget);
}
