import type { LengthUnit } from '../../words';

/** What was typed, in the field's own unit; undefined where nothing was typed, NaN where it is no number. */
export type Read = number | undefined;

const FRACTIONS: Readonly<Record<string, number>> = { '¼': 0.25, '½': 0.5, '¾': 0.75 };
/** Centimetres in what may be typed behind a number. */
const CM: Readonly<Record<string, number>> = { mm: 0.1, cm: 1, m: 100, in: 2.54, inch: 2.54, inches: 2.54, '"': 2.54 };
const CM_PER_INCH = 2.54;
const INCHES_PER_FOOT = 12;

const tidy = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(',', '.')
    .replace('−', '-')
    .replace(/[′’]/g, "'")
    .replace(/[″”]|''/g, '"');

/** "2", "2.5", "2 1/4", "1/2", "2¼": a plain number or one with a fraction; NaN otherwise. */
function readPlain(text: string): number {
  const [, sign, whole, symbol, over, under] =
    /^(-?)\s*(\d*\.?\d*)\s*(?:([¼½¾])|(\d+)\s*\/\s*(\d+))?$/.exec(spaced(text)) ?? [];
  if (whole === undefined || (whole === '' && symbol === undefined && over === undefined)) return NaN;
  const part = symbol === undefined ? (over === undefined ? 0 : Number(over) / Number(under)) : FRACTIONS[symbol];
  const size = (whole === '' ? 0 : Number(whole)) + part;
  return sign === '-' ? -size : size;
}

/** "1/2" has no whole number in front of it. */
const spaced = (text: string): string => text.replace(/^(-?)(\d+\s*\/)/, '$1 $2');

/** Reads what people type: comma or point, any minus sign, fractions. */
export function readNumber(text: string): Read {
  const plain = tidy(text);
  return plain === '' ? undefined : readPlain(plain);
}

/** A length in the unit of the field, cm or in: with or without a unit behind it, feet and inches too ("5'10", "5 ft 10 in"). */
export function readLength(text: string, unit: LengthUnit): Read {
  const plain = tidy(text);
  if (plain === '') return undefined;
  const inUnit = (cm: number): number => Number((unit === 'cm' ? cm : cm / CM_PER_INCH).toFixed(6));
  const feet = /^(\d+(?:\.\d+)?)\s*(?:'|ft|feet|foot)\s*(.*?)\s*(?:"|in|inch|inches)?$/.exec(plain);
  if (feet) {
    const inches = feet[2] === '' ? 0 : readPlain(feet[2]);
    return inUnit((Number(feet[1]) * INCHES_PER_FOOT + inches) * CM_PER_INCH);
  }
  const [, number, symbol] = /^(.*?)\s*(mm|cm|m|inches|inch|in|")$/.exec(plain) ?? [];
  return number === undefined ? readPlain(plain) : inUnit(readPlain(number) * CM[symbol]);
}

/** Of a person's height in metres nobody needs to be told: less than this is not meant in centimetres or inches. */
const MOST_METRES = 2.5;
/** And this much is not meant in inches. */
const LEAST_CM = 120;

/** A person's height: as any length; "1.70" is metres in either unit, "178" centimetres in inches too. */
export function readHeight(text: string, unit: LengthUnit): Read {
  const read = readLength(text, unit);
  if (read === undefined || Number.isNaN(readPlain(tidy(text)))) return read;
  if (read >= 1 && read <= MOST_METRES) return readLength(`${read} m`, unit);
  return unit === 'in' && read >= LEAST_CM ? readLength(`${read} cm`, unit) : read;
}

/** A person's height in inches as it is said: 5'10", 5'10¼". */
export function showFeet(inches: number): string {
  const quarters = Math.round(inches * 4);
  const [feet, rest] = [Math.floor(quarters / 48), quarters % 48];
  return `${feet}'${Math.floor(rest / 4)}${['', '¼', '½', '¾'][rest % 4]}"`;
}
