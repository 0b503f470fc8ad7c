/** Even steps for an axis: 1, 2 or 5 times a power of ten, so that at most `most` of them fit. */
function stepFor(span: number, most: number): number {
  const rough = Math.max(span, 1e-6) / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [1, 2, 5, 10].map((factor) => factor * power).find((step) => step >= rough)!;
}

/** An axis of a plot: its two ends, and where it is ticked. */
export interface Axis {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

/** An axis from step to step that holds all values. */
export function axisFor(values: readonly number[], most: number): Axis {
  const [least, largest] = [Math.min(...values), Math.max(...values)];
  const step = stepFor(largest - least, most);
  const [from, to] = [Math.floor(least / step), Math.max(Math.ceil(largest / step), Math.floor(least / step) + 1)];
  const ticks = Array.from({ length: to - from + 1 }, (_, at) => Number(((from + at) * step).toPrecision(12)));
  return { low: ticks[0], high: ticks.at(-1)!, ticks };
}
