import type { Swing } from '../../reading/swing';
import { findPositions, type Positions } from '../../reading/positions';
import { current, desk } from '../../store';

let last: { readonly swing: Swing; readonly positions: Positions } | undefined;

/**
 * The instant a fitted view is framed for, s. A playhead held at a position follows it while dials move; the picture stays framed
 * as for the reference there, so that no dial moves the camera.
 */
export function framedTime(): number {
  const { held, t } = desk.getState().session;
  if (held === null) return t;
  const { referenceSwing, referenceCheckpoints } = current();
  if (last?.swing !== referenceSwing) {
    last = { swing: referenceSwing, positions: findPositions(referenceSwing, referenceCheckpoints) };
  }
  return last.positions[held] ?? t;
}
