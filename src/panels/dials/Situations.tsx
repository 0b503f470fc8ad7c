import { useRef } from 'react';
import { loadSituation, SITUATIONS, useWritten, type Dialled, type SituationId } from '../../store';
import { ExaggerateSwitch, GhostButton, ResetButton } from './MovementActions';

/** Id of the sheet, for the buttons that open it. */
export const SITUATIONS_ID = 'situations';

const TEXTS: ReadonlyMap<string, SituationId> = new Map(
  SITUATIONS.map(({ id, dialled }) => [JSON.stringify(dialled), id]),
);
/** The situation that is dialled just so, if any. */
const situationOf = (movements: Dialled): SituationId | undefined => TEXTS.get(JSON.stringify(movements));

/** Ready-made situations in a sheet that opens over the stage; a tap loads one and closes it. */
export function Situations() {
  const sheet = useRef<HTMLDialogElement>(null);
  const list = useRef<HTMLDivElement>(null);
  useWritten(
    ({ document }) => situationOf(document.movements),
    (loaded) => {
      SITUATIONS.forEach(({ id }, i) => list.current?.children[i].setAttribute('aria-pressed', String(id === loaded)));
    },
  );
  return (
    <dialog ref={sheet} id={SITUATIONS_ID} className="situations" popover="auto" aria-label="Situations">
      <div className="situations-head">
        <h2>Situations</h2>
        <button type="button" className="text-button" popoverTarget={SITUATIONS_ID} popoverTargetAction="hide">
          Close
        </button>
      </div>
      <div className="situations-list" ref={list}>
        {SITUATIONS.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            className="plain"
            onClick={() => {
              loadSituation(id);
              sheet.current?.hidePopover();
            }}
          >
            {label}
          </button>
        ))}
      </div>
      <div className="situations-acts">
        <ResetButton />
        <GhostButton />
        <ExaggerateSwitch />
      </div>
    </dialog>
  );
}
