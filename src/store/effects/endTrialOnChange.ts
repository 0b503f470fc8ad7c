import { subscribe } from '../desk/desk';
import { stopTrial } from '../desk/sessionActions';

/** Whoever changes the swing, or closes the drawer, has seen enough of a part that is being played. Answers how to end that. */
export const endTrialOnChange = (): (() => void) =>
  subscribe((now, before) => {
    if (now.document !== before.document || now.session.drawer !== before.session.drawer) stopTrial();
  });
