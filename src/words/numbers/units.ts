/** Units a coach may choose for what is shown. Inside, everything stays in metres, seconds and radians. */
export type LengthUnit = 'cm' | 'in';
export type SpeedUnit = 'm/s' | 'km/h' | 'mph';
export interface Units {
  readonly length: LengthUnit;
  readonly speed: SpeedUnit;
}

/**
 * A unit of length on screen: its size in metres, the decimals of a finer number, the grain of a usual one, in the unit
 * itself, and how it is written and said.
 */
export const LENGTHS = {
  cm: {
    metres: 0.01,
    decimals: 0,
    grain: 1,
    symbol: 'cm',
    sentence: ['cm', 'cm'],
    spoken: ['centimetre', 'centimetres'],
  },
  // "8 in in front" reads badly, so sentences write the word out. Quarters, as on a tape.
  in: {
    metres: 0.0254,
    decimals: 1,
    grain: 0.25,
    symbol: 'in',
    sentence: ['inch', 'inches'],
    spoken: ['inch', 'inches'],
  },
} as const satisfies Record<LengthUnit, unknown>;

/** A unit of speed on screen: its size in metres per second and how it is written and said. */
export const SPEEDS = {
  'm/s': { metresPerSecond: 1, spoken: 'metres per second' },
  'km/h': { metresPerSecond: 1 / 3.6, spoken: 'kilometres per hour' },
  mph: { metresPerSecond: 0.44704, spoken: 'miles per hour' },
} as const satisfies Record<SpeedUnit, unknown>;

/** Where a number comes from. Every number on screen carries one of these. */
export type Origin = 'measured by you' | 'computed by the model' | 'rule of thumb';

export const MEASURED: Origin = 'measured by you';
export const COMPUTED: Origin = 'computed by the model';
export const RULE_OF_THUMB: Origin = 'rule of thumb';

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
