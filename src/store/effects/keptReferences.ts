import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import { JOINT_COUNT } from '../../model/joints';
import { K, KEY_COUNT, type ReferenceSwing } from '../../model/keys';
import { createSwing, headAt } from '../../reading/swing';
import { usualSwings } from '../../solving/reference/usual';
import type { Shelf } from '../document/persistence';

/** Solved reference swings in local storage: a cache, which nothing else reads or writes. */
const KEY = 'slantwise-references';
/** Swings kept; the oldest go first. One takes some 4 kB. */
export const MOST_KEPT = 20;
/** A swing is taken back only when, on this body with this club, it still brings the head to its ball, m. */
const AT_BALL = 0.005;

interface Kept {
  readonly key: string;
  readonly times: readonly number[];
  readonly values: readonly number[];
  readonly gripTurn: number;
  readonly gripAngle: number;
  readonly lie: number;
  readonly ballPoint: readonly number[];
}

/** Says by which model a swing was solved: one that is calibrated anew ships other swings. Raise the number when only the search changes. */
const markOfModel = (): string =>
  `3:${usualSwings()
    .flatMap(({ keys }) => keys.flat())
    .reduce((sum, value) => sum + value, 0)
    .toFixed(6)}`;
/** Cache: the mark, once it has been worked out. */
const marks: { mine?: string } = {};

const isList = (value: unknown, length: number): value is number[] =>
  Array.isArray(value) && value.length === length && value.every((one) => Number.isFinite(one));

function isKept(value: unknown): value is Kept {
  if (typeof value !== 'object' || value === null) return false;
  const { key, times, values, gripTurn, gripAngle, lie, ballPoint } = value as Partial<Record<keyof Kept, unknown>>;
  return (
    typeof key === 'string' &&
    isList(times, KEY_COUNT) &&
    times.every((t, i) => i === 0 || t > times[i - 1]) &&
    isList(values, KEY_COUNT * JOINT_COUNT) &&
    isList([gripTurn, gripAngle, lie], 3) &&
    isList(ballPoint, 3)
  );
}

/** What is kept by this model. Anything else in its place counts as nothing. */
function readAll(shelf: Shelf): readonly Kept[] {
  marks.mine ??= markOfModel();
  try {
    const { model, swings } = JSON.parse(shelf.getItem(KEY) ?? '{}') as { model?: unknown; swings?: unknown };
    return model === marks.mine && Array.isArray(swings) ? (swings as unknown[]).filter(isKept) : [];
  } catch {
    return [];
  }
}

/** Scratch: where the head is. */
const head = new Float64Array(3);

/** The swing kept under a key, if it is whole and still a swing of this body and club. */
export function findKept(shelf: Shelf, key: string, body: Body, club: Club): ReferenceSwing | undefined {
  const kept = readAll(shelf).find((one) => one.key === key);
  if (!kept) return undefined;
  const [x, y, z] = kept.ballPoint;
  const reference: ReferenceSwing = {
    times: Float64Array.from(kept.times),
    values: Float64Array.from(kept.values),
    gripTurn: kept.gripTurn,
    gripAngle: kept.gripAngle,
    lie: kept.lie,
    ballPoint: [x, y, z],
  };
  headAt(createSwing(body, club, reference), reference.times[K.impact], head);
  return Math.hypot(head[0] - x, head[1] - y, head[2] - z) <= AT_BALL ? reference : undefined;
}

/** Keeps a solved swing. Where there is no room it is simply solved again another time. */
export function keepReference(shelf: Shelf, key: string, reference: ReferenceSwing): void {
  const kept: Kept = { ...reference, key, times: [...reference.times], values: [...reference.values] };
  const swings = [...readAll(shelf).filter((one) => one.key !== key), kept].slice(-MOST_KEPT);
  try {
    shelf.setItem(KEY, JSON.stringify({ model: marks.mine, swings }));
  } catch {
    // Full or forbidden: whoever saves the document says so.
  }
}
