import { dialOf, type MovementGroup, type MovementId } from '../../model/movements';
import type { CheckpointId } from '../../reading/checkpoints';
import { change, endGesture } from './actions';
import { desk, put } from './desk';
import type { Session } from './session';
import { withDial, type Dialled } from '../document/document';
import { drawGuess } from './guess';
import { nameOfChange } from '../document/labels';
import { setDrawer } from './sessionActions';
import { asKept, USUAL_GIVE_CM, type Sighting } from '../document/sighting';
import type { Brought, SwingId, WhyChoices } from './whyState';

export { toDialled } from '../document/convert';

/** Changes what the drawers of why and what to change are asked about: session only. */
export const setWhy = (part: Partial<WhyChoices>): void => {
  const { session } = desk.getState();
  put({ session: { ...session, why: { ...session.why, ...part } } });
};

/** Where a swing can be chosen: both ends of the ledger, and both that are compared. */
export type SwingPlace = 'from' | 'to' | 'solid' | 'ghost';

/** Chooses a swing for a place. One from outside the desk is brought along; what no place shows any more is let go. */
export function chooseSwing(place: SwingPlace, id: SwingId, brought?: Brought['swing']): void {
  const { why } = desk.getState().session;
  const next = { ...why, [place]: id };
  const used = [next.from, next.to, next.solid, next.ghost];
  const others = why.brought.filter((one) => one.id !== id && used.includes(one.id));
  setWhy({ [place]: id, brought: brought ? [...others, { id, swing: brought }] : others });
}

/** Locks a movement, so that no plan touches it, or unlocks it. */
export function setLocked(group: MovementGroup, isLocked: boolean): void {
  const others = desk.getState().session.why.locked.filter((one) => one !== group);
  setWhy({ locked: isLocked ? [...others, group] : others, plan: null });
}

/** Chooses a movement for one side of the map. The same on both sides swaps them. */
export function setAxis(side: 'x' | 'y', id: MovementId): void {
  const { x, y } = desk.getState().session.why;
  const other = side === 'x' ? y : x;
  const swapped = other === id ? (side === 'x' ? x : y) : other;
  setWhy(side === 'x' ? { x: id, y: swapped } : { x: swapped, y: id });
}

/** Several dials at once, in the units of the sliders and brought onto their steps; one change. */
export function setDials(values: readonly (readonly [MovementId, number])[]): void {
  const { document } = desk.getState();
  const movements = values.reduce((dialled, [id, value]) => withDial(dialled, id, value), document.movements);
  if (movements !== document.movements) {
    change(nameOfChange(document, { ...document, movements }), (now) => ({ ...now, movements }));
  }
}

/** Makes other dials the swing now: one undo step with this name. What was seen and the plan stay as they are. */
export function takeDialled(label: string, movements: Dialled): void {
  endGesture();
  change(label, (document) => ({ ...document, movements }));
  // A comparison with the very swing that is dialled now shows nothing; the plan stays in sight.
  if (desk.getState().session.ghost !== 'plan') showGhost(null);
}

/** Keeps dials, or the chosen plan, on screen for comparison, or lets them go. */
export const showGhost = (ghost: Session['ghost']): void => put({ session: { ...desk.getState().session, ghost } });

/** One dial's value in the unit of its slider. */
export const toEdge = (id: MovementId, value: number): number => value / dialOf(id).edgeUnit;

/** What the coach saw at a checkpoint, or nothing any more. Undoable. */
export function setSeen(id: CheckpointId, sighting: Sighting | null): void {
  const label = sighting ? 'What I saw' : 'Clear what I saw';
  change(label, (document) => ({ ...document, seen: { ...document.seen, [id]: sighting && asKept(sighting) } }));
}

/**
 * A ring on a plate was pulled and let go, m: that is what the coach saw, and the drawer with the explanations opens. While
 * guessing first it is where the player thinks the shaft will go.
 */
export function sawAt(id: CheckpointId, metres: number): void {
  const { document, session } = desk.getState();
  if (session.guess && session.guess.stage !== 'shown') return drawGuess(id, metres);
  const plusMinusCm = document.seen[id]?.plusMinusCm ?? USUAL_GIVE_CM;
  setSeen(id, { cm: metres * 100, plusMinusCm, from: 'plate' });
  if (session.drawer !== 'seen') setDrawer('seen');
}
