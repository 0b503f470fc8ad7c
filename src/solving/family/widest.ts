import { DIALS } from '../../model/movements';
import { DIAL_COUNT, HALF_RANGE, type Judge } from '../diagnosis/judged';
import { solveReach, type Aim, type DialLimits, type ReachPoint } from '../reference/reach';

/** Where a body is looked for: the dials that may move, and the margins that both readings keep. */
export interface Room {
  readonly judge: Judge;
  /** Dial values that changes are counted from. */
  readonly from: Float64Array;
  /** Indices of the dials that may move. */
  readonly free: readonly number[];
  /** A little narrower than the margins themselves. */
  readonly margins: readonly [Aim, Aim];
  /** How far outside `margins` still counts as inside, m. */
  readonly slack: readonly [number, number];
  /** How far each dial may go, in the order of `DIALS`. */
  readonly limits: readonly DialLimits[];
}

/** Whether both readings keep their margins. */
export const isInside = ({ slack }: Room, { outside }: ReachPoint): boolean =>
  slack.every((most, k) => Math.abs(outside[k]) <= most);

/** A direction of the dials, in half usual ranges; length 1, in the order of `DIALS`. */
export type Direction = Float64Array;

/** How far dial values lie along a direction from `from`, in half usual ranges. */
export function alongOf(direction: Direction, from: Float64Array, dials: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < DIAL_COUNT; i++) sum += (direction[i] * (dials[i] - from[i])) / HALF_RANGE[i];
  return sum;
}

/** Distance of two settings, in half usual ranges. */
const distanceOf = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.hypot(...DIALS.map((_, i) => (a[i] - b[i]) / HALF_RANGE[i]));

/**
 * The smallest change inside the margins whose place along `direction` comes to lie in `place`. The place is one more reading beside the
 * two judged ones.
 */
export function solveAlong(
  { judge, from, free, margins, limits }: Room,
  direction: Direction,
  place: Aim,
  starts: readonly ArrayLike<number>[],
): ReachPoint | undefined {
  const withPlace: Judge = {
    read(dials, out) {
      judge.read(dials, out);
      out[2] = alongOf(direction, from, dials);
    },
    get evaluations() {
      return judge.evaluations;
    },
  };
  return solveReach({ judge: withPlace, from, free, aims: [...margins, place], limits }, starts);
}

/** Farther than any dial goes, in half usual ranges: what lies there is aimed at and never reached. */
const FAR = 8;
/** Effort that a half usual range short of it costs: enough that the smallest change decides nothing, far less than the margins cost. */
const PULL = 30;

/** The body farthest along a direction, and the one farthest against it. */
function findEnds(room: Room, direction: Direction, start: ReachPoint): readonly [ReachPoint, ReachPoint] {
  const end = (sign: 1 | -1): ReachPoint => {
    const far = alongOf(direction, room.from, start.dials) + sign * FAR;
    const found = solveAlong(room, direction, { low: far, high: far, weight: PULL }, [start.dials]);
    return found && isInside(room, found) ? found : start;
  };
  return [end(-1), end(1)];
}

/** Rounds of turning the direction toward the two ends it led to: their distance never falls, and mostly stands after two. */
const TURNS = 4;
const GAIN = 1e-3;

/** The ends of the widest direction, the direction itself, and how far apart they are in half usual ranges. */
export interface Widest {
  readonly direction: Direction;
  readonly ends: readonly [ReachPoint, ReachPoint];
  readonly width: number;
}

/** The direction in which the bodies inside the margins lie farthest apart, found from the one with the smallest change. */
export function findWidest(room: Room, smallest: ReachPoint): Widest {
  let best: Widest | undefined;
  for (const first of likeliest(room, smallest)) {
    let direction = first;
    for (let turn = 0; turn < TURNS; turn++) {
      const ends = findEnds(room, direction, smallest);
      const width = distanceOf(ends[0].dials, ends[1].dials);
      const hasGained = !best || width > best.width * (1 + GAIN);
      if (hasGained) best = { direction, ends, width };
      if (!hasGained || width === 0) break;
      direction = between(ends[0], ends[1], width);
    }
  }
  // A place along the direction is told from the direction between the very ends.
  const { ends, width } = best!;
  return width > 0 ? { ...best!, direction: between(ends[0], ends[1], width) } : best!;
}

