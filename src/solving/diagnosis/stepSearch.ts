import { DIALS } from '../../model/movements';
import { judge, type Bands } from '../../reading/verdicts';
import type { Judge } from './judged';
import { HALF_RANGE } from './judged';

/** A setting on the dials' own steps, and what it does. Readings and metres outside in m, as in `Judged`. */
export interface Stepped {
  readonly dials: Float64Array;
  readonly readings: Float64Array;
  /** Root of the sum of squares of the changes, each over half of its dial's usual range. */
  readonly effort: number;
  /** Both readings lie in their bands. */
  readonly isInside: boolean;
  /** Root of the sum of squares of the metres left outside. */
  readonly outside: number;
}

/** Steps looked at on each side of the exact solution. One more where the nearest do not reach the bands. */
const REACHES = [1, 2] as const;

/**
 * Brings a solution onto the steps of its dials: what is proposed can be dialled, and its readings are those of the dialled
 * swing. Of all settings around the exact one, the least effort inside the bands; without any, the one least outside.
 * `free`: indices of the dials that may move; all others keep their value exactly.
 */
export function findOnSteps(
  reader: Judge,
  from: Float64Array,
  exact: ArrayLike<number>,
  free: readonly number[],
  bands: Bands,
): Stepped {
  let best: Stepped | undefined;
  for (const reach of REACHES) {
    for (const dials of settingsAround(from, exact, free, reach)) {
      const there = readSetting(reader, from, dials, free, bands);
      if (!best || isBetter(there, best)) best = there;
    }
    if (best?.isInside) break;
  }
  return best!;
}

function isBetter(a: Stepped, b: Stepped): boolean {
  if (a.isInside !== b.isInside) return a.isInside;
  if (a.isInside) return a.effort < b.effort;
  return a.outside < b.outside || !(b.outside >= 0);
}

/** Every setting with each free dial on one of its steps around the exact value, inside its limits. */
function settingsAround(
  from: Float64Array,
  exact: ArrayLike<number>,
  free: readonly number[],
  reach: number,
): Float64Array[] {
  let settings = [from.slice()];
  for (const i of free) {
    const { step, min, max } = DIALS[i];
    const low = Math.floor(exact[i] / step + 1e-9);
    const values = new Set<number>([from[i]]);
    for (let k = 1 - reach; k <= reach; k++) {
      const value = (low + k) * step;
      if (value >= min - step / 2 && value <= max + step / 2) values.add(Math.min(max, Math.max(min, value)));
    }
    settings = settings.flatMap((dials) =>
      [...values].map((value) => {
        const own = dials.slice();
        own[i] = value;
        return own;
      }),
    );
  }
  return settings;
}

function readSetting(
  reader: Judge,
  from: Float64Array,
  dials: Float64Array,
  free: readonly number[],
  { leadArmParallel, shaftParallel }: Bands,
): Stepped {
  const readings = new Float64Array(2);
  reader.read(dials, readings);
  let squares = 0;
  for (const i of free) squares += ((dials[i] - from[i]) / HALF_RANGE[i]) ** 2;
  const past = (value: number, low: number, high: number): number => Math.max(0, value - high, low - value);
  return {
    dials,
    readings,
    effort: Math.sqrt(squares),
    isInside: judge(readings[0], leadArmParallel) === 'onPlane' && judge(readings[1], shaftParallel) === 'onPlane',
    outside: Math.hypot(
      past(readings[0], leadArmParallel.low, leadArmParallel.high),
      past(readings[1], shaftParallel.low, shaftParallel.high),
    ),
  };
}
