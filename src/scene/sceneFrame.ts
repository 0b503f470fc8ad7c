import { Vector2 } from 'three';
import { createFigure, type Figure } from '../figure/figure';
import { createPlacement, PART } from '../figure/partIds';
import { placeFigure, pointOfPart } from '../figure/place';
import { heelLiftAt, placeBall } from '../figure/stance';
import { AT, createPose } from '../model/chain';
import { K, type KeyId } from '../model/keys';
import type { Body } from '../model/body';
import type { Club } from '../model/club';
import type { Pose } from '../model/pose';
import { swingPose, type Swing } from '../reading/swing';
import type { Standpoint } from './figure/eyesView';
import type { PinId } from './figure/jointPins';
import { framePoints, type FramePoints } from './camera/framePoints';
import { placeOnTrack, type Struck } from './lines/ballFlightTrail';
import { placeOnModel } from './lines/flightModel';
import { createHeadTrace } from './lines/trace';
import { GLASS_X, onGlass, type GlassStand } from './setting/glass';

/** Nearer than this to the middle of the head, m, a camera sees what its eyes see; it does so until it is farther off than `out`. */
const IN_HEAD = { in: 0.3, out: 0.75 } as const;

/** Another swing that is drawn with this one, at its own time (reference s). */
interface OtherSwing {
  readonly swing: Swing;
  readonly t: number;
}

/**
 * What a scene shows: one swing at one instant. Compared with what was shown before by object identity, so pass the same
 * objects.
 */
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
  readonly reference?: OtherSwing;
  readonly ghost?: OtherSwing;
  /** Other bodies in thin lines. */
  readonly fan?: readonly OtherSwing[];
  /** Where the ball goes; without it the ball stays where it lies. */
  readonly struck?: Struck;
  /** Joints can be taken hold of; the one that is held. */
  readonly pins?: { readonly held: PinId | undefined };
  /** The figure and its club alone, without ground, glass and traces: solid, or in contour. */
  readonly alone?: 'solid' | 'contour';
  /** Without where head and hands have been. */
  readonly isTraceless?: true;
}

/**
 * What one frame shows, in numbers, worked out once for all parts of the scene. Its owner calls `show`; the parts pose themselves
 * by it in the same frame (`usePose`). World frame of the right-handed player, m.
 */
export class SceneFrame {
  /** Counts calls of `show`, so that each part poses itself once for each. */
  version = 0;
  shown: SwingShown | undefined;
  /** The picture's size in css px: pens are measured by it. */
  readonly size = new Vector2(1, 1);
  figure: Figure | undefined;
  /** Where the parts of figure and club stand. */
  readonly placement = createPlacement();
  /** How far the trail heel is up: 0 flat, 1 at the finish. */
  heelLift = 0;
  /** Where the camera stands: parts of the figure are left out before it. */
  standpoint: Standpoint = 'outside';
  /** Where the ball lies, and where it is now. */
  readonly ball = new Float64Array(3);
  readonly flying = new Float64Array(3);
  /** s of the player's own time since the strike; 0 until then. */
  sinceStrike = 0;
  glass: GlassStand = { footZ: 0, slope: 1, height: 1 };
  /** A place on the right edge of the glass. */
  readonly glassEdge = new Float64Array(3);
  /** Where the head has been from the top to impact: three numbers a sample. */
  readonly headTrace = createHeadTrace();
  /** What a fitted view must hold. Replaced with player, club or reference. */
  points: FramePoints | undefined;
  /** Whether the reference's shaft is apart enough to be drawn; whether there is a ghost, and how far apart at most, m; the whole flight. */
  readonly legends = { reference: false, ghost: false, ghostGap: 0, flight: false };
  private readonly pose = createPose();
  private readonly head = new Float64Array(3);

  /** Left-handed pictures are mirrored. */
  get mirror(): 1 | -1 {
    return this.shown?.handed === 'left' ? -1 : 1;
  }

  /** Moves everything to one instant of a swing. */
  show(now: SwingShown): void {
    const before = this.shown;
    const isOther = !this.figure || now.body !== before?.body || now.club !== before.club;
    const figure = isOther ? createFigure(now.body, now.club) : this.figure!;
    this.figure = figure;
    if (isOther || now.referenceSwing !== before?.referenceSwing) this.standOn(now.referenceSwing, figure);
    const { swing, t, pose, struck } = now;
    this.heelLift = heelLiftAt(swing, t);
    placeFigure(figure, pose, { ballPoint: this.ball, heelLift: this.heelLift }, this.placement);
    this.sinceStrike = struck ? Math.max(0, (t - struck.t) * swing.tempo) : 0;
    const place = struck?.isWhole ? placeOnModel : placeOnTrack;
    if (struck && this.sinceStrike > 0) place(struck.track, this.sinceStrike, this.ball, this.flying);
    else this.flying.set(this.ball);
    this.legends.flight = struck?.isWhole ?? false;
    this.shown = now;
    this.version++;
  }

  /**
   * Leaves out what would stand before a camera in the head, at `eye` (m, in the scene as it is mirrored). One that came to look through
   * the player's eyes does so until it is well out of his head.
   */
  seeFrom({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }, isThroughEyes: boolean): void {
    if (!this.figure) return;
    pointOfPart(this.placement, PART.headEgg, 0, 0.066 * this.figure.measures.k, 0, this.head);
    const [hx, hy, hz] = this.head;
    const off = Math.hypot(x - hx, y - hy, z * this.mirror - hz);
    const isIn = isThroughEyes || this.standpoint === 'eyes';
    const standpoint = off < (isIn ? IN_HEAD.out : IN_HEAD.in) ? 'eyes' : 'outside';
    if (standpoint === this.standpoint) return;
    this.standpoint = standpoint;
    this.version++;
  }

  private standOn(reference: Swing, figure: Figure): void {
    const at = (key: KeyId): void => swingPose(reference, reference.reference.times[K[key]], this.pose);
    at('impact');
    placeBall(reference.rig.club, this.pose, this.ball);
    at('address');
    const c = AT.shaftDirection;
    const slope = Math.atan2(-this.pose[c + 1], this.pose[c + 2]);
    const footZ = this.pose[AT.head + 2] + this.pose[AT.head + 1] / Math.tan(slope);
    const height = (0.516 * reference.rig.body.stature) / Math.sin(slope);
    this.glass = { footZ, slope, height };
    this.glassEdge.set(onGlass(this.glass, GLASS_X.to, height * 0.88));
    this.points = framePoints(reference, figure, this.ball, footZ);
  }
}
