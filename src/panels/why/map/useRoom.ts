import { useLayoutEffect, useState, type RefObject } from 'react';

/** Room for a drawing in a drawer, css px: the width of its place and the height of what the drawer shows at once. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Room of an element in its drawer, followed while it changes; nothing before it is known. */
export function useRoom(element: RefObject<HTMLElement | null>): Room {
  const [room, setRoom] = useState<Room>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const at = element.current;
    const drawer = at?.closest('.drawer-body');
    if (!at || !drawer) return undefined;
    const measure = (): void => setRoom({ width: Math.round(at.clientWidth), height: Math.round(drawer.clientHeight) });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(at);
    observer.observe(drawer);
    return () => observer.disconnect();
  }, [element]);
  return room;
}
