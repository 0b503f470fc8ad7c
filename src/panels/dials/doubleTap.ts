import { useRef, type PointerEvent } from 'react';
import { desk, undo, type DeskState } from '../../store';

/** Two taps so close in time and place are a double tap; a pointer that moves farther than `STILL` drags. Ms and px, our choice. */
const SOON_MS = 400;
const NEAR = 24;
const STILL = 8;

interface Tap {
  readonly at: number;
  readonly x: number;
  readonly y: number;
  /** The undo steps before it. */
  readonly past: DeskState['history']['past'];
}

const isNear = (tap: Tap, { x, y }: { x: number; y: number }, within: number): boolean =>
  Math.hypot(tap.x - x, tap.y - y) <= within;

/** What a slider hands its pointer's events to. */
interface DoubleTap {
  readonly putDown: (event: PointerEvent<HTMLElement>) => void;
  /** Answers whether the pointer has just gone up from the second of two taps. */
  readonly liftUp: (event: PointerEvent<HTMLElement>) => boolean;
}

/**
 * Tells double taps on one slider: browsers tell of those with a mouse only, and of a click and a drag as well. What the taps
 * themselves moved has been taken back when the second goes up, so that what follows is the one undo step.
 */
export function useDoubleTap(): DoubleTap {
  const down = useRef<Tap>(undefined);
  const tapped = useRef<Tap>(undefined);
  return {
    putDown({ timeStamp, clientX, clientY, button }) {
      const { past } = desk.getState().history;
      down.current = button === 0 ? { at: timeStamp, x: clientX, y: clientY, past } : undefined;
    },
    liftUp({ clientX, clientY }) {
      const first = tapped.current;
      const second = down.current && isNear(down.current, { x: clientX, y: clientY }, STILL) ? down.current : undefined;
      down.current = undefined;
      tapped.current = second;
      if (!first || !second || second.at - first.at > SOON_MS || !isNear(first, second, NEAR)) return false;
      // Something else was done between the two.
      if (second.past.length > first.past.length + 1) return false;
      tapped.current = undefined;
      while (desk.getState().history.past.length > first.past.length) undo();
      return true;
    },
  };
}
