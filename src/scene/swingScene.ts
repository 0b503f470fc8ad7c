import {
  type BufferGeometry,
  CylinderGeometry,
  Group,
  Mesh,
  MeshStandardMaterial,
  type Object3D,
  type Material,
  type Vector2,
} from 'three';
import { placeFigure } from '../figure/place';
import { PART } from '../figure/partIds';
import { BALL_RADIUS, heelLiftAt, placeBall } from '../figure/stance';
import { AT, createPose } from '../model/chain';
import { K, type KeyId } from '../model/keys';
import type { Body } from '../model/body';
import type { Club } from '../model/club';
import type { Pose } from '../model/pose';
import { swingPose, type Swing } from '../reading/swing';
import { BrokenShafts } from './lines/brokenShafts';
import { BallFlightTrail, type Struck } from './lines/ballFlightTrail';
import { FigureModel } from './figure/figureModel';
import { framePoints, type FramePoints } from './camera/framePoints';
import { Floor } from './setting/floor';
import { GLASS_X, Ground } from './setting/ground';
import { Lights } from './setting/lights';
import { contourMaterial } from './figure/materials';
import { LineBatch } from './lines/lineBatch';
import type { Theme } from './setting/theme';
import { Traces } from './lines/trace';

/** Another swing whose shaft is drawn in a broken line, at its own time (reference s). */
export interface OtherShaft {
  readonly swing: Swing;
  readonly t: number;
}

/** What a scene shows: one swing at one instant. Compared part by part with what it showed before: hand in the same objects. */
export interface SwingShown {
  readonly body: Body;
  readonly club: Club;
  readonly handed: 'right' | 'left';
  readonly swing: Swing;
  /** Ball, target line and glass belong to the reference: they stay while movements change. */
  readonly referenceSwing: Swing;
  /** Reference time, s, and the pose there. */
  readonly t: number;
  readonly pose: Pose;
  readonly throughEyes: boolean;
  readonly reference?: OtherShaft;
  readonly ghost?: OtherShaft;
  /** Where the ball goes; without it the ball stays where it lies. */
  readonly struck?: Struck;
}

/** Room for all lines of a scene: of the ground, the traces, other shafts and a ball on its way. */
const LINES = 480;

/** The figure moves in its shaders, and everything else stays: nobody has to work out where it is in every frame. */
function standStill(root: Object3D): void {
  root.traverse((node) => {
    node.updateMatrix();
    node.matrixAutoUpdate = false;
  });
}

/** A swing with ground, light and traces, for one board. Built once; `show` moves it. Stage and clips draw the same scene. */
export class SwingScene {
  /** Mirrored as a whole for a left-handed player. */
  readonly root = new Group();
  readonly traces: Traces;
  model: FigureModel | undefined;
  /** What a fitted view must hold. Replaced with player, club or reference. */
  points: FramePoints | undefined;
  readonly ball = new Float64Array(3);
  /** A place on the right edge of the glass, m. */
  readonly glassEdge = new Float64Array(3);
  readonly shown = { reference: false, ghost: false };
  private readonly ground: Ground;
  private readonly floor: Floor;
  private readonly shafts: BrokenShafts;
  private readonly lights: Lights;
  private readonly departure: BallFlightTrail;
  /** Where the ball is now, m: at `ball` until it is struck. */
  private readonly flying = new Float64Array(3);
  private readonly tee: Mesh[];
  private readonly pose = createPose();
  private drawn: SwingShown | undefined;

  constructor(
    private readonly theme: Theme,
    private readonly size: Vector2,
  ) {
    const sheet = new LineBatch(LINES, size);
    // What takes its lines first lies lowest.
    this.ground = new Ground(theme, sheet);
    this.traces = new Traces(theme, size, sheet);
    this.shafts = new BrokenShafts(theme, sheet);
    this.departure = new BallFlightTrail(theme, sheet);
    this.floor = new Floor(theme);
    this.lights = new Lights(theme);
    // One metre high, top at the origin: scaled to whatever is left between ball and ground.
    const peg = new CylinderGeometry(0.0055, 0.0022, 1, 14).translate(0, -0.5, 0);
    const beech = new MeshStandardMaterial({ color: theme.beech[0], roughness: 0.6 });
    this.tee = [new Mesh(peg, beech), new Mesh(peg, contourMaterial(theme, size))];
    this.root.add(this.floor.mesh, this.ground.mesh, this.traces.mesh, sheet.mesh, this.lights.group, ...this.tee);
    standStill(this.root);
  }

