import { useEffect, useState, type ComponentType } from 'react';
import { loadingChunk } from './chunkLoadError';

/** A part of the screen that is fetched when it is needed, or before. */
export interface Preloadable<P> {
  /** Fetches it ahead of time. What does not come is spoken of when it is to be shown. */
  readonly fetch: () => void;
  readonly Part: ComponentType<P>;
}

/**
 * Once fetched it is there in the same frame: React's own way of waiting keeps the words that stand in for a part on the
 * screen for 300 ms, however soon the part comes.
 */
export function preloadable<P extends object>(load: () => Promise<{ default: ComponentType<P> }>): Preloadable<P> {
  let known: ComponentType<P> | undefined;
  const find = async (): Promise<ComponentType<P>> => (known = (await loadingChunk(load)()).default);
  function Part(props: P) {
    const [Shown, show] = useState<ComponentType<P> | undefined>(() => known);
    useEffect(() => {
      if (known) return;
      find().then(
        (found) => show(() => found),
        (error: unknown) =>
          show(() => {
            // Whoever stands around it says what went wrong.
            throw error;
          }),
      );
    }, []);
    return Shown ? <Shown {...props} /> : <p>Opening …</p>;
  }
  return { fetch: () => void find().catch(() => undefined), Part };
}
