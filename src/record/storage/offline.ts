/** The part of a service worker registration that is used. */
type Registration = Pick<ServiceWorkerRegistration, 'waiting' | 'installing' | 'addEventListener' | 'update'>;

/** A new version that is ready. It waits until the user accepts it, which is impossible while a lesson is open. */
export interface Offline {
  start(): void;
  readonly listen: (heard: () => void) => () => void;
  readonly isReady: () => boolean;
  /** Takes the new version and starts again with it. False when a lesson is open. */
  take(): Promise<boolean>;
}

/** How often a page left open looks for a new version, ms. */
const LOOK_MS = 3_600_000;

/** Registers the service worker, looks for new versions, and takes one over only when no lesson is open. */
export function createOffline(
  container: ServiceWorkerContainer | undefined,
  address: () => string,
  isLessonOpen: () => boolean,
  leave: () => Promise<unknown>,
  reload: () => void,
): Offline {
  const listeners = new Set<() => void>();
  let registration: Registration | undefined;
  let ready = false;
  const tell = (): void => {
    const now = registration?.waiting !== null && registration?.waiting !== undefined;
    if (now === ready) return;
    ready = now;
    for (const heard of listeners) heard();
  };
  const watch = (found: ServiceWorkerRegistration): void => {
    registration = found;
    tell();
    found.addEventListener('updatefound', () => found.installing?.addEventListener('statechange', tell));
    found.installing?.addEventListener('statechange', tell);
  };
  return {
    start() {
      if (!container) return;
      // The first worker takes the page it came with; only a change of workers means new files.
      let controlled = container.controller !== null;
      container.addEventListener('controllerchange', () => {
        if (controlled) void leave().finally(reload);
        controlled = true;
      });
      container
        .register(address())
        .then(watch)
        .catch(() => {
          // No worker: the app works as long as there is a network, and says nothing.
        });
      setInterval(() => void registration?.update().catch(() => {}), LOOK_MS);
    },
    listen(heard) {
      listeners.add(heard);
      return () => listeners.delete(heard);
    },
    isReady: () => ready,
    async take() {
      const waiting = registration?.waiting;
      if (!waiting || isLessonOpen()) return false;
      await leave();
      waiting.postMessage({ type: 'SKIP_WAITING' });
      return true;
    },
  };
}
