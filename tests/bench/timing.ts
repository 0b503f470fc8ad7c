/** A piece of work done `count` times in a row. What it returns is added up, so that nothing can be optimised away. */
export type Work = (count: number) => number;

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
};

/** Nanoseconds of one unit of each work, and each as a multiple of the first. */
export type Timing<Name extends string> = Record<Name, { readonly ns: number; readonly ofFirst: number }>;

let sink = 0;

/**
 * Times several works against each other: in turn within every round, so that a busy moment of the machine hits all of them.
 * The ratio is the median of the rounds' own ratios, not the ratio of medians.
 */
export function timeTogether<Name extends string>(works: Record<Name, Work>, count: number, rounds = 25): Timing<Name> {
  const names = Object.keys(works) as Name[];
  const time = (name: Name): number => {
    const start = performance.now();
    sink += works[name](count);
    return ((performance.now() - start) * 1e6) / count;
  };
  for (const name of names) for (let warm = 0; warm < 3; warm++) time(name);
  const laps = Array.from({ length: rounds }, () => names.map(time));
  if (Number.isNaN(sink)) throw new Error('A timed work gave a number that is not one.');
  return Object.fromEntries(
    names.map((name, i) => [
      name,
      { ns: median(laps.map((lap) => lap[i])), ofFirst: median(laps.map((lap) => lap[i] / lap[0])) },
    ]),
  ) as Timing<Name>;
}
