import { createStore } from 'zustand/vanilla';
import type { ViewId } from '../../store';
import type { Insets, View } from '../../scene/camera/view';

/** Which view is wanted and where the user last left his own. Belongs to the picture alone: neither stored nor undone. */
export interface CameraState {
  readonly view: ViewId;
  /** The view that was asked for by name last: where a reset goes back to. */
  readonly home: ViewId;
  /** The user's last free view; undefined until he has made one. */
  readonly free: View | undefined;
  /** On the way to the view that was asked for last, rather than following it. */
  readonly isTurning: boolean;
  /** What chips and captions need of the picture's edges, css px. */
  readonly insets: Insets;
}

/** What view the stage is asked for and what it shows. Shared by stage, chips and still. */
export const cameraStore = createStore<CameraState>(() => ({
  view: 'free',
  home: 'free',
  free: undefined,
  isTurning: false,
  insets: { left: 12, right: 12, top: 12, bottom: 68 },
}));

/** Asks for a view: turned to, or cut to. */
export const askForView = (view: ViewId, isTurning: boolean): void =>
  cameraStore.setState({ view, home: view, isTurning });

/** The view that was asked for is there. */
export const arrive = (): void => {
  if (cameraStore.getState().isTurning) cameraStore.setState({ isTurning: false });
};

/** Forgets the user's own view: the three-quarter view is shown again. */
export const forgetFree = (): void =>
  cameraStore.setState({ view: 'free', home: 'free', free: undefined, isTurning: true });

/** The user moved the camera himself: what he sees now is his free view. */
export const leaveFree = (free: View): void => cameraStore.setState({ free, view: 'free', isTurning: false });
