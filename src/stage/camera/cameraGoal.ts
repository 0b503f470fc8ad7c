import type { ViewId } from '../../store';
import { frameSwing, type Framing } from '../../scene/camera/framing';
import { DIRECTIONS, type Insets, type View } from '../../scene/camera/view';
import type { SceneFrame } from '../../scene/sceneFrame';
import type { CameraState } from './cameraStore';
import { viewThroughEyes } from './throughEyes';

/** What a goal depends on besides the frame. */
export interface Wanted extends Pick<CameraState, 'view' | 'free' | 'insets'> {
  /** css px. */
  readonly width: number;
  readonly height: number;
  /** The instant a fitted view is framed for, s. */
  readonly framedTime: number;
}

/** Where the camera should stand for the view that is wanted. The same view object as long as nothing changes. */
export class CameraGoal {
  private goal: View | undefined;
  private goalFor: readonly unknown[] = [];
  private framing: Framing | undefined;
  private framedAt = 0;

  /** The frame has to show something. */
  find(frame: SceneFrame, wanted: Wanted): View {
    const { view, free, insets, width, height, framedTime } = wanted;
    const isFollowed = view === 'playersEyes' ? frame.version : 0;
    if (this.isOther(view, free, insets, width, height, frame.points, frame.mirror, isFollowed)) {
      this.framing = undefined;
      if (view === 'playersEyes') this.goal = viewThroughEyes(frame, width, height, insets);
      else if (view === 'free' && free) this.goal = free;
      else this.goal = this.fit(frame, view, wanted);
    } else if (this.framing && framedTime !== this.framedAt) {
      // A fitted view opens up with the playhead.
      this.framedAt = framedTime;
      this.goal = this.framing.at(framedTime);
    }
    return this.goal!;
  }

  private isOther(...now: readonly unknown[]): boolean {
    const isOther = now.some((value, i) => value !== this.goalFor[i]);
    if (isOther) this.goalFor = now;
    return isOther;
  }

  private fit(
    { points, mirror }: SceneFrame,
    view: Exclude<ViewId, 'playersEyes'>,
    { width, height, insets, framedTime }: Wanted,
  ): View {
    this.framing = frameSwing(DIRECTIONS[view], points!, width, height, unmirrored(insets, mirror));
    this.framedAt = framedTime;
    return this.framing.at(framedTime);
  }
}

/** Insets are of the screen; a fitted view is worked out for the right-handed picture. */
const unmirrored = (insets: Insets, mirror: 1 | -1): Insets =>
  mirror === 1 ? insets : { ...insets, left: insets.right, right: insets.left };
