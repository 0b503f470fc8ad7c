import { AT, type Pose } from '../../model/chain';
import type { CheckpointId } from '../../reading/checkpointTable';
import { bicepGap, headDepth } from '../../reading/readings';
import type { Band } from '../../reading/verdicts';
import { along, toPoint, type Frame, type Point, type Segment } from '../../plates/plate/frame';

/** What is drawn on the body at a checkpoint, px. */
export interface StopGeometry {
  /** The pale strip as wide as the band, its two dotted edges, and what lies between body and line. */
  readonly corridor: readonly Point[];
  readonly edges: readonly [Segment, Segment];
  readonly zone: readonly Point[];
  /** The shaft line, or the line through the clubhead; it grows from the hands. */
  readonly axis: Segment;
  /** From what is measured to the dimension. */
  readonly extension: Segment;
  /** From what is measured to the line. */
  readonly dimension: Segment;
  /** The bicep centre, or the hands. */
  readonly pin: Point;
  /** Unit vector along the measured distance, growing reading; and along the line. */
  readonly across: Point;
  readonly along: Point;
}

/** Lengths along the line from what is measured, m: positive toward the clubhead, or up. */
const ARM = { zone: [-0.14, 0.335], dimension: 0.305, corridor: [-0.29, 0.5], foot: -0.62, past: 0.05 } as const;
const SHAFT = { zone: [-0.09, 0.3], dimension: 0.3, corridor: [-0.24, 0.26], axis: [-0.3, 0.36] } as const;
const PAST_DIMENSION = 0.03;

/** The judged reading of any pose at a checkpoint, m. */
export const readingOf = (id: CheckpointId, pose: Pose): number =>
  id === 'leadArmParallel' ? bicepGap(pose) : headDepth(pose);

/** Where the drawing of a checkpoint lies on the body in this pose. */
export function stopGeometry(id: CheckpointId, pose: Pose, frame: Frame, band: Band): StopGeometry {
  const isArm = id === 'leadArmParallel';
  const { side, scale } = frame;
  const pin = toPoint(frame, pose, isArm ? AT.bicep : AT.leadGrip);
  const up = isArm ? shaftDirection(pose, side) : { x: 0, y: -1 };
  // Steeper: up and toward the ball, square to the line.
  const across = isArm ? { x: -side * up.y, y: side * up.x } : { x: side, y: 0 };
  const value = readingOf(id, pose);
  const on = (shift: number, at: number): Point => along(along(pin, across, shift * scale), up, at * scale);
  const line = (shift: number, [from, to]: readonly [number, number]): Segment => ({
    from: on(shift, from),
    to: on(shift, to),
  });
  const own = isArm ? ARM : SHAFT;
  const edges = [line(band.low, own.corridor), line(band.high, own.corridor)] as const;
  const [low, high] = own.zone;
  const head = toPoint(frame, pose, AT.head);
  const headAt = ((head.x - pin.x) * up.x + (head.y - pin.y) * up.y) / scale;
  return {
    corridor: [edges[0].from, edges[0].to, edges[1].to, edges[1].from],
    edges,
    zone: [on(0, low), on(0, high), on(value, high), on(value, low)],
    axis: line(value, isArm ? [ARM.foot, headAt + ARM.past] : SHAFT.axis),
    extension: line(0, [0, own.dimension + PAST_DIMENSION]),
    dimension: { from: on(0, own.dimension), to: on(value, own.dimension) },
    pin,
    across,
    along: up,
  };
}

/** Direction of the shaft down the line, from hands to head; upright where the shaft points straight at the viewer. */
function shaftDirection(pose: Pose, side: 1 | -1): Point {
  const x = side * pose[AT.shaftDirection + 2];
  const y = -pose[AT.shaftDirection + 1];
  const size = Math.hypot(x, y);
  return size > 1e-9 ? { x: x / size, y: y / size } : { x: 0, y: -1 };
}

/** The line of a swing that another is shown with: its shaft, or upright through its clubhead. */
export function otherLine(id: CheckpointId, pose: Pose, frame: Frame): Segment {
  const head = toPoint(frame, pose, AT.head);
  if (id === 'shaftParallel') {
    return {
      from: { x: head.x, y: head.y + 0.3 * frame.scale },
      to: { x: head.x, y: head.y - 0.36 * frame.scale },
    };
  }
  const up = shaftDirection(pose, frame.side);
  const grip = toPoint(frame, pose, AT.leadGrip);
  return { from: along(grip, up, -0.34 * frame.scale), to: along(head, up, 0.05 * frame.scale) };
}
