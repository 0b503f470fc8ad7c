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
  return { toPercent, bars };
}
