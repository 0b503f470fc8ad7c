import { rad } from '../../math/angle';
import { PART } from '../../figure/partIds';
import { pointOfPart } from '../../figure/place';
import { placeGaze } from '../../figure/stance';
import type { ViewId } from '../../store';
import { frameSwing, type Framing } from '../../scene/camera/framing';
import { DIRECTIONS, eyeDirection, type Insets, type View } from '../../scene/camera/view';
import type { Place } from '../../scene/lines/lineBatch';
import type { SceneFrame } from '../../scene/sceneFrame';
import type { CameraState } from './cameraStore';

const EYES_FOV = rad(64);
/** Eyes rest this far inside the ball, m, so that hands and feet are seen as well. */
const LOWER = 0.22;
/** Before the ball is struck they look at least this far ahead of themselves, m (against the ball line's direction). */
const LEAST_AHEAD = -0.02;

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
  private readonly eye = new Float64Array(3);
  private readonly gaze = new Float64Array(3);

  /** The frame has to show something. */
  find(frame: SceneFrame, wanted: Wanted): View {
    const { view, free, insets, width, height, framedTime } = wanted;
    const isFollowed = view === 'playersEyes' ? frame.version : 0;
    if (this.isOther(view, free, insets, width, height, frame.points, frame.mirror, isFollowed)) {
      this.framing = undefined;
      if (view === 'playersEyes') this.goal = this.throughEyes(frame);
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

  private throughEyes({ figure, placement, ball, heelLift }: SceneFrame): View {
    const { k } = figure!.measures;
    const { eye, gaze } = this;
    pointOfPart(placement, PART.headEgg, 0, 0.07 * k, 0.05 * k, eye);
    placeGaze(ball, heelLift, eye, gaze);
    // Until the ball is struck the picture keeps level with the target line, as one sees it, wherever the head sways.
    const turn = Math.max(0, Math.min(1, (heelLift - 0.45) * 2));
    // Nor does it turn upside down when the head comes over the hands: eyes never look back past the feet.
    const back = eye[2] - gaze[2];
    const [x, y] = [(eye[0] - gaze[0]) * turn, eye[1] - gaze[1]];
    const z = back * turn + Math.min(back + LOWER, LEAST_AHEAD) * (1 - turn);
    const size = Math.hypot(x, y, z);
    const distance = Math.min(size, 1.6);
    const yaw = Math.atan2(x, z);
    const pitch = Math.asin(y / size);
    const away = eyeDirection({ yaw, pitch });
    const target = [0, 1, 2].map((i) => eye[i] - away[i] * distance) as unknown as Place;
    return { target, yaw, pitch, distance, fov: EYES_FOV };
  }
}

/** Insets are of the screen; a fitted view is worked out for the right-handed picture. */
const unmirrored = (insets: Insets, mirror: 1 | -1): Insets =>
  mirror === 1 ? insets : { ...insets, left: insets.right, right: insets.left };
