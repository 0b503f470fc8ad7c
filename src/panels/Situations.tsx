import { useRef } from 'react';
import { loadSituation, SITUATIONS, useDesk } from '../store';
import { ExaggerateSwitch, GhostButton, ResetButton } from './MovementActions';

export const SITUATIONS_ID = 'situations';

/** Ready-made situations in a sheet that opens over the stage; a tap loads one and closes it. */
export function Situations() {
  const sheet = useRef<HTMLDialogElement>(null);
  const movements = useDesk(({ document }) => document.movements);
  const now = JSON.stringify(movements);
  return (
    <dialog ref={sheet} id={SITUATIONS_ID} className="situations" popover="auto" aria-label="Situations">
      <div className="situations-head">
        <h2>Situations</h2>
        <button type="button" className="text-button" popoverTarget={SITUATIONS_ID} popoverTargetAction="hide">
          Close
        </button>
      </div>
      <div className="situations-list">
        {SITUATIONS.map(({ id, label, dialled }) => (
          <button
            key={id}
            type="button"
            className="plain"
            aria-pressed={now === JSON.stringify(dialled)}
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
