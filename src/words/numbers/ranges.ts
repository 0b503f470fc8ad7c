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

/** What a field with a unit wants, for whoever typed something else. */
const TYPE_AS: Readonly<Record<string, string>> = {
  cm: 'Type centimetres, as 12.5, or 5 in.',
  in: 'Type inches, as 2 1/4, or 6 cm.',
  feet: 'Type 5\'10", 70 or 178 cm.',
  '°': 'Type degrees, as 12.5.',
  ms: 'Type milliseconds, as 250.',
};
const sayWanted = (unit: string): string => TYPE_AS[unit] ?? `Type a number in ${unit}.`;
/** Why a field that needs a number has none, and what it wants. */
export const sayEmpty = (label: string, unit: string): string => `${label} is empty. ${sayWanted(unit)}`;
/** Why what was typed is no number, and what is wanted. */
export const sayNotUnderstood = (typed: string, unit: string): string =>
  `"${typed}" is not understood. ${sayWanted(unit)}`;
/** Said after a refusal: the value that is still used. */
export const sayStays = (value: string): string => `${value} stays in use.`;
