import type { RootState } from '@react-three/fiber';
import type { PerspectiveCamera } from 'three';
import { rad } from '../../math/angle';
import { createPose, type Pose } from '../../model/pose';
import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { drawnPose, type Swing } from '../../reading/swing';
import { pointCamera } from '../../scene/camera/camera';
import { framePoints, type FramePoints } from '../../scene/camera/framePoints';
import { mountScene } from '../../scene/mountScene';
import { SwingScene } from '../../scene/parts/SwingScene';
import { SceneFrame, type SwingShown } from '../../scene/sceneFrame';
import { themeOf, type SceneTokens } from '../../scene/setting/theme';
import { DIRECTIONS, fitView, type Direction, type Insets, type View } from '../../scene/camera/view';
import type { PixelSize } from './formats';
import { pointsUntil } from './framingBounds';
import type { CameraId } from './storyboard';
import { createCanvas, type Canvas } from '../picture/canvasPen';
import type { ShownSwing } from '../task/exportSnapshot';

/** An orbit goes from down the line round to face on. */
const ORBIT = { from: rad(-90), to: rad(0), pitch: rad(9), fov: rad(26) } as const;

/** Where a camera looks from, `share` (0 to 1) of its shot gone. */
export function directionOf(camera: CameraId, share: number): Direction {
  if (camera !== 'orbit') return DIRECTIONS[camera];
  const eased = share * share * (3 - 2 * share);
  return { yaw: ORBIT.from + (ORBIT.to - ORBIT.from) * eased, pitch: ORBIT.pitch, fov: ORBIT.fov };
}

const NO_INSETS: Insets = { left: 0, right: 0, top: 0, bottom: 0 };

/** The graphics context was lost while rendering. */
class PictureLost extends Error {
  override name = 'PictureLost';
}

/** What the scene needs besides the swings. Plain data, so that it can be sent to a worker. */
export interface Staging {
  readonly body: Body;
  readonly club: Club;
  readonly handed: 'right' | 'left';
  readonly referenceSwing: Swing;
  readonly board: 'light' | 'dark';
  readonly tokens: SceneTokens;
}

/** What a scene shows of a take at a time (reference s), in a pose: with the ball on its way once it is struck. */
export const shownOf = (
  { body, club, handed, referenceSwing }: Staging,
  { swing, struck }: ShownSwing,
  ghost: ShownSwing | undefined,
  t: number,
  pose: Pose,
): SwingShown => ({
  body,
  club,
  handed,
  swing,
  referenceSwing,
  t,
  pose,
  ...(struck ? { struck } : {}),
  ...(ghost ? { ghost: { swing: ghost.swing, t } } : {}),
});

/**
 * The stage's scene on a canvas of its own, off screen, in a worker or on the page. One scene serves all takes; the
 * canvas that `draw` returns is valid until the next call.
 */
export class ClipStage {
  private readonly canvas = createCanvas(1, 1);
  private readonly root;
  private readonly state: RootState;
  private readonly frame = new SceneFrame();
  private readonly pose = createPose();
  private readonly held = new Map<number, Float64Array>();
  private drawn = 0;
  private isLost = false;

  constructor(
    private readonly staging: Staging,
    private readonly takes: readonly ShownSwing[],
    private readonly ghost?: ShownSwing | undefined,
  ) {
    this.canvas.addEventListener('webglcontextlost', () => (this.isLost = true));
    this.root = mountScene(this.canvas, {
      width: 1,
      height: 1,
      dpr: 1,
      // One frame for each `draw`, and none in between.
      frameloop: 'never',
      renderer: { alpha: false, preserveDrawingBuffer: true },
    });
    const theme = themeOf(staging.board, staging.tokens);
    this.state = this.root.render(<SwingScene frame={this.frame} theme={theme} />).getState();
  }

  /** The longest side a picture may have here, px. */
  get longest(): number {
    const gl = this.state.gl.getContext();
    return Math.min(
      gl.getParameter(gl.MAX_RENDERBUFFER_SIZE) as number,
      gl.getParameter(gl.MAX_TEXTURE_SIZE) as number,
    );
  }

  /**
   * A view from a direction that holds every swing here in the picture less its insets (px) until an instant (s): from
   * as near as possible. The camera stays where it is during the shot.
   */
  fit(direction: Direction, { width, height }: PixelSize, insets: Insets = NO_INSETS, until = -Infinity): View {
    let points = this.held.get(until);
    if (!points) this.held.set(until, (points = pointsUntil(this.framed(), until)));
    return fitView(direction, points, width, height, insets);
  }

  /** The reference with its glass, and the swings that are shown. */
  private framed(): readonly FramePoints[] {
    this.stand(0, this.takes[0].swing.curves.times[0]);
    const { points, figure, ball } = this.frame;
    const shown = [...this.takes, ...(this.ghost ? [this.ghost] : [])];
    return [points!, ...shown.map(({ swing }) => framePoints(swing, figure!, ball, ball[2]))];
  }

  /** Draws a take at a time (reference s) as seen from `view`; pens are `unit` px wide for a css px. */
  draw(take: number, t: number, view: View, { width, height }: PixelSize, unit: number, pose?: Pose): Canvas {
    const { state, frame, canvas } = this;
    if (this.isLost) throw new PictureLost();
    if (canvas.width !== width || canvas.height !== height) state.setSize(width, height);
    frame.size.set(width / unit, height / unit);
    this.stand(take, t, pose);
    pointCamera(state.camera as PerspectiveCamera, view, frame.mirror);
    // A still is taken from where the stage's camera stands.
    if (pose) frame.seeFrom(state.camera.position, true);
    state.advance(++this.drawn);
    if (this.isLost || state.gl.getContext().isContextLost()) throw new PictureLost();
    return canvas;
  }

  private stand(take: number, t: number, pose?: Pose): void {
    if (pose) this.pose.set(pose);
    else drawnPose(this.takes[take].swing, t, this.pose);
    this.frame.show(shownOf(this.staging, this.takes[take], this.ghost, t, this.pose));
  }

  dispose(): void {
    this.root.unmount();
  }
}
