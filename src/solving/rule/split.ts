import { exactInterval } from '../../math/binomial';

/** So many of so many. */
interface Count {
  readonly n: number;
  readonly of: number;
}

/** The one condition that tells failures from successes best. */
export interface Split<Id = string> {
  readonly id: Id;
  readonly threshold: number;
  /** On which side of the threshold failures are the more frequent. A value on it counts as above. */
  readonly side: 'below' | 'above';
  /** Failures on that side. */
  readonly here: Count;
  /** Failures on the other. */
  readonly elsewhere: Count;
}

/** One number of every trial, and the step its thresholds stand on. */
export interface Column<Id = string> {
  readonly id: Id;
  readonly round: number;
  /** One a trial; NaN where it has none: such trials count on neither side. */
  readonly values: ArrayLike<number>;
}

/** Fewest trials on a side of a split: less is no group that one can speak of. */
const FEWEST = 10;
/** Most thresholds looked at on a column. */
const MOST_THRESHOLDS = 200;

/**
 * The best single split of failures from successes: of all thresholds on round numbers the one after which the two sides are purest, by
 * the drop of the Gini impurity. Undefined where none is better than chance: the exact 95 % intervals of the two sides overlap.
 * Found by looking at all of them, so it describes these trials; it is no test of significance.
 * Source: Breiman, Friedman, Olshen & Stone, Classification and Regression Trees (1984), section 4.3.
 */
export function findSplit<Id>(columns: readonly Column<Id>[], failed: ArrayLike<number>): Split<Id> | undefined {
  let best: { readonly gain: number; readonly split: Split<Id> } | undefined;
  for (const column of columns) {
    for (const threshold of thresholdsOf(column)) {
      const [below, above] = sidesOf(column, threshold, failed);
      if (below.of < FEWEST || above.of < FEWEST) continue;
      const gain = purityGain(below, above);
      if (gain <= (best?.gain ?? 0) + 1e-12) continue;
      const isBelow = below.n / below.of > above.n / above.of;
      const [here, elsewhere] = isBelow ? [below, above] : [above, below];
      best = { gain, split: { id: column.id, threshold, side: isBelow ? 'below' : 'above', here, elsewhere } };
    }
  }
  return best && isClear(best.split) ? best.split : undefined;
}

/** Round numbers between the smallest and the largest value; the largest itself splits nothing off. */
function thresholdsOf({ values, round }: Column<unknown>): number[] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i++) {
    if (values[i] < low) low = values[i];
    if (values[i] > high) high = values[i];
  }
  const [first, last] = [Math.floor(low / round) + 1, Math.ceil(high / round)];
  if (!(last >= first)) return [];
  const step = Math.ceil((last - first + 1) / MOST_THRESHOLDS);
  return Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, i) => (first + i * step) * round);
}

/** Rounding of a value that stands on a threshold. */
const ON = 1e-9;

function sidesOf({ values }: Column<unknown>, threshold: number, failed: ArrayLike<number>): readonly [Count, Count] {
  let [belowOf, belowN, aboveOf, aboveN] = [0, 0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (value < threshold - ON) {
      belowOf++;
      belowN += failed[i];
    } else if (value >= threshold - ON) {
      aboveOf++;
      aboveN += failed[i];
    }
  }
  return [
    { n: belowN, of: belowOf },
    { n: aboveN, of: aboveOf },
  ];
}

/** Gini impurity of a group times its size: twice failures times successes over all. */
const impurity = ({ n, of }: Count): number => (of > 0 ? (2 * n * (of - n)) / of : 0);

const purityGain = (a: Count, b: Count): number =>
  impurity({ n: a.n + b.n, of: a.of + b.of }) - impurity(a) - impurity(b);

const isClear = ({ here, elsewhere }: Split<unknown>): boolean =>
  exactInterval(here.n, here.of).low > exactInterval(elsewhere.n, elsewhere.of).high;
