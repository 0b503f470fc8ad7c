import { resetAll } from '../../store';

/** Puts every dial back to the reference. */
export const ResetButton = () => (
  <button type="button" className="plain" onClick={resetAll}>
    Reset all
  </button>
);
