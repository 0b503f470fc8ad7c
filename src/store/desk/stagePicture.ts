import { createStore } from 'zustand/vanilla';

/** Where a camera stands. World frame of the right-handed player, whoever is shown. */
interface Viewpoint {
  /** What it looks at, m. */
  readonly target: readonly [number, number, number];
  /** rad; 0 stands on +Z, +90 deg on +X (the target's side). */
  readonly yaw: number;
  /** rad above the horizon. */
  readonly pitch: number;
  /** From the target to the eye, m. */
  readonly distance: number;
  /** Vertical field of view, rad. */
  readonly fov: number;
}

/** The picture on the stage as it was drawn last: from where, and how large, css px. */
export interface StagePicture {
  readonly view: Viewpoint;
  readonly width: number;
  readonly height: number;
}

/** What stage and stills meet in. Neither stored nor undone; undefined before the first picture. */
export const stagePicture = createStore<{ readonly drawn: StagePicture | undefined }>(() => ({ drawn: undefined }));
