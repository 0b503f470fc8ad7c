import { toDeg, type Rad } from '../../math/angle';
import { LENGTHS, SPEEDS, type Units } from './units';

/** U+2212, the true minus sign: as wide as the plus, so columns of numbers line up. */
export const MINUS = '\u2212';
/** Stands where there is no number. Said aloud as `NO_NUMBER_SPOKEN`. */
export const NO_NUMBER = '\u2013';
export const NO_NUMBER_SPOKEN = 'no number';

/** A number ready to be shown: with its unit as a symbol, inside a sentence, and said aloud. */
export interface Shown {
  readonly number: string;
  readonly unit: string;
  /** "7 cm": for labels. */
  readonly text: string;
  /** "7 cm", "2.8 inches": inside a sentence. */
  readonly inSentence: string;
  /** "7 centimetres": for a screen reader. */
  readonly spoken: string;
  /** The shown number itself, in the shown unit. */
  readonly value: number;
}

/** Rounds to `decimals` places, halves away from zero so that mirrored values show mirrored numbers. Never gives -0. */
export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const rounded = (Math.sign(value) * Math.round(Math.abs(value) * scale)) / scale;
  return rounded === 0 ? 0 : rounded;
}

/** A number with `decimals` places and a true minus sign; an en dash when there is none. Never "NaN", never "-0". */
export function formatNumber(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return NO_NUMBER;
  const rounded = roundTo(value, decimals);
  const digits = Math.abs(rounded).toFixed(decimals);
  return rounded < 0 ? MINUS + digits : digits;
}

/** A signed number: plus, true minus, or a bare zero. */
export const formatSigned = (value: number, decimals = 0): string =>
  roundTo(value, decimals) > 0 ? `+${formatNumber(value, decimals)}` : formatNumber(value, decimals);

/** The user's own number as typed: up to two decimals, no trailing zeros. */
export function formatTyped(value: number): string {
  for (let decimals = 0; decimals < 2; decimals++) {
    if (Math.abs(roundTo(value, decimals) - value) < 1e-6) return formatNumber(value, decimals);
  }
  return formatNumber(value, 2);
}

const QUARTERS = ['', '¼', '½', '¾'] as const;

/** A number in whole quarters, as on a tape: "2¼", "¾", "−1½". */
function formatQuarters(value: number): string {
  if (!Number.isFinite(value)) return NO_NUMBER;
  const quarters = roundTo(Math.abs(value) * 4, 0);
  const [whole, rest] = [Math.floor(quarters / 4), QUARTERS[quarters % 4]];
  return `${value < 0 && quarters > 0 ? MINUS : ''}${whole === 0 && rest !== '' ? '' : whole}${rest}`;
}

const DECIMALS: Readonly<Record<string, string>> = { '¼': '.25', '½': '.5', '¾': '.75' };

/** How a shown number is said: "minus 4", "2.5", never a symbol a reader may skip. */
export const sayNumber = (shown: string): string =>
  shown === NO_NUMBER
    ? NO_NUMBER_SPOKEN
    : shown
        .replace(/^(\D?)(?=[¼½¾])/, '$10')
        .replace(/[¼½¾]/, (quarter) => DECIMALS[quarter])
        .replace(MINUS, 'minus ')
        .replace('+', 'plus ');

const plural = (forms: readonly [string, string], shown: string): string =>
  ['1', '1.0', '¼', '½', '¾'].includes(shown) ? forms[0] : forms[1];

/** A length in the chosen unit: whole centimetres or quarters of an inch. `metres` in m; `decimals` overrules that. */
export function showLength(metres: number, units: Pick<Units, 'length'>, decimals?: number): Shown {
  const unit = LENGTHS[units.length];
  const value = metres / unit.metres;
  const inQuarters = decimals === undefined && unit.grain === 0.25;
  const places = decimals ?? unit.decimals;
  const format = (of: number): string => (inQuarters ? formatQuarters(of) : formatNumber(of, places));
  const number = format(value);
  if (number === NO_NUMBER) return noNumber(unit.symbol);
  const size = format(Math.abs(value));
  return {
    number,
    unit: unit.symbol,
    text: `${number} ${unit.symbol}`,
    inSentence: `${number} ${plural(unit.sentence, size)}`,
    spoken: `${sayNumber(number)} ${plural(unit.spoken, size)}`,
    value: inQuarters ? roundTo(value * 4, 0) / 4 : roundTo(value, places),
  };
}

/** An angle in degrees. `angle` in radians. */
export function showAngle(angle: Rad, decimals = 0): Shown {
  const value = toDeg(angle);
  const number = formatNumber(value, decimals);
  if (number === NO_NUMBER) return noNumber('°');
  const text = `${number}°`;
  const said = `${sayNumber(number)} ${plural(['degree', 'degrees'], formatNumber(Math.abs(value), decimals))}`;
  return { number, unit: '°', text, inSentence: text, spoken: said, value: roundTo(value, decimals) };
}

/** A speed in the chosen unit. `metresPerSecond` in m/s. */
export function showSpeed(metresPerSecond: number, units: Pick<Units, 'speed'>, decimals = 0): Shown {
  const unit = SPEEDS[units.speed];
  const value = metresPerSecond / unit.metresPerSecond;
  const number = formatNumber(value, decimals);
  if (number === NO_NUMBER) return noNumber(units.speed);
  const text = `${number} ${units.speed}`;
  const spoken = `${sayNumber(number)} ${unit.spoken}`;
  return { number, unit: units.speed, text, inSentence: text, spoken, value: roundTo(value, decimals) };
}

const noNumber = (unit: string): Shown => ({
  number: NO_NUMBER,
  unit,
  text: NO_NUMBER,
  inSentence: NO_NUMBER_SPOKEN,
  spoken: NO_NUMBER_SPOKEN,
  value: NaN,
});
