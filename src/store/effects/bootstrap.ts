import { endGesture } from '../desk/actions';
import { desk, put, subscribe } from '../desk/desk';
import { pause } from '../desk/playback';
import { load, save, type Shelf } from '../document/persistence';
import { startEffects } from './startEffects';

/** A change is on the shelf at the latest after this, ms; one within a gesture, which is likely to be changed again, after that. */
const SAVE_WITHIN_MS = 300;
const SAVE_GESTURE_WITHIN_MS = 1000;

/** The browser's storage, unless it is forbidden. */
function findShelf(): Shelf | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined;
  }
}

/** Loads what was saved and keeps saving. Once, before the first picture. Answers the function that saves at once. */
export function startDesk(shelf: Shelf | undefined = findShelf()): () => void {
  if (!shelf) {
    startEffects();
    put({ notice: 'This browser forbids saving. What you see stays until the page closes.' });
    return () => {};
  }
  put(load(shelf));
  startEffects(shelf);

  let timer: ReturnType<typeof setTimeout> | undefined;
  const clearTimer = (): void => {
    clearTimeout(timer);
    timer = undefined;
  };
  const flush = (): void => {
    clearTimer();
    const { document, history, gesture, notice } = desk.getState();
    const problem = save(shelf, document, gesture ? undefined : history);
    if (problem && problem !== notice) put({ notice: problem });
  };
  subscribe((now, before) => {
    if (now.document === before.document && now.history === before.history) return;
    // The gesture's end is a change of its own.
    if (!now.gesture && before.gesture) clearTimer();
    timer ??= setTimeout(flush, now.gesture ? SAVE_GESTURE_WITHIN_MS : SAVE_WITHIN_MS);
  });

  const leave = (): void => {
    endGesture();
    flush();
  };
  if (typeof window !== 'undefined') {
    window.addEventListener('pagehide', leave);
    window.addEventListener('blur', () => endGesture());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState !== 'hidden') return;
      pause();
      leave();
    });
  }
  return flush;
}
