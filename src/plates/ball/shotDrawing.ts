import type { Shot } from '../../flight/shot';
import type { Handed } from '../../flight/shape';
import { rad } from '../../math/angle';
import { rangeUnit, showDistance, type Units } from '../../words';
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
import { along, type Box, type Point, type Segment } from '../plate/frame';
import type { Figure } from '../annotation/lettering';
import type { Size } from '../useSize';

/** The shot seen from above: css px, to scale, the ball at the foot and the target up. */
export interface ShotDrawing {
  readonly ball: Point;
  readonly target: Segment;
  readonly targetHead: readonly Point[];
  /** Where the ball would go if it flew straight on. */
  readonly start: Segment;
  readonly curve: readonly Point[];
  readonly landing: Point;
  /** As wide as published models differ, from the shortest to the longest carry. */
  readonly width: readonly Point[];
  readonly widthTicks: readonly Segment[];
  readonly apex: Point;
  readonly arcs: readonly { readonly radius: number; readonly label: Label | undefined }[];
  readonly carry: Figure | undefined;
  readonly labels: readonly Label[];
  /** px a metre. */
  readonly scale: number;
}

/** Ranges the plan can show, in the shown unit: fixed steps, so that the scale does not change with every slider step. */
const REACHES = [10, 25, 50, 75, 100, 150, 200, 250, 300, 400, 600];
/** Half the breadth of the landing's strip, px. */
const HALF_STRIP = 7;
/** Rays on which the arcs are labelled, rad from the target line: on the side the ball does not go to. */
const LABEL_RAY = rad(24);

/** Draws a shot with its track. What is right of the target is right, for either hand. */
export function shotDrawing(
  shot: Shot,
  handed: Handed,
  units: Pick<Units, 'length'>,
  { width, height }: Size,
): ShotDrawing {
  const { flight } = shot;
  const side = handed === 'left' ? -1 : 1;
  const { metres, symbol } = rangeUnit(units);
  const room = roomIn(width, height);
  const ball = { x: width / 2, y: height - 18 };
  const { reach, scale } = reachFor(shot, metres, ball, room);
  const place = (x: number, z: number): Point => ({ x: ball.x + side * z * scale, y: ball.y - x * scale });
  const { track } = flight;
  const count = track.length / 4;
  const curve = Array.from({ length: count }, (_, i) => place(track[4 * i + 1], track[4 * i + 3]));
  const landing = curve[count - 1];
  const apex = curve[highestOf(track)];

  const startWay = headingOf(side * rad(flight.startDeg));
  const start = lineThrough(ball, startWay, 0, flight.carryM * scale);
  const landAngle = Math.atan2(landing.x - ball.x, ball.y - landing.y);
  const landWay = headingOf(landAngle);
  const half = (shot.width / 2) * scale;
  const across = toRightOf(landWay);
  const corner = (along0: number, across0: number): Point => along(along(landing, landWay, along0), across, across0);
  const strip = [
    corner(-half, -HALF_STRIP),
    corner(half, -HALF_STRIP),
    corner(half, HALF_STRIP),
    corner(-half, HALF_STRIP),
  ];
  const target = { from: ball, to: { x: ball.x, y: room.top } };

  const obstacles: Obstacles = {
    boxes: [boxAround(ball, 6), ...strip.map((point) => boxAround(point, 2)), boxAround(landing, HALF_STRIP + 2)],
    lines: [target, start, ...curve.slice(1).map((to, i) => ({ from: curve[i], to }))],
  };
  const away = landing.x >= ball.x ? 1 : -1;
  const carryOf = (at: Point): Figure => numberAround(at, showDistance(flight.carryM, units).number, symbol);
  const carry = findPlace(carryOf, landing, { x: away, y: -0.3 }, room, obstacles, [12, 20, 32, 48, 70]);
  const labels: Label[] = [];
  const name = (text: string, at: Point, first: Point): void => {
    const label = findLabel(text, at, first, room, obstacles);
    if (label) labels.push(label);
  };
  name('start', start.to, { x: start.to.x > landing.x ? 1 : -1, y: 0 });
  name(`apex ${showDistance(flight.apexM, units, 'up').text}`, apex, { x: away, y: 0 });
  name('target', along(target.to, { x: 0, y: 1 }, 12), { x: -away, y: 0 });
  const arcs = stepsOf(reach).map((step) => {
    const radius = step * metres * scale;
    const on = along(ball, headingOf(-away * LABEL_RAY), radius);
    return { radius, label: findLabel(`${step} ${symbol}`, on, { x: -away, y: 0 }, room, obstacles, [0, 8]) };
  });
  return {
    ball,
    target,
    targetHead: arrowAt(target.to, headingOf(0), 10, 3.4),
    start,
    curve,
    landing,
    width: strip,
    widthTicks: [-half, half].map((at) => ({ from: corner(at, -HALF_STRIP - 3), to: corner(at, HALF_STRIP + 3) })),
    apex,
    arcs,
    carry,
    labels,
    scale,
  };
}

/** The nearest reach, in the shown unit, in which the whole shot stands, and the scale that goes with it. */
function reachFor({ flight, width }: Shot, metres: number, ball: Point, room: Box): { reach: number; scale: number } {
  const longest = flight.carryM + width / 2;
  let sideways = Math.abs((flight.offlineM * longest) / (flight.carryM || 1));
  for (let i = 3; i < flight.track.length; i += 4) sideways = Math.max(sideways, Math.abs(flight.track[i]));
  const up = ball.y - room.top - 12;
  const out = (room.right - room.left) / 2 - HALF_STRIP - 4;
  for (const reach of REACHES) {
    const scale = up / (reach * metres);
    if (longest <= reach * metres && sideways * scale <= out) return { reach, scale };
  }
  const last = REACHES[REACHES.length - 1];
  return { reach: last, scale: Math.min(up / Math.max(longest, last * metres), out / Math.max(sideways, 1e-9)) };
}

/** Arcs worth a line: two to five of them. */
function stepsOf(reach: number): number[] {
  const step = [5, 10, 25, 50, 100, 200].find((each) => reach / each <= 5) ?? 200;
  return Array.from({ length: Math.floor(reach / step) }, (_, i) => (i + 1) * step).filter(
    (at) => at < reach || reach <= 25,
  );
}

function highestOf(track: Float64Array): number {
  let highest = 0;
  for (let i = 0; i < track.length / 4; i++) if (track[4 * i + 2] > track[4 * highest + 2]) highest = i;
  return highest;
}

/**
 * Everything on the drawing that has to be read, with its name.
 *
 * @internal Tests check that nothing of it is cut or covered.
 */
export const readablesOf = ({ carry, labels, arcs }: ShotDrawing): [string, Box][] => [
  ...(carry ? [['carry', carry.box] as [string, Box]] : []),
  ...labels.map(({ text, box }): [string, Box] => [text, box]),
  ...arcs.flatMap(({ label }): [string, Box][] => (label ? [[label.text, label.box]] : [])),
];
