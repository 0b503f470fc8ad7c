/** Why a number outside its limits, all in the field's own unit, cannot be taken. Undefined inside. */
export function outside(label: string, typed: number, min: number, max: number, unit: string, decimals = 0) {
  if (typed >= min - HAIR && typed <= max + HAIR) return undefined;
  const range = sayRange(min, max, unit, decimals);
  return `${label.split(',')[0]} ${withUnit(minus(typed), unit)} is outside ${range}.`;
}

/** "−12 to 12 cm". Rounded inward, so that what is named can be typed. */
export function sayRange(min: number, max: number, unit: string, decimals: number): string {
  const tenths = 10 ** decimals;
  const low = Math.ceil(min * tenths - HAIR) / tenths;
  const high = Math.floor(max * tenths + HAIR) / tenths;
  return `${minus(low)} to ${withUnit(minus(high), unit)}`;
}

/** Less than any field shows: what the change of units leaves over. */
const HAIR = 1e-6;

/** A number with the minus sign of print. */
export const minus = (value: number): string => String(value || 0).replace('-', '−');
const withUnit = (value: string, unit: string): string => (unit === '°' ? value + unit : `${value} ${unit}`);
