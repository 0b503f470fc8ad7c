import { createStore } from 'zustand/vanilla';
import type { ViewId } from '../store';
import { mixViews, type Insets, type View } from '../scene/camera/view';

/** Time a chip takes to turn the view, ms. */
const TURN_MS = 260;

interface Turning {
  readonly from: View;
  /** ms on the page's clock. */
  readonly since: number;
}

/** Where the camera is and where the user last left it. Belongs to the picture alone: neither stored nor undone. */
export interface CameraState {
  /** What is shown now; undefined before the first frame. */
  readonly shown: View | undefined;
  /** The user's last free view; undefined until he has made one. */
  readonly free: View | undefined;
  readonly turning: Turning | undefined;
  readonly view: ViewId;
  /** What chips and captions need of the picture's edges, css px. */
  readonly insets: Insets;
}

const FRESH: CameraState = {
  shown: undefined,
  free: undefined,
  turning: undefined,
  view: 'free',
  insets: { left: 12, right: 12, top: 12, bottom: 68 },
};

export const cameraStore = createStore<CameraState>(() => FRESH);

/** Starts turning from what is shown toward another view; cut when motion is reduced. */
export function turnToward(view: ViewId, now: number, isCut: boolean): void {
  const { shown, free } = cameraStore.getState();
  // A drag makes its own free view: there is nothing to turn to.
  const isThere = view === 'free' && free !== undefined && shown === free;
  cameraStore.setState({ view, turning: isCut || isThere || !shown ? undefined : { from: shown, since: now } });
}

/** Ease of the tokens (cubic-bezier .3 0 .2 1), near enough for a quarter of a second. */
const ease = (u: number): number => (u < 0.5 ? 4 * u * u * u : 1 - (2 - 2 * u) ** 3 / 2);

/** The view to show at `now` (ms) on the way to `goal`. */
export function lookToward(goal: View, now: number): View {
  const { turning } = cameraStore.getState();
  const u = turning ? Math.min(1, Math.max(0, (now - turning.since) / TURN_MS)) : 1;
  const shown = turning && u < 1 ? mixViews(turning.from, goal, ease(u)) : goal;
  if (cameraStore.getState().shown !== shown || turning)
    cameraStore.setState({ shown, turning: u < 1 ? turning : undefined });
  return shown;
}

/** Forgets the user's own view: the three-quarter view is shown again. */
export const forgetFree = (): void => cameraStore.setState({ free: undefined });

/** The user moved the camera himself: what he sees now is his free view. */
export function moveFreely(change: (view: View) => View): void {
  const { shown } = cameraStore.getState();
  if (!shown) return;
  const free = change(shown);
  cameraStore.setState({ free, shown: free, view: 'free', turning: undefined });
}
