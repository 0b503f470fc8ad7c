import { useEffect, useState, type ComponentType } from 'react';
import { loadingChunk } from '../../store/react/chunkLoadError';

/** A component that is loaded when it is first shown, or ahead of time. */
export interface Preloadable<P> {
  /** Loads it ahead of time. A failure is reported only when the component is shown. */
  readonly fetch: () => void;
  readonly Part: ComponentType<P>;
}

/**
 * Like `React.lazy`, but once loaded it shows in the same frame: Suspense keeps its fallback on screen for 300 ms even
 * if the component arrives sooner.
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
            // Thrown while rendering, so that the error boundary shows it.
            throw error;
          }),
      );
    }, []);
    return Shown ? <Shown {...props} /> : <p>Opening …</p>;
  }
  return { fetch: () => void find().catch(() => undefined), Part };
}