  /** Moves everything to one instant of a swing. */
  show(now: SwingShown): void {
    const before = this.drawn;
    if (now.body !== before?.body || now.club !== before.club) this.build(now);
    if (now.referenceSwing !== before?.referenceSwing) this.standOn(now.referenceSwing);
    if (now.swing !== before?.swing) this.traces.draw(now.swing);
    if (now.handed !== before?.handed) {
      this.root.scale.z = now.handed === 'left' ? -1 : 1;
      this.root.updateMatrix();
    }
    this.placePlayer(now);
    this.drawn = now;
  }

  private build({ body, club }: SwingShown): void {
    if (this.model) {
      this.root.remove(this.model.group);
      this.model.dispose();
    }
    this.model = new FigureModel(body, club, this.theme, this.size);
    standStill(this.model.group);
    this.root.add(this.model.group);
  }

  private standOn(reference: Swing): void {
    const at = (key: KeyId): void => swingPose(reference, reference.reference.times[K[key]], this.pose);
    at('impact');
    placeBall(reference.rig.club, this.pose, this.ball);
    const height = this.ball[1] - 0.9 * BALL_RADIUS;
    for (const mesh of this.tee) {
      mesh.visible = this.ball[1] > BALL_RADIUS + 0.004;
      mesh.position.set(this.ball[0], height, this.ball[2]);
      mesh.scale.y = height;
      mesh.updateMatrix();
    }
    at('address');
    const c = AT.shaftDirection;
    const slope = Math.atan2(-this.pose[c + 1], this.pose[c + 2]);
    const footZ = this.pose[AT.head + 2] + this.pose[AT.head + 1] / Math.tan(slope);
    const up = (0.516 * reference.rig.body.stature) / Math.sin(slope);
    this.ground.draw(this.ball, footZ, slope, up);
    const high = up * 0.88;
    this.glassEdge.set([GLASS_X.to, high * Math.sin(slope), footZ - high * Math.cos(slope)]);
    if (this.model) this.points = framePoints(reference, this.model.figure, this.ball, footZ);
  }

  private placePlayer({ swing, t, pose, throughEyes, reference, ghost, struck }: SwingShown): void {
    const { model, shafts, shown } = this;
    if (!model) return;
    const heelLift = heelLiftAt(swing, t);
    placeFigure(model.figure, pose, { ballPoint: this.ball, heelLift }, model.placement);
    this.departure.show(this.ball, struck, t, swing.tempo, this.flying);
    model.show(throughEyes, this.flying);
    this.putDiscs(heelLift);
    shafts.clear();
    shown.reference = reference ? shafts.draw('reference', reference.swing, reference.t, pose) : false;
    shown.ghost = ghost ? shafts.draw('ghost', ghost.swing, ghost.t, pose) : false;
    shafts.commit();
  }

  private putDiscs(heelLift: number): void {
    const { placement, figure } = this.model!;
    const { k } = figure.measures;
    (['footLead', 'footTrail'] as const).forEach((foot, i) => {
      const at = PART[foot] * 12;
      const yaw = Math.atan2(placement[at + 3], placement[at + 5]);
      // Under the part of the sole that still rests on the ground.
      const lift = i === 1 ? heelLift : 0;
      const ahead = (0.034 + 0.05 * lift) * k;
      const [x, z] = [placement[at + 9] + Math.sin(yaw) * ahead, placement[at + 11] + Math.cos(yaw) * ahead];
      this.floor.put(i, x, z, 0.068 * k, (0.125 - 0.06 * lift) * k, yaw, 1 - 0.3 * lift);
    });
    const { ball, flying } = this;
    const strength = flying[0] === ball[0] ? Math.max(0.3, 1.3 - ball[1] * 8) : Math.max(0, 1.3 - flying[1] * 8);
    this.floor.put(2, flying[0], flying[2], 0.043, 0.043, 0, strength);
    this.floor.put(3, 0, 0.03, 0.36 * k, 0.27 * k, 0, 0.25);
  }

  dispose(): void {
    this.model?.dispose();
    this.lights.dispose();
    this.root.traverse((node) => {
      if (!(node instanceof Mesh) || Array.isArray(node.material)) return;
      const mesh = node as Mesh<BufferGeometry, Material>;
      mesh.geometry.dispose();
      mesh.material.dispose();
    });
  }
}
