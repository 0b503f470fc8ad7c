import { useLayoutEffect, useState, type RefObject } from 'react';

/** Width of an element in css px, followed while it changes; 0 before it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const at = element.current;
    if (!at) return undefined;
    const measure = (): void => setWidth(Math.round(at.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(at);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
