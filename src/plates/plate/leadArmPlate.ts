import { AT, type Pose } from '../../model/chain';
import { bicepGap } from '../../reading/readings';
import {
  findScaleBar,
  HANDLE_RADIUS,
  keepClear,
  OTHER_NAMES,
  roomIn,
  type Annotation,
  type BarUnit,
  type Measured,
  type OtherLine,
} from '../annotation/annotation';
import type { Obstacles } from '../annotation/boxes';
import { findDimension } from '../annotation/dimension';
import {
  along,
  fitFrame,
  roomAlong,
  SHEET,
  toPoint,
  type Box,
  type Frame,
  type Framing,
  type Point,
  type Segment,
} from './frame';
import { captionAt, findCaption, type Caption, type Lettering } from '../annotation/lettering';
import { isClear, isInside } from '../annotation/boxes';

/** Where the bicep centre of a right-handed player stands on the plate: what moves is the shaft line. */
const BICEP: Point = { x: 178, y: 168 };
/** Without captions and scale bar the foot of the plate is empty. */
export const LEAD_ARM_BARE: Box = { ...SHEET, bottom: 250 };
/** Beside its title and scale bar: the foot of the plate shows nothing that is read. */
export const LEAD_ARM_CROPPED: Box = { ...SHEET, bottom: 254 };
const ESSENTIALS = { left: 30, top: 40, right: 290, bottom: 236 } as const;
/** Distances along the shaft from the bicep centre, units: where the dimension stands, and the pattern's two ends. */
const DIMENSION_AT = [100, 84, 68, 116, -64, -90] as const;
const ZONE_BEFORE = 42;
const ZONE_PAST = 26;
const CORRIDOR_BEFORE = 80;
const CORRIDOR_PAST = 190;
const HANDLE_AT = 152;
const HANDLE_ROOM = 14;
const AXIS_PAST_HANDLE = 26;
const AXIS_BEFORE = 150;
const OTHER_UP_TO = 180;
/** Where the name of another swing's line may stand along it. */
const OTHER_NAME_AT = [150, 130, 110, -120, -100, -140, 170, 90] as const;

/** Direction of the shaft down the line, from hands to head, on the plate; upright where the shaft points straight at the viewer. */
function shaftDirection(pose: Pose, side: 1 | -1): Point {
  const x = side * pose[AT.shaftDirection + 2];
  const y = -pose[AT.shaftDirection + 1];
  const size = Math.hypot(x, y);
  return size > 1e-9 ? { x: x / size, y: y / size } : { x: 0, y: -1 };
}

/** The way a line moves when the gap grows (steeper): up and toward the ball, square to the shaft. */
const steeper = (d: Point, side: 1 | -1): Point => ({ x: -side * d.y, y: side * d.x });

/**
 * Frame of the plate: the bicep centre in its place, bicep, hands and the foot of the shaft line kept on the sheet, and the club's
 * head where they leave it room.
 */
export function leadArmFrame(pose: Pose, framing: Framing): Frame {
  const { side } = framing;
  const b = AT.bicep;
  const h = AT.leadGrip;
  const d = shaftDirection(pose, side);
  const e = steeper(d, side);
  const gap = bicepGap(pose);
  const at = { x: side === 1 ? BICEP.x : SHEET.right - BICEP.x, y: BICEP.y };
  const foot = [pose[b + 1] - e.y * gap, pose[b + 2] + side * e.x * gap];
  return fitFrame(
    framing,
    pose[b + 1],
    pose[b + 2],
    at,
    [pose[b + 1], pose[b + 2], pose[h + 1], pose[h + 2], ...foot],
    ESSENTIALS,
    [pose[AT.head + 1], pose[AT.head + 2]],
  );
}

