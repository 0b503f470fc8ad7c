import { formatNumber, roundTo, sayNumber } from './numbers';
import type { Units } from './units';

/** A distance on the range: metres, or yards (and feet for heights) with those who measure in inches. */
const RANGE = {
  cm: { along: { metres: 1, symbol: 'm', spoken: 'metres' }, up: { metres: 1, symbol: 'm', spoken: 'metres' } },
  in: {
    along: { metres: 0.9144, symbol: 'yd', spoken: 'yards' },
    up: { metres: 0.3048, symbol: 'ft', spoken: 'feet' },
  },
} as const;

export interface Distance {
  /** "148" */
  readonly number: string;
  /** "m", "yd", "ft" */
  readonly unit: string;
  readonly text: string;
  readonly spoken: string;
  /** As shown, in the shown unit. */
  readonly value: number;
}

/** A distance over the ground ("along") or a height ("up"), m in, whole units out. */
export function showDistance(
  metres: number,
  { length }: Pick<Units, 'length'>,
  way: 'along' | 'up' = 'along',
): Distance {
  const { metres: size, symbol, spoken } = RANGE[length][way];
  const number = formatNumber(metres / size);
  return {
    number,
    unit: symbol,
    text: `${number} ${symbol}`,
    spoken: `${sayNumber(number)} ${spoken}`,
    value: roundTo(metres / size, 0),
  };
}

/** Round distances of a plan, m: what its arcs stand for, in the unit that is shown. */
export const rangeUnit = ({ length }: Pick<Units, 'length'>): { readonly metres: number; readonly symbol: string } =>
  RANGE[length].along;
