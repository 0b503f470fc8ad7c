import { useLayoutEffect } from 'react';
import { desk, subscribe } from '../desk/desk';
import type { DeskState } from '../desk/state';

/**
 * Keeps something on the page at what `select` answers without rendering: `write` gets each answer that is another (`Object.is`), in
 * the same task as the change. For what moves at every step of a slider; what changes seldom is rendered.
 */
export function useWritten<T>(select: (state: DeskState) => T, write: (value: T) => void): void {
  // Both may be new functions after a render, and what they write to may be new elements: then everything is written again.
  useLayoutEffect(() => {
    let last = select(desk.getState());
    write(last);
    return subscribe((state) => {
      const next = select(state);
      if (Object.is(next, last)) return;
      last = next;
      write(next);
    });
  });
}

/**
 * Puts words into an element that holds nothing else. They go into the text that stands there: a new one would be laid out from nothing at
 * every step of a slider.
 */
export function putText(element: Element, words: string): void {
  const { firstChild } = element;
  if (firstChild instanceof Text && firstChild === element.lastChild) firstChild.data = words;
  else element.textContent = words;
}
