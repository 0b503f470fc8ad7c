import type { Movements } from '../../model/movements';
import type { Difference } from '../../solving/family/signs';
import { CHECKPOINTS } from '../../reading/checkpointTable';
import type { Dialled } from '../document/document';
import { toDialled } from '../document/convert';
import { desk, put } from '../desk/desk';
import { holdAt, setView } from '../desk/sessionActions';
import { FRESH_SESSION, type ViewId } from '../desk/session';

/** A member of a family as dials; it starts from the reference, where the pelvis turns with the chest. */
export const dialledOf = (movements: Movements): Dialled =>
  toDialled(movements, { ...desk.getState().document.movements, pelvis: null });

/**
 * Shows another body on the stage, and the rest of its family in thin lines, while it is looked at. Answers how to bring back what stood
 * there before.
 */
export function lendGhost(): {
  readonly show: (dialled: Dialled, others: readonly Dialled[]) => void;
  readonly end: () => void;
} {
  const { ghost: before } = desk.getState().session;
  let shown: Dialled | undefined;
  const see = (ghost: typeof before, fan: readonly Dialled[]): void =>
    put({ session: { ...desk.getState().session, ghost, fan } });
  return {
    show(dialled, others) {
      shown = dialled;
      see(dialled, others);
    },
    end() {
      if (!shown) return;
      const { ghost } = desk.getState().session;
      // A ghost that somebody else put there meanwhile stays.
      see(ghost === shown ? before : ghost, FRESH_SESSION.fan);
    },
  };
}

const STAGE_VIEWS: Readonly<Record<Difference['sign']['view'], ViewId>> = {
  downTheLine: 'downTheLine',
  faceOn: 'faceOn',
  fromAbove: 'overhead',
  ballFlight: 'downTheLine',
};

/** Turns the stage to where a difference is seen, and holds the swing there. */
export function lookAt({ sign, at }: Pick<Difference, 'sign' | 'at'>): void {
  setView(STAGE_VIEWS[sign.view]);
  holdAt(at === 'ball' ? 'P7' : CHECKPOINTS[at].position);
}
