import type { RootState } from '@react-three/fiber';
import type { Color, PerspectiveCamera } from 'three';
import { rad } from '../../math/angle';
import { createPose, type Pose } from '../../model/pose';
import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import type { Figure } from '../../figure/figure';
import { drawnPose, type Swing } from '../../reading/swing';
import { pointCamera } from '../../scene/camera/camera';
import { framePoints, pointsAt, type FramePoints } from '../../scene/camera/framePoints';
import { frameSwing, type Framing } from '../../scene/camera/framing';
import { mountScene } from '../../scene/mountScene';
import { SwingScene } from '../../scene/parts/SwingScene';
import { SceneFrame, type SwingShown } from '../../scene/sceneFrame';
import { themeOf, type SceneTokens } from '../../scene/setting/theme';
import { DIRECTIONS, fitView, type Direction, type Insets, type View } from '../../scene/camera/view';
import type { PixelSize } from './formats';
import { fillFrame, pointsToFill } from './fillFrame';
import { joinFramed, withoutGlass } from './framingBounds';
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

/** One picture: a take at a time (reference s), as seen from a view. */
export interface Shown {
  readonly take: number;
  readonly t: number;
  readonly view: View;
  /** In this pose instead of the take's own. */
  readonly pose?: Pose;
  /** Another take beside it, see-through. */
  readonly ghost?: ShownSwing | undefined;
  /** On nothing, without ground and glass. */
  readonly alone?: 'solid' | 'contour';
  readonly isTraceless?: boolean;
  /** Taken from where the stage's camera stands, which may be the player's eyes. */
  readonly isStill?: true;
}

/**
 * The stage's scene on a canvas of its own, off screen, in a worker or on the page. One scene serves all takes; the
 * canvas that `draw` returns is valid until the next call.
 */
export class ClipStage {
  private readonly canvas = createCanvas(1, 1);
  private readonly root;
  private readonly state: RootState;
  private readonly paper: Color | null;
  private readonly frame = new SceneFrame();
  private readonly pose = createPose();
  private readonly held = new Map<string, Float64Array>();
  private readonly framings = new Map<string, Framing>();
  private drawn = 0;
  private isLost = false;

  constructor(
    private readonly staging: Staging,
    private readonly takes: readonly ShownSwing[],
  ) {
    this.canvas.addEventListener('webglcontextlost', () => (this.isLost = true));
    this.root = mountScene(this.canvas, {
      width: 1,
      height: 1,
      dpr: 1,
      // One frame for each `draw`, and none in between.
      frameloop: 'never',
      // A figure that is shown alone stands on nothing.
      renderer: { alpha: true, preserveDrawingBuffer: true },
    });
    const theme = themeOf(staging.board, staging.tokens);
    this.paper = theme.paper;
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

  /** The figure as it is built, and where its ball lies, m. */
  get built(): { readonly figure: Figure; readonly ball: Float64Array } {
    if (!this.frame.figure) this.stand({ take: 0, t: this.takes[0].swing.curves.times[0] });
    return { figure: this.frame.figure!, ball: this.frame.ball };
  }

  /** A view from a direction that holds every swing here, and the reference with its glass, up to the strike: from as near as possible. */
  fit(direction: Direction, { width, height }: PixelSize, insets: Insets = NO_INSETS): View {
    const points = this.keep('all', () => joinFramed(this.framed()).struck);
    return fitView(direction, points, width, height, insets);
  }

  /**
   * The view of these takes at an instant (s): as near as backswing and downswing allow, opening for the follow-through. Where it may not
   * move, open from the start.
   */
  follow(
    direction: Direction,
    takes: readonly number[],
    t: number,
    { width, height }: PixelSize,
    insets: Insets,
    isFixed: boolean,
  ): View {
    if (isFixed) {
      const points = this.keep(`whole ${takes.join()}`, () => joinFramed(this.framed(takes)).whole);
      return fitView(direction, points, width, height, insets);
    }
    const { left, right, top, bottom } = insets;
    const key = [direction.yaw, takes.join('+'), width, height, left, right, top, bottom].join();
    let framing = this.framings.get(key);
    if (!framing) {
      framing = frameSwing(direction, joinFramed(this.framed(takes)), width, height, insets);
      this.framings.set(key, framing);
    }
    return framing.at(t);
  }

  /** A view that holds the figure with its club at one instant, as large as it can be. */
  fitAt(direction: Direction, take: number, t: number, { width, height }: PixelSize, insets: Insets): View {
    const { figure, ball } = this.built;
    const points = this.keep(`${take} at ${t}`, () =>
      Float64Array.from(pointsAt(this.takes[take].swing, figure, ball, t, true)),
    );
    return fitView(direction, points, width, height, insets);
  }

  /** The view of a take at an instant (s), as large as words of several lines let it be: see `fillFrame`. Where it may not move, open. */
  fill(
    direction: Direction,
    take: number,
    t: number,
    size: PixelSize,
    insets: Insets,
    highest: number,
    isFixed: boolean,
  ): View {
    const { left, right, top, bottom } = insets;
    const key = ['fill', direction.yaw, take, size.width, size.height, left, right, top, bottom, highest].join();
    let framing = this.framings.get(key);
    if (!framing) {
      const { figure, ball } = this.built;
      framing = fillFrame(direction, pointsToFill(this.takes[take].swing, figure, ball), size, insets, highest);
      this.framings.set(key, framing);
    }
    return framing.at(isFixed ? Infinity : t);
  }

  private keep(name: string, find: () => Float64Array): Float64Array {
    let points = this.held.get(name);
    if (!points) this.held.set(name, (points = find()));
    return points;
  }

  /** The chosen takes, without the glass; or all of them, and the reference with it. */
  private framed(chosen?: readonly number[]): readonly FramePoints[] {
    const { figure, ball } = this.built;
    const of = ({ swing }: ShownSwing): FramePoints => framePoints(swing, figure, ball, ball[2]);
    return chosen
      ? chosen.map((take) => withoutGlass(of(this.takes[take])))
      : [this.frame.points!, ...this.takes.map(of)];
  }

  /** Draws a picture; pens are `unit` px wide for a css px. */
  draw(shown: Shown, { width, height }: PixelSize, unit: number): Canvas {
    const { state, frame, canvas } = this;
    if (this.isLost) throw new PictureLost();
    if (canvas.width !== width || canvas.height !== height) state.setSize(width, height);
    frame.size.set(width / unit, height / unit);
    this.stand(shown);
    state.scene.background = shown.alone ? null : this.paper;
    pointCamera(state.camera as PerspectiveCamera, shown.view, frame.mirror);
    if (shown.isStill) frame.seeFrom(state.camera.position, true);
    state.advance(++this.drawn);
    if (this.isLost || state.gl.getContext().isContextLost()) throw new PictureLost();
    return canvas;
  }

  private stand({ take, t, pose, ghost, alone, isTraceless }: Omit<Shown, 'view'>): void {
    if (pose) this.pose.set(pose);
    else drawnPose(this.takes[take].swing, t, this.pose);
    const shown = shownOf(this.staging, this.takes[take], ghost, t, this.pose);
    this.frame.show({ ...shown, ...(alone ? { alone } : {}), ...(isTraceless ? { isTraceless } : {}) });
  }

  dispose(): void {
    this.root.unmount();
  }
}