const between = (a: ReachPoint, b: ReachPoint, width: number): Direction =>
  Float64Array.from(DIALS, (_, i) => (b.dials[i] - a.dials[i]) / HALF_RANGE[i] / width);

/** Step of the difference quotients, in half usual ranges. */
const DIFFERENCE = 1e-3;
/** How many directions are followed to their ends. */
const FOLLOWED = 2;

/**
 * Directions in which a straight line through `at` that leaves both readings as they are goes farthest inside the dials' limits.
 * Where the readings fix every dial, the dials themselves.
 */
function likeliest(room: Room, at: ReachPoint): Direction[] {
  const still = stillDirections(room, at);
  return combinations(still)
    .map((direction) => ({ direction, length: lineThrough(room, direction, at.dials) }))
    .toSorted((a, b) => b.length - a.length)
    .slice(0, FOLLOWED)
    .map(({ direction }) => direction);
}

/** An orthonormal basis of the changes that move neither reading, to first order. */
function stillDirections({ judge, free, margins, limits }: Room, at: ReachPoint): Direction[] {
  const axes = free.map((i) => Float64Array.from(DIALS, (_, k) => (k === i ? 1 : 0)));
  const there = new Float64Array(2);
  const slopes = margins.map(() => new Float64Array(DIAL_COUNT));
  for (const i of free) {
    const asked = at.dials.slice();
    const step = (at.dials[i] + DIFFERENCE * HALF_RANGE[i] > limits[i].max ? -1 : 1) * DIFFERENCE;
    asked[i] += step * HALF_RANGE[i];
    judge.read(asked, there);
    margins.forEach(({ weight }, k) => {
      slopes[k][i] = weight === 0 || Number.isNaN(there[k]) ? 0 : (there[k] - at.readings[k]) / step;
    });
  }
  const taken: Direction[] = [];
  const addRest = (vector: Direction): boolean => {
    const rest = vector.slice();
    for (const other of taken) {
      const share = dot(rest, other);
      for (let i = 0; i < DIAL_COUNT; i++) rest[i] -= share * other[i];
    }
    const size = Math.sqrt(dot(rest, rest));
    if (size <= 1e-3 * Math.sqrt(dot(vector, vector))) return false;
    taken.push(rest.map((value) => value / size));
    return true;
  };
  for (const slope of slopes) if (dot(slope, slope) > 0) addRest(slope);
  const fixed = taken.length;
  for (const axis of axes) if (taken.length < free.length) addRest(axis);
  const still = taken.slice(fixed);
  return still.length > 0 ? still : axes;
}

const dot = (a: Direction, b: Direction): number => {
  let sum = 0;
  for (let i = 0; i < DIAL_COUNT; i++) sum += a[i] * b[i];
  return sum;
};

/** Steps of a half turn in each plane of two basis directions. */
const FAN = 12;

/** Every basis direction, and a fan of directions in the plane of every two of them. */
function combinations(basis: readonly Direction[]): Direction[] {
  const all = [...basis];
  for (let a = 0; a < basis.length; a++) {
    for (let b = a + 1; b < basis.length; b++) {
      for (let k = 1; k < FAN; k++) {
        const turn = (Math.PI * k) / FAN;
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        all.push(basis[a].map((value, i) => cos * value + sin * basis[b][i]));
      }
    }
  }
  return all;
}

/** Length of a straight line through `dials` inside the limits, in half usual ranges. */
function lineThrough({ limits }: Room, direction: Direction, dials: Float64Array): number {
  let [forth, back] = [Infinity, Infinity];
  limits.forEach(({ min, max }, i) => {
    const slope = direction[i] * HALF_RANGE[i];
    if (Math.abs(slope) < 1e-9 * HALF_RANGE[i]) return;
    const [low, high] = [(min - dials[i]) / slope, (max - dials[i]) / slope];
    forth = Math.min(forth, Math.max(low, high));
    back = Math.min(back, -Math.min(low, high));
  });
  return forth + back;
}
