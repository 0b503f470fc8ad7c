import { useLayoutEffect, useState, type RefObject } from 'react';

/** Width and height of an element, css px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Size of an element in css px, followed as it changes; rounded, so that a hair's breadth redraws nothing. It is known before the first
 * frame, for which the page is laid out once more; with `isAwaited` false only after that, and what else is there is shown without waiting.
 */
export function useSize(element: RefObject<HTMLElement | null>, isAwaited = true): Size | undefined {
  const [size, setSize] = useState<Size>();
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return undefined;
    const take = (): void => {
      const width = Math.round(target.clientWidth);
      const height = Math.round(target.clientHeight);
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    };
    if (isAwaited) take();
    const observer = new ResizeObserver(take);
    observer.observe(target);
    return () => observer.disconnect();
  }, [element, isAwaited]);
  return size;
}

/** Too small to draw in, or not laid out yet: px. */
const LEAST = 60;
/** Whether there is room to draw in. */
export const isRoomy = (size: Size | undefined): size is Size =>
  size !== undefined && size.width >= LEAST && size.height >= LEAST;
