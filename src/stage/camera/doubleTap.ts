/** Two taps so close in time and place are a double tap; a pointer that moves farther than `still` drags. Ms and css px, our choice. */
const TAP = { soon: 350, near: 28, still: 8 } as const;

interface Tap {
  readonly at: number;
  readonly x: number;
  readonly y: number;
}
const isNear = (a: Tap, b: Tap, within: number): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= within;

/** Calls back after two taps or clicks in one place, with any pointer: browsers tell of a mouse's alone. Answers how to stop. */
export function listenToDoubleTaps(element: HTMLElement, onDouble: () => void): () => void {
  let down: (Tap & { readonly id: number }) | undefined;
  let tapped: Tap | undefined;
  const off = new AbortController();
  const { signal } = off;
  element.addEventListener(
    'pointerdown',
    ({ pointerId: id, timeStamp: at, clientX: x, clientY: y, button, isPrimary }) => {
      // Two fingers pinch.
      if (!isPrimary || button !== 0) tapped = down = undefined;
      else down = { id, at, x, y };
    },
    { signal },
  );
  element.ownerDocument.addEventListener(
    'pointerup',
    ({ pointerId, timeStamp: at, clientX: x, clientY: y }) => {
      const tap = { at, x, y };
      const isTap = down?.id === pointerId && isNear(down, tap, TAP.still) && at - down.at < TAP.soon;
      const isDouble = isTap && tapped && down!.at - tapped.at < TAP.soon && isNear(tapped, tap, TAP.near);
      tapped = isTap && !isDouble ? tap : undefined;
      down = undefined;
      if (isDouble) onDouble();
    },
    { signal },
  );
  return () => off.abort();
}
