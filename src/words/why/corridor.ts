import { dialOf, type MovementId } from '../../model/movements';
import type { Region } from '../../solving/diagnosis/corridor';
import { DIAL_NAMES } from '../swing/dials';
import { formatTyped } from '../numbers/numbers';

/** What the sentence of the map is made from: the very outline that is drawn. Model units. */
export interface MapOf {
  readonly x: MovementId;
  readonly y: MovementId;
  readonly point: readonly [number, number];
  readonly both: Region;
}

/** Whether a point lies in a region, even-odd. */
export function isInRegion([px, py]: readonly [number, number], region: Region): boolean {
  let isInside = false;
  for (const ring of region) {
    for (let i = 1; i < ring.length; i++) {
      const [ax, ay] = ring[i - 1];
      const [bx, by] = ring[i];
      if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) isInside = !isInside;
    }
  }
  return isInside;
}

/** Where the straight line through a point along one axis (0: x, 1: y) crosses the outline, nearest first, as signed distances. */
export function crossingsAlong(axis: 0 | 1, point: readonly [number, number], region: Region): number[] {
  const other = axis === 0 ? 1 : 0;
  const found: number[] = [];
  for (const ring of region) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1], ring[i]];
      if (a[other] > point[other] === b[other] > point[other]) continue;
      const share = (point[other] - a[other]) / (b[other] - a[other]);
      found.push(a[axis] + share * (b[axis] - a[axis]) - point[axis]);
    }
  }
  return found.toSorted((a, b) => Math.abs(a) - Math.abs(b));
}

/** The point of the outline that is nearest by effort: each side counted by half of its usual range. */
function nearestMix({ x, y, point, both }: MapOf): readonly [number, number] {
  const [hx, hy] = [half(x), half(y)];
  let best: readonly [number, number] = [0, 0];
  let least = Infinity;
  for (const ring of both) {
    for (let i = 1; i < ring.length; i++) {
      const [ax, ay] = [(ring[i - 1][0] - point[0]) / hx, (ring[i - 1][1] - point[1]) / hy];
      const [dx, dy] = [(ring[i][0] - ring[i - 1][0]) / hx, (ring[i][1] - ring[i - 1][1]) / hy];
      const size = dx * dx + dy * dy;
      const share = size > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / size)) : 0;
      const [ox, oy] = [ax + share * dx, ay + share * dy];
      const away = ox * ox + oy * oy;
      if (away < least) [least, best] = [away, [ox * hx, oy * hy]];
    }
  }
  return best;
}

const half = (id: MovementId): number => (dialOf(id).usualMax - dialOf(id).usualMin) / 2;

/** The next whole step at or past a distance, so that what is said also holds. */
const stepsPast = (id: MovementId, distance: number): number => {
  const { edgeUnit, step } = dialOf(id);
  return (Math.sign(distance) * Math.ceil(Math.abs(distance) / step - 1e-6) * step) / edgeUnit;
};

/** "12° more bowed", "8 ms later": by how much a movement changes, in the unit of its slider. */
function sayMove(id: MovementId, edge: number): string {
  const size = formatTyped(Math.abs(edge));
  const { low, high } = DIAL_NAMES[id];
  switch (id) {
    case 'leadWristFlexion':
      return `${size}° more ${edge > 0 ? high : low}`;
    case 'rotationRate':
      return `${formatTyped(Math.abs(edge) * 100)} % ${edge > 0 ? high : low}`;
    case 'rotationDelay':
      return `${size} ms ${edge > 0 ? high : low}`;
    case 'trailSideBend':
      return `${size}° ${edge > 0 ? 'more' : 'less'} side bend`;
    case 'pelvisShift':
      return `${size} cm ${edge > 0 ? 'to target' : 'back'}`;
  }
}

const NAMES: Readonly<Record<MovementId, string>> = {
  leadWristFlexion: 'Wrist',
  rotationRate: 'Body turn',
  rotationDelay: 'The start of the turn',
  trailSideBend: 'Side bend',
  pelvisShift: 'Hip slide',
};

/** The sentence of the map as a screen reader says it: the same words with the units written out. */
export const speakMap = (text: string): string =>
  text
    .replaceAll('°', ' degrees')
    .replaceAll(' ms ', ' milliseconds ')
    .replaceAll(' % ', ' percent ')
    .replaceAll(' cm ', ' centimetres ');

/** The sentence over the map, computed from the outline that is drawn. */
export function sayMap(map: MapOf): string {
  const { x, y, point, both } = map;
  if (both.length === 0) return 'No mix of these two brings both checkpoints on plane.';
  const [alongX] = crossingsAlong(0, point, both);
  const [alongY] = crossingsAlong(1, point, both);
  if (isInRegion(point, both)) {
    const edge = alongX ?? alongY;
    if (edge === undefined) return 'Both checkpoints are on plane here.';
    const axis = alongX === undefined ? y : x;
    return `Both checkpoints are on plane; the edge is ${sayMove(axis, wholeSteps(axis, edge))} away.`;
  }
  const alone = [
    ...(alongX === undefined ? [] : [`${NAMES[x]} alone needs ${sayMove(x, stepsPast(x, alongX))}.`]),
    ...(alongY === undefined ? [] : [`${NAMES[y]} alone needs ${sayMove(y, stepsPast(y, alongY))}.`]),
  ];
  const [mx, my] = nearestMix(map);
  const mix = `${sayMove(x, stepsPast(x, mx))} with ${sayMove(y, stepsPast(y, my))}`;
  const isMix = stepsPast(x, mx) !== 0 && stepsPast(y, my) !== 0;
  if (alone.length === 0) return `Neither alone is enough: it takes ${mix}.`;
  return isMix ? `${alone[0]} Together, ${mix} will do.` : alone.join(' ');
}

/** How far it still is to an edge, in steps that are still inside; at least one. */
function wholeSteps(id: MovementId, distance: number): number {
  const { edgeUnit, step } = dialOf(id);
  return (Math.sign(distance) * Math.max(1, Math.floor(Math.abs(distance) / step)) * step) / edgeUnit;
}

export const DRAWING_MAP = 'Drawing the map …';
/** Whether a place on the map is on plane at both checkpoints. */
export const sayBothOnPlane = (isBoth: boolean): string =>
  isBoth ? 'Both checkpoints on plane.' : 'Not both on plane.';

export const MOVE_ON_MAP = 'Move a finger on the map: the figure follows.';
