import type { RootState } from '@react-three/fiber';
import { BoxGeometry, Mesh, MeshBasicMaterial, type PerspectiveCamera } from 'three';
import type { PictureSize } from '../../../src/film/marks';
import type { Pinhole } from '../../../src/film/pinhole';
import { createPose } from '../../../src/model/chain';
import { swingPose } from '../../../src/reading/swing';
import { mountScene } from '../../../src/scene/mountScene';
import { SwingScene } from '../../../src/scene/parts/SwingScene';
import { SceneFrame } from '../../../src/scene/sceneFrame';
import { SCENE_TOKENS, themeOf, type SceneTokens } from '../../../src/scene/setting/theme';
import type { Simulated } from '../../unit/filmSimulated';

/** Length and thickness of the stick on the ground, m, and its colour: one that nothing else has. */
export const STICK = { long: 1.2, thick: 0.012, colour: '#ff2000' } as const;
/** Colours in place of the page's. */
const PAPER: Readonly<Record<string, string>> = { paper: '#2b3230', ink: '#e6dfd0' };

/** The app's own scene, seen by a film's camera. */
export class FilmScene {
  readonly canvas: OffscreenCanvas;
  private readonly root;
  private readonly state: RootState;
  private readonly frame = new SceneFrame();
  private readonly pose = createPose();
  private readonly stick = new Mesh(
    new BoxGeometry(STICK.long, STICK.thick, STICK.thick),
    new MeshBasicMaterial({ color: STICK.colour }),
  );
  private drawn = 0;

  constructor(
    private readonly film: Simulated,
    /** Of the pictures, and of the camera's own, px. */
    { w, h }: PictureSize,
  ) {
    this.canvas = new OffscreenCanvas(w, h);
    this.root = mountScene(this.canvas, {
      width: w,
      height: h,
      dpr: 1,
      frameloop: 'never',
      renderer: { alpha: false, preserveDrawingBuffer: true },
    });
    const tokens = Object.fromEntries(SCENE_TOKENS.map((name) => [name, PAPER[name] ?? '#808080']));
    const theme = themeOf('dark', tokens as SceneTokens);
    this.state = this.root.render(<SwingScene frame={this.frame} theme={theme} />).getState();
    this.frame.size.set(w, h);
    const [x, z] = film.staged.stick;
    this.stick.position.set(x + STICK.long / 2, STICK.thick / 2, z);
    this.state.scene.add(this.stick);
    place(this.state.camera as PerspectiveCamera, film.camera, film.marks.size);
  }

  /** Draws the player at a time of his swing, s. */
  draw(t: number): void {
    const { staged } = this.film;
    const { body, club } = staged.swing.rig;
    swingPose(staged.swing, t, this.pose);
    const { swing, reference: referenceSwing } = staged;
    this.frame.show({ body, club, handed: 'right', swing, referenceSwing, t, pose: this.pose });
    this.advance(false);
  }

  /** Draws what he stood before the last time, with his shadow where it was: that is drawn again only when something moves. */
  drawEmpty(): void {
    this.advance(true);
  }

  /** Leaves out what no film shows: the contour in ink, traces, glass and lines. Player and ground receive shadows; the player casts one too. */
  private advance(isEmpty: boolean): void {
    this.state.scene.traverse((node) => {
      if (node instanceof Mesh)
        node.visible = node === this.stick || (node.receiveShadow && !(isEmpty && node.castShadow));
    });
    this.state.advance(++this.drawn);
  }

  dispose(): void {
    this.root.unmount();
  }
}

/** Puts three's camera where a film's stands. `size`: of the picture that the focal length belongs to, px. */
function place(camera: PerspectiveCamera, { eye, yaw, pitch, roll, focal }: Pinhole, size: PictureSize): void {
  camera.fov = (2 * Math.atan(size.h / 2 / focal) * 180) / Math.PI;
  camera.aspect = size.w / size.h;
  camera.position.set(...eye);
  camera.rotation.set(0, 0, 0);
  camera.rotateY(-Math.PI / 2 - yaw);
  camera.rotateX(pitch);
  camera.rotateZ(-roll);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