/** What is drawn over the figure at lead arm parallel. `others`: gap (m) and pose of other swings at the same checkpoint. */
export function annotateLeadArm(
  pose: Pose,
  frame: Frame,
  measured: Measured,
  others: readonly { readonly kind: OtherLine['kind']; readonly pose: Pose }[],
  letters: Lettering,
  bar: BarUnit,
): Annotation {
  const { side, scale } = frame;
  const view = letters.isBare ? LEAD_ARM_BARE : letters.isCropped ? LEAD_ARM_CROPPED : SHEET;
  const room = roomIn(view);
  const pin = toPoint(frame, pose, AT.bicep);
  const d = shaftDirection(pose, side);
  const e = steeper(d, side);
  const gap = measured.value * scale;
  const foot = along(pin, e, gap);
  const on = (shift: number, at: number): Point => along(along(pin, e, shift), d, at);
  const span = (shift: number, from: number, to: number): Segment => ({ from: on(shift, from), to: on(shift, to) });
  const { low, high } = measured.band;
  const edges = [
    span(high * scale, -CORRIDOR_BEFORE, CORRIDOR_PAST),
    span(low * scale, -CORRIDOR_BEFORE, CORRIDOR_PAST),
  ] as const;

  const inner = {
    left: HANDLE_ROOM,
    top: HANDLE_ROOM,
    right: view.right - HANDLE_ROOM,
    bottom: view.bottom - HANDLE_ROOM,
  };
  const handleAt = Math.min(HANDLE_AT, roomAlong(foot, d, inner));
  const handle = along(foot, d, handleAt);
  const axis = { from: along(foot, d, -AXIS_BEFORE), to: along(foot, d, handleAt + AXIS_PAST_HANDLE) };
  const obstacles: Obstacles = { boxes: keepClear(handle, pin), lines: [] };

  const otherLines = others.map((other) => otherLine(other.pose, pin, side, scale));
  let dimensionAt = DIMENSION_AT[0] as number;
  let dimension: Annotation['dimension'];
  for (const at of DIMENSION_AT) {
    if (Math.abs(at - handleAt) < HANDLE_RADIUS + 14) continue;
    const wanted = {
      from: on(0, at),
      to: on(gap, at),
      toward: { x: -e.x, y: -e.y },
      away: d,
      number: measured.number,
      unit: measured.unit,
    };
    const lines = Math.abs(gap) < 45 ? [axis, ...edges] : [axis];
    dimension =
      findDimension(wanted, letters, room, { ...obstacles, lines: [...lines, ...otherLines] }) ??
      findDimension(wanted, letters, room, { ...obstacles, lines });
    dimensionAt = at;
    if (dimension) break;
  }
  if (dimension) {
    obstacles.boxes.push(dimension.figure.box);
    obstacles.lines.push(dimension.line);
  }
  obstacles.lines.push(axis);
  const captions = [];
  const drawnOthers: OtherLine[] = others.map(({ kind, pose: other }) =>
    drawOther(kind, other, pin, side, scale, letters, obstacles),
  );
  if (!letters.isBare) {
    const name = findCaption('trail bicep', pin, NAME_AT, side, letters, room, obstacles);
    if (name) {
      captions.push(name);
      obstacles.boxes.push(name.box);
      if (name.leader) obstacles.lines.push(name.leader);
    }
  }
  const scaleBar =
    letters.isBare || letters.isCropped ? undefined : findScaleBar(frame, bar, cornersFor(side), letters, obstacles);
  const zoneEnd = Math.max(dimensionAt, 0) + ZONE_PAST;
  const zone =
    measured.verdict === 'onPlane'
      ? []
      : [on(0, -ZONE_BEFORE), on(0, zoneEnd), on(gap, zoneEnd), on(gap, -ZONE_BEFORE)];
  return {
    view,
    verdict: measured.verdict,
    corridor: [edges[0].from, edges[0].to, edges[1].to, edges[1].from],
    edges,
    zone,
    axis,
    extensions: dimension ? [span(0, Math.sign(dimensionAt) * 12, dimensionAt + Math.sign(dimensionAt) * 9)] : [],
    dimension,
    pin,
    handle: { at: handle, direction: e, perMetre: scale },
    captions,
    scaleBar,
    others: drawnOthers,
  };
}

/** Where "trail bicep" may stand, from the pin: behind the player first, where there is most paper. */
const NAME_AT: readonly Point[] = [
  { x: -70, y: 34 },
  { x: -76, y: 52 },
  { x: -84, y: 14 },
  { x: -60, y: 72 },
  { x: -90, y: -10 },
  { x: -50, y: 92 },
  { x: -96, y: -34 },
  { x: 40, y: 96 },
  { x: 50, y: -40 },
  { x: 58, y: -64 },
  { x: 62, y: 70 },
];

const cornersFor = (side: 1 | -1) =>
  side === 1
    ? (['bottom left', 'bottom right', 'top right', 'top left'] as const)
    : (['bottom right', 'bottom left', 'top left', 'top right'] as const);

function otherLine(pose: Pose, pin: Point, side: 1 | -1, scale: number): Segment {
  const d = shaftDirection(pose, side);
  const foot = along(pin, steeper(d, side), bicepGap(pose) * scale);
  return { from: along(foot, d, -AXIS_BEFORE), to: along(foot, d, Math.min(OTHER_UP_TO, roomAlong(foot, d, SHEET))) };
}

/** Another swing's shaft line, its bicep centre laid on this one's. Its name stands at its upper end, or at its lower. */
function drawOther(
  kind: OtherLine['kind'],
  pose: Pose,
  pin: Point,
  side: 1 | -1,
  scale: number,
  letters: Lettering,
  obstacles: Obstacles,
): OtherLine {
  const line = otherLine(pose, pin, side, scale);
  const d = shaftDirection(pose, side);
  const foot = along(line.from, d, AXIS_BEFORE);
  if (letters.isBare) return { kind, line, caption: undefined };
  const own = { boxes: obstacles.boxes, lines: [...obstacles.lines, line] };
  const room = roomIn(SHEET);
  const isFree = ({ box }: Caption): boolean => isInside(box, room) && isClear(box, own);
  let caption: Caption | undefined;
  for (let i = 0; i < OTHER_NAME_AT.length && !caption; i++) {
    const p = along(foot, d, OTHER_NAME_AT[i]);
    caption = [
      captionAt(OTHER_NAMES[kind], { x: p.x - side * 8, y: p.y + 6 }, side === 1 ? 'end' : 'start', letters),
      captionAt(OTHER_NAMES[kind], { x: p.x + side * 8, y: p.y + 4 }, side === 1 ? 'start' : 'end', letters),
    ].find(isFree);
  }
  if (caption) obstacles.boxes.push(caption.box);
  return { kind, line, caption };
}
