import { CameraControlsImpl } from '@react-three/drei/core/CameraControls';
import { Box3, Spherical, Vector3, type PerspectiveCamera } from 'three';
import { rad, toDeg } from '../../math/angle';
import { DIRECTIONS, DISTANCE_LIMITS, eyeDirection, PITCH_LIMITS, REACH, type View } from '../../scene/camera/view';

const { ACTION } = CameraControlsImpl;

/** A drag across the picture's height turns the view this far; camera-controls counts in full turns. */
const TURN = rad(170) / (2 * Math.PI);
/** The camera keeps this field of view; others are reached by its zoom, which camera-controls damps like everything else. */
const FOV = DIRECTIONS.free.fov;
/** Time constants, s: turning to a view, and following a finger. */
const SMOOTH = { turn: 0.11, drag: 0.06 } as const;
/**
 * camera-controls zoom by 0.95 to the power of an eighth of what the fingers' distance from their middle changes, px. At this speed
 * times one over the fingers' distance, they keep what lies under them.
 */
const PINCH_PX = (8 * 2) / -Math.log(0.95);
/**
 * A step of the damping lasts no longer than this, s: the picture may have slept, or be slow to draw. A cut is one step so long that
 * nothing is left to go.
 */
const STEP = { waking: 1 / 60, going: 0.1, cut: 1e6 } as const;

const target = new Vector3();
const spherical = new Spherical();

/** Shortest way from one angle to another, rad. */
const turnTo = (from: number, to: number): number => {
  const d = (to - from) % (2 * Math.PI);
  return d > Math.PI ? d - 2 * Math.PI : d < -Math.PI ? d + 2 * Math.PI : d;
};

/**
 * camera-controls with the stage's limits and speeds, told about views. A view is of the right-handed player; `mirror` is -1 where
 * the scene is mirrored, and the camera with it.
 */
export class StageControls extends CameraControlsImpl {
  /** With reduced motion everything cuts. */
  isDamped = true;
  private isGoing = false;

  constructor(camera: PerspectiveCamera) {
    super(camera);
    camera.fov = toDeg(FOV);
    camera.updateProjectionMatrix();
    this.minPolarAngle = Math.PI / 2 - PITCH_LIMITS.max;
    this.maxPolarAngle = Math.PI / 2 - PITCH_LIMITS.min;
    this.minDistance = DISTANCE_LIMITS.min;
    this.maxDistance = DISTANCE_LIMITS.max;
    this.azimuthRotateSpeed = this.polarRotateSpeed = TURN;
    // The pinched or pointed-at place stays under finger or pointer.
    this.dollyToCursor = true;
    this.restThreshold = 1e-4;
    this.smoothTime = SMOOTH.turn;
    this.draggingSmoothTime = SMOOTH.drag;
    this.mouseButtons.middle = this.mouseButtons.right = ACTION.TRUCK;
    this.setBoundary(
      new Box3(new Vector3(REACH.min, REACH.min, REACH.min), new Vector3(REACH.max, REACH.max, REACH.max)),
    );
  }

  override update(delta: number): boolean {
    const longest = this.isGoing ? STEP.going : STEP.waking;
    this.isGoing = super.update(this.isDamped ? Math.min(delta, longest) : STEP.cut);
    return this.isGoing;
  }

  /** Before a pointer moves: what two fingers zoom by is the ratio of their distances, so that parallel fingers zoom by nothing. */
  expectMove({ pointerId, clientX, clientY }: PointerEvent): void {
    const [a, b] = this._activePointers;
    if (!b) return;
    const other = a.pointerId === pointerId ? b : a;
    const before = Math.max(1, Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY));
    const after = Math.max(1, Math.hypot(clientX - other.clientX, clientY - other.clientY));
    this.dollySpeed = before === after ? 1 : (PINCH_PX * Math.log(before / after)) / (before - after);
  }

  /** With shift, a mouse or pen moves the picture instead of turning it. */
  panWithDrag(isPanned: boolean): void {
    this.dollySpeed = 1;
    this.mouseButtons.left = isPanned ? ACTION.TRUCK : ACTION.ROTATE;
  }

  /** Goes to a view, or cuts to it. */
  lookFrom(view: View, mirror: 1 | -1, isTurning: boolean): void {
    const away = eyeDirection(view);
    const [x, y, z] = [view.target[0], view.target[1], view.target[2] * mirror];
    const azimuth = mirror === 1 ? view.yaw : Math.PI - view.yaw;
    // The same place by another name, so that the shorter way round is taken.
    this.azimuthAngle = Math.atan2(Math.sin(azimuth), Math.cos(azimuth)) - turnTo(this.azimuthAngle, azimuth);
    const [dx, dy, dz] = away.map((share) => share * view.distance);
    void this.setLookAt(x + dx, y + dy, z + dz * mirror, x, y, z, isTurning);
    void this.zoomTo(Math.tan(FOV / 2) / Math.tan(view.fov / 2), isTurning);
  }

  /** The view that is shown, or the one that is being gone to; `fov` where it is going. */
  viewOf(mirror: 1 | -1, isAtEnd: boolean, fov?: number): View {
    this.getTarget(target, isAtEnd);
    this.getSpherical(spherical, isAtEnd);
    const { theta, phi, radius } = spherical;
    return {
      target: [target.x, target.y, target.z * mirror],
      yaw: mirror === 1 ? theta : Math.PI - theta,
      pitch: Math.PI / 2 - phi,
      distance: radius,
      fov: fov ?? 2 * Math.atan(Math.tan(FOV / 2) / this.camera.zoom),
    };
  }

  /** Nearer (factor below 1) or farther, as the keys ask for it. */
  zoomBy(factor: number): void {
    this.getSpherical(spherical, true);
    void this.dollyTo(spherical.radius * factor, true);
  }
}
