import { useState } from 'react';
import { PART_NOT_ARRIVED, STILL_NO_ANSWER } from '../../words/showing/errorMessages';

/** Whether the page can be loaded now, from the network or from the service worker's cache. */
const isThere = (): Promise<boolean> =>
  fetch(location.href, { cache: 'no-store' }).then(
    ({ ok }) => ok,
    () => false,
  );

/**
 * Offers a reload after a chunk failed to load. It reloads only if the page can be fetched, so that a working desk is
 * never lost.
 */
export function LoadAgain() {
  const [isAlone, setAlone] = useState(false);
  const load = async (): Promise<void> => {
    if (await isThere()) location.reload();
    else setAlone(true);
  };
  return (
    <>
      <p aria-live="polite">{isAlone ? STILL_NO_ANSWER : PART_NOT_ARRIVED}</p>
      <button type="button" className="plain wide" onClick={() => void load()}>
        Load the page again
      </button>
    </>
  );
}
