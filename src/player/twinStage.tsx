import type { RootState } from '@react-three/fiber';
import type { PerspectiveCamera } from 'three';
import type { ExportSnapshot, ShownSwing } from '../export/task/exportSnapshot';
import { createPose } from '../model/pose';
import { drawnPose } from '../reading/swing';
import { pointCamera } from '../scene/camera/camera';
import { framePoints } from '../scene/camera/framePoints';
import { DIRECTIONS, fitView, type View } from '../scene/camera/view';
import { mountScene } from '../scene/mountScene';
import { SwingScene } from '../scene/parts/SwingScene';
import { SceneFrame } from '../scene/sceneFrame';
import { readTheme } from '../scene/setting/theme';

export type Side = 'downTheLine' | 'faceOn';

const INSETS = { left: 6, right: 6, top: 34, bottom: 6 } as const;

/** Both swings side by side in one canvas, drawn by one scene in turn. Throws where the browser gives out no 3D picture. */
export class TwinStage {
  private readonly root;
  private readonly state: RootState;
  private readonly frame = new SceneFrame();
  private readonly pose = createPose();
  private readonly takes: readonly ShownSwing[];
  private size = { width: 1, height: 1 };
  /** Of the canvas as large as it is: fitted when it is first needed. */
  private views: Partial<Record<Side, View>> = {};
  private drawn = 0;

  constructor(
    canvas: HTMLCanvasElement,
    private readonly subject: ExportSnapshot,
  ) {
    this.takes = [subject.now, subject.after];
    this.root = mountScene(canvas, { width: 2, height: 1, dpr: [1, 2], frameloop: 'never', renderer: {} });
    const theme = readTheme(subject.document.board);
    this.state = this.root.render(<SwingScene frame={this.frame} theme={theme} />).getState();
  }

  /** Size of the whole canvas, css px. */
  resize(width: number, height: number): void {
    this.size = { width, height };
    this.views = {};
    this.state.setSize(width, height);
  }

  /** Draws both swings, each at its own time (reference s), from one direction and one place. */
  draw(times: readonly number[], side: Side): void {
    const { gl } = this.state;
    const { width, height } = this.size;
    const half = width / 2;
    const view = (this.views[side] ??= this.fit(side, half, height));
    gl.setScissorTest(true);
    this.takes.forEach((take, i) => {
      gl.setViewport(i * half, 0, half, height);
      gl.setScissor(i * half, 0, half, height);
      this.drawOne(take, times[i], view, half / height);
    });
  }

  private drawOne(take: ShownSwing, t: number, view: View, aspect: number): void {
    const { state, frame, size } = this;
    const camera = state.camera as PerspectiveCamera;
    frame.size.set(size.width / 2, size.height);
    this.stand(take, t);
    camera.aspect = aspect;
    pointCamera(camera, view, frame.mirror);
    state.advance(++this.drawn);
  }

  private stand(take: ShownSwing, t: number): void {
    const { derived } = this.subject;
    const { body, club, player, referenceSwing } = derived;
    drawnPose(take.swing, t, this.pose);
    this.frame.show({
      body,
      club,
      handed: player.handed,
      swing: take.swing,
      referenceSwing,
      t,
      pose: this.pose,
      reference: { swing: referenceSwing, t },
    });
  }

  /** As near as both swings allow from the top to impact. */
  private fit(side: Side, width: number, height: number): View {
    this.stand(this.takes[0], 0);
    const { figure, ball } = this.frame;
    const points = this.takes.flatMap(({ swing }) => [...framePoints(swing, figure!, ball, ball[2]).struck]);
    return fitView(DIRECTIONS[side], points, width, height, INSETS);
  }

  dispose(): void {
    this.root.unmount();
  }
}
