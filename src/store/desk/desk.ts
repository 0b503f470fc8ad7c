import { createStore } from 'zustand/vanilla';
import type { Pose } from '../../model/chain';
import { derive, poseOf, type Derived } from '../derive/derived';
import { whenFound } from '../derive/references';
import { FRESH_DESK, type DeskState } from './state';

/** The one store: document, session and history. Stage, plates and panels read it; actions write it. */
export const desk = createStore<DeskState>(() => FRESH_DESK);

/** What the desk shows now. Cached: ask as often as needed. */
export const current = (): Derived => derive(desk.getState());

/** Pose at the playhead now. Read it, never keep it: the buffer is reused. */
export const currentPose = (): Pose => poseOf(desk.getState());

/** Calls `listener` once after every change. Answers the function that ends it. */
export const subscribe = (listener: (state: DeskState, before: DeskState) => void): (() => void) =>
  desk.subscribe(listener);

/**
 * Puts a new state on the desk in one go. A playhead held at a position follows that position, so that whoever
 * listens sees dials, pose, plates and time of the same instant.
 */
export function put(change: Partial<DeskState>): void {
  const next: DeskState = { ...desk.getState(), ...change };
  const { held, t } = next.session;
  const at = held === null ? null : derive(next).positions[held];
  desk.setState(at === null || at === t ? next : { ...next, session: { ...next.session, t: at } }, true);
}

/** Starts from nothing: for a fresh beginning, and for tests. */
export const clearDesk = (): void => put(FRESH_DESK);

clearDesk();
whenFound(() => put({ found: desk.getState().found + 1 }));
