import { createStore } from 'zustand/vanilla';
import type { Pose } from '../../model/chain';
import { createBaseSwings } from '../derive/baseSwings';
import type { Derived } from '../derive/derived';
import { createDeriver } from '../derive/deriver';
import { createHonestSeen, type HonestSeen } from '../derive/honestSeen';
import { createCameraReader } from '../derive/throughCameras';
import { toArmAngle } from '../document/convert';
import { FRESH_DESK, type DeskState } from './state';

/** Cache: base swings of the desk, of what it compares and of its ledger, which are to be the same objects. */
export const deskBases = createBaseSwings();

/** Cache: what the desk shows, for its last state. Other documents (lessons, files) are worked out by derivers of their own. */
const deskDeriver = createDeriver(deskBases);

export const { derive, jointsOf } = deskDeriver;

/** What the coach's cameras make of the swing on the desk. */
export const throughCameras = createCameraReader(derive);

/** Cache: what was seen with the coach's camera reckoned in, for the last marks. */
const honestSeen = createHonestSeen();

/** What was seen as it counts: every word and every solver goes by this. The same object while nothing changes. */
export function honestSeenOf(state: DeskState): HonestSeen {
  const { seen, camera } = state.document;
  const { player, referenceSwing } = derive(state);
  return honestSeen(seen, camera.downTheLine, player, referenceSwing, toArmAngle(state.document));
}

/** The one store: document, session and history. Stage, plates and panels read it; actions write it. */
export const desk = createStore<DeskState>(() => settle(FRESH_DESK));

/** What the desk shows now. Cached: ask as often as needed. */
export const current = (): Derived => derive(desk.getState());

/** Pose at the playhead now. Read it, never keep it: the buffer is reused. */
export const currentPose = (): Pose => deskDeriver.poseOf(desk.getState());

/**
 * Calls `listener` after every change with the newest state, and the one it was called with before. A change that another listener
 * makes meanwhile comes with it or after it, never before.
 */
export function subscribe(listener: (state: DeskState, before: DeskState) => void): () => void {
  let seen = desk.getState();
  return desk.subscribe(() => {
    const now = desk.getState();
    if (now === seen) return;
    const before = seen;
    seen = now;
    listener(now, before);
  });
}

/** Completes a state with what follows from it: the standing verdicts, the last good ground, and the time of a held playhead. */
function settle(state: DeskState): DeskState {
  const { positions, verdicts, ground, status } = derive(state);
  const { held, t } = state.session;
  const lastGround = status === 'ready' ? ground : state.lastGround;
  const at = held === null ? null : positions[held];
  const isSettled = verdicts === state.verdicts && lastGround === state.lastGround && (at === null || at === t);
  if (isSettled) return state;
  return { ...state, verdicts, lastGround, ...(at !== null && { session: { ...state.session, t: at } }) };
}

/**
 * Puts a new state on the desk in one go. A playhead held at a position follows that position, so that whoever
 * listens sees dials, pose, plates and time of the same instant.
 */
export const put = (change: Partial<DeskState>): void => desk.setState(settle({ ...desk.getState(), ...change }), true);

/**
 * An empty desk. References that were found stay. Tests share one desk and begin each case with an empty one.
 */
export const clearDesk = (): void => put({ ...FRESH_DESK, references: desk.getState().references });
