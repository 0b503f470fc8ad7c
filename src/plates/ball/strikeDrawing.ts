import { BALL_RADIUS } from '../../figure/stance';
import type { Handed } from '../../flight/shape';
import type { Delivery } from '../../reading/delivery/delivery';
import { showAngle } from '../../words';
import { boxAround, type Obstacles } from '../annotation/boxes';
import {
  arrowAt,
  findLabel,
  findPlace,
  headingOf,
  lineThrough,
  numberAround,
  roomIn,
  toRightOf,
  type Label,
} from './fromAbove';
import { along, roomAlong, type Box, type Point, type Segment } from '../plate/frame';
import type { Figure } from '../annotation/lettering';
import type { Size } from '../useSize';

/** Path and face at the ball, seen from above: css px, the target up. */
export interface StrikeDrawing {
  readonly ball: Point;
  readonly ballRadius: number;
  readonly target: Segment;
  readonly targetHead: readonly Point[];
  /** Way of the head. */
  readonly path: Segment;
  readonly pathHead: readonly Point[];
  /** The face as a bar, and its lines. */
  readonly face: readonly Point[];
  /** Where the face looks. */
  readonly facing: Segment;
  readonly facingHead: readonly Point[];
  /** Between path and face; nothing where they agree on what is shown. */
  readonly wedge: readonly Point[];
  readonly turn: 'open' | 'closed' | 'square';
  readonly angle: Figure | undefined;
  readonly labels: readonly Label[];
}

const BALL_PX = 13;
/** Half the length of a face, m: the drawing is to scale at the ball. */
const HALF_FACE = 0.04;
const FACE_THICK_PX = 7;
/** Where the ball lies in the picture, from the top. */
const BALL_AT = 0.68;
const WEDGE_STEPS = 24;

/** Draws a delivery. All angles are true; what is right of the target is right, for either hand. */
export function strikeDrawing(delivery: Delivery, handed: Handed, { width, height }: Size): StrikeDrawing {
  const side = handed === 'left' ? -1 : 1;
  const scale = BALL_PX / BALL_RADIUS;
  const room = roomIn(width, height);
  const ball = { x: width / 2, y: height * BALL_AT };
  const way = headingOf(side * delivery.path);
  const look = headingOf(side * delivery.face);
  const right = toRightOf(look);
  const toe = { x: side * right.x, y: side * right.y };
  // The head where it passes: a ball nearer the toe stands for a head nearer the player.
  const off = Math.max(-width / 3, Math.min(width / 3, delivery.miss.toe * scale));
  const middle = along(along(ball, look, -(BALL_PX + FACE_THICK_PX / 2 + 1)), toe, -off);
  const ahead = 0.86 * roomAlong(middle, way, room);
  const path = lineThrough(middle, way, 0.9 * roomAlong(middle, { x: -way.x, y: -way.y }, room), ahead);
  const facing = { from: middle, to: along(middle, look, 0.84 * Math.min(ahead, roomAlong(middle, look, room))) };
  const face = barOf(middle, look, toe, HALF_FACE * scale);
  const target = { from: { x: ball.x, y: room.bottom }, to: { x: ball.x, y: room.top } };

  const shown = showAngle(Math.abs(delivery.faceToPath));
  const isTurned = shown.value !== 0;
  const turn = !isTurned ? 'square' : delivery.faceToPath > 0 ? 'open' : 'closed';
  const radius = 0.78 * Math.hypot(facing.to.x - middle.x, facing.to.y - middle.y);
  const wedge = isTurned ? wedgeOf(middle, side * delivery.path, side * delivery.face, radius) : [];

  const obstacles: Obstacles = {
    boxes: [boxAround(ball, BALL_PX + 1), ...face.map((corner) => boxAround(corner, 3))],
    lines: [target, path, facing, { from: face[0], to: face[1] }, ...edgesOf(wedge)],
  };
  const labels: Label[] = [];
  const name = (text: string, at: Point, first: Point): void => {
    const label = findLabel(text, at, first, room, obstacles);
    if (label) labels.push(label);
  };
  const bisector = headingOf((side * (delivery.path + delivery.face)) / 2);
  const angle = isTurned
    ? findPlace(
        (at) => numberAround(at, shown.number, '°'),
        along(middle, bisector, radius),
        bisector,
        room,
        obstacles,
        [4, 12, 24, 40, 60],
      )
    : undefined;
  name('path', along(path.from, way, 10), { x: delivery.path * side < 0 ? -1 : 1, y: 0 });
  name('face', along(middle, toe, HALF_FACE * scale), toe);
  name('target', along(target.to, { x: 0, y: 1 }, 12), { x: delivery.path * side > 0 ? -1 : 1, y: 0 });
  return {
    ball,
    ballRadius: BALL_PX,
    target,
    targetHead: arrowAt(target.to, headingOf(0), 10, 3.4),
    path,
    pathHead: arrowAt(path.to, way, 16, 6),
    face,
    facing,
    facingHead: arrowAt(facing.to, look, 11, 4.2),
    wedge,
    turn,
    angle,
    labels,
  };
}

/** The face as a bar behind the ball: heel and toe end in front, then behind. */
function barOf(middle: Point, look: Point, toe: Point, half: number): Point[] {
  const front = along(middle, look, FACE_THICK_PX / 2);
  const back = along(middle, look, -FACE_THICK_PX / 2);
  return [along(front, toe, -half), along(front, toe, half), along(back, toe, half), along(back, toe, -half)];
}

function wedgeOf(tip: Point, from: number, to: number, radius: number): Point[] {
  const arc = Array.from({ length: WEDGE_STEPS + 1 }, (_, i) =>
    along(tip, headingOf(from + ((to - from) * i) / WEDGE_STEPS), radius),
  );
  return [tip, ...arc];
}

const edgesOf = (area: readonly Point[]): Segment[] => area.slice(1).map((to, i) => ({ from: area[i], to }));

/**
 * Everything on the drawing that has to be read, with its name.
 *
 * @internal Tests check that nothing of it is cut or covered.
 */
export const readablesOf = ({ angle, labels }: StrikeDrawing): [string, Box][] => [
  ...(angle ? [['angle', angle.box] as [string, Box]] : []),
  ...labels.map(({ text, box }): [string, Box] => [text, box]),
];
