import { Vector2, type PerspectiveCamera, type Scene, type WebGLRenderer } from 'three';
import { rad } from '../math/angle';
import { PART } from '../figure/partIds';
import { pointOfPart } from '../figure/place';
import { heelLiftAt, placeGaze } from '../figure/stance';
import { current, desk, stagePicture, type ViewId } from '../store';
import type { Captions } from './captions';
import { DeskScene } from './deskScene';
import { framedTime } from './framedTime';
import { cameraStore, lookToward } from './cameraStore';
import { pointCamera } from '../scene/camera/camera';
import type { Place } from '../scene/lines/lineBatch';
import { readTheme, type Board } from '../scene/setting/theme';
import { frameSwing, type Framing } from '../scene/camera/framing';
import { DIRECTIONS, eyeDirection, type Insets, type View } from '../scene/camera/view';

const EYES_FOV = rad(64);
/** Eyes rest this far inside the ball, m, so that hands and feet are seen as well. */
const LOWER = 0.22;
/** Before the ball is struck they look at least this far ahead of themselves, m (against the ball line's direction). */
const LEAST_AHEAD = -0.02;
/** Nearer than this to the head, m, the camera stands in it. */
const INSIDE_HEAD = 0.3;

/** Runs the stage from frame to frame: scene, camera and captions follow the desk and the lens. No React in here. */
export class StageController {
  private readonly size = new Vector2(1, 1);
  private scene: DeskScene | undefined;
  private board: Board | undefined;
  private goal: View | undefined;
  private goalFor: readonly unknown[] = [];
  private framing: Framing | undefined;
  /** The instant the goal is framed for. */
  private framedAt = 0;
  private isInside = false;
  private readonly eye = new Float64Array(3);
  private readonly gaze = new Float64Array(3);

  constructor(
    private readonly renderer: WebGLRenderer,
    private readonly world: Scene,
    private readonly camera: PerspectiveCamera,
    private readonly captions: Captions | undefined,
  ) {
    renderer.shadowMap.autoUpdate = false;
    // A world that places itself anew makes all that stands in it do so too.
    world.matrixAutoUpdate = false;
  }

  /** Left-handed pictures are mirrored. */
  get mirror(): 1 | -1 {
    return current().player.handed === 'left' ? -1 : 1;
  }

  /** Gets one frame ready. `now` in ms on the page's clock, the size of the picture in css px. */
  frame(now: number, width: number, height: number): void {
    this.size.set(width, height);
    const { board } = desk.getState().document;
    if (board !== this.board || !this.scene) this.dress(board);
    const scene = this.scene!;
    const hasMoved = scene.update(this.isInside);
    // Turning the camera moves no shadow.
    if (hasMoved) this.renderer.shadowMap.needsUpdate = true;
    const { view, free, insets } = cameraStore.getState();
    const isOther = this.want(view, free, insets, scene.points, width, height, this.mirror);
    if (isOther || (hasMoved && view === 'playersEyes')) this.goal = this.aim(view, scene);
    else this.follow();
    const shown = lookToward(this.goal!, now);
    // A camera that stands still is pointed already.
    if (shown !== stagePicture.getState().drawn?.view || isOther) {
      pointCamera(this.camera, shown, this.mirror);
      stagePicture.setState({ drawn: { view: shown, width, height } });
    }
    const inside = this.isHeadAround(scene);
    if (inside !== this.isInside) {
      this.isInside = inside;
      scene.update(inside);
      this.renderer.shadowMap.needsUpdate = true;
    }
    this.captions?.place(this.camera, scene, this.size, this.mirror, insets);
  }

  /** What a lost context took along is drawn anew. */
  restore(): void {
    this.renderer.shadowMap.needsUpdate = true;
  }

  /** Notes what the goal depends on. Answers whether any of it is another than in the last frame. */
  private want(...wanted: readonly unknown[]): boolean {
    const { goalFor } = this;
    const isOther = wanted.some((value, i) => value !== goalFor[i]);
    if (isOther) this.goalFor = wanted;
    return isOther;
  }

  private dress(board: Board): void {
    const theme = readTheme(board);
    if (this.scene) {
      this.world.remove(this.scene.root);
      this.scene.dispose();
    }
    this.scene = new DeskScene(theme, this.size);
    this.world.add(this.scene.root);
    this.world.background = theme.paper;
    this.board = board;
    this.goalFor = [];
  }

  private aim(view: ViewId, scene: DeskScene): View {
    const { free, insets } = cameraStore.getState();
    this.framing = undefined;
    if (view === 'playersEyes') return this.throughEyes(scene);
    if (view === 'free' && free) return free;
    this.framing = frameSwing(DIRECTIONS[view], scene.points!, this.size.x, this.size.y, this.unmirrored(insets));
    this.framedAt = framedTime();
    return this.framing.at(this.framedAt);
  }

  /** Insets are of the screen; a fitted view is worked out for the right-handed picture. */
  private unmirrored(insets: Insets): Insets {
    return this.mirror === 1 ? insets : { ...insets, left: insets.right, right: insets.left };
  }

  /** A fitted view opens up with the playhead. */
  private follow(): void {
    if (!this.framing) return;
    const t = framedTime();
    if (t === this.framedAt) return;
    this.framedAt = t;
    this.goal = this.framing.at(t);
  }

  private throughEyes(scene: DeskScene): View {
    const { model, ball } = scene;
    const { k } = model!.figure.measures;
    const { eye, gaze } = this;
    pointOfPart(model!.placement, PART.headEgg, 0, 0.07 * k, 0.05 * k, eye);
    const heelLift = heelLiftAt(current().swing, desk.getState().session.t);
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

  private isHeadAround(scene: DeskScene): boolean {
    const { model } = scene;
    if (!model) return false;
    pointOfPart(model.placement, PART.headEgg, 0, 0.066 * model.figure.measures.k, 0, this.eye);
    const { x, y, z } = this.camera.position;
    return Math.hypot(x - this.eye[0], y - this.eye[1], z * this.mirror - this.eye[2]) < INSIDE_HEAD;
  }

  dispose(): void {
    if (this.scene) this.world.remove(this.scene.root);
    this.scene?.dispose();
    this.captions?.dispose();
  }
}
