import { useRef } from 'react';
import { loadSituation, SITUATIONS, useWritten, type Dialled, type SituationId } from '../../store';
import { ResetButton } from './MovementActions';

/** Id of the sheet, for the buttons that open it. */
export const SITUATIONS_ID = 'situations';

const TEXTS: ReadonlyMap<string, SituationId> = new Map(
  SITUATIONS.map(({ id, dialled }) => [JSON.stringify(dialled), id]),
);
/** The situation that is dialled just so, if any. */
const situationOf = (movements: Dialled): SituationId | undefined => TEXTS.get(JSON.stringify(movements));

/** Typical swings in a sheet that lies on the dials and stays open: tap one after another, figure and plates answer. */
export function Situations() {
  const list = useRef<HTMLDivElement>(null);
  useWritten(
    ({ document }) => situationOf(document.movements),
    (loaded) => {
      SITUATIONS.forEach(({ id }, i) => list.current?.children[i].setAttribute('aria-pressed', String(id === loaded)));
    },
  );
  return (
    <dialog id={SITUATIONS_ID} className="situations" popover="auto" aria-label="Typical swings">
      <div className="situations-head">
        <h2>Typical swings</h2>
        <button type="button" className="text-button" popoverTarget={SITUATIONS_ID} popoverTargetAction="hide">
          Close
        </button>
      </div>
      <div className="situations-list" ref={list}>
        {SITUATIONS.map(({ id, label }) => (
          <button key={id} type="button" className="plain" onClick={() => loadSituation(id)}>
            {label}
          </button>
        ))}
      </div>
      <div className="situations-acts">
        <ResetButton />
      </div>
    </dialog>
  );
}
