import type { Part } from '../../../solving/diagnosis/contributions';

/** A bar of the waterfall, in percent of the width: where it starts and ends, and where the step before it ended. */
interface Bar {
  readonly part: Part;
  readonly left: number;
  readonly width: number;
  readonly start: number;
  readonly isUp: boolean;
}

/** Contributions as bars, one starting where the last one ended, and the scale they stand on. */
interface Waterfall {
  readonly toPercent: (value: number) => number;
  readonly bars: readonly Bar[];
  /** A tick at round numbers, a name at every fifth, or at every one where there are few. */
  readonly ticks: readonly { readonly value: number; readonly at: number; readonly isNamed: boolean }[];
}

/** More ticks than this would run together. */
const MOST_TICKS = 22;

/** Round numbers from `low` to `high`: 1, 2 or 5 of a power of ten apart. */
function roundNumbers(low: number, high: number): { readonly value: number; readonly isNamed: boolean }[] {
  const least = (high - low) / MOST_TICKS;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((each) => each >= least)!;
  const from = Math.ceil(low / step);
  const count = Math.floor(high / step) - from + 1;
  const every = count > 6 ? 5 : 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => from + i).map((i) => ({
    value: Number((i * step).toPrecision(12)),
    isNamed: i % every === 0,
  }));
}

/** Room at both ends, share of what is drawn. */
const MARGIN = 0.06;

/** A waterfall from one reading to another over `steps`, on a scale that also holds `also` (zero, the edges of a band). */
export function waterfall(
  from: number,
  steps: readonly { readonly part: Part; readonly value: number }[],
  also: readonly number[],
): Waterfall {
  const ends = [from];
  for (const { value } of steps) ends.push(ends.at(-1)! + value);
  const [low, high] = [Math.min(...ends, ...also), Math.max(...ends, ...also)];
  const span = high - low || 1;
  const toPercent = (value: number): number => ((value - low) / span) * 100 * (1 - 2 * MARGIN) + MARGIN * 100;
  const bars = steps.map(({ part, value }, i) => {
    const [a, b] = [toPercent(ends[i]), toPercent(ends[i + 1])];
    return { part, left: Math.min(a, b), width: Math.abs(b - a), start: a, isUp: value >= 0 };
  });
  const ticks = roundNumbers(low, low + span).map((tick) => ({ ...tick, at: toPercent(tick.value) }));
  return { toPercent, bars, ticks };
}
