import { AT, type Pose } from '../../model/chain';
import { headDepth } from '../../reading/readings';
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
import { grow, isClear, isInside, type Obstacles } from '../annotation/boxes';
import { findDimension } from '../annotation/dimension';
import { fitFrame, SHEET, toPoint, type Box, type Frame, type Framing, type Point, type Segment } from './frame';
import { captionAt, findCaption, type Caption, type Lettering } from '../annotation/lettering';

/** Where the hands of a right-handed player stand on the plate: what moves is the head. */
const HANDS: Point = { x: 194, y: 160 };
/** Without captions and scale bar the head and the foot of the plate are empty. */
export const SHAFT_BARE: Box = { ...SHEET, top: 40, bottom: 276 };
/** Beside its title and scale bar, as tall as the other plate. */
export const SHAFT_CROPPED: Box = { ...SHEET, top: 30, bottom: 284 };
const ESSENTIALS = { left: 44, top: 60, right: 262, bottom: 230 } as const;
/** Heights on the plate from the hands, units down. */
const HANDLE_AT = -100;
const AXIS_END = 78;
const DIMENSION_AT = 62;
const ZONE = { from: -38, to: 38 } as const;
const CORRIDOR = { from: -86, to: 54 } as const;
const EXTENSION_FROM = 12;
/** Heights from the hands at which the name of another swing's line may stand. */
const OTHER_NAME_AT = [-96, -80, -112, -64, -128] as const;
/** Head and hands closer than this share one side for their names, units. */
const NEAR = 16;

/** Between two names, as a share of the size of their letters. */
const NAMES_APART = 0.5;

/** Frame of the plate: the hands in their place, hands and head kept on the sheet. */
export function shaftFrame(pose: Pose, framing: Framing): Frame {
  const { side } = framing;
  const h = AT.leadGrip;
  const c = AT.head;
  const at = { x: side === 1 ? HANDS.x : SHEET.right - HANDS.x, y: HANDS.y };
  return fitFrame(
    framing,
    pose[h + 1],
    pose[h + 2],
    at,
    [pose[h + 1], pose[h + 2], pose[c + 1], pose[c + 2]],
    ESSENTIALS,
  );
}

const upright = (x: number, from: number, to: number): Segment => ({ from: { x, y: from }, to: { x, y: to } });

/** What is drawn over the figure at shaft parallel. `others`: poses of other swings at the same checkpoint. */
export function annotateShaft(
  pose: Pose,
  frame: Frame,
  measured: Measured,
  others: readonly { readonly kind: OtherLine['kind']; readonly pose: Pose }[],
  letters: Lettering,
  bar: BarUnit,
): Annotation {
  const { side, scale } = frame;
  const view = letters.isBare ? SHAFT_BARE : letters.isCropped ? SHAFT_CROPPED : SHEET;
  const room = roomIn(view);
  const pin = toPoint(frame, pose, AT.leadGrip);
  const { y } = pin;
  const gap = measured.value * scale;
  const headX = pin.x + side * gap;
  const { low, high } = measured.band;
  const edges = [
    upright(pin.x + side * low * scale, y + CORRIDOR.from, y + CORRIDOR.to),
    upright(pin.x + side * high * scale, y + CORRIDOR.from, y + CORRIDOR.to),
  ] as const;
  const handle = { x: headX, y: y + HANDLE_AT };
  const axis = upright(headX, handle.y, y + AXIS_END);
  const extension = upright(pin.x, y + EXTENSION_FROM, y + DIMENSION_AT + 8);
  const obstacles: Obstacles = { boxes: keepClear(handle, pin), lines: [axis, extension] };

  const wanted = {
    from: { x: pin.x, y: y + DIMENSION_AT },
    to: { x: headX, y: y + DIMENSION_AT },
    toward: { x: side, y: 0 },
    away: { x: 0, y: 1 },
    number: measured.number,
    unit: measured.unit,
  };
  // The number of a long dimension hangs below the line, where only the axis passes; that it may interrupt.
  const dimension = findDimension(wanted, letters, room, { boxes: obstacles.boxes, lines: [] });
  if (dimension) {
    obstacles.boxes.push(dimension.figure.box);
    obstacles.lines.push(dimension.line);
  }
  const drawnOthers = others.map(({ kind, pose: other }) => drawOther(kind, other, pin, frame, letters, obstacles));
  const captions: Caption[] = [];
  const name = (text: string, target: Point, offsets: readonly Point[]): void => {
    // Names that stand close together are read as one.
    const apart = captions.map(({ box }) => grow(box, NAMES_APART * letters.caption));
    const around = { boxes: [...obstacles.boxes, ...apart], lines: obstacles.lines };
    const caption = findCaption(text, target, offsets, side, letters, room, around);
    if (!caption) return;
    captions.push(caption);
    obstacles.boxes.push(caption.box);
    if (caption.leader) obstacles.lines.push(caption.leader);
  };
  if (!letters.isBare) {
    // In front of the player there is more paper; a head just behind the hands is named from there too.
    name('head', { x: headX, y }, gap > -NEAR ? HEAD_IN_FRONT : HEAD_BEHIND);
    name('hands', pin, gap > NEAR ? HANDS_BEHIND : HANDS_IN_FRONT);
  }
  const scaleBar =
    letters.isBare || letters.isCropped ? undefined : findScaleBar(frame, bar, cornersFor(side), letters, obstacles);
  const zone =
    measured.verdict === 'onPlane'
      ? []
      : [
          { x: pin.x, y: y + ZONE.from },
          { x: headX, y: y + ZONE.from },
          { x: headX, y: y + ZONE.to },
          { x: pin.x, y: y + ZONE.to },
        ];
  return {
    view,
    verdict: measured.verdict,
    corridor: [edges[0].from, edges[0].to, edges[1].to, edges[1].from],
    edges,
    zone,
    axis,
    extensions: [extension],
    dimension,
    pin,
    handle: { at: handle, direction: { x: side, y: 0 }, perMetre: scale },
    captions,
    scaleBar,
    others: drawnOthers,
  };
}

