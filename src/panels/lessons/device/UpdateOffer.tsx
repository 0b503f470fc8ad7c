import { useSyncExternalStore } from 'react';
import { offline } from '../../../record';

/** A new version lies ready. Never taken under an open lesson, in this tab or another. */
export function UpdateOffer({ lessonOpen }: { lessonOpen: boolean }) {
  const ready = useSyncExternalStore(offline.listen, offline.isReady);
  if (!ready || lessonOpen) return null;
  return (
    <button type="button" className="text-button" onClick={() => void offline.take()}>
      Take the new version
    </button>
  );
}
