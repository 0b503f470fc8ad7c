import type { Swing } from '../../reading/swing';
import { findPositions, type Positions } from '../../reading/positions';
import { current, desk } from '../../store';

/** Cache: the positions of a reference swing, by the swing. */
const positions = new WeakMap<Swing, Positions>();

/**
 * The instant a fitted view is framed for, s. A playhead held at a position follows it while dials move; the picture stays framed
 * as for the reference there, so that no dial moves the camera.
 */
export function framedTime(): number {
  const { held, t } = desk.getState().session;
  if (held === null) return t;
  const { referenceSwing, referenceCheckpoints } = current();
  let found = positions.get(referenceSwing);
  if (!found) positions.set(referenceSwing, (found = findPositions(referenceSwing, referenceCheckpoints)));
  return found[held] ?? t;
}
