import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { useEffect, useState } from 'react';
import { sayCheckpoint, sayStatus } from '../../words';
import { current, desk, subscribe } from '../../store';

/** A screen reader hears what came of a change once it has come to rest, ms. */
const REST_MS = 600;

/** Both verdicts in spoken words, or what keeps the model from giving them. */
function spokenNow(): string {
  const derived = current();
  if (derived.status !== 'ready') return sayStatus(derived);
  const { units } = desk.getState().document;
  const { checkpoints, bands } = derived;
  return CHECKPOINT_IDS.map((id) => sayCheckpoint(id, checkpoints[id], bands, units).spoken).join(' ');
}

/** Says politely when a verdict has changed. */
export function LiveRegion() {
  const [said, setSaid] = useState('');
  useEffect(() => {
    let timer: number | undefined;
    let before = sayStatus(current());
    const stop = subscribe(() => {
      clearTimeout(timer);
      timer = window.setTimeout(() => {
        const now = sayStatus(current());
        if (now === before) return;
        before = now;
        setSaid(spokenNow());
      }, REST_MS);
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, []);
  return (
    <output className="unseen" aria-live="polite">
      {said}
    </output>
  );
}
