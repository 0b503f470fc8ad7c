import { holdGhost, resetAll, setExaggerate, useDesk } from '../../store';

/** Puts every movement back to zero. */
export const ResetButton = () => (
  <button type="button" className="plain" onClick={resetAll}>
    Reset all
  </button>
);

/** Keeps the swing as it is now on screen for comparison, and lets it go again. */
export function GhostButton() {
  const held = useDesk(({ session }) => session.ghost !== null);
  return (
    <button type="button" className="plain" aria-pressed={held} onClick={() => holdGhost(!held)}>
      Hold ghost
    </button>
  );
}

/** Doubles the deviation from the reference, for showing only. */
export function ExaggerateSwitch() {
  const on = useDesk(({ session }) => session.exaggerate);
  return (
    <button type="button" className="plain" role="switch" aria-checked={on} onClick={() => setExaggerate(!on)}>
      Exaggerate
    </button>
  );
}
