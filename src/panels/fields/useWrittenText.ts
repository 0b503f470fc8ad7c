import { useRef, type RefObject } from 'react';
import { current, putText, useWritten, type Derived } from '../../store';

/** An element whose text is kept at what is said of the swing, without rendering. It must hold nothing else. */
export function useWrittenText<E extends HTMLElement>(say: (derived: Derived) => string): RefObject<E | null> {
  const element = useRef<E>(null);
  useWritten(
    () => say(current()),
    (text) => {
      if (element.current) putText(element.current, text);
    },
  );
  return element;
}
