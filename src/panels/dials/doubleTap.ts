import type { PointerEvent } from 'react';
import { desk, undo, type DeskState } from '../../store';

/** Two taps so close in time and place are a double tap; a pointer that moves farther than `STILL` drags. Ms and px, our choice. */
const SOON_MS = 400;
const NEAR = 24;
const STILL = 8;

interface Tap {
  readonly slider: HTMLElement;
  readonly at: number;
  readonly x: number;
  readonly y: number;
  /** The undo steps before it. */
  readonly past: DeskState['history']['past'];
}

let down: Tap | undefined;
let tapped: Tap | undefined;

const isNear = (tap: Tap, { x, y }: { x: number; y: number }, within: number): boolean =>
  Math.hypot(tap.x - x, tap.y - y) <= within;

/** A pointer goes down on a slider. */
export function putDown({ currentTarget, timeStamp, clientX, clientY, button }: PointerEvent<HTMLElement>): void {
  const { past } = desk.getState().history;
  down = button === 0 ? { slider: currentTarget, at: timeStamp, x: clientX, y: clientY, past } : undefined;
}

/**
 * A pointer goes up. Answers whether that was the second of two taps: browsers tell of those with a mouse only, and of a click and a drag as well.
 * What the taps themselves moved has been taken back then, so that what follows is the one undo step.
 */
export function liftUp({ clientX, clientY }: PointerEvent<HTMLElement>): boolean {
  const first = tapped;
  const second = down && isNear(down, { x: clientX, y: clientY }, STILL) ? down : undefined;
  down = undefined;
  tapped = second;
  if (!first || second?.slider !== first.slider) return false;
  if (second.at - first.at > SOON_MS || !isNear(first, second, NEAR)) return false;
  tapped = undefined;
  while (desk.getState().history.past.length > first.past.length) undo();
  return true;
}
