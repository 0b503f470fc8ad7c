import { useEffect, useMemo, useState } from 'react';
import { takeSnapshot, type ExportSnapshot } from '../export/task/exportSnapshot';
import { desk, FRESH_SESSION, useDesk, type Document } from '../store';
import { createDeriver } from '../store/derive/deriver';
import { NO_VERDICTS } from '../store/derive/verdictHysteresis';
import { deskBases } from '../store/desk/desk';
import { referenceSearch } from '../store/effects/referenceSearch';

/** Where the plan starts and where it leads, played out as on the desk; nothing while the player's reference swing is being found. */
export function useSubject(shown: Document): ExportSnapshot | undefined {
  const references = useDesk((state) => state.references);
  const [deriver] = useState(() => createDeriver(deskBases));
  useEffect(() => referenceSearch.want(shown), [shown]);
  return useMemo(() => {
    const state = { ...desk.getState(), references, document: shown, session: FRESH_SESSION, verdicts: NO_VERDICTS };
    const derived = deriver.derive(state);
    return derived.status === 'ready' ? takeSnapshot(state, derived, 'plan') : undefined;
  }, [deriver, references, shown]);
}
