import { useState } from 'react';

/** Whether the app can be had now: over the network, or from what this device keeps of it. */
const isThere = (): Promise<boolean> =>
  fetch(location.href, { cache: 'no-store' }).then(
    ({ ok }) => ok,
    () => false,
  );

/** Loads the page again for a part that did not come, but only where a page would come: a desk that works is not given up for none. */
export function LoadAgain() {
  const [isAlone, setAlone] = useState(false);
  const load = async (): Promise<void> => {
    if (await isThere()) location.reload();
    else setAlone(true);
  };
  return (
    <>
      <p aria-live="polite">
        {isAlone
          ? 'There is still no answer. This page stays as it is: try once more when there is a network.'
          : 'It is fetched when it is needed, and did not arrive. Everything else goes on. Once there is a network, load the page again.'}
      </p>
      <button type="button" className="plain wide" onClick={() => void load()}>
        Load the page again
      </button>
    </>
  );
}