/** Where the names may stand, from what they name (x toward the ball). */
const OUT: readonly Point[] = [
  { x: 16, y: -18 },
  { x: 18, y: 24 },
  { x: 24, y: -40 },
  { x: 22, y: 42 },
  { x: 30, y: -62 },
];
const BACK: readonly Point[] = OUT.map(({ x, y }) => ({ x: -x - 14, y }));
const HEAD_IN_FRONT = [...OUT, ...BACK];
const HEAD_BEHIND = [...BACK, ...OUT];
const HANDS_BEHIND: readonly Point[] = [
  { x: -38, y: 38 },
  { x: -44, y: 18 },
  { x: -44, y: -20 },
  { x: -50, y: -44 },
  ...OUT,
];
const HANDS_IN_FRONT: readonly Point[] = [
  { x: 32, y: 26 },
  { x: 30, y: 34 },
  { x: 34, y: 14 },
  { x: 34, y: -22 },
  { x: 40, y: -44 },
  ...HANDS_BEHIND,
];

const cornersFor = (side: 1 | -1) =>
  side === 1
    ? (['bottom left', 'bottom right', 'top right', 'top left'] as const)
    : (['bottom right', 'bottom left', 'top left', 'top right'] as const);

/** The line through another swing's head, its hands laid on these. Its name stands beside the upper end. */
function drawOther(
  kind: OtherLine['kind'],
  pose: Pose,
  pin: Point,
  { side, scale }: Frame,
  letters: Lettering,
  obstacles: Obstacles,
): OtherLine {
  const x = pin.x + side * headDepth(pose) * scale;
  const line = upright(x, pin.y + HANDLE_AT + HANDLE_RADIUS, pin.y + ZONE.to);
  if (letters.isBare) return { kind, line, caption: undefined };
  const own = { boxes: obstacles.boxes, lines: [...obstacles.lines, line] };
  const room = roomIn(SHEET);
  const isFree = ({ box }: Caption): boolean => isInside(box, room) && isClear(box, own);
  let caption: Caption | undefined;
  for (let i = 0; i < OTHER_NAME_AT.length && !caption; i++) {
    const at = pin.y + OTHER_NAME_AT[i];
    caption = [
      captionAt(OTHER_NAMES[kind], { x: x + side * 6, y: at }, side === 1 ? 'start' : 'end', letters),
      captionAt(OTHER_NAMES[kind], { x: x - side * 6, y: at }, side === 1 ? 'end' : 'start', letters),
    ].find(isFree);
  }
  if (caption) obstacles.boxes.push(caption.box);
  return { kind, line, caption };
}
